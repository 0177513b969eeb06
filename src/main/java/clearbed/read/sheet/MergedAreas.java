package clearbed.read.sheet;

import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lays the merged areas of a sheet over its rows; the work is bounded whatever a file claims. */
final class MergedAreas {
  private static final int MOST_AREAS = 200_000;
  private static final int MOST_COPIES = 500_000;

  private record Area(int firstRow, int firstColumn, int lastRow, int lastColumn) {}

  /** Told of words that a merged area hides. */
  interface Hidden {
    void at(int row, int column, String text, String reason);
  }

  private final List<Area> areas = new ArrayList<>();
  private boolean cutShort;

  void add(int firstRow, int firstColumn, int lastRow, int lastColumn) {
    if (lastRow == firstRow && lastColumn == firstColumn) return;
    if (areas.size() < MOST_AREAS) areas.add(new Area(firstRow, firstColumn, lastRow, lastColumn));
    else cutShort = true;
  }

  boolean isCutShort() {
    return cutShort;
  }

  /** The rows with spans and copies; rows must rise by number. */
  List<Row> apply(List<Row> rows, Hidden hidden) {
    if (areas.isEmpty()) return rows;
    Map<Integer, List<Cell>> laid = new HashMap<>();
    int copies = 0;
    for (Area area : areas) {
      int first = indexFrom(rows, area.firstRow);
      Cell anchor = anchor(rows, first, area);
      if (anchor == null) continue;
      int span = area.lastColumn - area.firstColumn + 1;
      for (int i = first; i < rows.size() && rows.get(i).number() <= area.lastRow; i++) {
        if (++copies > MOST_COPIES) {
          cutShort = true;
          break;
        }
        laid.computeIfAbsent(i, k -> new ArrayList<>()).add(copy(anchor, span, i > first));
      }
    }
    List<Row> result = new ArrayList<>(rows);
    laid.forEach((i, spans) -> result.set(i, overlaid(rows.get(i), spans, hidden)));
    return result;
  }

  private static Cell copy(Cell anchor, int span, boolean continued) {
    String remark = continued ? "" : anchor.remark();
    return new Cell(
        anchor.column(), span, continued, anchor.text(), remark, anchor.firstRow(), anchor.page());
  }

  private static Cell anchor(List<Row> rows, int index, Area area) {
    if (index >= rows.size() || rows.get(index).number() != area.firstRow) return null;
    Cell cell = rows.get(index).at(area.firstColumn);
    return cell != null && cell.column() == area.firstColumn ? cell : null;
  }

  private static int indexFrom(List<Row> rows, int number) {
    int low = 0;
    int high = rows.size();
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (rows.get(middle).number() < number) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  private static Row overlaid(Row row, List<Cell> spans, Hidden hidden) {
    List<Cell> all = new ArrayList<>(spans);
    all.addAll(row.cells());
    // The sort is stable, so that at one column the merged area comes before what it covers.
    all.sort(Comparator.comparingInt(Cell::column));
    List<Cell> kept = new ArrayList<>(all.size());
    int free = 0;
    for (Cell cell : all) {
      if (cell.column() >= free) {
        kept.add(cell);
        free = cell.column() + cell.columnSpan();
      } else if (cell.columnSpan() == 1 && !isAnchor(cell, kept.get(kept.size() - 1))) {
        hidden.at(row.number(), cell.column(), cell.text(), "hidden under a merged area");
      }
    }
    return row.withCells(kept);
  }

  private static boolean isAnchor(Cell cell, Cell span) {
    return cell.column() == span.column() && cell.firstRow() == span.firstRow();
  }
}
