package clearbed.report.survey;

import clearbed.base.io.FixedZip;
import clearbed.base.io.TemporaryFolder;
import clearbed.mark.OutputKind;
import clearbed.mark.PackageMark;
import clearbed.report.wording.SafeText;
import clearbed.report.workbook.cell.KnownTexts;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Date;
import java.util.List;
import java.util.Optional;
import org.apache.poi.ooxml.POIXMLProperties;
import org.apache.poi.ss.usermodel.PaperSize;
import org.apache.poi.util.DefaultTempFileCreationStrategy;
import org.apache.poi.util.TempFile;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** A workbook of ours that people read, filter and print, and that no later run reads again. */
public final class PlainBook {
  private static final int WINDOW = 100;

  private final XSSFWorkbook book;
  private final SXSSFWorkbook stream;
  private final Pen pen;
  private final BookTitle about;

  private PlainBook(XSSFWorkbook book, SXSSFWorkbook stream, Pen pen, BookTitle about) {
    this.book = book;
    this.stream = stream;
    this.pen = pen;
    this.about = about;
  }

  /**
   * @param title over every page in print
   * @param version of the program
   * @param metric true for paper of the A series
   */
  public record BookTitle(String title, String version, OutputKind kind, boolean metric) {}

  /** Fills the sheets. */
  public interface Pages {
    void fill(PlainBook book) throws IOException;
  }

  /**
   * Writes a workbook onto a stream.
   *
   * @param sheets names of all sheets, in order
   */
  public static void write(BookTitle about, List<String> sheets, Pages body, OutputStream out)
      throws IOException {
    try (TemporaryFolder folder = new TemporaryFolder();
        XSSFWorkbook book = new XSSFWorkbook(KnownTexts.factory())) {
      TempFile.setThreadLocalTempFileCreationStrategy(
          new DefaultTempFileCreationStrategy(folder.path().toFile()));
      Styles.plainFont(book);
      for (String sheet : sheets) book.createSheet(sheet);
      properties(book, about);
      Path raw = folder.newFile("xlsx");
      // Rows are compressed on their way to disk, and texts stand where they are: any number fits.
      try (SXSSFWorkbook stream = new SXSSFWorkbook(book, WINDOW, true, false)) {
        stream.setShouldCalculateSheetDimensions(false);
        body.fill(new PlainBook(book, stream, new Pen(book), about));
        try (OutputStream to = Files.newOutputStream(raw)) {
          stream.write(to);
        }
      }
      FixedZip.copy(raw, out, new PackageMark());
    } finally {
      TempFile.setThreadLocalTempFileCreationStrategy(null);
    }
  }

  /** A sheet that is one table. */
  public PlainTable table(String name, List<PlainTable.Head> columns) {
    XSSFSheet sheet = book.getSheet(name);
    SXSSFSheet rows = stream.getSheet(name);
    pen.turnTo(sheet);
    paper(sheet, true);
    return new PlainTable(sheet, rows, pen, columns);
  }

  /** A sheet of words and small tables, to be read from top to bottom. */
  public PlainPage page(String name) {
    XSSFSheet sheet = book.getSheet(name);
    pen.turnTo(sheet);
    paper(sheet, false);
    return new PlainPage(sheet, pen);
  }

  private void paper(XSSFSheet sheet, boolean landscape) {
    PaperSize size = about.metric() ? PaperSize.A4_PAPER : PaperSize.LETTER_PAPER;
    SheetSetup.paper(sheet, new SheetSetup.PaperSetup(landscape, size, 1), about.title());
  }

  /** Where rows of a sheet stand, for a link within the workbook; rows are counted from 1. */
  public static String rows(String sheet, int first, int last) {
    return "'" + sheet + "'!A" + first + (last > first ? ":C" + last : "");
  }

  private static void properties(XSSFWorkbook book, BookTitle about) {
    POIXMLProperties properties = book.getProperties();
    POIXMLProperties.CoreProperties core = properties.getCoreProperties();
    // No clock: the same projects give the same bytes.
    Optional<Date> never = Optional.of(new Date(0));
    core.setTitle(SafeText.xml(about.title()));
    core.setCreator("Clearbed " + about.version());
    core.setLastModifiedByUser("Clearbed " + about.version());
    core.setCreated(never);
    core.getUnderlyingProperties().setModifiedProperty(never);
    properties.getExtendedProperties().getUnderlyingProperties().setApplication("Clearbed");
    PackageMark.announce(properties.getCustomProperties(), about.kind());
  }
}
