package clearbed.samples;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A schedule as an Excel workbook, new or old format, laid out as offices print them. */
public final class SpreadsheetFile {
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,9}(\\.\\d{1,6})?");
  private static final Date WRITTEN = Date.from(Instant.parse("2026-01-15T09:00:00Z"));

  private final Workbook book;
  private final Sheet sheet;
  private final Schedule schedule;
  private final CellStyle title;
  private final CellStyle head;
  private final CellStyle body;
  private final CellStyle tag;
  private final CellStyle band;
  private final CellStyle note;
  private int next;

  private SpreadsheetFile(Workbook book, String sheetName, Schedule schedule) {
    this.book = book;
    this.sheet = book.createSheet(sheetName);
    this.schedule = schedule;
    title = style(true, 13, false, false);
    head = style(true, 9, true, true);
    body = style(false, 9, true, false);
    tag = style(true, 9, true, false);
    band = style(true, 9, true, true);
    note = style(false, 9, false, false);
    head.setAlignment(HorizontalAlignment.CENTER);
    note.setWrapText(false);
    title.setWrapText(false);
  }

  /** The workbook in the format of Excel 2007 and later. */
  public static byte[] xlsx(Schedule schedule, String sheetName) {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      book.getProperties().getCoreProperties().setCreated(Optional.of(WRITTEN));
      book.getProperties().getCoreProperties().setModified(Optional.of(WRITTEN));
      book.getProperties().getCoreProperties().setCreator("");
      return FixedZip.normalise(new SpreadsheetFile(book, sheetName, schedule).write());
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** The workbook in the format of Excel 97 to 2003. */
  public static byte[] xls(Schedule schedule, String sheetName) {
    try (HSSFWorkbook book = new HSSFWorkbook()) {
      return new SpreadsheetFile(book, sheetName, schedule).write();
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  private byte[] write() throws IOException {
    for (int i = 0; i < schedule.columns().size(); i++) {
      sheet.setColumnWidth(i, schedule.columns().get(i).width() * 256);
    }
    titles();
    int first = next;
    header();
    for (List<String> cells : schedule.rows()) row(cells);
    notes();
    print(first);
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    book.write(bytes);
    return bytes.toByteArray();
  }

  private void titles() {
    for (String line : schedule.titles()) {
      Row row = sheet.createRow(next);
      cell(row, 0, line, next == 0 ? title : note);
      if (schedule.columns().size() > 1) {
        sheet.addMergedRegion(new CellRangeAddress(next, next, 0, schedule.columns().size() - 1));
      }
      next++;
    }
    if (next > 0) next++;
  }

  private void header() {
    Row upper = schedule.hasGroups() ? sheet.createRow(next++) : null;
    Row lower = sheet.createRow(next++);
    lower.setHeightInPoints(38);
    List<Schedule.Column> columns = schedule.columns();
    for (int i = 0; i < columns.size(); i++) {
      cell(lower, i, columns.get(i).heading(), head);
      if (upper != null) cell(upper, i, columns.get(i).group(), head);
    }
    if (upper != null) mergeHeader(upper.getRowNum());
  }

  /** A group spans its columns; a column without a group spans both lines of the header. */
  private void mergeHeader(int upper) {
    List<Schedule.Column> columns = schedule.columns();
    for (int i = 0; i < columns.size(); ) {
      String group = columns.get(i).group();
      int end = i;
      while (end + 1 < columns.size() && columns.get(end + 1).group().equals(group)) end++;
      if (group.isEmpty()) {
        for (int column = i; column <= end; column++) {
          sheet.getRow(upper).getCell(column).setCellValue(columns.get(column).heading());
          sheet.getRow(upper + 1).getCell(column).setBlank();
          sheet.addMergedRegion(new CellRangeAddress(upper, upper + 1, column, column));
        }
      } else if (end > i) {
        for (int column = i + 1; column <= end; column++) {
          sheet.getRow(upper).getCell(column).setBlank();
        }
        sheet.addMergedRegion(new CellRangeAddress(upper, upper, i, end));
      }
      i = end + 1;
    }
  }

  private void row(List<String> cells) {
    Row row = sheet.createRow(next);
    int count = schedule.columns().size();
    if (cells.size() == 1 && count > 1) {
      for (int i = 0; i < count; i++) cell(row, i, i == 0 ? cells.get(0) : "", band);
      sheet.addMergedRegion(new CellRangeAddress(next, next, 0, count - 1));
    } else {
      for (int i = 0; i < count; i++) cell(row, i, cells.get(i), i == 0 ? tag : body);
      row.setHeightInPoints(4 + 12f * lines(cells));
    }
    next++;
  }

  /** Excel does not grow the rows of a file it has not opened, so the height is estimated. */
  private int lines(List<String> cells) {
    int most = 1;
    for (int i = 0; i < cells.size(); i++) {
      int width = schedule.columns().get(i).width();
      most = Math.max(most, (cells.get(i).length() + width - 1) / width);
    }
    return Math.min(most, 8);
  }

  private void notes() {
    if (schedule.notes().isEmpty()) return;
    next++;
    for (String line : schedule.notes()) cell(sheet.createRow(next++), 0, line, note);
  }

  private static void cell(Row row, int column, String text, CellStyle style) {
    Cell cell = row.createCell(column);
    cell.setCellStyle(style);
    if (text.isEmpty()) return;
    if (NUMBER.matcher(text).matches()) cell.setCellValue(Double.parseDouble(text));
    else cell.setCellValue(text);
  }

  private CellStyle style(boolean bold, int points, boolean boxed, boolean filled) {
    CellStyle style = book.createCellStyle();
    Font font = book.createFont();
    font.setFontName("Arial");
    font.setBold(bold);
    font.setFontHeightInPoints((short) points);
    style.setFont(font);
    style.setWrapText(true);
    style.setVerticalAlignment(VerticalAlignment.CENTER);
    style.setAlignment(HorizontalAlignment.LEFT);
    if (boxed) {
      style.setBorderTop(BorderStyle.THIN);
      style.setBorderBottom(BorderStyle.THIN);
      style.setBorderLeft(BorderStyle.THIN);
      style.setBorderRight(BorderStyle.THIN);
    }
    if (filled) {
      style.setFillForegroundColor(IndexedColors.GREY_25_PERCENT.getIndex());
      style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    }
    return style;
  }

  private void print(int headerRow) {
    int header = headerRow + (schedule.hasGroups() ? 2 : 1);
    sheet.createFreezePane(1, header);
    sheet.setRepeatingRows(new CellRangeAddress(headerRow, header - 1, -1, -1));
    PrintSetup setup = sheet.getPrintSetup();
    setup.setLandscape(true);
    setup.setPaperSize(PrintSetup.TABLOID_PAPERSIZE);
    setup.setFitWidth((short) 1);
    setup.setFitHeight((short) 0);
    sheet.setFitToPage(true);
    sheet.getFooter().setRight("Page &P of &N");
  }
}
