package clearbed.report.workbook.log;

import clearbed.base.io.AtomicFile;
import clearbed.base.io.FixedZip;
import clearbed.base.io.TemporaryFolder;
import clearbed.mark.PackageMark;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.typed.EarlierWorkbook;
import clearbed.report.workbook.typed.LinksOut;
import clearbed.report.workbook.typed.SetAsideSheet;
import clearbed.report.workbook.typed.Strangers;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A findings workbook with replies put into its sheet Questions; all else stays as it was. */
public final class RepliedWorkbook {
  private final XSSFWorkbook book;
  private final Pen pen;
  private final SetAsideSheet kept;

  /**
   * A text for one cell.
   *
   * @param header of the column
   * @param row of the sheet Questions, from 0
   */
  public record CellText(int row, String header, String text) {}

  /** Words of the file that came back, for the sheet of what has no place of its own. */
  public record Loose(String place, String text, String why) {}

  private RepliedWorkbook(XSSFWorkbook book, String today) {
    this.book = book;
    this.pen = new Pen(book);
    this.kept = new SetAsideSheet(book, pen, today);
  }

  /**
   * Writes the new workbook whole or not at all.
   *
   * @param workbook bytes of the workbook as it is
   * @param from name of the file that came back
   * @param today ISO 8601
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(
      byte[] workbook,
      List<CellText> texts,
      List<Loose> loose,
      String from,
      String today,
      Path file)
      throws IOException {
    AtomicFile.write(file, out -> write(workbook, texts, loose, from, today, out));
  }

  private static void write(
      byte[] workbook,
      List<CellText> texts,
      List<Loose> loose,
      String from,
      String today,
      OutputStream out)
      throws IOException {
    try (TemporaryFolder folder = new TemporaryFolder();
        XSSFWorkbook book = EarlierWorkbook.openWhole(workbook)) {
      RepliedWorkbook replied = new RepliedWorkbook(book, today);
      XSSFSheet sheet = (XSSFSheet) SheetLayout.find(book, Headers.QUESTIONS);
      if (sheet != null) replied.fill(sheet, texts);
      for (Loose words : loose)
        replied.kept.takeReply(from, words.place(), words.text(), words.why());
      Strangers strangers = new Strangers(book, replied.pen, replied.kept);
      strangers.noteLinks(LinksOut.of(workbook));
      strangers.stillFormulas();
      Path raw = folder.newFile("xlsx");
      try (OutputStream to = Files.newOutputStream(raw)) {
        book.write(to);
      }
      // The mark of the old workbook no longer fits: nobody takes this one for untouched.
      FixedZip.copy(raw, out, new PackageMark());
    }
  }

  private void fill(XSSFSheet sheet, List<CellText> texts) {
    pen.turnTo(sheet);
    SheetLayout layout = SheetLayout.of(sheet, Headers.of(Headers.QUESTIONS), java.util.Set.of());
    for (CellText text : texts) {
      int column = layout.column(text.header());
      if (column < 0) {
        column = layout.append(text.header());
        pen.text(layout.header(), column, text.header(), Styles.Look.HEADER_TO_FILL);
      }
      Row row = sheet.getRow(text.row());
      Cell cell = pen.put(row, column, datum(text), look(text.header()));
      if (cell.getCellType() == org.apache.poi.ss.usermodel.CellType.STRING)
        Heights.fit(row, sheet);
    }
  }

  private static Styles.Look look(String header) {
    return isDate(header) ? Styles.Look.TO_FILL_DATE : Styles.Look.TO_FILL;
  }

  private static Datum datum(CellText text) {
    if (!isDate(text.header())) return new Datum.Text(text.text());
    try {
      return new Datum.Day(LocalDate.parse(text.text().strip()).toString());
    } catch (DateTimeParseException typed) {
      return new Datum.Text(text.text());
    }
  }

  private static boolean isDate(String header) {
    return header.equals(Headers.DATE_ASKED) || header.equals(Headers.DUE);
  }
}
