package clearbed.calc.figure;

import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.function.UnaryOperator;

/**
 * A quantity known to lie between two figures, both included.
 *
 * @param low not above {@code high}; of the same dimension
 */
public record Interval(Quantity low, Quantity high) {
  public Interval {
    if (low.compareTo(high) > 0) {
      throw new IllegalArgumentException(low + " to " + high + ": the lower end is the greater");
    }
  }

  public static Interval of(Quantity exact) {
    return new Interval(exact, exact);
  }

  /** The two ends of a stated amount; its bound (at least, at most) is the caller's to judge. */
  public static Interval of(Content.Amount amount) {
    return between(amount.low(), amount.high());
  }

  /** The interval between two quantities, whichever is the greater. */
  public static Interval between(Quantity one, Quantity other) {
    return one.compareTo(other) <= 0 ? new Interval(one, other) : new Interval(other, one);
  }

  /** The narrowest interval that holds both. */
  public Interval and(Interval other) {
    return new Interval(
        low.compareTo(other.low) <= 0 ? low : other.low,
        high.compareTo(other.high) >= 0 ? high : other.high);
  }

  public boolean isExact() {
    return low.compareTo(high) == 0;
  }

  public Interval to(Unit unit) {
    return new Interval(low.to(unit), high.to(unit));
  }

  /** Both ends put through a function that keeps their order. */
  public Interval map(UnaryOperator<Quantity> rising) {
    return new Interval(rising.apply(low), rising.apply(high));
  }

  @Override
  public String toString() {
    return isExact() ? low.toString() : low + " to " + high;
  }
}
