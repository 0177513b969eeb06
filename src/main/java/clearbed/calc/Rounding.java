package clearbed.calc;

import clearbed.model.Quantity;
import clearbed.model.Unit;

/** Rounds a required width to one that can be built, never down. */
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

  static String expression(String width, Measure measure) {
    return "CEILING(" + width + "-0.000000001," + Quantity.figure(step(measure)) + ")";
  }

  static String words(Measure measure) {
    return measure == Measure.INCH
        ? "rounded up to the next 1/16 in"
        : "rounded up to the next whole mm";
  }

  private static double step(Measure measure) {
    return measure.small() == Unit.INCH ? 1.0 / 16 : 1;
  }
}
