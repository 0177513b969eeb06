package clearbed.calc.joint;

import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/** Writes the worst case of a design out as inputs and steps. */
final class MovementWorkings {
  private final MovementRange.FilledInputs in;
  private final MovementCase worst;
  private final Measure measure;
  private final Unit small;
  private final Workings w = new Workings();

  private MovementWorkings(MovementRange range) {
    this.in = range.inputs();
    this.worst = range.worst();
    this.measure = worst.measure();
    this.small = measure.small();
  }

  static Calculation of(MovementRange range) {
    return new MovementWorkings(range).calculation();
  }

  private Calculation calculation() {
    WorkedFigure expansion =
        w.high("expansion", "Thermal expansion of the tile", in.known().expansion());
    WorkedFigure spacing = w.high("spacing", "Joint spacing", in.spacing());
    WorkedFigure range = w.high("range", "Temperature range of the tile surface", in.range());
    WorkedFigure other = w.high("other", "Movement other than by temperature", in.other());
    WorkedFigure capability =
        w.low("capability", "Movement capability of the sealant", in.capability());
    WorkedFigure tolerance = w.high("tolerance", "Construction tolerance", in.tolerance());
    WorkedFigure movement = movement(expansion, spacing, range, other);
    WorkedFigure computed = computed(movement, capability, tolerance);
    GuidelineWorkings table = new GuidelineWorkings(w, worst, spacing, range);
    WorkedFigure guideline = table.width();
    WorkedFigure makers =
        in.least()
            .map(least -> w.high("makers", "Least width for the sealant, by its maker", least))
            .orElse(null);
    String least = least(computed, guideline, makers);
    if (worst.width().isPresent()) {
      WorkedFigure width =
          w.low("width", "Joint width as stated", in.known().width().orElseThrow());
      strain(movement, width, tolerance);
      WorkedFigure carried = carried(width, tolerance, capability, other, expansion, range);
      WorkedFigure allowed = table.largestSpacing(width);
      smaller(carried, allowed, width, makers);
      margin(width, least);
    }
    w.step(
        "required",
        "Required joint width",
        largest(makers) + ", " + Rounding.words(measure),
        Rounding.expression(least, measure),
        worst.requiredWidth());
    return w.done(in.known().subject(), "Width of a movement joint");
  }

  private String least(WorkedFigure computed, WorkedFigure guideline, WorkedFigure makers) {
    String third = makers == null ? "" : "," + makers.in(small);
    return "MAX(" + computed.in(small) + "," + guideline.in(small) + third + ")";
  }

  private static String largest(WorkedFigure makers) {
    return makers == null
        ? "the larger of computed and guideline width"
        : "the largest of computed, guideline and maker's width";
  }

  private void margin(WorkedFigure width, String least) {
    w.step(
        Calculation.MARGIN,
        "Stated width beyond what is needed",
        "stated width - the larger of what is needed, not rounded; negative: too narrow",
        width.in(small) + "-" + least,
        worst.margin().orElseThrow());
  }

  private WorkedFigure movement(
      WorkedFigure expansion, WorkedFigure spacing, WorkedFigure range, WorkedFigure other) {
    return w.step(
        "movement",
        "Movement into the joint",
        "expansion × spacing × temperature range + other movement",
        ThermalMovement.expression(expansion, spacing, range, measure) + "+" + other.in(small),
        worst.movement());
  }

  private WorkedFigure computed(
      WorkedFigure movement, WorkedFigure capability, WorkedFigure tolerance) {
    return w.step(
        "computed",
        measure.alone() ? "Width by movement" : "Width by movement (relation of ASTM C1472)",
        "movement ÷ movement capability + tolerance",
        movement.in(small) + "/" + capability.in(Unit.ONE) + "+" + tolerance.in(small),
        worst.computedWidth());
  }

  private void strain(WorkedFigure movement, WorkedFigure width, WorkedFigure tolerance) {
    w.step(
        "strain",
        "Strain of the sealant at the stated width",
        "movement ÷ (stated width - tolerance)",
        JointWidth.strainExpression(movement, width, tolerance, small),
        worst.strain().orElseThrow());
  }

  private WorkedFigure carried(
      WorkedFigure width,
      WorkedFigure tolerance,
      WorkedFigure capability,
      WorkedFigure other,
      WorkedFigure expansion,
      WorkedFigure range) {
    String left =
        "(" + width.in(small) + "-" + tolerance.in(small) + ")*" + capability.in(Unit.ONE);
    WorkedFigure unit = new WorkedFigure("1", Quantity.of(1, measure.large()));
    // Movement of one foot or metre of tile; the literal 1 is no name, so its braces go.
    String each = ThermalMovement.expression(expansion, unit, range, measure).replace("{1}", "1");
    return w.step(
        "carried",
        "Largest spacing that the stated width carries",
        "((stated width - tolerance) × movement capability - other movement) ÷ (expansion ×"
            + " temperature range)",
        "MAX(0," + left + "-" + other.in(small) + ")/(" + each + ")",
        worst.spacingByArithmetic().orElseThrow());
  }

  private void smaller(
      WorkedFigure carried, WorkedFigure allowed, WorkedFigure width, WorkedFigure makers) {
    String smaller = "MIN({" + carried.name() + "}," + allowed.in(measure.large()) + ")";
    String narrow = makers == null ? "" : width.in(small) + "<" + makers.in(small) + "-0.000000001";
    w.step(
        "largest",
        "Largest spacing for the stated width",
        "the smaller of the two spacings; 0 when no spacing makes the width enough",
        narrow.isEmpty() ? smaller : "IF(" + narrow + ",0," + smaller + ")",
        worst.largestSpacing().orElseThrow().to(measure.large()));
  }
}
