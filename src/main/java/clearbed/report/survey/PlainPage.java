package clearbed.report.survey;

import clearbed.report.workbook.cell.Charts;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.PageRows;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** The sheet that is read first: words over the whole width, small tables, a chart. */
public final class PlainPage {
  private static final int[] WIDTHS = {34, 50, 12, 14, 12, 14, 12, 14};

  /** Of the parts of a bar: what is wrong, what is not known, what is right. */
  private static final List<SheetSetup.Tint> PARTS =
      List.of(
          new SheetSetup.Tint("fail it", "6E1A3B", "FFFFFF"),
          new SheetSetup.Tint("not understood", "D9C8E3", "1F2933"),
          new SheetSetup.Tint("satisfy it", "DCE9F2", "1F2933"));

  private final XSSFSheet sheet;
  private final Pen pen;
  private final PageRows rows;

  PlainPage(XSSFSheet sheet, Pen pen) {
    this.sheet = sheet;
    this.pen = pen;
    this.rows = new PageRows(sheet, pen, WIDTHS);
  }

  public void title(String words, String line) {
    Row title = rows.add();
    Heights.points(title, 26);
    pen.text(title, 0, words, Styles.Look.TITLE);
    Row subtitle = rows.add();
    pen.text(subtitle, 0, line, Styles.Look.SUBTITLE);
    rows.fit(subtitle, 0, line);
  }

  public void section(String words) {
    rows.section(words);
  }

  /** A label, and words over the rest of the width. */
  public void pair(String label, String words) {
    rows.pair(label, words);
  }

  /** Headings of two columns of words and so many of numbers. */
  public void header(String first, String second, String... numbers) {
    Row row = rows.add();
    pen.text(row, 0, first, Styles.Look.HEADER);
    pen.text(row, 1, second, Styles.Look.HEADER);
    for (int i = 0; i < numbers.length; i++)
      pen.text(row, 2 + i, numbers[i], Styles.Look.HEADER_COUNT);
    Heights.fit(row, WIDTHS);
  }

  /** A number, and where its rows are; null for nowhere. */
  public record LinkedCount(int number, String location) {}

  /**
   * @param location that the first words lead to, or null
   * @return the number of the row, from 0
   */
  public int line(String first, String location, String second, LinkedCount... numbers) {
    Row row = rows.add();
    pen.jump(row, 0, first, location);
    pen.text(row, 1, second, Styles.Look.TEXT);
    for (int i = 0; i < numbers.length; i++)
      pen.jump(row, 2 + i, numbers[i].number(), numbers[i].location());
    Heights.fit(row, WIDTHS);
    return row.getRowNum();
  }

  /** Puts a share, from 0 to 1, behind the numbers of the last line. */
  public void share(int column, double share) {
    Row row = sheet.getRow(rows.next() - 1);
    pen.text(row, column, "", Styles.Look.SHARE).setCellValue(share);
  }

  /**
   * Draws lines that were written, whose numbers are what fails, what was not understood, what is
   * satisfied, and all.
   */
  public void draw(int first, int last, String title, String alt) {
    int height = last - first + 8;
    Charts.bars(
        sheet,
        new Charts.ChartRows(first, last),
        rows.next(),
        rows.next() + height,
        new Charts.Bars(title, PARTS, alt));
    rows.skip(height + 1);
  }
}
