package clearbed.report.workbook.typed;

import clearbed.model.report.QuestionLog;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The sheets of a findings workbook, made ready to be written: which stay, which are new. */
public final class BookSheets {
  public static final String SUMMARY = "Summary";
  public static final String COVERAGE = "Tile by check";

  /** What earlier programs called it; it was taken for the coverage of mortar. */
  private static final String FORMER = "Coverage";

  public static final String CALCULATIONS = "Calculations";
  public static final String DOCUMENTS = "Documents";
  public static final String READING = "Reading";

  /** Each issue writes them anew. */
  static final List<String> RENEWED = List.of(SUMMARY, COVERAGE, CALCULATIONS, DOCUMENTS, READING);

  private final XSSFWorkbook book;
  private final Map<String, String> whole = new LinkedHashMap<>();

  public BookSheets(XSSFWorkbook book) {
    this.book = book;
  }

  /** The name that we give a sheet that is written anew, or null for another sheet. */
  static String renewed(String name) {
    return RENEWED.stream()
        .filter(each -> each.toLowerCase(Locale.ROOT).equals(name.toLowerCase(Locale.ROOT)))
        .findFirst()
        .orElse(null);
  }

  /**
   * Empties the sheets that are written anew and finds those that people work in.
   *
   * @param unknown sheets of which nobody knows what was typed; they are kept under another name
   */
  public void prepare(QuestionLog log, Set<String> unknown, SetAsideSheet kept) {
    for (String name : RENEWED) {
      if (unknown.contains(name)) whole.put(name, setAside(book.getSheetIndex(name)));
      renew(name, kept);
    }
    renew(Ledger.SHEET, kept);
    if (book.getSheetIndex(FORMER) >= 0) setAside(book.getSheetIndex(FORMER));
    for (String name : List.of(Headers.FINDINGS, Headers.QUESTIONS)) prepare(name, log);
    order();
  }

  /** Names that sheets were kept whole under. */
  public Map<String, String> whole() {
    return whole;
  }

  /** An empty sheet of this name, whatever stood there. */
  private void renew(String name, SetAsideSheet kept) {
    int index = book.getSheetIndex(name);
    if (index >= 0) {
      kept.takeComments(book.getSheetAt(index));
      kept.takeShapes(book.getSheetAt(index));
      book.removeSheetAt(index);
    }
    book.createSheet(name);
  }

  /** The sheet that people work in; one whose header is lost is set aside under another name. */
  private void prepare(String name, QuestionLog log) {
    Sheet sheet = SheetLayout.find(book, name);
    boolean isOurs =
        sheet != null && SheetLayout.of(sheet, Headers.of(name), log.lines().keySet()) != null;
    int named = book.getSheetIndex(name);
    if (named >= 0 && !(isOurs && book.getSheetAt(named) == sheet)) setAside(named);
    if (!isOurs) book.createSheet(name);
    else if (!sheet.getSheetName().equals(name)) {
      book.setSheetName(book.getSheetIndex(sheet), name);
    }
  }

  private String setAside(int index) {
    String wish = book.getSheetName(index) + " (set aside)";
    String name = wish;
    for (int i = 2; book.getSheet(name) != null; i++) name = wish + " " + i;
    book.setSheetName(index, name);
    return name;
  }

  /** Ours first, then what people added, in their order. */
  private void order() {
    List<String> ours =
        List.of(
            SUMMARY,
            Headers.FINDINGS,
            Headers.QUESTIONS,
            COVERAGE,
            CALCULATIONS,
            DOCUMENTS,
            READING);
    for (int i = 0; i < ours.size(); i++) book.setSheetOrder(ours.get(i), i);
    for (Sheet sheet : book) sheet.setSelected(false);
    book.setActiveSheet(0);
    book.setFirstVisibleTab(0);
    XSSFSheet first = book.getSheetAt(0);
    first.setSelected(true);
  }
}
