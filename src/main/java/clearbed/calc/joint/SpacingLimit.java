package clearbed.calc.joint;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.calc.figure.Workings;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.report.Calculation;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Set;

/**
 * A stated joint spacing against the widest that a guideline gives for the exposure.
 *
 * @param widest that the guideline gives
 * @param fit of the stated spacing
 */
public record SpacingLimit(Quantity widest, Fit fit, Calculation calculation) {
  private static final Set<Unit> METRIC = Set.of(Unit.METRE, Unit.MILLIMETRE, Unit.CENTIMETRE);

  /** 12 ft are written 3.66 m and 3.7 m: the customary figure, rounded to a tenth of a metre. */
  private static final double ROUNDED = 1.012;

  public static SpacingLimit of(
      CalculationSubject subject,
      Measure measure,
      Given stated,
      MovementGuideline.ExposureRule rule) {
    stated.positive("the joint spacing", Dimension.LENGTH);
    Quantity widest = rule.spacing().high();
    return new SpacingLimit(
        widest, fit(stated, widest), calculation(subject, measure, stated, rule));
  }

  private static Fit fit(Given stated, Quantity widest) {
    boolean metric = METRIC.contains(stated.high().unit()) && !METRIC.contains(widest.unit());
    Quantity most = metric ? Quantity.of(widest.number() * ROUNDED, widest.unit()) : widest;
    if (stated.high().compareTo(most) <= 0) return Fit.MEETS;
    return stated.low().compareTo(most) > 0 ? Fit.FALLS_SHORT : Fit.DEPENDS;
  }

  private static Calculation calculation(
      CalculationSubject subject,
      Measure measure,
      Given stated,
      MovementGuideline.ExposureRule rule) {
    Workings w = new Workings();
    Unit large = measure.large();
    WorkedFigure spacing = w.high("stated_spacing", "Joint spacing", stated);
    WorkedFigure widest =
        w.assumed(
            "widest",
            "Widest spacing, " + rule.label(),
            rule.spacing().high().to(large),
            rule.source());
    w.step(
        Calculation.MARGIN,
        "Room left under the widest spacing",
        "widest spacing - stated spacing; negative: too far apart",
        widest.in(large) + "-" + spacing.in(large),
        widest.quantity().minus(spacing.quantity()));
    w.step(
        "spacing_to_build",
        "Largest spacing to build",
        "the smaller of the two",
        "MIN(" + spacing.in(large) + "," + widest.in(large) + ")",
        MovementGuideline.smaller(spacing.quantity().to(large), widest.quantity()));
    return w.done(subject, "Spacing of movement joints");
  }
}
