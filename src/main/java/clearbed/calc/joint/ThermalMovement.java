package clearbed.calc.joint;

import clearbed.calc.figure.Measure;
import clearbed.calc.figure.WorkedFigure;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/** Change of length by change of temperature, unrestrained. */
public final class ThermalMovement {

  private ThermalMovement() {}

  /**
   * {@code alpha * length * range}, in the small unit of the measure.
   *
   * @throws IllegalArgumentException when a dimension is wrong; a temperature is no difference
   */
  public static Quantity free(Quantity alpha, Quantity length, Quantity range, Measure measure) {
    require(alpha, Dimension.EXPANSION);
    require(range, Dimension.TEMPERATURE_DIFFERENCE);
    double strain = alpha.in(Unit.PER_KELVIN) * range.in(Unit.KELVIN_DIFFERENCE);
    return Quantity.of(strain * length.in(measure.small()), measure.small());
  }

  /** What the tile moves past its substrate, without sign. */
  public static Quantity differential(Quantity tile, Quantity substrate) {
    return Quantity.of(Math.abs(tile.minus(substrate).number()), tile.unit());
  }

  /** The formula text of {@link #free}. */
  static String expression(
      WorkedFigure alpha, WorkedFigure length, WorkedFigure range, Measure measure) {
    return "{" + alpha.name() + "}*" + length.in(measure.small()) + "*" + range.in(degree(alpha));
  }

  private static Unit degree(WorkedFigure alpha) {
    return alpha.quantity().unit() == Unit.PER_FAHRENHEIT
        ? Unit.FAHRENHEIT_DIFFERENCE
        : Unit.KELVIN_DIFFERENCE;
  }

  private static void require(Quantity quantity, Dimension dimension) {
    if (quantity.unit().dimension() != dimension) {
      throw new IllegalArgumentException(quantity + " is no " + dimension);
    }
  }
}
