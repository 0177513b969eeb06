package clearbed.cli;

import clearbed.calc.Interval;
import clearbed.calc.Measure;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.Locale;

/** Writes quantities in both systems of units, as the trade reads them. */
final class JointFormat {

  private JointFormat() {}

  /** Its own system first: {@code 3/8 in (9.5 mm)}, {@code 12 ft (3.66 m)}. */
  static String both(Quantity quantity) {
    return switch (quantity.unit().dimension()) {
      case LENGTH -> length(quantity);
      case TEMPERATURE_DIFFERENCE ->
          pair(quantity, Unit.FAHRENHEIT_DIFFERENCE, Unit.KELVIN_DIFFERENCE);
      case EXPANSION -> expansion(quantity);
      case RATIO -> Quantity.of(threeDigits(quantity.number()), quantity.unit()).toString();
      default -> quantity.toString();
    };
  }

  static String both(Interval interval) {
    if (interval.isExact()) return both(interval.low());
    return both(interval.low()) + " to " + both(interval.high());
  }

  private static String length(Quantity quantity) {
    boolean large = quantity.unit() == Unit.FOOT || quantity.unit() == Unit.METRE;
    String inch = large ? figure(quantity.in(Unit.FOOT)) + " ft" : inches(quantity.in(Unit.INCH));
    String metric =
        large
            ? figure(quantity.in(Unit.METRE)) + " m"
            : figure(quantity.in(Unit.MILLIMETRE)) + " mm";
    boolean inchFirst = Measure.of(quantity.unit()) == Measure.INCH;
    return inchFirst ? inch + " (" + metric + ")" : metric + " (" + inch + ")";
  }

  private static String expansion(Quantity quantity) {
    String kelvin = millionths(quantity.in(Unit.PER_KELVIN)) + "/K";
    String fahrenheit = millionths(quantity.in(Unit.PER_FAHRENHEIT)) + "/°F";
    return quantity.unit() == Unit.PER_FAHRENHEIT
        ? fahrenheit + " (" + kelvin + ")"
        : kelvin + " (" + fahrenheit + ")";
  }

  private static String millionths(double number) {
    return figure(number * 1e6) + "e-6";
  }

  private static String pair(Quantity quantity, Unit inch, Unit metric) {
    boolean inchFirst = quantity.unit() == inch;
    Unit first = inchFirst ? inch : metric;
    Unit second = inchFirst ? metric : inch;
    return in(quantity, first) + " (" + in(quantity, second) + ")";
  }

  private static String in(Quantity quantity, Unit unit) {
    return figure(quantity.in(unit)) + " " + unit.symbol();
  }

  /** Inches as a fraction where they are whole sixteenths, else to a thousandth. */
  private static String inches(double inches) {
    if (inches == 0) return "0 in";
    double sixteenths = inches * 16;
    if (Math.abs(sixteenths - Math.rint(sixteenths)) > 1e-6 || inches < 0) {
      return String.format(Locale.ROOT, "%.3f in", inches);
    }
    long all = Math.round(sixteenths);
    long whole = all / 16;
    long part = all % 16;
    if (part == 0) return whole + " in";
    long denominator = 16;
    while (part % 2 == 0) {
      part /= 2;
      denominator /= 2;
    }
    return (whole > 0 ? whole + "-" : "") + part + "/" + denominator + " in";
  }

  private static double threeDigits(double number) {
    return Double.parseDouble(String.format(Locale.ROOT, "%.3g", number));
  }

  private static String figure(double number) {
    if (Math.abs(number) >= 1000) return Quantity.figure(Math.rint(number));
    return Quantity.figure(threeDigits(number));
  }
}
