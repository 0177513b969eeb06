package clearbed.report.workbook;

import clearbed.base.io.AtomicFile;
import clearbed.base.io.TemporaryFolder;
import clearbed.mark.FindingsSheets;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.KnownTexts;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.typed.Earlier;
import clearbed.report.workbook.typed.EarlierWorkbook;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.function.UnaryOperator;
import org.apache.poi.util.DefaultTempFileCreationStrategy;
import org.apache.poi.util.TempFile;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The findings workbook: what people read, filter, print, fill in and send. */
public final class FindingsWorkbook {
  /** Property by which our own output is known; its value is {@link SheetLayout#FORMAT}. */
  public static final String MARK = FindingsSheets.PROPERTY;

  private FindingsWorkbook() {}

  /** Writes the workbook of a first issue, with links to documents beside it. */
  public static void write(Report report, Path file) throws IOException {
    write(report, QuestionLog.first(report), UnaryOperator.identity(), file);
  }

  /**
   * Writes the workbook whole or not at all.
   *
   * @param log of the same report; when it carries an earlier workbook, what people wrote there is
   *     kept
   * @param pathFromWorkbook from a document's path (an archive's, for what lies in one) to its path
   *     relative to the workbook's folder, or null where no link can be made
   * @throws IOException with one line that names the file and the reason; the old file is then as
   *     it was
   */
  public static void write(
      Report report, QuestionLog log, UnaryOperator<String> pathFromWorkbook, Path file)
      throws IOException {
    AtomicFile.write(file, out -> write(report, log, pathFromWorkbook, out));
  }

  /** Writes the same onto a stream. */
  public static void write(
      Report report, QuestionLog log, UnaryOperator<String> pathFromWorkbook, OutputStream out)
      throws IOException {
    // Before the workbook itself is open: the memory need not hold both at a time.
    Earlier earlier = Earlier.of(log);
    try (TemporaryFolder folder = new TemporaryFolder();
        XSSFWorkbook book = open(log, earlier)) {
      TempFile.setThreadLocalTempFileCreationStrategy(
          new DefaultTempFileCreationStrategy(folder.path().toFile()));
      new WorkbookBody(book, report, log, new DocumentLinks(pathFromWorkbook), earlier)
          .write(folder.newFile("xlsx"), out);
    } finally {
      TempFile.setThreadLocalTempFileCreationStrategy(null);
    }
  }

  private static XSSFWorkbook open(QuestionLog log, Earlier earlier) throws IOException {
    if (!log.carries()) return new XSSFWorkbook(KnownTexts.factory());
    return EarlierWorkbook.open(log.workbook(), earlier.typed().unknown());
  }
}
