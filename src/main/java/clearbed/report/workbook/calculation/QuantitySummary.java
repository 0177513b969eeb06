package clearbed.report.workbook.calculation;

import clearbed.calc.figure.BothUnits;
import clearbed.model.report.Calculation;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;

/**
 * What a bidder prices, product by product, at the head of the calculations: sums that follow every
 * input below, and the tiles that are not in them.
 */
final class QuantitySummary {
  private static final String QUANTITIES = "quantities";
  private static final String WASTE = "waste";
  private static final String AREA = "area";
  private static final String RUN = "joint_length";

  /** What the quantities of a tile are taken off from, by attribute. */
  private static final Map<String, String> NEEDED = needed();

  private final Pen pen;
  private final Sheet rows;
  private final List<Calculation> shown;
  private final List<Calculation> taken;
  private final Set<String> tags;
  private final List<String> missing = new ArrayList<>();
  private int headingAt = -1;

  /** A tile's part of the sums: its calculation, and where that stands. */
  private record TilePart(Calculation calculation, BlockRows block) {
    String cell(String name) {
      return block.cells().get(name);
    }

    Quantity value(String name) {
      return calculation.steps().stream()
          .filter(step -> step.name().equals(name))
          .map(Calculation.Step::result)
          .findFirst()
          .or(
              () ->
                  calculation.inputs().stream()
                      .filter(input -> input.name().equals(name))
                      .map(Calculation.Input::quantity)
                      .findFirst())
          .orElse(null);
    }
  }

  /**
   * A product.
   *
   * @param of name of the input or step that is summed
   * @param withWaste true where the waste of the workings is still to be added
   */
  private record SummedProduct(
      String label, String of, Unit unit, boolean withWaste, String remark) {}

  private static final List<SummedProduct> PRODUCTS =
      List.of(
          new SummedProduct(
              "Mortar, bags", "mortar_bags", Unit.ONE, false, "whole bags for each tile, added up"),
          new SummedProduct(
              "Grout, bags", "grout_bags", Unit.ONE, false, "whole bags for each tile, added up"),
          new SummedProduct(
              "Sealant, cartridges",
              "cartridges",
              Unit.ONE,
              false,
              "whole cartridges for each tile, added up"),
          new SummedProduct(
              "Movement joints, length", RUN, Unit.FOOT, false, "as stated or assumed below"),
          new SummedProduct(
              "Backer rod, length", RUN, Unit.FOOT, true, "length of movement joints with waste"),
          new SummedProduct(
              "Membrane, area",
              AREA,
              Unit.SQUARE_FOOT,
              true,
              "area of all these tiles with waste; price it where a membrane is called for"));

  private static Map<String, String> needed() {
    Map<String, String> needed = new LinkedHashMap<>();
    needed.put("location.area", "area");
    needed.put("tile.size", "tile size");
    needed.put("grout.width", "grout joint");
    return needed;
  }

  QuantitySummary(Pen pen, Sheet rows, List<Calculation> shown, List<Entry> entries) {
    this.pen = pen;
    this.rows = rows;
    this.shown = shown;
    this.tags = entries.stream().map(Entry::tag).collect(Collectors.toSet());
    this.taken = shown.stream().filter(c -> isOfATile(c) && !c.steps().isEmpty()).toList();
    if (taken.isEmpty()) return;
    Set<String> counted = taken.stream().map(Calculation::tag).collect(Collectors.toSet());
    for (Entry entry : entries) {
      if (!entry.glass() || counted.contains(entry.tag())) continue;
      String words = lacks(entry);
      // Of a very long schedule the first are shown, and nothing is lacking of the others.
      if (!words.isEmpty()) missing.add(entry.tag() + ": " + words);
    }
  }

  /** What all tiles take of one product together is no tile's. */
  private boolean isOfATile(Calculation each) {
    return each.check().equals(QUANTITIES) && tags.contains(each.tag());
  }

  private static String lacks(Entry entry) {
    return NEEDED.entrySet().stream()
        .filter(each -> entry.governing(each.getKey()).isEmpty())
        .map(Map.Entry::getValue)
        .collect(Collectors.joining(", "));
  }

  /** Rows that the table takes; 0 where nothing is taken off. */
  int height() {
    if (taken.isEmpty()) return 0;
    return 1 + taken.size() + 1 + PRODUCTS.size() + (missing.isEmpty() ? 0 : 1);
  }

  /** Rows that tell the rows below them apart. */
  List<Integer> headings() {
    return headingAt < 0 ? List.of() : List.of(headingAt);
  }

  /**
   * @param blocks of the calculations with steps, in the order in which they are shown
   */
  void write(int top, List<BlockRows> blocks, LiveFormulas formulas) {
    if (taken.isEmpty()) return;
    headingAt = top;
    Row header = rows.createRow(top);
    List<String> words =
        List.of("Quantities to price", "Number", "Unit", "Number", "Unit", "How", "", "Row");
    for (int column = 0; column < words.size(); column++) {
      pen.text(header, column, words.get(column), Styles.Look.HEADER);
    }
    List<TilePart> parts = parts(blocks);
    int next = top + 1;
    for (TilePart part : parts) {
      List<TilePart> one = List.of(part);
      SummedProduct tile =
          new SummedProduct(
              "Tile " + part.calculation().tag() + ", pieces",
              "tiles",
              Unit.ONE,
              false,
              "with waste; inputs from this row on, each may be changed");
      line(rows.createRow(next++), tile, one, formulas);
    }
    SummedProduct all =
        new SummedProduct("Tile in all, pieces", "tiles", Unit.ONE, false, "sum of the above");
    line(rows.createRow(next++), all, parts, formulas);
    for (SummedProduct product : PRODUCTS) line(rows.createRow(next++), product, parts, formulas);
    if (missing.isEmpty()) return;
    Row row = rows.createRow(next);
    pen.text(row, 0, "Not in these sums", Styles.Look.STRONG);
    for (int column = 1; column < CalculationBlock.COLUMNS; column++) {
      String lacking = column == 5 ? "not stated of " + String.join("; ", missing) : "";
      pen.text(row, column, lacking, Styles.Look.TEXT);
    }
    Heights.fit(row, rows);
  }

  private List<TilePart> parts(List<BlockRows> blocks) {
    List<TilePart> parts = new ArrayList<>();
    int block = 0;
    for (Calculation each : shown) {
      if (each.steps().isEmpty()) continue;
      BlockRows at = blocks.get(block++);
      if (isOfATile(each)) parts.add(new TilePart(each, at));
    }
    return parts;
  }

  private void line(Row row, SummedProduct product, List<TilePart> parts, LiveFormulas formulas) {
    boolean metric = taken.stream().allMatch(Calculation::metric);
    Optional<Unit> twin = BothUnits.counterpart(product.unit());
    Unit unit = metric ? twin.orElse(product.unit()) : product.unit();
    List<String> terms = new ArrayList<>();
    double sum = 0;
    for (TilePart part : parts) {
      Quantity value = part.value(product.of());
      if (value == null) continue;
      String term = part.cell(product.of());
      if (value.unit() != unit) term = BothUnits.conversion(term, value.unit(), unit);
      double number = value.in(unit);
      Quantity waste = product.withWaste() ? part.value(WASTE) : null;
      if (waste != null) {
        boolean percent = waste.unit() == Unit.PERCENT;
        term = "(" + term + ")*(1+" + part.cell(WASTE) + (percent ? "/100)" : ")");
        number *= 1 + waste.in(Unit.ONE);
      }
      terms.add(term);
      sum += number;
    }
    boolean one = product.label().startsWith("Tile ") && parts.size() == 1;
    pen.text(row, 0, product.label(), one ? Styles.Look.TEXT : Styles.Look.STRONG);
    number(row, 1, String.join("+", terms), sum, unit, formulas);
    pen.text(row, 2, unit.symbol(), Styles.Look.TEXT);
    Unit other = metric ? null : twin.orElse(null);
    if (other == null) pen.text(row, 3, "", Styles.Look.TEXT);
    else {
      String own = "$B$" + (row.getRowNum() + 1);
      double there = Quantity.of(sum, unit).in(other);
      number(row, 3, BothUnits.conversion(own, unit, other), there, other, formulas);
    }
    pen.text(row, 4, other == null ? "" : other.symbol(), Styles.Look.TEXT);
    pen.text(row, 5, product.remark(), Styles.Look.TEXT);
    pen.text(row, 6, "", Styles.Look.TEXT);
    String at = one ? String.valueOf(parts.get(0).block().title() + 1) : "";
    pen.text(row, 7, at, Styles.Look.TEXT);
    Heights.fit(row, rows);
  }

  private void number(
      Row row, int column, String formula, double value, Unit unit, LiveFormulas formulas) {
    Cell cell = pen.put(row, column, new Datum.Blank(), Styles.Look.NUMBER);
    String format = unit == Unit.ONE ? "#,##0" : "#,##0.0";
    cell.setCellStyle(pen.styles().figures(cell.getCellStyle(), format));
    if (!formula.isEmpty()) formulas.set(cell, formula);
    cell.setCellValue(value);
  }
}
