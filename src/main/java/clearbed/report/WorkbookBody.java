package clearbed.report;

import clearbed.base.io.FixedZip;
import clearbed.model.QuestionLog;
import clearbed.model.Report;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.ss.usermodel.PaperSize;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Puts the sheets of a findings workbook together. */
final class WorkbookBody {
  static final String SUMMARY = "Summary";
  static final String COVERAGE = "Coverage";
  static final String CALCULATIONS = "Calculations";
  static final String DOCUMENTS = "Documents";

  /**
   * From so many cells on, rows are compressed on their way to disk, which takes longer, and texts
   * are written where they stand: a table of all of them would have to be held.
   */
  private static final long LARGE = 50_000;

  /**
   * So many lines at most are written into a sheet of the book itself, where their rows may grow
   * with what people type; the height of streamed rows is fixed.
   */
  private static final int MOST_GROWING = 1_000;

  private static final int WINDOW = 100;
  private static final String TITLE = "Findings on the glass tile documents";

  private final XSSFWorkbook book;
  private final Report report;
  private final QuestionLog log;
  private final Places places;
  private final Pen pen;

  WorkbookBody(XSSFWorkbook book, Report report, QuestionLog log, Places places) {
    this.book = book;
    this.report = report;
    this.log = log;
    this.places = places;
    this.pen = new Pen(book);
    if (!log.carries()) Styles.plainFont(book);
  }

  /**
   * @param earlier lines of the workbook that is carried on, as it was written
   * @param raw a file for the time in between
   */
  void write(Map<String, QuestionLog.Line> earlier, Path raw, OutputStream out) throws IOException {
    Kept kept = new Kept(book, pen, report.run().date());
    for (String name : List.of(SUMMARY, COVERAGE, CALCULATIONS, DOCUMENTS)) renew(name, kept);
    renew(Ledger.SHEET, null);
    for (String name : List.of(Headers.FINDINGS, Headers.QUESTIONS)) prepare(name);
    order();
    properties();
    LogColumns columns = new LogColumns(places, report.run().date());
    if (log.carries()) {
      update(Headers.FINDINGS, columns.ofFindings(), earlier, kept);
      update(Headers.QUESTIONS, columns.ofQuestions(), earlier, kept);
    }
    write(columns, raw, out);
  }

  private void write(LogColumns columns, Path raw, OutputStream out) throws IOException {
    boolean large = cells() > LARGE;
    try (SXSSFWorkbook stream = new SXSSFWorkbook(book, WINDOW, large, !large)) {
      stream.setShouldCalculateSheetDimensions(false);
      fill(stream, columns);
      for (Sheet sheet : stream) finish((SXSSFSheet) sheet);
      try (OutputStream to = Files.newOutputStream(raw)) {
        stream.write(to);
      }
    }
    FixedZip.copy(raw, out);
  }

  /**
   * Lets the last rows of a sheet go, and notes how far they reach. The library would do the first
   * in the order of hashes, and so number the texts, and the second by the last rows alone.
   */
  private void finish(SXSSFSheet rows) throws IOException {
    int width = 0;
    for (Row row : rows) width = Math.max(width, row.getLastCellNum());
    if (width == 0) return;
    CellRangeAddress area = new CellRangeAddress(0, rows.getLastRowNum(), 0, width - 1);
    book.getSheet(rows.getSheetName()).setDimensionOverride(area);
    rows.flushRows();
  }

  private long cells() {
    long coverage = (long) report.entries().size() * report.checks().size();
    return report.findings().size() * 34L + coverage;
  }

  /**
   * Writes the rows of all sheets that are all new.
   *
   * @param stream the book's streaming twin, which makes rows
   */
  private void fill(SXSSFWorkbook stream, LogColumns columns) {
    new SummarySheet(book.getSheet(SUMMARY), pen).fill(report, log);
    SheetSetup.paper(book.getSheet(SUMMARY), paper(false, 1), TITLE);
    new CalculationsSheet(book.getSheet(CALCULATIONS), stream.getSheet(CALCULATIONS), pen, places)
        .fill(report.calculations());
    SheetSetup.paper(book.getSheet(CALCULATIONS), paper(true, 0), TITLE);
    if (!log.carries()) {
      log(Headers.FINDINGS, columns.ofFindings(), stream);
      log(Headers.QUESTIONS, columns.ofQuestions(), stream);
    }
    new CoverageSheet(book.getSheet(COVERAGE), pen, places).fill(stream.getSheet(COVERAGE), report);
    SheetSetup.paper(book.getSheet(COVERAGE), paper(true, CoverageSheet.pagesWide(report)), TITLE);
    new DocumentsSheet(book.getSheet(DOCUMENTS), pen, places)
        .fill(stream.getSheet(DOCUMENTS), report.documents());
    SheetSetup.paper(book.getSheet(DOCUMENTS), paper(true, 1), TITLE);
    Ledger.write(stream.getSheet(Ledger.SHEET), log, report.run().date());
    book.setSheetVisibility(book.getSheetIndex(Ledger.SHEET), SheetVisibility.HIDDEN);
  }

  /** Writes a sheet that people work in, all new. */
  private void log(String name, List<Column> columns, Workbook stream) {
    List<QuestionLog.Line> lines = lines(name);
    Workbook rows = lines.size() > MOST_GROWING ? stream : book;
    LogSheet target = new LogSheet(book.getSheet(name), columns, pen);
    target.fill(rows.getSheet(name), lines);
    dress(target);
  }

  private void update(
      String name, List<Column> columns, Map<String, QuestionLog.Line> earlier, Kept kept) {
    XSSFSheet sheet = book.getSheet(name);
    if (sheet.getPhysicalNumberOfRows() > 0) {
      new LogSheet(sheet, columns, pen).update(log, earlier, kept, lines(name));
    } else {
      log(name, columns, book);
    }
  }

  private List<QuestionLog.Line> lines(String sheet) {
    return log.lines().values().stream()
        .filter(line -> sheet.equals(Headers.FINDINGS) || line.number() > 0)
        .toList();
  }

  private void dress(LogSheet log) {
    XSSFSheet sheet = book.getSheet(log.name());
    List<Column> columns = log.columns();
    SheetSetup.paper(sheet, new SheetSetup.Paper(true, wide(), 1), TITLE);
    for (int column = 0; column < columns.size(); column++) {
      switch (columns.get(column).header()) {
        case Headers.LEVEL -> SheetSetup.tint(sheet, 1, column, column, SheetSetup.LEVELS);
        case Headers.STATE -> SheetSetup.tint(sheet, 1, column, column, SheetSetup.STATES);
        case Headers.STATUS -> SheetSetup.offer(sheet, 1, column, Replies.STATUS, true);
        case Headers.ASKED_OF -> SheetSetup.offer(sheet, 1, column, Replies.ASKED_OF, false);
        case Headers.DATE_ASKED, Headers.DUE -> SheetSetup.datesOnly(sheet, 1, column);
        default -> {}
      }
    }
  }

  /** Paper of the country: ledger or A3 for the long rows, letter or A4 for the rest. */
  private PaperSize wide() {
    return metric() ? PaperSize.A3_PAPER : PaperSize.TABLOID_PAPER;
  }

  private SheetSetup.Paper paper(boolean landscape, int pagesWide) {
    PaperSize size = metric() ? PaperSize.A4_PAPER : PaperSize.LETTER_PAPER;
    return new SheetSetup.Paper(landscape, pagesWide > 1 ? wide() : size, pagesWide);
  }

  private boolean metric() {
    return report.run().ruleSet().startsWith("iso");
  }

  /** An empty sheet of this name, whatever stood there. */
  private void renew(String name, Kept kept) {
    int index = book.getSheetIndex(name);
    if (index >= 0) {
      if (kept != null) kept.takeComments(book.getSheetAt(index));
      book.removeSheetAt(index);
    }
    book.createSheet(name);
  }

  /** The sheet that people work in; one whose header is lost is set aside under another name. */
  private void prepare(String name) {
    XSSFSheet sheet = (XSSFSheet) SheetLayout.find(book, name);
    if (sheet != null && !sheet.getSheetName().equals(name)) {
      book.setSheetName(book.getSheetIndex(sheet), name);
    }
    if (sheet != null && SheetLayout.of(sheet, Headers.of(name), log.lines().keySet()) == null) {
      book.setSheetName(book.getSheetIndex(sheet), freeName(name + " (set aside)"));
      sheet = null;
    }
    if (sheet == null) book.createSheet(name);
  }

  private String freeName(String wish) {
    String name = wish;
    for (int i = 2; book.getSheet(name) != null; i++) name = wish + " " + i;
    return name;
  }

  /** Ours first, then what people added, in their order. */
  private void order() {
    List<String> ours =
        List.of(SUMMARY, Headers.FINDINGS, COVERAGE, Headers.QUESTIONS, CALCULATIONS, DOCUMENTS);
    for (int i = 0; i < ours.size(); i++) book.setSheetOrder(ours.get(i), i);
    for (Sheet sheet : book) sheet.setSelected(false);
    book.setActiveSheet(0);
    book.setFirstVisibleTab(0);
    book.getSheetAt(0).setSelected(true);
  }

  private void properties() {
    POIXMLProperties properties = book.getProperties();
    POIXMLProperties.CoreProperties core = properties.getCoreProperties();
    Optional<Date> issued = issued();
    core.setTitle(TITLE);
    core.setSubjectProperty("Issue of " + report.run().date());
    core.setCreator("Clearbed " + report.run().version());
    core.setLastModifiedByUser("Clearbed " + report.run().version());
    core.setCreated(issued);
    core.getUnderlyingProperties().setModifiedProperty(issued);
    properties.getExtendedProperties().getUnderlyingProperties().setApplication("Clearbed");
    POIXMLProperties.CustomProperties custom = properties.getCustomProperties();
    if (!custom.contains(FindingsWorkbook.MARK)) {
      custom.addProperty(FindingsWorkbook.MARK, FindingsWorkbook.FORMAT);
    }
  }

  private Optional<Date> issued() {
    try {
      LocalDate date = LocalDate.parse(report.run().date());
      return Optional.of(Date.from(date.atStartOfDay(ZoneOffset.UTC).toInstant()));
    } catch (DateTimeParseException undated) {
      return Optional.of(new Date(0));
    }
  }
}
