package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.value.Content;
import clearbed.recognise.statement.limit.Statement;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What figures in cells state, in the habits of several countries, and which are not plain. */
class FigureCellsTest {
  private static final String UNCLEAR = "?";

  /**
   * @param below cells of the same column
   */
  record Case(String heading, List<String> below, String cell, String expected) {
    static Case of(String line) {
      String[] parts = line.split("\\|", -1);
      assertThat(parts).as(line).hasSize(4);
      return new Case(
          parts[0].trim(),
          Stream.of(parts[1].split(";;")).map(Case::read).filter(s -> !s.isEmpty()).toList(),
          read(parts[2]),
          parts[3].trim());
    }

    private static String read(String raw) {
      return raw.trim()
          .replace("\\n", "\n")
          .replace("\\u202F", "\u202F")
          .replace("\\u00A0", "\u00A0")
          .replace("\\u2009", "\u2009");
    }
  }

  static Stream<Case> cases() throws IOException {
    try (InputStream in = FigureCellsTest.class.getResourceAsStream("/recognise/figures.txt")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
              .lines()
              .filter(line -> !line.isBlank() && !line.startsWith("#"))
              .map(Case::of)
              .toList()
              .stream();
    }
  }

  static Facts read(String format, String heading, List<String> cells) {
    List<Table.Row> rows = new ArrayList<>();
    rows.add(row(1, "Tag", "Material", heading));
    for (int i = 0; i < cells.size(); i++) {
      rows.add(row(i + 2, "GT-" + (i + 1), "Glass tile", cells.get(i)));
    }
    String name = "schedule." + format;
    Table table = new Table(new Origin(name, null, null, null, null, null, null), rows, true);
    return new Recogniser(Checked.vocabulary())
        .recognise(Document.read(name, format, List.of(table), List.of()));
  }

  private static Table.Row row(int number, String... texts) {
    List<Table.Cell> cells = new ArrayList<>();
    for (int i = 0; i < texts.length; i++) cells.add(Table.Cell.of(number, i, texts[i]));
    return new Table.Row(number, cells, false);
  }

  /** The figures that a cell of the third column states. */
  static List<Content> figures(Facts facts, int row) {
    return facts.rows().stream()
        .flatMap(r -> r.statements().stream())
        .filter(s -> ("C" + row).equals(s.origin().cell()))
        .map(Statement::content)
        .filter(
            c ->
                c instanceof Content.Amount
                    || c instanceof Content.Size
                    || c instanceof Content.NotUnderstood)
        .toList();
  }

  @ParameterizedTest
  @MethodSource("cases")
  void a_cell_states_its_figure_or_is_not_understood(Case c) {
    List<String> cells = new ArrayList<>(List.of(c.cell()));
    cells.addAll(c.below());
    Facts facts = read("csv", c.heading(), cells);
    List<Content> figures = figures(facts, 2);
    List<String> reasons =
        facts.gaps().stream()
            .filter(g -> "C2".equals(g.origin().cell()))
            .map(Document.Gap::reason)
            .toList();
    if (c.expected().equals(UNCLEAR)) {
      assertThat(figures).hasSize(1).allMatch(f -> f instanceof Content.NotUnderstood);
      assertThat(reasons).hasSize(1);
      assertThat(reasons.get(0)).startsWith("not understood: '");
    } else {
      assertThat(figures).extracting(Content::text).containsExactly(c.expected());
      assertThat(reasons).isEmpty();
    }
  }
}
