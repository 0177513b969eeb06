package clearbed.report;

import clearbed.mark.FindingsSheets;
import clearbed.mark.OutputKind;
import clearbed.mark.PackageMark;
import clearbed.model.AtOnce;
import clearbed.model.QuestionLog;
import clearbed.model.Report;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.ss.usermodel.PaperSize;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Puts the sheets of a findings workbook together. */
final class WorkbookBody {
  /**
   * From so many cells on, rows go to disk as they are written: that is several times quicker and
   * needs little memory, but fixes the heights of rows.
   */
  private static final long MANY_CELLS = 12_000;

  /** From so many cells on, what goes to disk is compressed, which takes longer. */
  private static final long LARGE = 1_000_000;

  private static final int WINDOW = 100;
  private static final String TITLE = FindingsSheets.TITLE;

  private final XSSFWorkbook book;
  private final Report report;
  private final QuestionLog log;
  private final Places places;
  private final Earlier earlier;
  private final BookSheets sheets;
  private final Pen pen;

  WorkbookBody(XSSFWorkbook book, Report report, QuestionLog log, Places places, Earlier earlier) {
    this.book = book;
    this.report = report;
    this.log = log;
    this.places = places;
    this.earlier = earlier;
    this.sheets = new BookSheets(book);
    this.pen = new Pen(book);
    if (!log.carries()) Styles.plainFont(book);
  }

  /**
   * @param raw a file for the time in between
   */
  void write(Path raw, OutputStream out) throws IOException {
    Kept kept = new Kept(book, pen, report.run().date());
    sheets.prepare(log, earlier.typed().unknown(), kept);
    properties();
    LogColumns columns = new LogColumns(places, report.run().date());
    if (log.carries()) {
      update(Headers.FINDINGS, columns, kept);
      update(Headers.QUESTIONS, columns, kept);
    }
    write(columns, kept, raw, out);
  }

  private void write(LogColumns columns, Kept kept, Path raw, OutputStream out) throws IOException {
    if (cells() < MANY_CELLS) {
      fill(book, columns);
      kept.take(earlier.typed().asides());
      store(raw);
      FixedZip.copy(raw, out);
      return;
    }
    pen.styles().makeAll();
    try (SXSSFWorkbook stream = streamed()) {
      fill(stream, columns);
      Map<String, FixedZip.Filling> streamed = SheetRows.of(stream);
      // It may make a sheet, which the streaming twin does not know.
      kept.take(earlier.typed().asides());
      store(raw);
      FixedZip.copy(raw, out, streamed);
    }
  }

  private SXSSFWorkbook streamed() {
    return new StreamedBook(book, WINDOW, cells() > LARGE);
  }

  private long cells() {
    long coverage = (long) report.entries().size() * report.checks().size();
    return report.findings().size() * 34L + coverage;
  }

  private void store(Path raw) throws IOException {
    try (OutputStream out = Files.newOutputStream(raw)) {
      book.write(out);
    }
  }

  /**
   * Writes the rows of all sheets, then what the workbook holds for them in common: names, colours
   * of words. The sheets with charts are for one thread, the others each for its own.
   *
   * @param rows where rows are made: the book itself, or its streaming twin
   */
  private void fill(Workbook rows, LogColumns columns) {
    RenewedSheet covered = renewed(BookSheets.COVERAGE, pen.another());
    RenewedSheet read = renewed(BookSheets.DOCUMENTS, pen.another());
    CoverageSheet coverage = new CoverageSheet(book.getSheet(covered.name()), covered, places);
    DocumentsSheet documents = new DocumentsSheet(book.getSheet(read.name()), read, places);
    RenewedSheet accounted = renewed(BookSheets.READING, pen.another());
    ReadingSheet reading = new ReadingSheet(book.getSheet(accounted.name()), accounted, places);
    RenewedSheet calculated = renewed(BookSheets.CALCULATIONS, pen);
    RenewedSheet summed = renewed(BookSheets.SUMMARY, pen);
    List<LogSheet> logs = log.carries() ? List.of() : logs(columns);
    List<Runnable> all = new ArrayList<>();
    Sheet calculatedRows = rows.getSheet(calculated.name());
    all.add(() -> withCharts(calculated, calculatedRows, summed));
    for (LogSheet each : logs) {
      Sheet own = rows.getSheet(each.name());
      all.add(() -> each.fill(own, lines(each.name())));
    }
    Sheet coveredRows = rows.getSheet(covered.name());
    all.add(() -> coverage.fill(coveredRows, report));
    Sheet readRows = rows.getSheet(read.name());
    all.add(() -> documents.fill(readRows, report.documents()));
    Sheet accountedRows = rows.getSheet(accounted.name());
    all.add(() -> reading.fill(accountedRows, report.reading()));
    Sheet ledger = rows.getSheet(Ledger.SHEET);
    all.add(() -> Ledger.write(ledger, log, report.run().date()));
    if (rows == book) all.forEach(Runnable::run);
    else AtOnce.run(all);
    note(ledger, List.of(summed, covered, calculated, read, accounted));
    logs.forEach(LogSheet::finish);
    logs.forEach(this::dress);
    coverage.finish();
    int wide = CoverageSheet.pagesWide(report);
    SheetSetup.paper(book.getSheet(covered.name()), paper(true, wide), TITLE);
    reading.finish();
    SheetSetup.paper(book.getSheet(accounted.name()), paper(true, 1), TITLE);
    documents.finish();
    SheetSetup.paper(book.getSheet(read.name()), paper(true, 1), TITLE);
    book.setSheetVisibility(book.getSheetIndex(Ledger.SHEET), SheetVisibility.HIDDEN);
  }

  private RenewedSheet renewed(String name, Pen own) {
    return new RenewedSheet(name, own, earlier.typed().of(name));
  }

  /** What the next issue has to know: which documents there were, and what was written. */
  private void note(Sheet ledger, List<RenewedSheet> renewed) {
    Set<String> documents = new TreeSet<>(log.documents());
    for (Report.DocumentSummary each : report.documents()) documents.add(each.path());
    Ledger.writeDocuments(ledger, documents);
    for (RenewedSheet each : renewed) Ledger.writeSnapshot(ledger, each);
  }

  /** The library makes the charts of all sheets in one place: they are for one thread. */
  private void withCharts(RenewedSheet calculated, Sheet rows, RenewedSheet summed) {
    CalculationsSheet calculations =
        new CalculationsSheet(book.getSheet(calculated.name()), rows, calculated, places);
    calculations.fill(report.calculations());
    SheetSetup.paper(book.getSheet(calculated.name()), paper(true, 0), TITLE);
    List<String> remarks = new ArrayList<>(earlier.typed().remarks(sheets.whole()));
    remarks.addAll(calculations.typedInputs());
    new SummarySheet(book.getSheet(summed.name()), summed).fill(report, log, remarks);
    SheetSetup.paper(book.getSheet(summed.name()), paper(false, 1), TITLE);
  }

  private List<LogSheet> logs(LogColumns columns) {
    return List.of(
        new LogSheet(book.getSheet(Headers.FINDINGS), columns.of(Headers.FINDINGS), pen.another()),
        new LogSheet(
            book.getSheet(Headers.QUESTIONS), columns.of(Headers.QUESTIONS), pen.another()));
  }

  private void update(String name, LogColumns columns, Kept kept) {
    XSSFSheet sheet = book.getSheet(name);
    LogSheet target = new LogSheet(sheet, columns.of(name), pen);
    if (sheet.getPhysicalNumberOfRows() > 0) {
      List<Column> before = new LogColumns(places, log.since()).of(name);
      target.update(log, new LogSheet.Before(before, earlier.lines()), kept, lines(name));
      return;
    }
    target.fill(sheet, lines(name));
    target.finish();
    dress(target);
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
    PackageMark.announce(custom, OutputKind.FINDINGS);
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
