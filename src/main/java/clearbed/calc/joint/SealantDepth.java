package clearbed.calc.joint;

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
import java.util.Optional;

/**
 * Depth of sealant in a joint: half the width, not under 1/8 in (TCNA Handbook EJ171, as reported),
 * up to the width or 1/4 in, whichever is more, as makers of sealants ask for it.
 *
 * @param depth to be built, the least that serves
 * @param fit of the stated depth: from about {@code depth} up to the deepest
 */
public record SealantDepth(Interval depth, Fit fit, Calculation calculation) {

  /** What sealants are laid in the narrowest joints, too, by their makers' data sheets. */
  private static final Quantity MAKERS = Quantity.of(0.25, Unit.INCH);

  /** Never under this. */
  public static final Quantity LEAST = Quantity.of(0.125, Unit.INCH);

  /**
   * Half a width is seldom a round figure: an eighth of the joint's width less is the same depth.
   */
  private static final double SHALLOWER = 0.13;

  /** Half a millimetre or a thirty-second of an inch more is rounding; beyond that it is deeper. */
  private static final double DEEPER_MM = 0.8;

  /** 3 mm is how 1/8 in (3.175 mm) is written. */
  private static final double ROUNDED = 0.94;

  private static final String SOURCE =
      "TCNA Handbook EJ171, as reported: half the width, not under 1/8 in [R]";

  private static final String METRIC_SOURCE =
      "half the width: sealant makers' data sheets [R]; not under 3 mm: from memory [M]";

  private static final String MAKERS_METRIC =
      "sealant makers' data sheets and a handbook of sealants: as deep as wide up to 12 mm and in"
          + " water, nowhere under 6 mm [R]";

  private static final String MAKERS_SOURCE =
      "sealant makers' data sheets and a handbook of sealants: as deep as wide up to 1/2 in and in"
          + " water, nowhere under 1/4 in [R]";

  /** Never under this: 1/8 in, which metric documents write as 3 mm. */
  public static Quantity least(Measure measure) {
    return measure.alone() ? Quantity.of(3, Unit.MILLIMETRE) : LEAST;
  }

  private static Quantity makers(Measure measure) {
    return measure.alone() ? Quantity.of(6, Unit.MILLIMETRE) : MAKERS;
  }

  /** The depth for a joint width, in the small unit of the measure. */
  public static Quantity depth(Quantity width, Measure measure) {
    Unit small = measure.small();
    return Quantity.of(Math.max(width.in(small) / 2, least(measure).in(small)), small);
  }

  /** As deep as the joint is wide, or 1/4 in where that is more. */
  public static Quantity deepest(Quantity width, Measure measure) {
    Unit small = measure.small();
    return Quantity.of(Math.max(width.in(small), makers(measure).in(small)), small);
  }

  /**
   * Judges a depth for a joint of that width.
   *
   * @param stated the depth as stated; its ends are judged by the widths at the same end
   */
  public static SealantDepth of(
      CalculationSubject subject, Measure measure, Given width, Optional<Given> stated) {
    width.positive("the joint width", Dimension.LENGTH);
    stated.ifPresent(given -> given.positive("the sealant depth", Dimension.LENGTH));
    Interval depth = width.amount().map(w -> depth(w, measure));
    Fit fit = stated.map(given -> fit(given.amount(), width.amount())).orElse(Fit.UNKNOWN);
    return new SealantDepth(depth, fit, calculation(subject, measure, width, stated));
  }

  /** True when the depth is too thin for a joint of any width. */
  public static boolean tooThin(Quantity depth) {
    return depth.compareTo(LEAST.times(ROUNDED)) < 0;
  }

  private static Fit fit(Interval stated, Interval width) {
    boolean low = suits(stated.low(), width.low());
    boolean high = suits(stated.high(), width.high());
    if (low && high) return Fit.MEETS;
    boolean somewhere =
        low || high || suits(stated.low(), width.high()) || suits(stated.high(), width.low());
    // A figure that is too deep for the narrowest joint and too thin for the widest suits one
    // between.
    boolean between =
        stated.high().times(2).compareTo(width.low()) >= 0
            && stated.low().times(2).compareTo(width.high()) <= 0
            && !tooThin(stated.high());
    return somewhere || between ? Fit.DEPENDS : Fit.FALLS_SHORT;
  }

  private static boolean suits(Quantity depth, Quantity width) {
    if (tooThin(depth)) return false;
    double stated = depth.in(Unit.MILLIMETRE);
    double least = depth(width, Measure.METRIC).number();
    double shallower = Math.max(width.in(Unit.MILLIMETRE) * SHALLOWER, 0.5);
    return stated >= least - shallower
        && stated <= deepest(width, Measure.METRIC).number() + DEEPER_MM;
  }

  private static Calculation calculation(
      CalculationSubject subject, Measure measure, Given width, Optional<Given> stated) {
    Workings w = new Workings();
    Unit small = measure.small();
    WorkedFigure joint = w.high("width", "Joint width", width);
    WorkedFigure least =
        w.assumed("least", "Never under", least(measure), measure.alone() ? METRIC_SOURCE : SOURCE);
    WorkedFigure depth =
        w.step(
            "depth",
            "Depth of sealant",
            "half the width, not under the least",
            "MAX(" + joint.in(small) + "/2," + least.in(small) + ")",
            depth(joint.quantity(), measure));
    WorkedFigure makers =
        w.assumed(
            "makers",
            "Never under, by makers of sealants",
            makers(measure),
            measure.alone() ? MAKERS_METRIC : MAKERS_SOURCE);
    w.step(
        "deepest",
        "Deepest that serves",
        "the width, or what makers of sealants ask for",
        "MAX(" + joint.in(small) + "," + makers.in(small) + ")",
        deepest(joint.quantity(), measure));
    stated.ifPresent(given -> difference(w, depth, given, small));
    return w.done(subject, "Depth of sealant in a joint");
  }

  private static void difference(Workings w, WorkedFigure depth, Given stated, Unit small) {
    WorkedFigure own = w.high("stated", "Depth of sealant as stated", stated);
    w.step(
        "difference",
        "Stated depth beyond that",
        "stated depth - depth of sealant; negative: too thin",
        own.in(small) + "-" + depth.in(small),
        own.quantity().to(small).minus(depth.quantity()));
  }
}
