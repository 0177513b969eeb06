package clearbed.calc.figure;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.math.BigDecimal;
import java.math.MathContext;

/**
 * An input or step of a calculation under way, and how later formulas write it.
 *
 * @param name as it stands in braces
 */
public record WorkedFigure(String name, Quantity quantity) {

  /** The number in another unit. */
  public double as(Unit unit) {
    return quantity.in(unit);
  }

  /** The formula text that gives the number in another unit, the factor written out. */
  public String in(Unit unit) {
    String factor = factor(quantity.unit(), unit);
    return factor.isEmpty() ? "{" + name + "}" : "({" + name + "}" + factor + ")";
  }

  /** {@code *12}, {@code /25.4}, {@code *5/9}: from one unit to another without offset. */
  static String factor(Unit from, Unit to) {
    if (from == to) return "";
    double factor = Quantity.of(1, from).in(to);
    if (same(factor, 1)) return "";
    if (isShort(factor)) return "*" + plain(factor, 8);
    if (isShort(1 / factor)) return "/" + plain(1 / factor, 8);
    double ninths = factor * 9;
    if (same(ninths, Math.rint(ninths))) return "*" + plain(ninths, 8) + "/9";
    return "*" + plain(factor, 17);
  }

  private static boolean isShort(double number) {
    return same(number, new BigDecimal(plain(number, 8)).doubleValue());
  }

  private static boolean same(double one, double other) {
    return Math.abs(one - other) <= 1e-13 * Math.abs(other);
  }

  private static String plain(double number, int digits) {
    BigDecimal rounded = new BigDecimal(number).round(new MathContext(digits));
    return rounded.stripTrailingZeros().toPlainString();
  }
}
