package clearbed.calc.figure;

import clearbed.model.document.Origin;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Locale;

/**
 * A number that goes into a calculation, or the two ends it lies between.
 *
 * @param origin where the documents state it, or null
 * @param assumed true for a default of the rule set
 * @param basis the words as written, or the source of the default
 */
public record Given(Interval amount, Origin origin, boolean assumed, String basis) {

  /** A figure that somebody stated. */
  public static Given stated(Quantity quantity, Origin origin, String basis) {
    return new Given(Interval.of(quantity), origin, false, basis);
  }

  public static Given stated(Interval amount, Origin origin, String basis) {
    return new Given(amount, origin, false, basis);
  }

  /** A default of the rule set, with its source. */
  public static Given assumed(Quantity quantity, String basis) {
    return new Given(Interval.of(quantity), null, true, basis);
  }

  public static Given assumed(Interval amount, String basis) {
    return new Given(amount, null, true, basis);
  }

  public Quantity low() {
    return amount.low();
  }

  public Quantity high() {
    return amount.high();
  }

  /**
   * The same input, once it is sure to be of that dimension and above zero.
   *
   * @throws IllegalArgumentException naming the input otherwise
   */
  public Given positive(String label, Dimension dimension) {
    if (dimension(label, dimension).low().number() <= 0) {
      throw new IllegalArgumentException(label + " is " + amount + "; it must be above zero");
    }
    return this;
  }

  /** As {@link #positive}, but zero passes. */
  public Given notNegative(String label, Dimension dimension) {
    if (dimension(label, dimension).low().number() < 0) {
      throw new IllegalArgumentException(label + " is " + amount + "; it cannot be negative");
    }
    return this;
  }

  /** The same input, once it is sure to be of that dimension. */
  public Given of(String label, Dimension dimension) {
    return dimension(label, dimension);
  }

  private Given dimension(String label, Dimension dimension) {
    Unit unit = amount.low().unit();
    if (unit.dimension() != dimension) {
      throw new IllegalArgumentException(
          label + " is " + amount + ", which is no " + words(dimension));
    }
    return this;
  }

  private static String words(Dimension dimension) {
    return dimension.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  public Given in(Unit unit) {
    return new Given(amount.to(unit), origin, assumed, basis);
  }

  public Given at(Quantity end) {
    return new Given(Interval.of(end), origin, assumed, basis);
  }
}
