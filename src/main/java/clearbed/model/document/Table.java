package clearbed.model.document;

import java.util.List;
import java.util.Map;

/**
 * A grid of cells: a whole spreadsheet sheet (however many schedules stand on it), a Word table, a
 * table seen in a PDF.
 *
 * @param origin of the table as a whole
 * @param rows in reading order; blank rows may be left out, row numbers tell
 * @param turned true when rows and columns have changed places, so that addresses are still those
 *     of the document
 * @param sheet true for a spreadsheet sheet, where several tables and notes may share the grid
 * @param apart where cells stand in the document that are read in another place of the grid; empty
 *     where each stands where it is read
 */
public record Table(
    Origin origin, List<Row> rows, boolean sheet, boolean turned, Map<Place, Origin> apart)
    implements Block {
  private static final int USUAL_ROWS = 400;
  private static final int USUAL_COLUMNS = 40;

  /** Addresses that table after table has; each is kept once. */
  private static final String[] USUAL = new String[USUAL_ROWS * USUAL_COLUMNS];

  public Table(Origin origin, List<Row> rows, boolean sheet) {
    this(origin, rows, sheet, false);
  }

  public Table(Origin origin, List<Row> rows, boolean sheet, boolean turned) {
    this(origin, rows, sheet, turned, Map.of());
  }

  public Table {
    rows = List.copyOf(rows);
    apart = Map.copyOf(apart);
  }

  /** The same grid with these rows in place of its own. */
  public Table withRows(List<Row> now) {
    return new Table(origin, now, sheet, turned, apart);
  }

  /** The same grid under the words that stand over it in the document. */
  public Table under(String heading) {
    return new Table(origin.withHeading(heading), rows, sheet, turned, apart);
  }

  /**
   * A place on the grid.
   *
   * @param row from 1
   * @param column from 0
   */
  public record Place(int row, int column) {}

  /**
   * A row of the grid.
   *
   * @param number from 1, as a spreadsheet shows it
   * @param cells the cells that hold something, by rising column
   * @param hidden true when the sheet hides the row from its readers
   */
  public record Row(int number, List<Cell> cells, boolean hidden) {
    public Row {
      cells = PlainCells.of(number, cells);
    }

    /** The same row with these cells in place of its own. */
    public Row withCells(List<Cell> now) {
      return new Row(number, now, hidden);
    }

    /** The cell whose merged area covers the column, or null. */
    public Cell at(int column) {
      if (cells instanceof PlainCells plain) return plain.at(column);
      if (cells instanceof ApartCells apart) return apart.at(column);
      for (Cell cell : cells) {
        if (cell.covers(column)) return cell;
      }
      return null;
    }
  }

  /**
   * A cell, or the cell that stands for a merged area (a cell covered from above appears again in
   * each row it covers, {@code continued}, so that a row can be read by itself).
   *
   * @param column from 0
   * @param columnSpan columns that the cell covers, 1 or more
   * @param continued true when the text comes from a merged area that began in an earlier row
   * @param text as shown to a reader of the document, line breaks as {@code \n}
   * @param remark a comment attached to the cell, or empty
   * @param firstRow number of the row the text stands in
   * @param page from 1, or 0 where there are no pages
   */
  public record Cell(
      int column,
      int columnSpan,
      boolean continued,
      String text,
      String remark,
      int firstRow,
      int page) {
    /** True where its merged area covers the column. */
    public boolean covers(int at) {
      return at >= column && at < column + columnSpan;
    }

    /** True for words that stand in this row and in no merged area from above. */
    public boolean hasOwnWords() {
      return !continued && !text.isBlank();
    }

    /** The words up to the first line break, which may be all of them. */
    public String firstLine() {
      String words = text.strip();
      int line = words.indexOf('\n');
      return line < 0 ? words : words.substring(0, line).strip();
    }

    public Cell withText(String words) {
      return new Cell(column, columnSpan, continued, words, remark, firstRow, page);
    }

    public static Cell of(int row, int column, String text) {
      return new Cell(column, 1, false, text, "", row, 0);
    }
  }

  /** The place of a cell, with its words. */
  public Origin origin(Cell cell) {
    Origin elsewhere =
        apart.isEmpty() ? null : apart.get(new Place(cell.firstRow(), cell.column()));
    if (elsewhere != null) return elsewhere.withText(cell.text());
    return new Origin(
        origin.document(),
        origin.sheet(),
        turned
            ? address(cell.column() + 1, cell.firstRow() - 1)
            : address(cell.firstRow(), cell.column()),
        cell.page() > 0 ? Integer.valueOf(cell.page()) : origin.page(),
        origin.paragraph(),
        origin.heading(),
        cell.text());
  }

  /**
   * Spreadsheet address of a cell.
   *
   * @param row from 1
   * @param column from 0
   */
  public static String address(int row, int column) {
    boolean usual = row > 0 && row <= USUAL_ROWS && column >= 0 && column < USUAL_COLUMNS;
    if (!usual) return spelt(row, column);
    int at = (row - 1) * USUAL_COLUMNS + column;
    String known = USUAL[at];
    return known != null ? known : (USUAL[at] = spelt(row, column));
  }

  private static String spelt(int row, int column) {
    StringBuilder letters = new StringBuilder();
    for (int c = column; c >= 0; c = c / 26 - 1) letters.insert(0, (char) ('A' + c % 26));
    return letters.append(row).toString();
  }
}
