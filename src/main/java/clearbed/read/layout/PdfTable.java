package clearbed.read.layout;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A table put together from a page, in the making.
 *
 * @param lefts left edges of the columns, points
 * @param right edge of the table, points
 * @param rows cells in reading order, without numbers
 */
public record PdfTable(
    double top, double bottom, List<Double> lefts, double right, List<List<PdfCell>> rows) {

  /** Points by which the columns of one table may differ from page to page. */
  private static final double SAME_COLUMN = 8;

  /**
   * A cell.
   *
   * @param rowSpan rows it covers, 1 or more
   */
  public record PdfCell(int column, int columnSpan, int rowSpan, String text, int page) {}

  public PdfTable {
    rows = new ArrayList<>(rows);
  }

  public double left() {
    return lefts.get(0);
  }

  public boolean hasColumnsOf(PdfTable other) {
    if (lefts.size() != other.lefts.size()) return false;
    for (int i = 0; i < lefts.size(); i++) {
      if (Math.abs(lefts.get(i) - other.lefts.get(i)) > SAME_COLUMN) return false;
    }
    return true;
  }

  /** Goes on with the rows of the next page, without the heading row if it is repeated. */
  public void append(PdfTable next) {
    int from = 0;
    while (from < rows.size()
        && from < next.rows.size()
        && texts(rows.get(from)).equals(texts(next.rows.get(from)))) {
      from++;
    }
    rows.addAll(next.rows.subList(from, next.rows.size()));
  }

  private static List<String> texts(List<PdfCell> row) {
    return row.stream().map(p -> p.column() + p.text()).toList();
  }

  public Table build(Origin origin) {
    List<List<Cell>> cells = new ArrayList<>();
    for (int r = 0; r < rows.size(); r++) cells.add(new ArrayList<>());
    for (int r = 0; r < rows.size(); r++) {
      for (PdfCell piece : rows.get(r)) {
        for (int k = 0; k < piece.rowSpan() && r + k < rows.size(); k++) {
          cells.get(r + k).add(cell(piece, r + 1, k > 0));
        }
      }
    }
    List<Row> built = new ArrayList<>();
    for (int r = 0; r < cells.size(); r++) {
      List<Cell> row = cells.get(r);
      row.sort(Comparator.comparingInt(Cell::column));
      if (!row.isEmpty()) built.add(new Row(r + 1, row, false));
    }
    return new Table(origin, built, false);
  }

  private static Cell cell(PdfCell piece, int row, boolean continued) {
    return new Cell(
        piece.column(), piece.columnSpan(), continued, piece.text(), "", row, piece.page());
  }
}
