package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What was read before marks were learned stands where none of them is named. */
class EarlierFactsTest {
  private static final Facts LETTER = facts("letter.txt");
  private static final EarlierFacts EARLIER =
      new EarlierFacts(
          List.of(LETTER, facts("twice.txt"), facts("twice.txt")),
          new Lessons(List.of("Q-SKY", "Q-FERN"), List.of()));

  private static Facts facts(String path) {
    return Facts.none(document(path));
  }

  private static Document document(String path, Block... blocks) {
    return Document.read(path, "txt", List.of(blocks), List.of());
  }

  private static Paragraph paragraph(String words) {
    return Paragraph.body(Origin.ofDocument("letter.txt"), words);
  }

  private static Table table(String text, String remark) {
    Table.Cell cell = new Table.Cell(0, 1, false, text, remark, 1, 0);
    return new Table(
        Origin.ofDocument("letter.txt"), List.of(new Table.Row(1, List.of(cell), false)), false);
  }

  @Test
  void a_document_without_the_marks_keeps_its_facts() {
    Document letter = document("letter.txt", paragraph("Set GT-1 dry."), table("Q", ""));
    assertThat(EARLIER.of(letter)).isSameAs(LETTER);
  }

  @Test
  void one_that_names_a_mark_is_read_anew() {
    assertThat(EARLIER.of(document("letter.txt", paragraph("Set q-sky dry.")))).isNull();
    assertThat(EARLIER.of(document("letter.txt", paragraph("Set Q\u2011FERN dry.")))).isNull();
    assertThat(EARLIER.of(document("letter.txt", table("Q-SKY", "")))).isNull();
    assertThat(EARLIER.of(document("letter.txt", table("", "as Q-SKY")))).isNull();
  }

  @Test
  void one_that_is_told_from_no_other_by_its_path_is_read_anew() {
    assertThat(EARLIER.of(document("twice.txt"))).isNull();
    assertThat(EARLIER.of(document("new.txt"))).isNull();
  }
}
