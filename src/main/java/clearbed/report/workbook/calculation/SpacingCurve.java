package clearbed.report.workbook.calculation;

import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.report.workbook.cell.Charts;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds in a calculation the joint width as it depends on the joint spacing. */
final class SpacingCurve {
  /** Names that the joint spacing goes by, most telling first. */
  private static final List<String> SPACING = List.of("spacing", "length", "run");

  private static final List<String> STATED = List.of("width", "stated", "statedWidth");

  /** The curve runs from a quarter of the stated spacing to twice of it. */
  private static final int POINTS = 8;

  private final Calculation calculation;
  private final Map<String, String> cells;

  /**
   * @param cells address of each input and step
   */
  SpacingCurve(Calculation calculation, Map<String, String> cells) {
    this.calculation = calculation;
    this.cells = cells;
  }

  /** The curve, when the last step gives a length that depends on a spacing. */
  Optional<Curve> find() {
    if (calculation.steps().isEmpty()) return Optional.empty();
    Calculation.Step last = calculation.steps().get(calculation.steps().size() - 1);
    if (last.result().unit().dimension() != Dimension.LENGTH) return Optional.empty();
    return input(SPACING)
        .filter(spacing -> spacing.quantity().number() > 0)
        .filter(spacing -> CellExpression.uses(last.expression(), spacing.name(), this::expression))
        .map(spacing -> new Curve(spacing, last))
        .filter(curve -> curve.formula("$A$1") != null);
  }

  private Optional<Calculation.Input> input(List<String> names) {
    return names.stream()
        .flatMap(name -> calculation.inputs().stream().filter(input -> input.name().equals(name)))
        .filter(input -> input.quantity().unit().dimension() == Dimension.LENGTH)
        .findFirst();
  }

  private String expression(String name) {
    return calculation.steps().stream()
        .filter(step -> step.name().equals(name))
        .map(Calculation.Step::expression)
        .findFirst()
        .orElse(null);
  }

  /** Width against spacing. */
  final class Curve {
    private final Calculation.Input spacing;
    private final Calculation.Step width;

    private Curve(Calculation.Input spacing, Calculation.Step width) {
      this.spacing = spacing;
      this.width = width;
    }

    Calculation.Input spacing() {
      return spacing;
    }

    Calculation.Step width() {
      return width;
    }

    List<Double> spacings() {
      List<Double> values = new ArrayList<>();
      for (int i = 1; i <= POINTS; i++) {
        values.add(Double.valueOf(Quantity.figure(spacing.quantity().number() * i / 4)));
      }
      return values;
    }

    /** The width's formula with another cell in place of the spacing. */
    String formula(String spacingCell) {
      Map<String, String> names = new HashMap<>();
      for (Calculation.Input input : calculation.inputs()) {
        names.put(input.name(), cells.get(input.name()));
      }
      names.put(spacing.name(), spacingCell);
      String formula = null;
      for (Calculation.Step step : calculation.steps()) {
        formula = CellExpression.resolve(step.expression(), names);
        if (formula == null) formula = cells.get(step.name());
        names.put(step.name(), "(" + formula + ")");
      }
      return formula;
    }

    String pointAcross() {
      return cells.get(spacing.name());
    }

    /** The stated width when there is one, in the unit of the required. */
    String pointUp() {
      return stated()
          .map(input -> cells.get(input.name()) + "*" + factor(input))
          .orElse(cells.get(width.name()));
    }

    Charts.Labels labels() {
      String title = width.label() + " against " + lower(spacing.label());
      String alt =
          "%s at %s of %s: %s. Line from %s to %s; the point is this tile."
              .formatted(
                  width.label(),
                  lower(spacing.label()),
                  spacing.quantity(),
                  width.result(),
                  Quantity.of(spacings().get(0), spacing.quantity().unit()),
                  Quantity.of(spacings().get(POINTS - 1), spacing.quantity().unit()));
      String point = stated().isPresent() ? "as the documents have it" : "as required";
      return new Charts.Labels(
          (calculation.tag().isEmpty() ? "" : calculation.tag() + ": ") + title,
          spacing.label() + ", " + spacing.quantity().unit().symbol(),
          width.label() + ", " + width.result().unit().symbol(),
          "this tile, " + point,
          alt);
    }

    private Optional<Calculation.Input> stated() {
      return input(STATED).filter(input -> input != spacing);
    }

    private double factor(Calculation.Input input) {
      return Quantity.of(1, input.quantity().unit()).in(width.result().unit());
    }

    private static String lower(String label) {
      return label.isEmpty() ? label : Character.toLowerCase(label.charAt(0)) + label.substring(1);
    }
  }
}
