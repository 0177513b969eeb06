package clearbed.recognise.section;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.recognise.Recogniser;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.statement.limit.Statement;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The same thing in the words of different offices. */
class WordingsTest {
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  private static Stream<Arguments> lines(String file) {
    try {
      return Files.readAllLines(Path.of("src/test/resources/recognise", file)).stream()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(" \\| ", 2))
          .map(Arguments::of);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Stream<Arguments> wordings() {
    return lines("wordings.txt");
  }

  static Stream<Arguments> headings() {
    return lines("headings.txt");
  }

  /** What a section says of tile whose one paragraph, in the part of its subject, is this. */
  private static List<Statement> said(String attribute, String text) {
    boolean execution = attribute.matches("(?:process|movement|substrate)\\..*");
    String part = execution ? "3" : "2";
    List<Block> blocks = new ArrayList<>();
    for (String line :
        List.of("SECTION 09 30 00 - TILING", "PART " + part, part + ".1 GENERAL", "A. " + text)) {
      blocks.add(Paragraph.body(Origin.ofDocument("09 30 00.txt").withText(line), line));
    }
    Document document = Document.read("09 30 00.txt", "txt", blocks, List.of());
    return RECOGNISER.recognise(document).sections().stream()
        .flatMap(s -> s.clauses().stream())
        .flatMap(c -> c.statements().stream())
        .toList();
  }

  @ParameterizedTest
  @MethodSource("wordings")
  void a_sentence_states_its_attribute(String attribute, String text) {
    assertThat(said(attribute, text)).extracting(Statement::attribute).contains(attribute);
  }

  @ParameterizedTest
  @MethodSource("headings")
  void a_column_is_known_by_its_heading(String attribute, String heading) {
    Header.Column column = HeadingWords.named(Checked.vocabulary(), heading);
    assertThat(column).isNotNull();
    assertThat(column.attribute().id()).isEqualTo(attribute);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mortar.chemistry | Mastic has no place behind glass.",
        "mortar.chemistry | Organic adhesives are never used with glass tile.",
        "mortar.chemistry | Mastics or premixed adhesives will be rejected.",
        "mortar.chemistry | Organic adhesive stays off this job.",
      })
  void what_is_refused_is_not_required(String attribute, String text) {
    assertThat(said(attribute, text))
        .filteredOn(s -> s.attribute().equals(attribute))
        .isNotEmpty()
        .allMatch(Statement::excluded);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "mortar.coverage | Mortar shall cover 95 percent of the back. | 95 %",
        "sealant.depth | Sealant is nowhere less than 1/8 in. deep. | at least 0.125 in",
        "process.temperature | Set only between 50 DEG. F and 90 DEG. F. | 50 °F to 90 °F",
        "location.temperatureRange | The face temperature of the tile: -15 to 55 °C. | 70 °C",
      })
  void a_figure_keeps_its_bound(String attribute, String text, String figure) {
    assertThat(said(attribute, text))
        .filteredOn(s -> s.attribute().equals(attribute))
        .extracting(s -> s.content().text())
        .containsExactly(figure);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "process.mockup | Submit samples of each tile.",
        "process.mockup | Remove mock-ups when directed.",
        "process.submittals | Send the crew home when it freezes.",
        "location.temperatureRange | Surface temperature of substrates during setting: 50 to 90 F.",
        "process.cureBeforeWater | Do not grout until mortar has cured 48 hours.",
        "membrane.confirmation | The mortar maker shall confirm that mortar may go on the membrane.",
      })
  void what_is_alike_is_not_the_same(String attribute, String text) {
    assertThat(said(attribute, text)).extracting(Statement::attribute).doesNotContain(attribute);
  }
}
