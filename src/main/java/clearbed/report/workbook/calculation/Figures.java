package clearbed.report.workbook.calculation;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;

/** How many places a figure in a unit is worth showing; the cell holds them all. */
final class Figures {
  private Figures() {}

  /** A fraction as a tape measure has it: 1/8, 1 1/2. */
  static final String FRACTION = "# ?/??";

  /** Tape measures go no finer than this. */
  private static final int FINEST = 64;

  /** True for a part of an inch that a tape measure has a mark for. */
  static boolean isOnTape(Quantity quantity) {
    double marks = quantity.number() * FINEST;
    boolean onMark = Math.abs(marks - Math.rint(marks)) < 1e-6;
    return quantity.unit() == Unit.INCH
        && onMark
        && quantity.number() != Math.rint(quantity.number());
  }

  static String format(Unit unit) {
    return switch (unit) {
      case INCH, MIL -> "0.0000";
      case FOOT, YARD, MILLIMETRE, CENTIMETRE, SQUARE_METRE, LITRE, GALLON -> "0.00";
      case METRE -> "0.000";
      case PERCENT, KILOGRAM, POUND, SQUARE_FOOT -> "0.0";
      case FAHRENHEIT_DIFFERENCE, KELVIN_DIFFERENCE, CELSIUS_DIFFERENCE -> "0.0";
      case FAHRENHEIT, CELSIUS, KELVIN -> "0.0";
      case PER_KELVIN, PER_FAHRENHEIT -> "0.00E+00";
      default -> "0.###";
    };
  }
}
