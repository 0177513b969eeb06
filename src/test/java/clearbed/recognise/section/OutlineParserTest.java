package clearbed.recognise.section;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.recognise.Recogniser;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sections, articles and paragraphs, as typed and as numbered by the word processor. */
class OutlineParserTest {

  private static List<Section> read(String name, Paragraph... paragraphs) {
    List<Block> blocks = new ArrayList<>(List.of(paragraphs));
    return new Recogniser(Checked.vocabulary())
        .recognise(Document.read(name, "txt", blocks, List.of()))
        .sections();
  }

  private static Paragraph p(String text) {
    return Paragraph.body(Origin.ofDocument("spec.txt"), text);
  }

  private static Paragraph numbered(String label, int level, String text) {
    return new Paragraph(
        Origin.ofDocument("spec.docx"), label, 0, level, text, Paragraph.Region.BODY);
  }

  private static List<String> numbers(Section section) {
    return section.clauses().stream().map(Clause::number).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "SECTION 09 30 00 - TILING | 09 30 00 | TILING",
        "SECTION 093000 TILING | 09 30 00 | TILING",
        "Section 09 30 00: Tiling | 09 30 00 | Tiling",
        "SECTION 09 30 13.16 - GLASS TILING | 09 30 13 | GLASS TILING",
        "SECTION 09310 CERAMIC TILE | 09 30 00 | CERAMIC TILE",
        "SECTION 07 92 00 JOINT SEALANTS | 07 92 00 | JOINT SEALANTS"
      })
  void reads_number_and_title_of_a_section(String line, String number, String title) {
    Section section = read("spec.txt", p(line), p("PART 2 - PRODUCTS"), p("2.1 TILE")).get(0);
    assertThat(section.number()).isEqualTo(number);
    assertThat(section.title()).isEqualTo(title);
  }

  @Test
  void cites_a_clause_by_all_it_stands_under() {
    Section section =
        read(
                "spec.txt",
                p("SECTION 09 30 00"),
                p("TILING"),
                p("PART 2 - PRODUCTS"),
                p("2.3 MORTAR"),
                p("A. Mortar:"),
                p("1. Glass tile:"),
                p("a. ANSI A118.15."),
                p("2. Other tile: ANSI A118.4."),
                p("B. Water: clean."),
                p("2.4 GROUT"),
                p("A. Grout: ANSI A118.7."))
            .get(0);
    assertThat(numbers(section))
        .containsExactly(
            "2.3", "2.3 A", "2.3 A.1", "2.3 A.1.a", "2.3 A.2", "2.3 B", "2.4", "2.4 A");
    assertThat(section.clauses().get(3).heading()).isEqualTo("MORTAR");
    assertThat(section.article()).isTrue();
  }

  @Test
  void takes_the_numbers_that_the_word_processor_shows() {
    Section section =
        read(
                "spec.docx",
                p("SECTION 09 30 00 TILING"),
                numbered("2.1", 1, "MORTAR"),
                numbered("A.", 2, "Mortar for glass tile:"),
                numbered("1.", 3, "ANSI A118.15."))
            .get(0);
    assertThat(numbers(section)).containsExactly("2.1", "2.1 A", "2.1 A.1");
  }

  @Test
  void a_figure_at_the_start_of_a_line_is_no_article() {
    Section section =
        read(
                "spec.txt",
                p("SECTION 09 30 00 TILING"),
                p("2.1 MORTAR"),
                p("A. Bond strength:"),
                p("2.76 MPa minimum in shear."))
            .get(0);
    assertThat(numbers(section)).doesNotContain("2.76");
  }

  @Test
  void two_sections_in_one_document_are_two() {
    List<Section> sections =
        read(
            "spec.txt",
            p("SECTION 07 92 00 JOINT SEALANTS"),
            p("2.1 SEALANTS"),
            p("A. ASTM C920, Class 25."),
            p("END OF SECTION 07 92 00"),
            p("SECTION 09 30 00 TILING"),
            p("2.1 TILE"),
            p("A. Glass tile: ANSI A137.2."));
    assertThat(sections).extracting(Section::number).containsExactly("07 92 00", "09 30 00");
    assertThat(sections).extracting(Section::article).containsExactly(false, true);
  }

  @Test
  void text_without_a_section_is_notes() {
    Section notes = read("notes.txt", p("GENERAL NOTES"), p("1. Set tile in white mortar.")).get(0);
    assertThat(notes.notes()).isTrue();
    assertThat(notes.name()).isEqualTo("notes in notes.txt");
  }

  @Test
  void the_file_name_gives_the_number_that_the_text_does_not() {
    Section section =
        read("09 30 00 tiling.txt", p("PART 2 - PRODUCTS"), p("2.1 TILE"), p("A. Glass tile."))
            .get(0);
    assertThat(section.number()).isEqualTo("09 30 00");
  }

  @Test
  void running_headers_and_footers_are_no_clauses() {
    Paragraph footer =
        new Paragraph(
            Origin.ofDocument("spec.docx"),
            "",
            0,
            -1,
            "09 30 00 - 3 TILING",
            Paragraph.Region.FOOTER);
    Section section = read("spec.docx", footer, p("PART 2 - PRODUCTS"), p("2.1 TILE")).get(0);
    assertThat(section.number()).isEqualTo("09 30 00");
    assertThat(section.clauses()).hasSize(1);
  }
}
