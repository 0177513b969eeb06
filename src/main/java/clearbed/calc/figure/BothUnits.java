package clearbed.calc.figure;

import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Writes quantities in both systems of units, as the trade reads them. */
public final class BothUnits {

  private static final Set<Unit> IMPERIAL =
      EnumSet.of(
          Unit.INCH,
          Unit.FOOT,
          Unit.SQUARE_FOOT,
          Unit.GALLON,
          Unit.PSI,
          Unit.POUND,
          Unit.FAHRENHEIT,
          Unit.FAHRENHEIT_DIFFERENCE,
          Unit.PER_FAHRENHEIT);

  private BothUnits() {}

  /** The unit of the other system, or empty for what is the same in both. */
  public static Optional<Unit> counterpart(Unit unit) {
    return Optional.ofNullable(
        switch (unit) {
          case INCH, MIL -> Unit.MILLIMETRE;
          case MILLIMETRE, CENTIMETRE -> Unit.INCH;
          case FOOT, YARD -> Unit.METRE;
          case METRE -> Unit.FOOT;
          case SQUARE_FOOT, SQUARE_INCH -> Unit.SQUARE_METRE;
          case SQUARE_METRE -> Unit.SQUARE_FOOT;
          case LITRE, MILLILITRE, CUBIC_METRE -> Unit.GALLON;
          case GALLON, CUBIC_FOOT -> Unit.LITRE;
          case PSI -> Unit.MEGAPASCAL;
          case PASCAL, KILOPASCAL, MEGAPASCAL, NEWTON_PER_SQUARE_MILLIMETRE -> Unit.PSI;
          case KELVIN, CELSIUS -> Unit.FAHRENHEIT;
          case FAHRENHEIT -> Unit.CELSIUS;
          case KELVIN_DIFFERENCE, CELSIUS_DIFFERENCE -> Unit.FAHRENHEIT_DIFFERENCE;
          case FAHRENHEIT_DIFFERENCE -> Unit.KELVIN_DIFFERENCE;
          case PER_KELVIN -> Unit.PER_FAHRENHEIT;
          case PER_FAHRENHEIT -> Unit.PER_KELVIN;
          case KILOGRAM -> Unit.POUND;
          case POUND -> Unit.KILOGRAM;
          case ONE, PERCENT, PERM, HOUR, DAY -> null;
        });
  }

  /**
   * The unit to show beside this one in a calculation; none beside metric ones that stand alone.
   */
  public static Optional<Unit> beside(Calculation calculation, Unit unit) {
    return counterpart(unit).filter(other -> !calculation.metric() || !IMPERIAL.contains(other));
  }

  /**
   * The spreadsheet formula that turns the number in a cell into one of the other system: {@code
   * B7*25.4}, {@code (B7+459.67)*5/9-273.15}.
   */
  public static String conversion(String cell, Unit from, Unit to) {
    double offset = Quantity.of(0, from).in(to);
    double slope = Quantity.of(1, from).in(to) - offset;
    if (Math.abs(offset) < 1e-9) return cell + WorkedFigure.factor(from, to);
    return cell + "*" + plain(slope) + (offset < 0 ? "-" : "+") + plain(Math.abs(offset));
  }

  private static String plain(double number) {
    return new BigDecimal(number).round(new MathContext(15)).stripTrailingZeros().toPlainString();
  }

  /** Its own system first: {@code 3/8 in (9.53 mm)}, {@code 12 ft (3.66 m)}. */
  public static String of(Quantity quantity) {
    if (quantity.unit() == Unit.ONE || quantity.unit() == Unit.PERCENT) {
      return Quantity.of(threeDigits(quantity.number()), quantity.unit()).toString();
    }
    String own = words(quantity);
    return counterpart(quantity.unit())
        .map(other -> own + " (" + words(quantity.to(other)) + ")")
        .orElse(own);
  }

  /** As a calculation shows it: metric figures that stand alone, else in both systems. */
  public static String of(Quantity quantity, Calculation calculation) {
    return calculation.metric() ? inMetric(quantity) : of(quantity);
  }

  /** The same for a system of units. */
  public static String of(Quantity quantity, Measure measure) {
    return measure.alone() ? inMetric(quantity) : of(quantity);
  }

  /** The same of an interval. */
  public static String of(Interval interval, Measure measure) {
    if (interval.isExact()) return of(interval.low(), measure);
    return of(interval.low(), measure) + " to " + of(interval.high(), measure);
  }

  private static String inMetric(Quantity quantity) {
    Unit other = counterpart(quantity.unit()).orElse(quantity.unit());
    return IMPERIAL.contains(other) || other == quantity.unit()
        ? words(quantity)
        : words(quantity.to(other));
  }

  /** The quantity, and the same in the unit of another: {@code 400 psi (2.76 MPa)}. */
  public static String inUnitOf(Quantity quantity, Quantity other) {
    return words(quantity) + " (" + words(quantity.to(other.unit())) + ")";
  }

  public static String of(Interval interval) {
    if (interval.isExact()) return of(interval.low());
    return of(interval.low()) + " to " + of(interval.high());
  }

  private static String words(Quantity quantity) {
    return switch (quantity.unit()) {
      case INCH -> inches(quantity.number());
      case PER_KELVIN, PER_FAHRENHEIT ->
          figure(quantity.number() * 1e6) + "e-6" + quantity.unit().symbol();
      default -> figure(quantity.number()) + " " + quantity.unit().symbol();
    };
  }

  /** Inches as a fraction where they are whole sixteenths, else to a thousandth. */
  static String inches(double inches) {
    if (inches == 0) return "0 in";
    double sixteenths = inches * 16;
    if (Math.abs(sixteenths - Math.rint(sixteenths)) > 1e-6 || inches < 0) {
      return String.format(Locale.ROOT, "%.3f in", inches);
    }
    long all = Math.round(sixteenths);
    return fraction(all / 16, all % 16) + " in";
  }

  private static String fraction(long whole, long sixteenths) {
    if (sixteenths == 0) return String.valueOf(whole);
    long part = sixteenths;
    long denominator = 16;
    while (part % 2 == 0) {
      part /= 2;
      denominator /= 2;
    }
    return (whole > 0 ? whole + "-" : "") + part + "/" + denominator;
  }

  private static double threeDigits(double number) {
    return Double.parseDouble(String.format(Locale.ROOT, "%.3g", number));
  }

  private static String figure(double number) {
    if (Math.abs(number) >= 1000) return Quantity.figure(Math.rint(number));
    return Quantity.figure(threeDigits(number));
  }
}
