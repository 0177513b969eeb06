package clearbed.read.markup;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/** One XHTML table in the making: cells find their column past those that reach down from above. */
final class MarkupTable {
  private static final int MOST_COLUMNS = 2_000;
  private static final int MOST_ROWS_SPANNED = 20_000;

  private final List<Row> rows = new ArrayList<>();

  /** Cells from above by column, with the number of the last row that they reach. */
  private final TreeMap<Integer, ReachingCell> reaching = new TreeMap<>();

  private List<Cell> cells = new ArrayList<>();
  private int row;
  private int column;
  private int columnSpan = 1;
  private int rowSpan = 1;
  private boolean inRow;

  private record ReachingCell(Cell cell, int span, int lastRow) {}

  void startRow() {
    endRow();
    row++;
    column = 0;
    inRow = true;
    reaching.values().removeIf(r -> r.lastRow() < row);
    cells = new ArrayList<>();
    for (ReachingCell reach : reaching.values()) {
      Cell c = reach.cell();
      if (c.text().isEmpty()) continue;
      cells.add(new Cell(c.column(), c.columnSpan(), true, c.text(), "", c.firstRow(), 0));
    }
  }

  void startCell(int columns, int rowsSpanned) {
    if (!inRow) startRow();
    columnSpan = Math.max(1, Math.min(columns, MOST_COLUMNS));
    rowSpan = rowsSpanned == 0 ? MOST_ROWS_SPANNED : Math.min(rowsSpanned, MOST_ROWS_SPANNED);
    while (reachedAt(column) != null) column = nextFree(reachedAt(column));
  }

  private ReachingCell reachedAt(int at) {
    var floor = reaching.floorEntry(at);
    if (floor == null || floor.getValue().lastRow() < row) return null;
    // Cells that begin in this row lie to the left of the column in question.
    return floor.getKey() + floor.getValue().span() > at ? floor.getValue() : null;
  }

  private static int nextFree(ReachingCell reach) {
    return reach.cell().column() + reach.span();
  }

  /** Address of the cell that is being read. */
  String address() {
    return Table.address(Math.max(1, row), column);
  }

  void endCell(String text, String remark) {
    if (!inRow || column >= MOST_COLUMNS) return;
    Cell cell = new Cell(column, columnSpan, false, text, remark, row, 0);
    if (!text.isEmpty() || !remark.isEmpty()) cells.add(cell);
    if (rowSpan > 1) reaching.put(column, new ReachingCell(cell, columnSpan, row + rowSpan - 1));
    column += columnSpan;
  }

  void endRow() {
    if (inRow && !cells.isEmpty()) {
      cells.sort(Comparator.comparingInt(Cell::column));
      rows.add(new Row(row, cells, false));
    }
    inRow = false;
  }

  /** Empty when no cell holds anything. */
  Optional<Table> build(Origin origin, boolean sheet) {
    endRow();
    return rows.isEmpty() ? Optional.empty() : Optional.of(new Table(origin, rows, sheet));
  }
}
