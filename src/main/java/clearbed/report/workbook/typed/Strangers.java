package clearbed.report.workbook.typed;

import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.layout.SheetLayout;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFName;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * What came in with a workbook and must do nothing in the one that goes out, which others open:
 * formulas become the text that was typed, links become their words, and each is named on the sheet
 * of things set aside.
 */
public final class Strangers {
  private static final String LINK = "a link that leads elsewhere; only its words are kept";
  private static final String SOURCE = "a tie to something outside of the workbook; cut off";
  private static final String FORMULA = "a formula; kept as the text that was typed";
  private static final String NAME = "a name for a formula; taken out";

  /** All that our own calculations call. */
  private static final Set<String> ARITHMETIC =
      Set.of(
          "ABS", "AND", "CEILING", "DATE", "IF", "LEFT", "MAX", "MIN", "OR", "ROUND", "ROUNDUP",
          "SUM");

  private static final Pattern QUOTED = Pattern.compile("\"[^\"]*+\"");
  private static final Pattern CALL = Pattern.compile("([A-Za-z_][\\w.]*+)\\s*\\(");
  private static final Pattern PLAIN_NAME = Pattern.compile("[^\\[\\]|(]*");
  private static final Pattern RELATIVE = Pattern.compile("(?![/\\\\])[^:]*");

  private final XSSFWorkbook book;
  private final Pen pen;
  private final SetAsideSheet kept;

  public Strangers(XSSFWorkbook book, Pen pen, SetAsideSheet kept) {
    this.book = book;
    this.pen = pen;
    this.kept = kept;
  }

  /** Names the links that were cut off; those of ours are made anew and no loss. */
  public void noteLinks(List<LinksOut.OutwardLink> links) {
    Map<String, XSSFSheet> sheets = new HashMap<>();
    for (Sheet sheet : book) {
      XSSFSheet each = (XSSFSheet) sheet;
      sheets.put(each.getPackagePart().getPartName().getName().substring(1), each);
    }
    for (LinksOut.OutwardLink link : links) {
      XSSFSheet sheet = sheets.get(link.part());
      boolean relative = RELATIVE.matcher(link.target()).matches();
      if (relative && (sheet == null || isOurs(sheet, link.cell()))) continue;
      String name = sheet == null ? "" : sheet.getSheetName();
      String why = link.cell().isEmpty() ? SOURCE : LINK;
      kept.takeOut(name, link.cell(), "link", link.target(), why);
    }
  }

  private static boolean isOurs(XSSFSheet sheet, String cell) {
    if (!cell.matches("[A-Z]{1,3}\\d{1,7}")) return false;
    CellAddress at = new CellAddress(cell);
    Row row = sheet.getRow(at.getRow());
    Cell there = row == null ? null : row.getCell(at.getColumn());
    return there != null && Pen.isOfLink(SheetLayout.text(there));
  }

  /** To be called once our own columns are written. */
  public void stillFormulas() {
    for (Sheet sheet : sheets()) {
      boolean calculates = sheet.getSheetName().equals(BookSheets.CALCULATIONS);
      List<XSSFCell> formulas = new ArrayList<>();
      for (Row row : sheet)
        for (Cell cell : row)
          if (cell.getCellType() == CellType.FORMULA) formulas.add((XSSFCell) cell);
      for (XSSFCell formula : formulas) still(formula, calculates);
    }
    for (XSSFName name : List.copyOf(book.getAllNames())) {
      String formula = name.getRefersToFormula();
      if (name.getNameName().startsWith("_xlnm") || PLAIN_NAME.matcher(formula).matches()) continue;
      kept.takeOut("", "", name.getNameName(), "=" + formula, NAME);
      book.removeName(name);
    }
  }

  private List<Sheet> sheets() {
    List<Sheet> sheets = new ArrayList<>();
    book.forEach(sheets::add);
    return sheets;
  }

  private void still(XSSFCell cell, boolean calculates) {
    String formula = formula(cell);
    if (calculates && isArithmetic(formula)) return;
    XSSFSheet sheet = cell.getSheet();
    String result = SheetLayout.text(cell);
    if (cell.isPartOfArrayFormulaGroup()) sheet.removeArrayFormula(cell);
    cell.setBlank();
    pen.text(cell.getRow(), cell.getColumnIndex(), "=" + formula, Styles.Look.TEXT);
    kept.takeFormula(cell, "=" + formula, FORMULA, result);
  }

  /** One that the library does not understand is shown as the file has it. */
  private static String formula(XSSFCell cell) {
    try {
      return cell.getCellFormula();
    } catch (RuntimeException odd) {
      return cell.getCTCell().isSetF() ? cell.getCTCell().getF().getStringValue() : "";
    }
  }

  /** True when a formula takes cells of the workbook and computes with them, and nothing else. */
  private static boolean isArithmetic(String formula) {
    String bare = QUOTED.matcher(formula).replaceAll("\"\"");
    if (bare.contains("[") || bare.contains("|")) return false;
    Matcher call = CALL.matcher(bare);
    while (call.find()) if (!ARITHMETIC.contains(call.group(1))) return false;
    return true;
  }
}
