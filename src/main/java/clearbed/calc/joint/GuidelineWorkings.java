package clearbed.calc.joint;

import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.calc.guideline.GuidelineTable;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.guideline.MovementGuideline.Adjustment;
import clearbed.calc.guideline.MovementGuideline.ExposureRule;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.List;

/** Writes out how a guideline gives its least width and largest spacing. */
final class GuidelineWorkings {

  /** The figures of one exposure's rule, and what was found by them. */
  private record RulePart(
      ExposureRule rule,
      WorkedFigure least,
      WorkedFigure widest,
      List<WorkedFigure> spacings,
      List<WorkedFigure> widths,
      WorkedFigure addition,
      WorkedFigure width) {}

  private final Workings w;
  private final MovementCase worst;
  private final Measure measure;
  private final Unit small;
  private final Unit large;
  private final WorkedFigure spacing;
  private final WorkedFigure range;
  private final List<RulePart> parts = new ArrayList<>();

  GuidelineWorkings(Workings w, MovementCase worst, WorkedFigure spacing, WorkedFigure range) {
    this.w = w;
    this.worst = worst;
    this.measure = worst.measure();
    this.small = measure.small();
    this.large = measure.large();
    this.spacing = spacing;
    this.range = range;
  }

  /** The step that gives the guideline width. */
  WorkedFigure width() {
    ExposureRule rule = worst.rule();
    parts.add(part(rule, ""));
    if (rule.atLeastAs().isEmpty()) return parts.get(0).width();
    ExposureRule other = worst.guideline().rule(rule.atLeastAs().get()).orElseThrow();
    parts.add(part(other, "_" + other.exposure().word().replace('-', '_')));
    return w.step(
        "guideline_both",
        "Guideline width, all that holds",
        "the larger of the two guideline widths",
        "MAX(" + parts.get(0).width().in(small) + "," + parts.get(1).width().in(small) + ")",
        worst.guidelineWidth());
  }

  private RulePart part(ExposureRule rule, String suffix) {
    WorkedFigure least =
        w.assumed("least" + suffix, "Never under, " + rule.label(), rule.least(), rule.source());
    WorkedFigure widest =
        w.assumed(
            "widest" + suffix,
            "Widest spacing, " + rule.label(),
            rule.spacing().high(),
            rule.source());
    List<WorkedFigure> spacings = new ArrayList<>();
    List<WorkedFigure> widths = new ArrayList<>();
    rows(rule, suffix, spacings, widths);
    WorkedFigure addition = rule.adjustment().map(by -> addition(rule, by, suffix)).orElse(null);
    WorkedFigure width =
        width(rule, suffix, least, tabulated(rule, suffix, spacings, widths), addition);
    return new RulePart(rule, least, widest, spacings, widths, addition, width);
  }

  private void rows(
      ExposureRule rule, String suffix, List<WorkedFigure> spacings, List<WorkedFigure> widths) {
    for (int i = 0; i < rule.rows().size(); i++) {
      String row = "row" + (i + 1);
      MovementGuideline.SpacingWidth at = rule.rows().get(i);
      String label = "Table row " + (i + 1) + ", ";
      spacings.add(
          w.assumed(row + "_spacing" + suffix, label + "spacing", at.spacing(), rule.source()));
      widths.add(w.assumed(row + "_width" + suffix, label + "width", at.width(), rule.source()));
    }
  }

  private WorkedFigure addition(ExposureRule rule, Adjustment by, String suffix) {
    Unit degree = measure.difference();
    WorkedFigure above =
        w.assumed("above" + suffix, "Range without addition", by.above(), rule.source());
    WorkedFigure each = w.assumed("each" + suffix, "Step of range", by.each(), rule.source());
    WorkedFigure add = w.assumed("add" + suffix, "Addition for each step", by.add(), rule.source());
    String steps =
        "(" + range.in(degree) + "-" + above.in(degree) + ")/" + each.in(degree) + "-0.000000001";
    return w.step(
        "addition" + suffix,
        "Addition for the temperature range",
        "addition for each step of range over the range without addition, a part counted in full",
        add.in(small) + "*ROUNDUP(MAX(0," + steps + "),0)",
        Quantity.of(GuidelineTable.addition(rule, worst.range(), measure), small));
  }

  private WorkedFigure tabulated(
      ExposureRule rule, String suffix, List<WorkedFigure> spacings, List<WorkedFigure> widths) {
    if (spacings.isEmpty()) return null;
    StringBuilder expression = new StringBuilder(widths.get(0).in(small));
    for (int i = 1; i < spacings.size(); i++) {
      String rise = difference(widths.get(i), widths.get(i - 1), small);
      expression.append('+').append(rise).append('*');
      expression.append(
          share(spacing.in(large), spacings.get(i - 1).in(large), spacings.get(i).in(large)));
    }
    boolean between = GuidelineTable.interpolates(rule, worst.spacing());
    return w.step(
        "tabulated" + suffix,
        between
            ? "Width of the table, interpolated (the guideline gives its rows only)"
            : "Width of the table",
        "the row's width; between two rows in proportion to the spacing",
        expression.toString(),
        Quantity.of(GuidelineTable.tabulated(rule.rows(), worst.spacing(), measure), small));
  }

  private WorkedFigure width(
      ExposureRule rule,
      String suffix,
      WorkedFigure least,
      WorkedFigure tabulated,
      WorkedFigure addition) {
    String sum = tabulated == null ? "0" : tabulated.in(small);
    if (addition != null) sum += "+" + addition.in(small);
    return w.step(
        "guideline" + suffix,
        "Guideline width, " + rule.label(),
        "the larger of the table's width with the addition and the width never to go under",
        "MAX(" + least.in(small) + "," + sum + ")",
        GuidelineTable.width(rule, worst.spacing(), worst.range(), measure));
  }

  /** The step that gives the largest spacing the guideline allows a width. */
  WorkedFigure largestSpacing(WorkedFigure width) {
    WorkedFigure first = allowed(parts.get(0), "", width);
    if (parts.size() == 1) return first;
    WorkedFigure second = allowed(parts.get(1), "_" + word(parts.get(1)), width);
    return w.step(
        "allowed_both",
        "Largest spacing by the guideline, all that holds",
        "the smaller of the two spacings",
        "MIN(" + first.in(large) + "," + second.in(large) + ")",
        worst.spacingByGuideline().orElseThrow());
  }

  private static String word(RulePart part) {
    return part.rule().exposure().word().replace('-', '_');
  }

  private WorkedFigure allowed(RulePart part, String suffix, WorkedFigure width) {
    String left = width.in(small);
    if (part.addition() != null) left += "-" + part.addition().in(small);
    String narrow = "IF(" + left + "<" + first(part) + "-0.000000001,0,";
    String under = "IF(" + width.in(small) + "<" + part.least().in(small) + "-0.000000001,0,";
    String most = part.widest().in(large);
    return w.step(
        "allowed" + suffix,
        "Largest spacing by the guideline, " + part.rule().label(),
        "the table read the other way, not over the widest spacing; 0 when the width is under the"
            + " least",
        under + narrow + "MIN(" + most + "," + inverse(part, left) + ")))",
        GuidelineTable.largestSpacing(part.rule(), width.quantity(), worst.range(), measure));
  }

  private String first(RulePart part) {
    return part.widths().isEmpty() ? "0" : part.widths().get(0).in(small);
  }

  private String inverse(RulePart part, String left) {
    if (part.widths().isEmpty()) return part.widest().in(large);
    StringBuilder expression = new StringBuilder(part.spacings().get(0).in(large));
    for (int i = 1; i < part.widths().size(); i++) {
      WorkedFigure low = part.widths().get(i - 1);
      WorkedFigure high = part.widths().get(i);
      expression.append('+');
      expression.append(difference(part.spacings().get(i), part.spacings().get(i - 1), large));
      expression.append('*').append(share("(" + left + ")", low.in(small), high.in(small)));
    }
    return expression.toString();
  }

  private static String difference(WorkedFigure high, WorkedFigure low, Unit unit) {
    return "(" + high.in(unit) + "-" + low.in(unit) + ")";
  }

  /** How far between two figures a third lies, 0 to 1. */
  private static String share(String at, String from, String to) {
    return "MAX(0,MIN(1,(" + at + "-" + from + ")/(" + to + "-" + from + ")))";
  }
}
