package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.recognise.statement.limit.Exclusions;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.Statement;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Each value of a clause with its own limits, in the words of many offices. */
class ClausesTest {
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  /** A text, and below it what it states; a line that begins with ! names what it does not. */
  static Stream<Arguments> clauses() throws IOException {
    List<Arguments> out = new ArrayList<>();
    List<String> expected = new ArrayList<>();
    for (String line : Files.readAllLines(Path.of("src/test/resources/recognise/clauses.txt"))) {
      if (line.startsWith("> ")) {
        expected = new ArrayList<>();
        out.add(Arguments.of(line.substring(2), expected));
      } else if (!line.isBlank() && !line.startsWith("#")) {
        expected.add(line.trim());
      }
    }
    return out.stream();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("clauses")
  void each_value_of_a_clause_has_its_own_limits(String text, List<String> expected) {
    List<Statement> said = said(text);
    List<String> refused =
        expected.stream().filter(e -> e.startsWith("!")).map(e -> e.substring(1).trim()).toList();
    assertThat(said).extracting(Statement::attribute).noneMatch(refused::contains);
    List<String> wanted = expected.stream().filter(e -> !e.startsWith("!")).toList();
    List<String> attributes = wanted.stream().map(e -> e.substring(0, e.indexOf(' '))).toList();
    assertThat(said)
        .filteredOn(s -> attributes.contains(s.attribute()))
        .extracting(ClausesTest::words)
        .containsExactlyInAnyOrderElementsOf(wanted);
  }

  /** Paragraphs are parted by two slashes; one by itself stands in a general article. */
  private static List<Statement> said(String text) {
    List<String> lines = new ArrayList<>(List.of("SECTION 09 30 00 - GLASS TILING", "PART 3"));
    List<String> own = List.of(text.split(" // "));
    if (own.size() == 1) lines.addAll(List.of("3.1 GENERAL", "A. " + text));
    else lines.addAll(own);
    List<Block> blocks = new ArrayList<>();
    for (String line : lines)
      blocks.add(Paragraph.body(Origin.ofDocument("09 30 00.txt").withText(line), line));
    Document document = Document.read("09 30 00.txt", "txt", blocks, List.of());
    return RECOGNISER.recognise(document).sections().stream()
        .flatMap(s -> s.clauses().stream())
        .flatMap(c -> c.statements().stream())
        .toList();
  }

  private static String words(Statement s) {
    Limits l = s.limits();
    StringBuilder out = new StringBuilder(s.attribute() + " = " + s.content().text());
    if (s.excluded()) out.append(" EXCLUDED");
    if (!l.tags().isEmpty()) out.append(" tags").append(l.tags());
    if (l.glass()) out.append(" glass");
    if (!l.otherTile().isEmpty()) out.append(" other").append(l.otherTile());
    if (!l.exposures().isEmpty()) out.append(" at").append(l.exposures());
    if (!l.surfaces().isEmpty()) out.append(" on").append(l.surfaces());
    if (!l.except().isEmpty()) out.append(" except").append(words(l.except()));
    if (!l.with().isEmpty()) out.append(" with").append(l.with());
    return out.toString();
  }

  private static Set<String> words(Exclusions except) {
    Set<String> out = new TreeSet<>(except.tags());
    except.places().forEach(place -> out.add(place.toString()));
    out.addAll(except.terms());
    return out;
  }
}
