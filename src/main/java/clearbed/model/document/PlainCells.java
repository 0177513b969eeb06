package clearbed.model.document;

import java.util.Arrays;
import java.util.List;

/** The cells of a row that hold nothing but text, one in each column: most rows are such. */
final class PlainCells extends ThinList<Table.Cell> {
  /** Of fewer cells a list takes little more. */
  private static final int FEWEST = 3;

  private static final int MOST_COLUMNS = Character.MAX_VALUE;

  private final int row;
  private final String[] texts;

  /** Null where each text stands in the column of its index. */
  private final char[] columns;

  private PlainCells(int row, List<Table.Cell> cells) {
    this.row = row;
    texts = new String[cells.size()];
    boolean gaps = cells.get(texts.length - 1).column() != texts.length - 1;
    columns = gaps ? new char[texts.length] : null;
    for (int i = 0; i < texts.length; i++) {
      texts[i] = cells.get(i).text();
      if (gaps) columns[i] = (char) cells.get(i).column();
    }
  }

  /** The cells as a list that never changes, in little memory where they are plain. */
  static List<Table.Cell> of(int row, List<Table.Cell> cells) {
    if (cells instanceof PlainCells plain && plain.row == row) return plain;
    return cells.size() >= FEWEST && arePlain(row, cells)
        ? new PlainCells(row, cells)
        : ApartCells.of(cells);
  }

  private static boolean arePlain(int row, List<Table.Cell> cells) {
    int last = -1;
    for (Table.Cell cell : cells) {
      boolean plain =
          cell.columnSpan() == 1
              && !cell.continued()
              && cell.text() != null
              && "".equals(cell.remark())
              && cell.firstRow() == row
              && cell.page() == 0
              && cell.column() > last
              && cell.column() <= MOST_COLUMNS;
      if (!plain) return false;
      last = cell.column();
    }
    return true;
  }

  @Override
  public Table.Cell get(int index) {
    return Table.Cell.of(row, columns == null ? index : columns[index], texts[index]);
  }

  @Override
  public int size() {
    return texts.length;
  }

  /** The cell of a column, or null. */
  Table.Cell at(int column) {
    if (columns == null) return column >= 0 && column < texts.length ? get(column) : null;
    if (column < 0 || column > MOST_COLUMNS) return null;
    int found = Arrays.binarySearch(columns, (char) column);
    return found < 0 ? null : get(found);
  }
}
