package clearbed.report;

import clearbed.model.Calculation;
import clearbed.model.Quantity;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.formula.FormulaParseException;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Every result with its inputs, in live formulas: change an input, and the rest follows. */
final class CalculationsSheet {
  /** More blocks than this nobody reads; the JSON has them all. */
  static final int MOST = 300;

  private static final int[] WIDTHS = {36, 14, 11, 56, 34, 6};
  private static final int NUMBER = 1;

  /** Rows of one line that a page holds, with some room for taller ones. */
  private static final int PAGE_ROWS = 44;

  private static final String ASSUMED = "assumed: ";

  private final XSSFSheet sheet;
  private final Pen pen;
  private final Places places;
  private int next;
  private int pageTop;

  CalculationsSheet(XSSFSheet sheet, Pen pen, Places places) {
    this.sheet = sheet;
    this.pen = pen;
    this.places = places;
  }

  void fill(List<Calculation> calculations) {
    pen.turnTo(sheet);
    for (int column = 0; column < WIDTHS.length; column++) {
      sheet.setColumnWidth(column, WIDTHS[column] * 256);
    }
    Row title = row();
    Heights.points(title, 24);
    pen.text(title, 0, "Calculations", Styles.Look.TITLE);
    String hint =
        "Tinted numbers are inputs and may be changed; hatched ones are assumed, no document states"
            + " them. All else is computed from them.";
    pen.text(
        row(), 0, calculations.isEmpty() ? "Nothing was computed." : hint, Styles.Look.SUBTITLE);
    if (calculations.size() > MOST) {
      String more = "The first %d of %d; the JSON file has them all.";
      pen.text(row(), 0, more.formatted(MOST, calculations.size()), Styles.Look.STRONG);
    }
    calculations.stream().limit(MOST).forEach(this::block);
  }

  private void block(Calculation calculation) {
    breakPage(calculation);
    next++;
    Row title = row();
    Heights.points(title, 18);
    String tag = calculation.tag().isEmpty() ? "" : calculation.tag() + ": ";
    for (int column = 0; column < WIDTHS.length; column++) {
      String words = column == 0 ? tag + calculation.title() : "";
      pen.text(title, column, words, Styles.Look.SECTION);
    }
    header("Quantity", "Number", "Unit", "Why this number; how it is computed", "Place", "Link");
    Map<String, String> cells = new HashMap<>();
    for (Calculation.Input input : calculation.inputs()) input(input, cells);
    for (Calculation.Step step : calculation.steps()) step(step, cells);
    new SpacingCurve(calculation, cells).find().ifPresent(this::curve);
  }

  /** A block is not torn over two pages when one page can hold it. */
  private void breakPage(Calculation calculation) {
    int rows = 5 + calculation.inputs().size() + calculation.steps().size() + Charts.CURVE_ROWS;
    if (next + rows - pageTop <= PAGE_ROWS || next <= 3) return;
    sheet.setRowBreak(next);
    pageTop = next;
  }

  private void header(String... words) {
    Row header = row();
    for (int column = 0; column < words.length; column++) {
      pen.text(header, column, words[column], Styles.Look.HEADER);
    }
  }

  private void input(Calculation.Input input, Map<String, String> cells) {
    Row row = row();
    pen.text(row, 0, input.label(), Styles.Look.TEXT);
    number(row, input.quantity(), input.assumed() ? Styles.Look.ASSUMED : Styles.Look.INPUT);
    pen.text(row, 2, input.quantity().unit().symbol(), Styles.Look.TEXT);
    String basis = input.basis() == null ? "" : input.basis();
    pen.text(row, 3, input.assumed() ? ASSUMED + basis : basis, Styles.Look.TEXT);
    boolean stated = input.origin() != null;
    pen.text(row, 4, stated ? input.origin().place() : "", Styles.Look.TEXT);
    pen.put(row, 5, stated ? places.link(input.origin()) : new Datum.Blank(), Styles.Look.LINK);
    Heights.fit(row, sheet);
    cells.put(input.name(), reference(row));
  }

  private void step(Calculation.Step step, Map<String, String> cells) {
    Row row = row();
    pen.text(row, 0, step.label(), Styles.Look.STRONG);
    Cell cell = number(row, step.result(), Styles.Look.NUMBER);
    boolean live = formula(cell, Expression.resolve(step.expression(), cells));
    cell.setCellValue(step.result().number());
    pen.text(row, 2, step.result().unit().symbol(), Styles.Look.TEXT);
    String remark = live ? "" : " (the number stands as computed; it does not follow the inputs)";
    pen.text(row, 3, step.formula() + remark, Styles.Look.TEXT);
    for (int column = 4; column < 6; column++) pen.text(row, column, "", Styles.Look.TEXT);
    Heights.fit(row, sheet);
    cells.put(step.name(), reference(row));
  }

  private void curve(SpacingCurve.Curve curve) {
    next++;
    int top = next;
    String unit = unit(curve.width().result());
    header(
        curve.spacing().label() + ", " + unit(curve.spacing().quantity()),
        curve.width().label() + ", " + unit,
        "This entry, " + unit);
    Heights.points(sheet.getRow(top), 30);
    int first = next;
    for (double spacing : curve.spacings()) {
      Row row = row();
      blank(row, 0).setCellValue(spacing);
      formula(blank(row, 1), curve.formula(reference(row, 0)));
      blank(row, 2);
    }
    Row point = row();
    formula(blank(point, 0), curve.pointAcross());
    formula(blank(point, 1), curve.formula(reference(point, 0)));
    formula(blank(point, 2), curve.pointUp());
    evaluate(first, point.getRowNum());
    Charts.Rows line = new Charts.Rows(first, point.getRowNum() - 1);
    Charts.curve(sheet, curve.labels(), line, top);
    next = top + Charts.CURVE_ROWS + 1;
  }

  private Cell blank(Row row, int column) {
    return pen.put(row, column, new Datum.Blank(), Styles.Look.NUMBER);
  }

  /** Readers that do not compute see these numbers. */
  private void evaluate(int first, int last) {
    var evaluator = sheet.getWorkbook().getCreationHelper().createFormulaEvaluator();
    for (int at = first; at <= last; at++) {
      for (int column = 0; column <= 2; column++) {
        evaluator.evaluateFormulaCell(sheet.getRow(at).getCell(column));
      }
    }
  }

  private Cell number(Row row, Quantity quantity, Styles.Look look) {
    Cell cell = pen.put(row, NUMBER, new Datum.Blank(), look);
    cell.setCellValue(quantity.number());
    return cell;
  }

  /** Sets a formula; false when it is none that a spreadsheet takes. */
  private static boolean formula(Cell cell, String formula) {
    if (formula == null) return false;
    try {
      cell.setCellFormula(formula);
      return true;
    } catch (FormulaParseException | IllegalStateException odd) {
      return false;
    }
  }

  private static String unit(Quantity quantity) {
    return quantity.unit().symbol();
  }

  private String reference(Row row) {
    return reference(row, NUMBER);
  }

  private static String reference(Row row, int column) {
    return new CellReference(row.getRowNum(), column, true, true).formatAsString();
  }

  private Row row() {
    return sheet.createRow(next++);
  }
}
