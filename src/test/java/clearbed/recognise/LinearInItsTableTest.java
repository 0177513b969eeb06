package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A table takes no more time than its rows and columns ask for, whatever stands in them. */
class LinearInItsTableTest {
  private static final int COLUMNS = 1_500;
  private static final int ROWS = 3_000;

  /** What twice the size may take of the time, and what the clock is not trusted with. */
  private static final double TWICE = 2.5;

  private static final double SLACK_SECONDS = 0.4;

  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  /**
   * @param rows of the headings and below, each by the number of the column; empty cells are blank
   */
  private record Wide(String name, List<IntFunction<String>> rows) {
    @Override
    public String toString() {
      return name;
    }
  }

  private static final List<String> HEADINGS =
      List.of("Material", "Size", "Mortar", "Grout", "Joint (mm)", "Location", "Remarks");

  private static final List<String> CELLS =
      List.of("Glass mosaic", "25 x 25 mm", "A118.15", "epoxy", "3", "Pool", "as sample");

  private static String of(List<String> texts, int column) {
    return texts.get(column % texts.size());
  }

  static Stream<Wide> wide() {
    IntFunction<String> known = c -> c == 0 ? "Tag" : of(HEADINGS, c) + (c < 9 ? "" : " " + c);
    IntFunction<String> first = c -> c == 0 ? "GT-1" : of(CELLS, c);
    IntFunction<String> second = c -> c == 0 ? "GT-2" : of(CELLS, c + 7);
    return Stream.of(
        new Wide("known headings", List.of(known, first, second)),
        new Wide("figures", List.of(c -> "c" + c, c -> "" + c * 7 % 1000, c -> "" + c * 3)),
        new Wide("rows that come again", List.of(known, known, first, known, first, first)),
        new Wide("empty columns", List.of(gaps(known), gaps(first), gaps(second))),
        new Wide("empty columns in turn", List.of(inTurn(known), inTurn(first), inTurn(second))),
        new Wide(
            "one heading over all units",
            List.of(c -> c == 0 ? "Tag" : c == 1 ? "Size" : "", c -> c == 0 ? "" : "mm", first)),
        new Wide("one group over all", List.of(c -> c == 1 ? "GROUT" : "", known, first, second)));
  }

  private static IntFunction<String> gaps(IntFunction<String> row) {
    return c -> c % 3 == 2 ? "" : row.apply(c);
  }

  private static IntFunction<String> inTurn(IntFunction<String> row) {
    return c -> c % 2 == 1 ? "" : row.apply(c);
  }

  @ParameterizedTest
  @MethodSource("wide")
  void twiceTheColumnsTakeTwiceTheTime(Wide wide) {
    seconds(wide(wide, COLUMNS / 4));
    double once = seconds(wide(wide, COLUMNS));
    double twice = seconds(wide(wide, 2 * COLUMNS));
    assertThat(twice).isLessThan(TWICE * once + SLACK_SECONDS);
  }

  @Test
  void twiceTheRowsTakeTwiceTheTime() {
    seconds(tall(ROWS / 4));
    double once = seconds(tall(ROWS));
    double twice = seconds(tall(2 * ROWS));
    assertThat(twice).isLessThan(TWICE * once + SLACK_SECONDS);
  }

  private static Table wide(Wide wide, int columns) {
    List<List<String>> rows = new ArrayList<>();
    for (IntFunction<String> row : wide.rows())
      rows.add(Stream.iterate(0, c -> c + 1).limit(columns).map(row::apply).toList());
    return table(rows);
  }

  /** Words that might head what is below, and come again there. */
  private static Table tall(int rows) {
    List<List<String>> out = new ArrayList<>();
    for (int r = 0; r < rows; r++)
      out.add(r % 3 == 0 ? List.of("1", "wall tile", "m2") : List.of("tile", "wall tile", "m2"));
    return table(out);
  }

  private static Table table(List<List<String>> texts) {
    List<Table.Row> rows = new ArrayList<>();
    for (List<String> line : texts) {
      List<Table.Cell> cells = new ArrayList<>();
      int number = rows.size() + 1;
      for (int c = 0; c < line.size(); c++)
        if (!line.get(c).isEmpty()) cells.add(Table.Cell.of(number, c, line.get(c)));
      rows.add(new Table.Row(number, cells, false));
    }
    return new Table(new Origin("a.xlsx", "Tile", null, null, null, null, null), rows, true);
  }

  /** Of processor time. */
  private static double seconds(Table table) {
    Document document = Document.read("a.xlsx", "xlsx", List.of(table), List.of());
    long before = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    assertThat(RECOGNISER.facts(document).document().status()).isNotNull();
    return (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - before) / 1e9;
  }
}
