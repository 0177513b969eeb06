package clearbed.calc;

import clearbed.model.Calculation;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.Optional;

/**
 * Least width of grout joints: three times the tile's actual variation in size, never under 1/16 in
 * (ANSI A108.02, 4.3.8).
 *
 * @param least for the variation
 * @param fit of the stated width
 */
public record GroutWidth(Interval least, Fit fit, Calculation calculation) {

  /** Never under this. */
  public static final Quantity NEVER_UNDER = Quantity.of(1.0 / 16, Unit.INCH);

  private static final double TIMES = 3;
  private static final String SOURCE = "ANSI A108.02, 4.3.8, as reported in trade journals [R]";

  /** The least width for a variation, in the small unit of the measure. */
  public static Quantity least(Quantity variation, Measure measure) {
    Unit small = measure.small();
    return Quantity.of(Math.max(TIMES * variation.in(small), NEVER_UNDER.in(small)), small);
  }

  /**
   * Judges a grout joint.
   *
   * @param variation difference between the largest and the smallest tile
   */
  public static GroutWidth of(
      Subject subject, Measure measure, Given variation, Optional<Given> stated) {
    variation.notNegative("the variation in size", Dimension.LENGTH);
    stated.ifPresent(given -> given.positive("the grout width", Dimension.LENGTH));
    Interval least = variation.amount().map(v -> least(v, measure));
    Fit fit = stated.map(given -> fit(given, least)).orElse(Fit.UNKNOWN);
    return new GroutWidth(least, fit, calculation(subject, measure, variation));
  }

  private static Fit fit(Given stated, Interval least) {
    if (stated.low().compareTo(least.high()) >= 0) return Fit.MEETS;
    return stated.high().compareTo(least.low()) < 0 ? Fit.FALLS_SHORT : Fit.DEPENDS;
  }

  private static Calculation calculation(Subject subject, Measure measure, Given variation) {
    Workings w = new Workings();
    Unit small = measure.small();
    Figure size = w.high("variation", "Variation in tile size", variation);
    Figure times = w.assumed("times", "Times the variation", Quantity.of(TIMES, Unit.ONE), SOURCE);
    Figure never = w.assumed("never_under", "Never under", NEVER_UNDER, SOURCE);
    w.step(
        "least",
        "Least grout width",
        "three times the variation, not under the least",
        "MAX(" + times.in(Unit.ONE) + "*" + size.in(small) + "," + never.in(small) + ")",
        least(size.quantity(), measure));
    return w.done(subject, "Width of grout joints");
  }
}
