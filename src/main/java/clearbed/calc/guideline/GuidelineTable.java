package clearbed.calc.guideline;

import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.guideline.MovementGuideline.ExposureRule;
import clearbed.calc.guideline.MovementGuideline.SpacingWidth;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.List;

/** Looks a width or spacing up in one rule; between two rows it lies on the line through them. */
public final class GuidelineTable {

  /** What binary fractions may leave over; see {@link Rounding}. */
  private static final double LEFT_OVER = 1e-9;

  private GuidelineTable() {}

  public static Quantity width(
      ExposureRule rule, Quantity spacing, Quantity range, Measure measure) {
    Unit small = measure.small();
    double tabulated = tabulated(rule.rows(), spacing, measure) + addition(rule, range, measure);
    return Quantity.of(Math.max(rule.least().in(small), tabulated), small);
  }

  /** The row's width; below the first row the first, above the last the last. */
  public static double tabulated(List<SpacingWidth> rows, Quantity spacing, Measure measure) {
    if (rows.isEmpty()) return 0;
    double width = rows.get(0).width().in(measure.small());
    for (int i = 1; i < rows.size(); i++) {
      double from = rows.get(i - 1).spacing().in(measure.large());
      double to = rows.get(i).spacing().in(measure.large());
      width += rise(rows, i, measure) * share(spacing.in(measure.large()), from, to);
    }
    return width;
  }

  /**
   * What the temperature range adds. A part of a step counts in full: the published wording gives
   * whole steps only, and a least width is never rounded down.
   */
  public static double addition(ExposureRule rule, Quantity range, Measure measure) {
    if (rule.adjustment().isEmpty()) return 0;
    MovementGuideline.Adjustment by = rule.adjustment().get();
    Unit degree = measure.difference();
    double steps = (range.in(degree) - by.above().in(degree)) / by.each().in(degree);
    return by.add().in(measure.small()) * Math.ceil(Math.max(0, steps - LEFT_OVER));
  }

  public static Quantity largestSpacing(
      ExposureRule rule, Quantity width, Quantity range, Measure measure) {
    Unit small = measure.small();
    double left = width.in(small) - addition(rule, range, measure);
    if (tooNarrow(rule, width.in(small), left, small)) return Quantity.of(0, measure.large());
    double spacing = rule.spacing().high().in(measure.large());
    return Quantity.of(
        Math.min(spacing, inverse(rule.rows(), left, spacing, measure)), measure.large());
  }

  private static boolean tooNarrow(ExposureRule rule, double width, double left, Unit small) {
    double first = rule.rows().isEmpty() ? 0 : rule.rows().get(0).width().in(small);
    return width < rule.least().in(small) - LEFT_OVER || left < first - LEFT_OVER;
  }

  private static double inverse(
      List<SpacingWidth> rows, double width, double most, Measure measure) {
    if (rows.isEmpty()) return most;
    double spacing = rows.get(0).spacing().in(measure.large());
    for (int i = 1; i < rows.size(); i++) {
      double low = rows.get(i - 1).width().in(measure.small());
      double high = rows.get(i).width().in(measure.small());
      double step =
          rows.get(i).spacing().in(measure.large()) - rows.get(i - 1).spacing().in(measure.large());
      spacing += step * share(width, low, high);
    }
    return spacing;
  }

  private static double rise(List<SpacingWidth> rows, int i, Measure measure) {
    Unit small = measure.small();
    return rows.get(i).width().in(small) - rows.get(i - 1).width().in(small);
  }

  private static double share(double at, double from, double to) {
    return Math.max(0, Math.min(1, (at - from) / (to - from)));
  }

  /** True when the spacing lies between two rows, on neither. */
  public static boolean interpolates(ExposureRule rule, Quantity spacing) {
    List<SpacingWidth> rows = rule.rows();
    if (rows.size() < 2) return false;
    boolean onRow = rows.stream().anyMatch(row -> row.spacing().compareTo(spacing) == 0);
    return !onRow
        && spacing.compareTo(rows.get(0).spacing()) > 0
        && spacing.compareTo(rows.get(rows.size() - 1).spacing()) < 0;
  }
}
