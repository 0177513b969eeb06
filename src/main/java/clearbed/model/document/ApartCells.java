package clearbed.model.document;

import java.util.List;

/** The cells of a row of many, some of which are merged, none over another: found by halving. */
final class ApartCells extends ThinList<Table.Cell> {
  /** Of fewer cells one is found as fast by going through them. */
  private static final int FEWEST = 24;

  private final Table.Cell[] cells;

  private ApartCells(List<Table.Cell> cells) {
    this.cells = cells.toArray(Table.Cell[]::new);
  }

  /** The cells as a list that never changes. */
  static List<Table.Cell> of(List<Table.Cell> cells) {
    if (cells instanceof ApartCells) return cells;
    return cells.size() >= FEWEST && areApart(cells) ? new ApartCells(cells) : List.copyOf(cells);
  }

  private static boolean areApart(List<Table.Cell> cells) {
    int end = 0;
    for (Table.Cell cell : cells) {
      if (cell.column() < end || cell.columnSpan() < 1) return false;
      end = cell.column() + cell.columnSpan();
    }
    return true;
  }

  @Override
  public Table.Cell get(int index) {
    return cells[index];
  }

  @Override
  public int size() {
    return cells.length;
  }

  /** The cell whose merged area covers the column, or null. */
  Table.Cell at(int column) {
    int low = 0;
    int high = cells.length - 1;
    while (low <= high) {
      int middle = (low + high) >>> 1;
      Table.Cell cell = cells[middle];
      if (column < cell.column()) high = middle - 1;
      else if (column >= cell.column() + cell.columnSpan()) low = middle + 1;
      else return cell;
    }
    return null;
  }
}
