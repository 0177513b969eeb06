package clearbed.calc.joint;

import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/**
 * Width, movement and capability of a sealant joint; the relation is that of ASTM C1472: movement
 * is the capability's share of the width that is left when the tolerance is taken off.
 */
public final class JointWidth {

  /**
   * A width no joint has, in inches or millimetres; keeps a strain finite where nothing is left.
   */
  private static final double LEAST = 1e-6;

  private JointWidth() {}

  /** {@code movement / capability + tolerance}, not rounded. */
  public static Quantity required(Quantity movement, Quantity capability, Quantity tolerance) {
    return movement.times(1 / capability.in(Unit.ONE)).plus(tolerance);
  }

  /** Movement over the width that is left after the tolerance, in percent. */
  public static Quantity strain(
      Quantity movement, Quantity width, Quantity tolerance, Measure measure) {
    Unit small = measure.small();
    double left = Math.max(width.in(small) - tolerance.in(small), LEAST);
    return Quantity.of(movement.in(small) / left * 100, Unit.PERCENT);
  }

  static String strainExpression(
      WorkedFigure movement, WorkedFigure width, WorkedFigure tolerance, Unit small) {
    String left = width.in(small) + "-" + tolerance.in(small);
    return movement.in(small) + "/MAX(" + left + ",0.000001)*100";
  }

  /**
   * The longest field whose movement the joint carries; zero when it carries none.
   *
   * @param other movement that does not grow with the length
   */
  public static Quantity largestSpacing(
      Quantity width,
      Quantity tolerance,
      Quantity capability,
      Quantity other,
      Quantity alpha,
      Quantity range,
      Measure measure) {
    Unit small = measure.small();
    double carried =
        (width.in(small) - tolerance.in(small)) * capability.in(Unit.ONE) - other.in(small);
    double perLength = alpha.in(Unit.PER_KELVIN) * range.in(Unit.KELVIN_DIFFERENCE);
    return Quantity.of(Math.max(0, carried) / perLength, small).to(measure.large());
  }
}
