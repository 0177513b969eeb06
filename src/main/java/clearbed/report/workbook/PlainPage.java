package clearbed.report.workbook;

import clearbed.report.wording.Words;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
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
  private int next;

  PlainPage(XSSFSheet sheet, Pen pen) {
    this.sheet = sheet;
    this.pen = pen;
    for (int column = 0; column < WIDTHS.length; column++)
      sheet.setColumnWidth(column, WIDTHS[column] * 256);
  }

  public void title(String words, String line) {
    Row title = row();
    Heights.points(title, 26);
    pen.text(title, 0, words, Styles.Look.TITLE);
    wide(row(), 0, line);
  }

  public void section(String words) {
    next++;
    Row row = row();
    Heights.points(row, 20);
    for (int column = 0; column < WIDTHS.length; column++)
      pen.text(row, column, column == 0 ? words : "", Styles.Look.SECTION);
  }

  /** A label, and words over the rest of the width. */
  public void pair(String label, String words) {
    Row row = row();
    pen.text(row, 0, label, Styles.Look.STRONG);
    wide(row, 1, words);
  }

  /** Headings of two columns of words and so many of numbers. */
  public void header(String first, String second, String... numbers) {
    Row row = row();
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
    Row row = row();
    pen.jump(row, 0, first, location);
    pen.text(row, 1, second, Styles.Look.TEXT);
    for (int i = 0; i < numbers.length; i++)
      pen.jump(row, 2 + i, numbers[i].number(), numbers[i].location());
    Heights.fit(row, WIDTHS);
    return row.getRowNum();
  }

  /** Puts a share, from 0 to 1, behind the numbers of the last line. */
  public void share(int column, double share) {
    Row row = sheet.getRow(next - 1);
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
        new Charts.Rows(first, last),
        next,
        next + height,
        new Charts.Bars(title, PARTS, alt));
    next += height + 1;
  }

  private void wide(Row row, int from, String words) {
    pen.text(row, from, words, from == 0 ? Styles.Look.SUBTITLE : Styles.Look.TEXT);
    int characters = 0;
    for (int column = from; column < WIDTHS.length; column++) {
      characters += WIDTHS[column];
      if (column > from && from > 0) pen.text(row, column, "", Styles.Look.TEXT);
    }
    int at = row.getRowNum();
    if (from > 0)
      sheet.addMergedRegionUnsafe(new CellRangeAddress(at, at, from, WIDTHS.length - 1));
    Heights.set(row, Words.lines(words, characters));
  }

  private Row row() {
    return sheet.createRow(next++);
  }
}
