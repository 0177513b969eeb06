package clearbed.report.survey;

import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import java.io.IOException;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** A sheet that is one table, written row by row; its header stays in sight and has filters. */
public final class PlainTable implements AutoCloseable {
  private static final String LEVEL = "Level";

  private final XSSFSheet sheet;
  private final SXSSFSheet rows;
  private final Pen pen;
  private final int[] widths;
  private Row row;
  private int next;
  private int column;

  /**
   * @param width in characters
   */
  public record Head(String words, int width, boolean number) {
    public static Head text(String words, int width) {
      return new Head(words, width, false);
    }

    public static Head number(String words, int width) {
      return new Head(words, width, true);
    }
  }

  PlainTable(XSSFSheet sheet, SXSSFSheet rows, Pen pen, List<Head> columns) {
    this.sheet = sheet;
    this.rows = rows;
    this.pen = pen;
    this.widths = columns.stream().mapToInt(Head::width).toArray();
    row = rows.createRow(next++);
    for (Head head : columns) {
      sheet.setColumnWidth(column, head.width() * 256);
      if (head.words().equals(LEVEL)) SheetSetup.tint(sheet, 1, column, column, SheetSetup.LEVELS);
      Styles.Look look = head.number() ? Styles.Look.HEADER_COUNT : Styles.Look.HEADER;
      pen.text(row, column++, head.words(), look);
    }
    Heights.fit(row, widths);
  }

  /** True when no row can follow. */
  public boolean isFull() {
    return next > SheetSetup.LAST_ROW;
  }

  /** Begins a row, and gives its number, from 1 for the header. */
  public int row() {
    if (row != null && next > 1) Heights.fit(row, widths);
    row = rows.createRow(next++);
    column = 0;
    return next;
  }

  public PlainTable text(String words) {
    pen.text(row, column++, words, Styles.Look.TEXT);
    return this;
  }

  public PlainTable strong(String words) {
    pen.text(row, column++, words, Styles.Look.STRONG);
    return this;
  }

  public PlainTable count(int number) {
    pen.count(row, column++, number);
    return this;
  }

  /**
   * @param location of the rows that it counts, or null
   */
  public PlainTable count(int number, String location) {
    pen.jump(row, column++, number, location);
    return this;
  }

  /**
   * @param location of the rows that the words stand for, or null
   */
  public PlainTable jump(String words, String location) {
    pen.jump(row, column++, words, location);
    return this;
  }

  /**
   * @param share from 0 to 1
   */
  public PlainTable share(double share) {
    pen.text(row, column, "", Styles.Look.SHARE).setCellValue(share);
    column++;
    return this;
  }

  /**
   * A word that leads to a file.
   *
   * @param path from the folder of the workbook, {@code /} as separator, or null for none
   * @param location in it, such as {@code 'Tile'!B7}, or null
   */
  public PlainTable file(String path, String location) {
    Datum.Link link =
        path == null
            ? new Datum.Link("", null, null)
            : new Datum.Link(DocumentLinks.OPEN, DocumentLinks.uri(path), location);
    pen.put(row, column++, link, Styles.Look.LINK);
    return this;
  }

  /** Ends the table. */
  @Override
  public void close() throws IOException {
    if (next > 1) Heights.fit(row, widths);
    SheetSetup.header(sheet, 1, next - 1, widths.length);
    sheet.setDimensionOverride(new CellRangeAddress(0, next - 1, 0, widths.length - 1));
    rows.flushRows();
  }
}
