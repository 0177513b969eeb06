package clearbed.report.workbook;

import clearbed.base.io.FixedZip;
import clearbed.mark.FindingsSheets;
import clearbed.mark.PackageMark;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.report.workbook.calculation.CalculationsSheet;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.cell.WordsToChoose;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.log.AskedTogether;
import clearbed.report.workbook.log.LogColumn;
import clearbed.report.workbook.log.LogColumns;
import clearbed.report.workbook.log.LogSheet;
import clearbed.report.workbook.typed.BookSheets;
import clearbed.report.workbook.typed.Earlier;
import clearbed.report.workbook.typed.Ledger;
import clearbed.report.workbook.typed.LinksOut;
import clearbed.report.workbook.typed.RenewedSheet;
import clearbed.report.workbook.typed.SetAsideSheet;
import clearbed.report.workbook.typed.Strangers;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
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
  private static final String TITLE = FindingsSheets.TITLE;

  private final XSSFWorkbook book;
  private final Report report;
  private final QuestionLog log;
  private final DocumentLinks links;
  private final Earlier earlier;
  private final BookSheets sheets;
  private final Pen pen;
  private final Map<String, RenewedSheet> renewed = new HashMap<>();

  WorkbookBody(
      XSSFWorkbook book, Report report, QuestionLog log, DocumentLinks links, Earlier earlier) {
    this.book = book;
    this.report = report;
    this.log = log;
    this.links = links;
    this.earlier = earlier;
    this.sheets = new BookSheets(book);
    this.pen = new Pen(book);
    if (!log.carries()) Styles.plainFont(book);
  }

  /**
   * @param raw a file for the time in between
   */
  void write(Path raw, OutputStream out) throws IOException {
    SetAsideSheet kept = new SetAsideSheet(book, pen, report.run().date());
    sheets.prepare(log, earlier.typed().unknown(), kept);
    new BookProperties(report.run()).write(book.getProperties());
    LogColumns columns = new LogColumns(links, report.run().date());
    if (log.carries()) {
      Strangers strangers = new Strangers(book, pen, kept);
      strangers.noteLinks(LinksOut.of(log.workbook()));
      update(Headers.FINDINGS, columns, kept);
      update(Headers.QUESTIONS, columns, kept);
      strangers.stillFormulas();
    }
    write(columns, kept, raw, out);
  }

  private void write(LogColumns columns, SetAsideSheet kept, Path raw, OutputStream out)
      throws IOException {
    boolean large = cells() > LARGE;
    try (SXSSFWorkbook stream = new SXSSFWorkbook(book, WINDOW, large, !large)) {
      stream.setShouldCalculateSheetDimensions(false);
      fill(stream, columns);
      for (Sheet sheet : stream) finish((SXSSFSheet) sheet);
      // It may make a sheet, which the streaming twin does not know.
      kept.take(earlier.typed().asides());
      try (OutputStream to = Files.newOutputStream(raw)) {
        stream.write(to);
      }
    }
    FixedZip.copy(raw, out, new PackageMark());
  }

  /**
   * Lets the last rows of a sheet go, and notes how far they reach. The library would do the first
   * in the order of hashes, and so number the texts, and the second by the last rows alone.
   */
  private void finish(SXSSFSheet rows) throws IOException {
    int width = 0;
    for (Row row : rows) width = Math.max(width, row.getLastCellNum());
    if (width == 0) return;
    RenewedSheet own = renewed.get(rows.getSheetName());
    if (own != null) width = Math.max(width, own.reach());
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
    RenewedSheet calculated = renewed(BookSheets.CALCULATIONS);
    CalculationsSheet calculations =
        new CalculationsSheet(
            book.getSheet(calculated.name()),
            stream.getSheet(calculated.name()),
            calculated,
            links);
    calculations.fill(report.calculations(), report.entries());
    paper(calculated, true, 0);
    RenewedSheet summed = renewed(BookSheets.SUMMARY);
    List<String> remarks = new ArrayList<>(earlier.typed().remarks(sheets.whole()));
    remarks.addAll(calculations.typedInputs());
    new SummarySheet(book.getSheet(summed.name()), summed).fill(report, log, remarks);
    paper(summed, false, 1);
    if (!log.carries()) {
      log(Headers.FINDINGS, columns, stream);
      log(Headers.QUESTIONS, columns, stream);
    }
    RenewedSheet covered = renewed(BookSheets.COVERAGE);
    new CoverageSheet(book.getSheet(covered.name()), covered, links)
        .fill(stream.getSheet(covered.name()), report);
    SheetSetup.PaperSetup across =
        new SheetSetup.PaperSetup(
            true, size(CoverageSheet.isWide(report)), CoverageSheet.pagesWide(report));
    SheetSetup.paper(book.getSheet(covered.name()), across, TITLE);
    RenewedSheet accounted = renewed(BookSheets.READING);
    new ReadingSheet(book.getSheet(accounted.name()), accounted, links)
        .fill(stream.getSheet(accounted.name()), report);
    paper(accounted, true, 1);
    RenewedSheet read = renewed(BookSheets.DOCUMENTS);
    new DocumentsSheet(book.getSheet(read.name()), read, links)
        .fill(stream.getSheet(read.name()), report.documents());
    paper(read, true, 1);
    Sheet ledger = stream.getSheet(Ledger.SHEET);
    Ledger.write(ledger, log, report.run().date());
    note(ledger, List.of(summed, covered, calculated, read, accounted));
    book.setSheetVisibility(book.getSheetIndex(Ledger.SHEET), SheetVisibility.HIDDEN);
  }

  private RenewedSheet renewed(String name) {
    RenewedSheet sheet = new RenewedSheet(name, pen, earlier.typed().of(name));
    renewed.put(name, sheet);
    return sheet;
  }

  private void paper(RenewedSheet sheet, boolean landscape, int pagesWide) {
    SheetSetup.PaperSetup paper = new SheetSetup.PaperSetup(landscape, size(false), pagesWide);
    SheetSetup.paper(book.getSheet(sheet.name()), paper, TITLE);
  }

  /** What the next issue has to know: which documents there were, and what was written. */
  private void note(Sheet ledger, List<RenewedSheet> written) {
    Set<String> documents = new TreeSet<>(log.documents());
    for (Report.DocumentSummary each : report.documents()) documents.add(each.path());
    Ledger.writeDocuments(ledger, documents);
    Ledger.writeNames(ledger, report.run().names(), log);
    for (RenewedSheet each : written) Ledger.writeSnapshot(ledger, each);
  }

  /** Writes a sheet that people work in, all new. */
  private void log(String name, LogColumns columns, Workbook stream) {
    List<QuestionLog.LogLine> lines = lines(name);
    Workbook rows = lines.size() > MOST_GROWING ? stream : book;
    LogSheet target = new LogSheet(book.getSheet(name), columns.of(name), pen);
    target.fill(rows.getSheet(name), lines);
    dress(target);
  }

  private void update(String name, LogColumns columns, SetAsideSheet kept) {
    XSSFSheet sheet = book.getSheet(name);
    if (sheet.getPhysicalNumberOfRows() > 0) {
      List<LogColumn> before = new LogColumns(links, log.since()).of(name);
      new LogSheet(sheet, columns.of(name), pen)
          .update(log, new LogSheet.Before(before, before(name)), kept, lines(name));
    } else {
      log(name, columns, book);
    }
  }

  private List<QuestionLog.LogLine> lines(String sheet) {
    return List.copyOf(rows(sheet, log.lines()).values());
  }

  private Map<String, QuestionLog.LogLine> before(String sheet) {
    return rows(sheet, earlier.lines());
  }

  /** A row for each finding, or for each question. */
  private static Map<String, QuestionLog.LogLine> rows(
      String sheet, Map<String, QuestionLog.LogLine> lines) {
    return sheet.equals(Headers.FINDINGS) ? lines : AskedTogether.of(lines.values());
  }

  private void dress(LogSheet log) {
    XSSFSheet sheet = book.getSheet(log.name());
    List<LogColumn> columns = log.columns();
    SheetSetup.paper(sheet, new SheetSetup.PaperSetup(true, wide(), 1), TITLE);
    for (int column = 0; column < columns.size(); column++) {
      switch (columns.get(column).header()) {
        case Headers.LEVEL -> SheetSetup.tint(sheet, 1, column, column, SheetSetup.LEVELS);
        case Headers.STATE -> {
          SheetSetup.tint(sheet, 1, column, column, SheetSetup.STATES);
          if (log.name().equals(Headers.QUESTIONS))
            SheetSetup.greySettled(sheet, column, columns.size() - 1);
        }
        case Headers.STATUS ->
            SheetSetup.offer(sheet, 1, column, WordsToChoose.STATUS, WordsToChoose.MEANING);
        case Headers.ASKED_OF ->
            SheetSetup.offer(sheet, 1, column, WordsToChoose.ASKED_OF, WordsToChoose.ANYBODY);
        case Headers.DATE_ASKED, Headers.DUE -> SheetSetup.datesOnly(sheet, 1, column);
        default -> {}
      }
    }
  }

  /** Paper of the country: ledger or A3 for the long rows, letter or A4 for the rest. */
  private PaperSize wide() {
    return metric() ? PaperSize.A3_PAPER : PaperSize.TABLOID_PAPER;
  }

  private PaperSize size(boolean wide) {
    if (wide) return wide();
    return metric() ? PaperSize.A4_PAPER : PaperSize.LETTER_PAPER;
  }

  private boolean metric() {
    return report.run().ruleSet().startsWith("iso");
  }
}
