package clearbed.report.workbook.cell;

import clearbed.report.wording.Phrasing;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** The rows of a sheet that is read like a page: headings of sections, labels with words. */
public final class PageRows {
  private final XSSFSheet sheet;
  private final Pen pen;
  private final int[] widths;
  private int next;

  /**
   * @param widths of the columns, in characters
   */
  public PageRows(XSSFSheet sheet, Pen pen, int[] widths) {
    this.sheet = sheet;
    this.pen = pen;
    this.widths = widths;
    for (int column = 0; column < widths.length; column++)
      sheet.setColumnWidth(column, widths[column] * 256);
  }

  /** Number of the next row, from 0. */
  public int next() {
    return next;
  }

  public Row add() {
    return sheet.createRow(next++);
  }

  public void skip(int rows) {
    next += rows;
  }

  /** A heading over all columns, below an empty row. */
  public Row section(String words) {
    skip(1);
    Row row = add();
    Heights.points(row, 20);
    for (int column = 0; column < widths.length; column++)
      pen.text(row, column, column == 0 ? words : "", Styles.Look.SECTION);
    return row;
  }

  /** A label, and words over the rest of the width. */
  public void pair(String label, String words) {
    Row row = add();
    pen.text(row, 0, label, Styles.Look.STRONG);
    wide(row, 1, words);
  }

  /** Words over several cells; a merged row does not grow by itself, so its height is reckoned. */
  public void wide(Row row, int from, String words) {
    pen.text(row, from, words, Styles.Look.TEXT);
    for (int column = from + 1; column < widths.length; column++)
      pen.text(row, column, "", Styles.Look.TEXT);
    int at = row.getRowNum();
    sheet.addMergedRegionUnsafe(new CellRangeAddress(at, at, from, widths.length - 1));
    fit(row, from, words);
  }

  /** Room for words that run on over all columns from one on. */
  public void fit(Row row, int from, String words) {
    int characters = 0;
    for (int column = from; column < widths.length; column++) characters += widths[column];
    Heights.set(row, Phrasing.lines(words, characters));
  }
}
