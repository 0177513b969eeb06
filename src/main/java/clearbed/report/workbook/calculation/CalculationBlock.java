package clearbed.report.workbook.calculation;

import clearbed.calc.figure.BothUnits;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.report.workbook.cell.Charts;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.typed.RenewedSheet;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** One calculation in rows: inputs, steps, the verdict on what is stated, and its curve. */
final class CalculationBlock {
  static final int COLUMNS = 8;
  private static final int NUMBER = 1;
  private static final int OTHER = 3;
  private static final String ASSUMED = "assumed: ";
  private static final String ENOUGH = "enough";
  private static final String NOT_ENOUGH = "not enough";

  private final XSSFSheet sheet;
  private final Sheet rows;
  private final RenewedSheet own;
  private final Pen pen;
  private final DocumentLinks links;
  private final LiveFormulas formulas;
  private final Calculation calculation;
  private final Map<String, String> cells = new HashMap<>();
  private final List<String> typed = new ArrayList<>();
  private int next;

  /**
   * @param sheet that the curve is drawn on
   * @param rows where rows are made: the sheet's streaming twin
   */
  CalculationBlock(
      XSSFSheet sheet,
      Sheet rows,
      RenewedSheet own,
      DocumentLinks links,
      LiveFormulas formulas,
      Calculation calculation) {
    this.sheet = sheet;
    this.rows = rows;
    this.own = own;
    this.pen = own.pen();
    this.links = links;
    this.formulas = formulas;
    this.calculation = calculation;
  }

  /** Writes the block from that row on. */
  BlockRows write(int from) {
    next = from;
    title();
    header(
        "Quantity", "Number", "Unit", "Number", "Unit", "Why this number; how computed", "Place");
    String before = "";
    for (Calculation.Input input : calculation.inputs()) {
      input(input, before);
      before = basis(input);
    }
    int steps = next;
    int last = calculation.steps().size() - 1;
    for (int i = 0; i <= last; i++) step(calculation.steps().get(i), i == last);
    int result = next - 1;
    VerdictRow verdict = verdict();
    int chart = new SpacingCurve(calculation, cells).find().map(this::curve).orElse(0);
    return new BlockRows(
        from,
        steps,
        result,
        verdict.row(),
        verdict.words(),
        chart,
        List.copyOf(typed),
        next,
        Map.copyOf(cells));
  }

  private void title() {
    Row title = row();
    Heights.points(title, 18);
    for (int column = 0; column < COLUMNS; column++) {
      pen.text(title, column, column == 0 ? title(calculation) : "", Styles.Look.SECTION);
    }
  }

  /** What stands over the block of a calculation. */
  static String title(Calculation calculation) {
    String tag = calculation.tag().isEmpty() ? "" : calculation.tag() + ": ";
    return tag + calculation.title();
  }

  private void header(String... words) {
    Row header = row();
    for (int column = 0; column < COLUMNS; column++) {
      String word = column < words.length ? words[column] : "Link";
      pen.text(header, column, word, Styles.Look.HEADER);
    }
  }

  private static String basis(Calculation.Input input) {
    String basis = input.basis() == null ? "" : input.basis();
    return input.assumed() ? ASSUMED + basis : basis;
  }

  private void input(Calculation.Input input, String before) {
    Row row = row();
    Quantity quantity = input.quantity();
    Double typedNumber = typedOver(row, input);
    pen.text(row, 0, input.label(), Styles.Look.TEXT);
    Cell cell = number(row, quantity, typedNumber == null ? look(input) : Styles.Look.TYPED);
    if (isCoefficient(quantity.unit())) figures(cell, quantity.unit());
    if (typedNumber == null && Figures.isOnTape(quantity)) format(cell, Figures.FRACTION);
    if (typedNumber != null) cell.setCellValue(typedNumber);
    other(row, typedNumber == null ? quantity : Quantity.of(typedNumber, quantity.unit()));
    String basis = basis(input);
    boolean same = input.assumed() && basis.equals(before);
    String why = same ? ASSUMED + "as above" : basis;
    pen.text(row, 5, typedNumber == null ? why : inPlaceOf(quantity) + why, Styles.Look.TEXT);
    boolean stated = input.origin() != null;
    pen.text(row, 6, stated ? input.origin().place() : "", Styles.Look.TEXT);
    pen.put(row, 7, stated ? links.link(input.origin()) : new Datum.Blank(), Styles.Look.LINK);
    Heights.fit(row, sheet);
    cells.put(input.name(), reference(row));
  }

  /** A number that people typed over the input in the earlier issue, or null. */
  private Double typedOver(Row row, Calculation.Input input) {
    Quantity quantity = input.quantity();
    String unit = quantity.unit().symbol();
    Double number = own.typedOver(title(calculation), input.label(), NUMBER, unit);
    if (number == null) return null;
    own.noteOurs(row.getRowNum(), NUMBER, quantity.number());
    String words = Quantity.figure(number) + (unit.isEmpty() ? "" : " " + unit);
    typed.add(
        "%s, %s: %s, %s".formatted(title(calculation), input.label(), words, inPlaceOf(quantity)));
    return number;
  }

  private static String inPlaceOf(Quantity quantity) {
    return "typed in place of " + quantity + "; ";
  }

  private static Styles.Look look(Calculation.Input input) {
    return input.assumed() ? Styles.Look.ASSUMED : Styles.Look.INPUT;
  }

  private static boolean isCoefficient(Unit unit) {
    return unit == Unit.PER_KELVIN || unit == Unit.PER_FAHRENHEIT;
  }

  private void step(Calculation.Step step, boolean last) {
    Row row = row();
    pen.text(row, 0, step.label(), last ? Styles.Look.RESULT_LABEL : Styles.Look.STRONG);
    Cell cell = number(row, step.result(), last ? Styles.Look.RESULT : Styles.Look.NUMBER);
    format(cell, format(step));
    boolean live = formulas.set(cell, CellExpression.resolve(step.expression(), cells));
    cell.setCellValue(step.result().number());
    other(row, step.result());
    String remark = live ? "" : " (the number stands as computed; it does not follow the inputs)";
    pen.text(row, 5, step.formula() + remark, Styles.Look.TEXT);
    for (int column = 6; column < COLUMNS; column++) pen.text(row, column, "", Styles.Look.TEXT);
    Heights.fit(row, sheet);
    cells.put(step.name(), reference(row));
  }

  /** The unit, and the number in the other system with its unit. */
  private void other(Row row, Quantity quantity) {
    pen.text(row, 2, quantity.unit().symbol(), Styles.Look.TEXT);
    Unit other = BothUnits.beside(calculation, quantity.unit()).orElse(null);
    Cell cell = pen.put(row, OTHER, new Datum.Blank(), Styles.Look.NUMBER);
    pen.text(row, 4, other == null ? "" : other.symbol(), Styles.Look.TEXT);
    if (other == null) return;
    figures(cell, other);
    formulas.set(cell, BothUnits.conversion(reference(row), quantity.unit(), other));
    cell.setCellValue(quantity.in(other));
  }

  private record VerdictRow(int row, String words) {}

  /** Whether what is stated is enough, live; no row when the calculation does not judge. */
  private VerdictRow verdict() {
    String margin = cells.get(Calculation.MARGIN);
    if (margin == null) return new VerdictRow(0, "");
    Calculation.Step step =
        calculation.steps().stream()
            .filter(one -> one.name().equals(Calculation.MARGIN))
            .findFirst()
            .orElseThrow();
    String words = step.result().number() >= -1e-9 ? ENOUGH : NOT_ENOUGH;
    Row row = row();
    pen.text(row, 0, "What is stated is", Styles.Look.RESULT_LABEL);
    Cell cell = pen.put(row, NUMBER, new Datum.Blank(), Styles.Look.RESULT);
    formulas.set(
        cell, "IF(" + margin + ">=-0.000000001,\"" + ENOUGH + "\",\"" + NOT_ENOUGH + "\")");
    cell.setCellValue(words);
    return new VerdictRow(row.getRowNum(), words);
  }

  private int curve(SpacingCurve.Curve curve) {
    next++;
    int top = next;
    String unit = curve.width().result().unit().symbol();
    Row header = row();
    pen.text(
        header,
        0,
        curve.spacing().label() + ", " + curve.spacing().quantity().unit().symbol(),
        Styles.Look.HEADER);
    pen.text(header, 1, curve.width().label() + ", " + unit, Styles.Look.HEADER);
    pen.text(header, 2, "This tile, " + unit, Styles.Look.HEADER);
    Heights.points(header, 42);
    int first = next;
    for (double spacing : curve.spacings()) {
      Row row = row();
      blank(row, 0).setCellValue(spacing);
      formulas.set(blank(row, 1), curve.formula(reference(row, 0)));
      blank(row, 2);
    }
    Row point = row();
    formulas.set(blank(point, 0), curve.pointAcross());
    formulas.set(blank(point, 1), curve.formula(reference(point, 0)));
    formulas.set(blank(point, 2), curve.pointUp());
    formulas.evaluate(first, point.getRowNum(), 2);
    Charts.ChartRows line = new Charts.ChartRows(first, point.getRowNum() - 1);
    Charts.Labels labels = typed.isEmpty() ? curve.labels() : curve.labels().ofTyped();
    Charts.curve(sheet, rows, labels, line, top);
    next = top + Charts.CURVE_ROWS + 1;
    return top;
  }

  private Cell blank(Row row, int column) {
    return pen.put(row, column, new Datum.Blank(), Styles.Look.NUMBER);
  }

  private Cell number(Row row, Quantity quantity, Styles.Look look) {
    Cell cell = pen.put(row, NUMBER, new Datum.Blank(), look);
    cell.setCellValue(quantity.number());
    return cell;
  }

  private void figures(Cell cell, Unit unit) {
    format(cell, Figures.format(unit));
  }

  private void format(Cell cell, String format) {
    cell.setCellStyle(pen.styles().figures(cell.getCellStyle(), format));
  }

  /** What is rounded up to a mark of the tape measure stays on one, whatever people type. */
  static String format(Calculation.Step step) {
    boolean rounded = step.expression().contains("CEILING(");
    return rounded && Figures.isOnTape(step.result())
        ? Figures.FRACTION
        : Figures.format(step.result().unit());
  }

  private static String reference(Row row) {
    return reference(row, NUMBER);
  }

  private static String reference(Row row, int column) {
    return new CellReference(row.getRowNum(), column, true, true).formatAsString();
  }

  private Row row() {
    return rows.createRow(next++);
  }
}
