package clearbed.report.workbook.cell;

import clearbed.report.wording.Phrasing;
import java.util.function.IntUnaryOperator;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFRow;

/**
 * Gives rows the height that their wrapped text needs.
 *
 * <p>Spreadsheet programs differ in whether they do so for a file that they did not write.
 */
public final class Heights {
  /** Of 10 point text, in points. */
  private static final float LINE = 13.2f;

  private static final float PADDING = 2;

  /** Excel's limit (Excel specifications and limits). */
  private static final float TALLEST = 409;

  private Heights() {}

  /** Fits a row to its text, unless somebody set its height by hand. */
  public static void fit(Row row, Sheet widths) {
    if (row instanceof XSSFRow own && own.getCTRow().getCustomHeight()) return;
    fit(row, column -> widths.getColumnWidth(column) / 256);
  }

  /**
   * Fits a row of a sheet that is all new.
   *
   * @param widths of its columns, in characters
   */
  public static void fit(Row row, int[] widths) {
    fit(row, column -> widths[column]);
  }

  private static void fit(Row row, IntUnaryOperator width) {
    int lines = 1;
    for (Cell cell : row) {
      if (cell.getCellType() != CellType.STRING) continue;
      int characters = width.applyAsInt(cell.getColumnIndex());
      lines = Math.max(lines, Phrasing.lines(cell.getStringCellValue(), characters));
    }
    set(row, lines);
  }

  /** Room for so many lines; the program may still choose better when somebody edits the row. */
  public static void set(Row row, int lines) {
    row.setHeightInPoints(Math.min(TALLEST, PADDING + LINE * lines));
    if (row instanceof XSSFRow own) own.getCTRow().setCustomHeight(false);
  }

  /** A fixed height, in points. */
  public static void points(Row row, float points) {
    row.setHeightInPoints(points);
  }
}
