package clearbed.calc.joint;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Optional;

/**
 * Least width of grout joints: three times the tile's actual variation in size, never under 1/16 in
 * (ANSI A108.02, 4.3.8).
 *
 * @param least for the variation; the never-under where the variation is not known
 * @param fit of the stated width
 */
public record GroutWidth(Interval least, Fit fit, Calculation calculation) {

  private static final double TIMES = 3;

  private static final String SOURCE = "ANSI A108.02, 4.3.8, as reported in trade journals [R]";

  private static final String METRIC_SOURCE =
      "common practice, no source; tiles and joints vary together";

  /** Never under this: 1/16 in, which metric documents write as 1.5 mm. */
  public static Quantity neverUnder(Measure measure) {
    return measure == Measure.INCH
        ? Quantity.of(1.0 / 16, Unit.INCH)
        : Quantity.of(1.5, Unit.MILLIMETRE);
  }

  /** The least width for a variation, in the small unit of the measure. */
  public static Quantity least(Quantity variation, Measure measure) {
    Unit small = measure.small();
    return Quantity.of(Math.max(TIMES * variation.in(small), neverUnder(measure).in(small)), small);
  }

  /**
   * Judges a grout joint.
   *
   * @param variation difference between the largest and the smallest tile; empty when not known
   */
  public static GroutWidth of(
      CalculationSubject subject,
      Measure measure,
      Optional<Given> variation,
      Optional<Given> stated) {
    variation.ifPresent(given -> given.notNegative("the variation in size", Dimension.LENGTH));
    stated.ifPresent(given -> given.positive("the grout width", Dimension.LENGTH));
    Quantity none = Quantity.of(0, measure.small());
    Interval amount = variation.map(Given::amount).orElse(Interval.of(none));
    Interval least = amount.map(v -> least(v, measure));
    Fit fit = stated.map(given -> fit(given, least)).orElse(Fit.UNKNOWN);
    return new GroutWidth(least, fit, calculation(subject, measure, variation, stated));
  }

  private static Fit fit(Given stated, Interval least) {
    if (stated.low().compareTo(least.high()) >= 0) return Fit.MEETS;
    return stated.high().compareTo(least.low()) < 0 ? Fit.FALLS_SHORT : Fit.DEPENDS;
  }

  private static Calculation calculation(
      CalculationSubject subject,
      Measure measure,
      Optional<Given> variation,
      Optional<Given> stated) {
    Workings w = new Workings();
    Unit small = measure.small();
    String source = measure.alone() ? METRIC_SOURCE : SOURCE;
    WorkedFigure times =
        w.assumed("times", "Times the variation", Quantity.of(TIMES, Unit.ONE), source);
    WorkedFigure never = w.assumed("never_under", "Never under", neverUnder(measure), source);
    WorkedFigure width =
        stated.map(given -> w.low("width", "Grout joint as stated", given)).orElse(null);
    if (width != null) carried(w, width, times, measure);
    if (variation.isPresent()) {
      WorkedFigure size = w.high("variation", "Variation in tile size", variation.get());
      String least = "MAX(" + times.in(Unit.ONE) + "*" + size.in(small) + "," + never.in(small);
      least(w, "three times the variation, not under the least", least + ")", size, width, measure);
    } else {
      least(w, "the least; the variation is not stated", never.in(small), null, width, measure);
    }
    return w.done(subject, "Width of grout joints");
  }

  private static void carried(Workings w, WorkedFigure width, WorkedFigure times, Measure measure) {
    Unit small = measure.small();
    w.step(
        "variation_carried",
        "Largest variation in tile size that the joint goes with",
        "stated joint ÷ times the variation",
        width.in(small) + "/" + times.in(Unit.ONE),
        Quantity.of(width.as(small) / TIMES, small));
  }

  private static void least(
      Workings w,
      String words,
      String expression,
      WorkedFigure size,
      WorkedFigure width,
      Measure measure) {
    Unit small = measure.small();
    Quantity none = Quantity.of(0, small);
    Quantity least = least(size == null ? none : size.quantity(), measure);
    if (width != null) {
      w.step(
          Calculation.MARGIN,
          "Stated joint beyond what is needed",
          "stated joint - least grout width, not rounded; negative: too narrow",
          width.in(small) + "-" + expression,
          width.quantity().to(small).minus(least));
    }
    w.step(
        "least",
        "Least grout width",
        words + ", " + Rounding.words(measure),
        Rounding.expression(expression, measure),
        Rounding.up(least, measure));
  }
}
