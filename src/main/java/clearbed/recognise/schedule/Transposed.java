package clearbed.recognise.schedule;

import clearbed.model.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A schedule that lists attributes downwards and tiles across, turned round; cells keep their own
 * place.
 */
final class Transposed {
  private static final int WIDEST = 200;

  private Transposed() {}

  /** The turned grid, or null when the grid is too large to be such a schedule. */
  static Table of(Table table) {
    if (table.rows().size() > WIDEST) return null;
    Map<Integer, List<Table.Cell>> columns = new TreeMap<>();
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) {
        if (cell.column() > WIDEST) return null;
        columns.computeIfAbsent(cell.column(), c -> new ArrayList<>()).add(turned(row, cell));
      }
    }
    List<Table.Row> rows = new ArrayList<>();
    columns.forEach((column, cells) -> rows.add(new Table.Row(column + 1, cells, false)));
    return new Table(table.origin(), rows, table.sheet(), true);
  }

  private static Table.Cell turned(Table.Row row, Table.Cell cell) {
    return new Table.Cell(
        row.number() - 1,
        1,
        cell.continued(),
        cell.text(),
        cell.remark(),
        cell.column() + 1,
        cell.page());
  }
}
