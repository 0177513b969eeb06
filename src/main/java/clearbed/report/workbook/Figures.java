package clearbed.report.workbook;

import clearbed.model.Unit;

/** How many places a figure in a unit is worth showing; the cell holds them all. */
final class Figures {
  private Figures() {}

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
