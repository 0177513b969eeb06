package clearbed.model.document;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which cell covers a column, in rows of few cells and of many. */
class CellsOfARowTest {
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 5, 23, 24, 200})
  void the_cell_that_covers_a_column_is_found_among_gaps_and_merged_cells(int count) {
    for (int most : new int[] {1, 4}) {
      List<Table.Cell> cells = cells(count, most, new Random(count));
      Table.Row row = new Table.Row(1, cells, false);

      assertThat(row.cells()).isEqualTo(cells);
      for (int column = -1; column < 8 * count + 9; column++)
        assertThat(row.at(column)).isEqualTo(covering(cells, column));
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 40})
  void of_cells_one_over_another_the_first_is_found(int count) {
    List<Table.Cell> cells = new ArrayList<>(cells(count, 1, new Random(1)));
    cells.set(1, new Table.Cell(cells.get(1).column(), 60, false, "wide", "", 1, 0));
    Table.Row row = new Table.Row(1, cells, false);

    for (int column = 0; column < 8 * count; column++)
      assertThat(row.at(column)).isEqualTo(covering(cells, column));
  }

  private static List<Table.Cell> cells(int count, int mostColumns, Random random) {
    List<Table.Cell> out = new ArrayList<>();
    int column = 0;
    for (int i = 0; i < count; i++) {
      column += random.nextInt(4);
      int span = 1 + random.nextInt(mostColumns);
      out.add(new Table.Cell(column, span, false, "cell " + i, "", 1, 0));
      column += span;
    }
    return out;
  }

  private static Table.Cell covering(List<Table.Cell> cells, int column) {
    return cells.stream()
        .filter(c -> column >= c.column() && column < c.column() + c.columnSpan())
        .findFirst()
        .orElse(null);
  }
}
