package clearbed.model.value;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;

/**
 * A number with its unit. Quantities of different dimension cannot be added or compared.
 *
 * @param number in {@code unit}; finite
 */
public record Quantity(double number, Unit unit) implements Comparable<Quantity> {

  /**
   * Relative difference below which two figures are the same figure, written in two units or
   * rounded once.
   */
  private static final double SAME = 1e-9;

  public Quantity {
    if (!Double.isFinite(number)) throw new IllegalArgumentException("not a number: " + number);
    if (unit == null) throw new IllegalArgumentException("a quantity needs a unit");
  }

  public static Quantity of(double number, Unit unit) {
    return new Quantity(number, unit);
  }

  /**
   * The same quantity in another unit.
   *
   * @throws IllegalArgumentException when the dimensions differ
   */
  public Quantity to(Unit other) {
    requireSame(other);
    return other == unit ? this : new Quantity(other.fromSi(unit.toSi(number)), other);
  }

  /** The number in another unit of the same dimension. */
  public double in(Unit other) {
    return to(other).number();
  }

  /** The sum, in this quantity's unit. Temperatures cannot be added; their differences can. */
  public Quantity plus(Quantity other) {
    if (unit.dimension() == Dimension.TEMPERATURE) {
      throw new IllegalArgumentException("temperatures cannot be added");
    }
    return new Quantity(number + other.in(unit), unit);
  }

  public Quantity minus(Quantity other) {
    if (unit.dimension() == Dimension.TEMPERATURE) {
      Unit difference =
          unit == Unit.FAHRENHEIT ? Unit.FAHRENHEIT_DIFFERENCE : Unit.KELVIN_DIFFERENCE;
      return new Quantity(number - other.in(unit), difference);
    }
    return new Quantity(number - other.in(unit), unit);
  }

  public Quantity times(double factor) {
    return new Quantity(number * factor, unit);
  }

  @Override
  public int compareTo(Quantity other) {
    double mine = unit.toSi(number);
    requireSame(other.unit);
    double theirs = other.unit.toSi(other.number);
    double scale = Math.max(Math.abs(mine), Math.abs(theirs));
    return Math.abs(mine - theirs) <= scale * SAME ? 0 : Double.compare(mine, theirs);
  }

  /** The number without needless digits, and the unit: {@code 400 psi}, {@code 0.25 in}. */
  @Override
  public String toString() {
    String figure = figure(number);
    if (unit == Unit.ONE) return figure;
    return unit == Unit.PERCENT ? figure + " %" : figure + " " + unit.symbol();
  }

  /**
   * A number as a reader would write it: at most six significant digits, no exponent for ordinary
   * sizes.
   */
  public static String figure(double number) {
    if (number == 0) return "0";
    double size = Math.abs(number);
    BigDecimal rounded = new BigDecimal(number).round(new MathContext(6)).stripTrailingZeros();
    if (size < 1e-4 || size >= 1e9) return String.format(Locale.ROOT, "%.4g", number);
    return rounded.toPlainString();
  }

  private void requireSame(Unit other) {
    if (other.dimension() != unit.dimension()) {
      throw new IllegalArgumentException(
          "cannot take "
              + unit.symbol()
              + " ("
              + unit.dimension()
              + ") for "
              + other.symbol()
              + " ("
              + other.dimension()
              + ")");
    }
  }
}
