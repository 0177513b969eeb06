package clearbed.report.workbook.calculation;

import java.util.HashMap;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.formula.FormulaParser;
import org.apache.poi.ss.formula.FormulaType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.FormulaEvaluator;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFEvaluationWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Sets the formulas of a sheet, and computes them where nothing else gives their number. */
final class LiveFormulas {
  private static final Pattern DIGITS = Pattern.compile("\\d+");

  private final Sheet rows;
  private final XSSFEvaluationWorkbook book;
  private final int index;
  private final FormulaEvaluator evaluator;

  /** By what stays of a formula without its digits: block after block has the same. */
  private final Map<String, Boolean> sound = new HashMap<>();

  /**
   * @param rows where rows are made: the sheet's streaming twin
   */
  LiveFormulas(XSSFSheet sheet, Sheet rows) {
    this.rows = rows;
    this.book = XSSFEvaluationWorkbook.create(sheet.getWorkbook());
    this.index = sheet.getWorkbook().getSheetIndex(sheet);
    this.evaluator = rows.getWorkbook().getCreationHelper().createFormulaEvaluator();
  }

  /**
   * Sets a formula; false when it is none that a spreadsheet takes.
   *
   * @param formula may be null
   */
  boolean set(Cell cell, String formula) {
    if (formula == null || !sound.computeIfAbsent(shape(formula), any -> parses(formula)))
      return false;
    cell.setCellFormula(formula);
    return true;
  }

  private static String shape(String formula) {
    return DIGITS.matcher(formula).replaceAll("1");
  }

  /** Streaming cells take anything, and a file with one bad formula is refused as a whole. */
  private boolean parses(String formula) {
    try {
      FormulaParser.parse(formula, book, FormulaType.CELL, index);
      return true;
    } catch (FormulaParseException | IllegalStateException odd) {
      return false;
    }
  }

  /** Readers that do not compute see the numbers of these rows, from the first column on. */
  void evaluate(int firstRow, int lastRow, int lastColumn) {
    for (int at = firstRow; at <= lastRow; at++) {
      for (int column = 0; column <= lastColumn; column++) {
        evaluator.evaluateFormulaCell(rows.getRow(at).getCell(column));
      }
    }
  }

  /** Computes all formulas anew, where numbers that they use are not those they were made with. */
  void evaluateAll() {
    evaluator.clearAllCachedResultValues();
    for (int at = 0; at <= rows.getLastRowNum(); at++) {
      Row row = rows.getRow(at);
      if (row == null) continue;
      for (Cell cell : row) {
        if (cell.getCellType() == CellType.FORMULA) evaluator.evaluateFormulaCell(cell);
      }
    }
  }
}
