package clearbed.calc.surface;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/**
 * Deflection of a span as a share of it, L/n.
 *
 * @param most deflection that the limit allows
 * @param stated deflection that the stated n allows
 * @param fit of the stated n: as stiff as the limit or stiffer
 */
public record Deflection(Interval most, Interval stated, Fit fit, Calculation calculation) {

  /** {@code span / n}, in the small unit of the measure. */
  public static Quantity of(Quantity span, double n, Measure measure) {
    if (!(n > 0)) throw new IllegalArgumentException("L/" + n + ": n must be above zero");
    return Quantity.of(span.in(measure.small()) / n, measure.small());
  }

  /**
   * Compares a stated L/n with a limit.
   *
   * @param n the n of L/n as stated, a plain number
   * @param limit the n that is asked for: 360, 480
   */
  public static Deflection of(
      CalculationSubject subject, Measure measure, Given span, Given n, Given limit) {
    span.positive("the span", Dimension.LENGTH);
    n.positive("the n of L/n", Dimension.RATIO);
    limit.positive("the n of the limit", Dimension.RATIO);
    double asked = limit.high().in(Unit.ONE);
    Interval most = span.amount().map(length -> of(length, asked, measure));
    // The stiffer end of a stated range deflects least.
    Interval stated =
        new Interval(
            of(span.low(), n.high().in(Unit.ONE), measure),
            of(span.high(), n.low().in(Unit.ONE), measure));
    return new Deflection(
        most, stated, fit(n, asked), calculation(subject, measure, span, n, limit));
  }

  private static Fit fit(Given n, double asked) {
    if (n.low().in(Unit.ONE) >= asked) return Fit.MEETS;
    return n.high().in(Unit.ONE) < asked ? Fit.FALLS_SHORT : Fit.DEPENDS;
  }

  private static Calculation calculation(
      CalculationSubject subject, Measure measure, Given span, Given n, Given limit) {
    Workings w = new Workings();
    Unit small = measure.small();
    WorkedFigure length = w.high("span", "Span", span);
    WorkedFigure ratio = w.low("n", "n of L/n as stated", n);
    WorkedFigure asked = w.high("limit", "n of the limit", limit);
    WorkedFigure stated =
        w.step(
            "stated",
            "Deflection at the stated L/n",
            "span ÷ n",
            length.in(small) + "/" + ratio.in(Unit.ONE),
            of(length.quantity(), ratio.as(Unit.ONE), measure));
    WorkedFigure most =
        w.step(
            "most",
            "Largest deflection allowed",
            "span ÷ n of the limit",
            length.in(small) + "/" + asked.in(Unit.ONE),
            of(length.quantity(), asked.as(Unit.ONE), measure));
    w.step(
        Calculation.MARGIN,
        "Room left under what is allowed",
        "largest deflection allowed - deflection; negative: not stiff enough",
        most.in(small) + "-" + stated.in(small),
        most.quantity().minus(stated.quantity()));
    return w.done(subject, "Deflection of the substrate");
  }
}
