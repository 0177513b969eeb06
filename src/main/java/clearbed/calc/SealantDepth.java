package clearbed.calc;

import clearbed.model.Calculation;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.List;
import java.util.Optional;

/**
 * Depth of sealant in a joint: half the width, not under 1/8 in (TCNA Handbook EJ171, as reported).
 *
 * @param depth to be built
 * @param fit of the stated depth: not under 1/8 in and not over {@code depth}
 */
public record SealantDepth(Interval depth, Fit fit, Calculation calculation) {

  /** Never under this. */
  public static final Quantity LEAST = Quantity.of(0.125, Unit.INCH);

  private static final String SOURCE =
      "TCNA Handbook EJ171, as reported: not under 1/8 in, not over half the width [R]";

  /** The depth for a joint width, in the small unit of the measure. */
  public static Quantity depth(Quantity width, Measure measure) {
    Unit small = measure.small();
    return Quantity.of(Math.max(width.in(small) / 2, LEAST.in(small)), small);
  }

  public static SealantDepth of(
      Subject subject, Measure measure, Given width, Optional<Given> stated) {
    width.positive("the joint width", Dimension.LENGTH);
    stated.ifPresent(given -> given.positive("the sealant depth", Dimension.LENGTH));
    Interval depth = width.amount().map(w -> depth(w, measure));
    Fit fit = stated.map(given -> fit(given.amount(), depth)).orElse(Fit.UNKNOWN);
    return new SealantDepth(depth, fit, calculation(subject, measure, width));
  }

  private static Fit fit(Interval stated, Interval depth) {
    // The widest joint is the most lenient to a deep bead, the narrowest the least.
    List<Boolean> ends =
        List.of(
            within(stated.low(), depth.high()) && within(stated.high(), depth.high()),
            within(stated.low(), depth.low()) && within(stated.high(), depth.low()));
    if (ends.stream().allMatch(end -> end)) return Fit.MEETS;
    boolean never = stated.high().compareTo(LEAST) < 0 || stated.low().compareTo(depth.high()) > 0;
    return never ? Fit.FALLS_SHORT : Fit.DEPENDS;
  }

  private static boolean within(Quantity stated, Quantity most) {
    return stated.compareTo(LEAST) >= 0 && stated.compareTo(most) <= 0;
  }

  private static Calculation calculation(Subject subject, Measure measure, Given width) {
    Workings w = new Workings();
    Unit small = measure.small();
    Figure joint = w.high("width", "Joint width", width);
    Figure least = w.assumed("least", "Never under", LEAST, SOURCE);
    w.step(
        "depth",
        "Depth of sealant",
        "half the width, not under the least",
        "MAX(" + joint.in(small) + "/2," + least.in(small) + ")",
        depth(joint.quantity(), measure));
    return w.done(subject, "Depth of sealant in a joint");
  }
}
