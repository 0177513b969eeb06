package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.value.Content;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Figures in running text: read, or told with their words as not understood. */
class FigureClausesTest {

  record Case(String attribute, String expected, String clause) {}

  static Stream<Case> cases() throws IOException {
    String file = "/recognise/figures-in-clauses.txt";
    try (InputStream in = FigureClausesTest.class.getResourceAsStream(file)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.isBlank() && !line.startsWith("#"))
              .map(line -> line.split("\\|", 3))
              .map(parts -> new Case(parts[0].trim(), parts[1].trim(), parts[2].trim()))
              .toList()
              .stream();
    }
  }

  private static Facts read(String clause) {
    List<Block> blocks = new ArrayList<>();
    for (String line :
        List.of("SECTION 09 30 00", "TILING", "2.1 SETTING OF GLASS TILE", "A. " + clause)) {
      Origin at = new Origin("a.txt", null, null, null, blocks.size() + 1, null, line);
      blocks.add(Paragraph.body(at, line));
    }
    return new Recogniser(Checked.vocabulary())
        .recognise(Document.read("a.txt", "txt", blocks, List.of()));
  }

  @ParameterizedTest
  @MethodSource("cases")
  void a_clause_states_its_figure_or_is_not_understood(Case c) {
    Facts facts = read(c.clause());
    List<String> said =
        facts.sections().stream()
            .flatMap(s -> s.clauses().stream())
            .flatMap(clause -> clause.statements().stream())
            .filter(s -> s.attribute().equals(c.attribute()))
            .map(s -> s.content())
            .map(Content::text)
            .toList();
    if (!c.expected().startsWith("?")) {
      assertThat(said).containsExactly(c.expected());
      assertThat(facts.gaps()).isEmpty();
      return;
    }
    String words = "not understood: '" + c.expected().substring(1).trim() + "'";
    assertThat(said).containsExactly(words);
    assertThat(facts.gaps()).hasSize(1);
    assertThat(facts.gaps().get(0).reason()).startsWith(words + " as a ");
    assertThat(facts.gaps().get(0).origin().text()).contains(c.clause());
  }
}
