package clearbed.calc.figure;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/** Rounds to what can be built: a required width never down, a largest spacing never up. */
public final class Rounding {

  /**
   * What binary fractions may leave over, in inches or millimetres: 0.375 in reached by a division
   * is 3/8 in, not the next sixteenth above it.
   */
  private static final double LEFT_OVER = 1e-9;

  private Rounding() {}

  /** The next 1/16 in (inch) or whole millimetre (metric) that is not below the width. */
  public static Quantity up(Quantity width, Measure measure) {
    double number = width.in(measure.small());
    double step = step(measure);
    return Quantity.of(Math.ceil((number - LEFT_OVER) / step) * step + 0.0, measure.small());
  }

  /** The whole inches or centimetres that are not above the spacing; in feet or metres. */
  public static Quantity down(Quantity spacing, Measure measure) {
    double each = measure == Measure.INCH ? 12 : 100;
    // A ten-millionth of an inch: spacings come out of a division by small movements.
    double whole = Math.floor(spacing.in(measure.large()) * each + 1e-7);
    return Quantity.of(whole / each + 0.0, measure.large());
  }

  /**
   * A width to be built, in either system, each rounded up for itself: {@code 5/8 in (16 mm)}.
   *
   * @param least the width that is needed, not rounded
   * @param first the system that stands in front
   */
  public static String width(Quantity least, Measure first) {
    String metric = up(least, Measure.METRIC).toString();
    if (first.alone()) return metric;
    String inch = BothUnits.inches(up(least, Measure.INCH).number());
    return first == Measure.INCH ? inch + " (" + metric + ")" : metric + " (" + inch + ")";
  }

  /**
   * A spacing not to be gone over, in either system, each rounded down for itself: {@code 11 ft 3
   * in (3.43 m)}.
   *
   * @param largest not rounded
   */
  public static String spacing(Quantity largest, Measure first) {
    String metric = down(largest, Measure.METRIC).toString();
    if (first.alone()) return metric;
    long inches = Math.round(down(largest, Measure.INCH).in(Unit.INCH));
    String feet = inches % 12 == 0 ? "" : " " + inches % 12 + " in";
    String inch = inches / 12 + " ft" + feet;
    return first == Measure.INCH ? inch + " (" + metric + ")" : metric + " (" + inch + ")";
  }

  public static String expression(String width, Measure measure) {
    return "CEILING(" + width + "-0.000000001," + Quantity.figure(step(measure)) + ")";
  }

  public static String words(Measure measure) {
    return measure == Measure.INCH
        ? "rounded up to the next 1/16 in"
        : "rounded up to the next whole mm";
  }

  private static double step(Measure measure) {
    return measure.small() == Unit.INCH ? 1.0 / 16 : 1;
  }
}
