package clearbed.calc.figure;

import clearbed.model.value.Unit;

/** The system of units that results are stated in. */
public enum Measure {
  INCH(Unit.INCH, Unit.FOOT, Unit.FAHRENHEIT_DIFFERENCE),
  METRIC(Unit.MILLIMETRE, Unit.METRE, Unit.KELVIN_DIFFERENCE),
  /** Metric, and nothing is said in inches beside it. */
  METRIC_ALONE(Unit.MILLIMETRE, Unit.METRE, Unit.KELVIN_DIFFERENCE);

  private final Unit small;
  private final Unit large;
  private final Unit difference;

  Measure(Unit small, Unit large, Unit difference) {
    this.small = small;
    this.large = large;
    this.difference = difference;
  }

  /** True where figures are written in this system and in no other. */
  public boolean alone() {
    return this == METRIC_ALONE;
  }

  /** The unit of joint widths and movements. */
  public Unit small() {
    return small;
  }

  /** The unit of spacings and runs. */
  public Unit large() {
    return large;
  }

  public Unit difference() {
    return difference;
  }

  /** The system that a unit belongs to; inch for units of neither. */
  public static Measure of(Unit unit) {
    return switch (unit) {
      case METRE, MILLIMETRE, CENTIMETRE, SQUARE_METRE -> METRIC;
      default -> INCH;
    };
  }
}
