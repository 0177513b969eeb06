package clearbed.calc.figure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Map;
import javax.measure.UnitConverter;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** Our units against those of an independent library, and the factors that formulas write out. */
class ConversionsTest {

  private static final javax.measure.Unit<?> POUND_FORCE =
      USCustomary.POUND.multiply(Units.METRE_PER_SQUARE_SECOND).multiply(980665).divide(100000);

  private static final Map<Unit, javax.measure.Unit<?>> THEIRS =
      Map.ofEntries(
          Map.entry(Unit.METRE, Units.METRE),
          Map.entry(Unit.MILLIMETRE, Units.METRE.divide(1000)),
          Map.entry(Unit.CENTIMETRE, Units.METRE.divide(100)),
          Map.entry(Unit.INCH, USCustomary.INCH),
          Map.entry(Unit.FOOT, USCustomary.FOOT),
          Map.entry(Unit.YARD, USCustomary.YARD),
          Map.entry(Unit.MIL, USCustomary.INCH.divide(1000)),
          Map.entry(Unit.SQUARE_METRE, Units.SQUARE_METRE),
          Map.entry(Unit.SQUARE_FOOT, USCustomary.SQUARE_FOOT),
          Map.entry(Unit.SQUARE_INCH, USCustomary.INCH.multiply(USCustomary.INCH)),
          Map.entry(Unit.CUBIC_METRE, Units.CUBIC_METRE),
          Map.entry(Unit.LITRE, Units.CUBIC_METRE.divide(1000)),
          Map.entry(Unit.MILLILITRE, Units.CUBIC_METRE.divide(1000000)),
          Map.entry(Unit.GALLON, USCustomary.GALLON_LIQUID),
          Map.entry(Unit.CUBIC_FOOT, USCustomary.CUBIC_FOOT),
          Map.entry(Unit.PASCAL, Units.PASCAL),
          Map.entry(Unit.KILOPASCAL, Units.PASCAL.multiply(1000)),
          Map.entry(Unit.MEGAPASCAL, Units.PASCAL.multiply(1000000)),
          Map.entry(Unit.PSI, POUND_FORCE.divide(USCustomary.INCH.multiply(USCustomary.INCH))),
          Map.entry(Unit.KELVIN, Units.KELVIN),
          Map.entry(Unit.CELSIUS, Units.CELSIUS),
          Map.entry(Unit.FAHRENHEIT, USCustomary.FAHRENHEIT),
          Map.entry(Unit.KELVIN_DIFFERENCE, Units.KELVIN),
          Map.entry(Unit.FAHRENHEIT_DIFFERENCE, USCustomary.RANKINE),
          Map.entry(Unit.PER_KELVIN, Units.KELVIN.inverse()),
          Map.entry(Unit.PER_FAHRENHEIT, USCustomary.RANKINE.inverse()),
          Map.entry(Unit.KILOGRAM, Units.KILOGRAM),
          Map.entry(Unit.POUND, USCustomary.POUND),
          Map.entry(Unit.HOUR, Units.HOUR),
          Map.entry(Unit.DAY, Units.DAY));

  /** Two units of one dimension. */
  record Pair(Unit from, Unit to) {}

  @Property
  void conversionsAgreeWithAnIndependentLibrary(
      @ForAll("pairs") Pair pair, @ForAll @DoubleRange(min = -1e6, max = 1e6) double number)
      throws javax.measure.IncommensurableException {
    UnitConverter theirs = THEIRS.get(pair.from).getConverterToAny(THEIRS.get(pair.to));
    double expected = theirs.convert(number);

    double found = Quantity.of(number, pair.from).in(pair.to);

    // A temperature near zero is the difference of two large numbers.
    assertThat(found).isCloseTo(expected, within(Math.abs(expected) * 1e-9 + 1e-7));
  }

  @Property
  void theFactorThatAFormulaWritesOutConverts(
      @ForAll("factors") Pair pair, @ForAll @DoubleRange(min = -1e3, max = 1e3) double number) {
    String factor = WorkedFigure.factor(pair.from, pair.to);
    Quantity quantity = Quantity.of(number, pair.from);

    double expected = quantity.in(pair.to);
    assertThat(apply(number, factor)).isCloseTo(expected, within(Math.abs(expected) * 1e-12));
  }

  private static double apply(double number, String factor) {
    double value = number;
    for (String part : factor.split("(?=[*/])")) {
      if (part.isEmpty()) continue;
      double operand = Double.parseDouble(part.substring(1));
      value = part.charAt(0) == '*' ? value * operand : value / operand;
    }
    return value;
  }

  @Provide
  Arbitrary<Pair> pairs() {
    Arbitrary<Unit> units = Arbitraries.of(THEIRS.keySet().stream().sorted().toList());
    return Combinators.combine(units, units)
        .as(Pair::new)
        .filter(pair -> pair.from.dimension() == pair.to.dimension());
  }

  @Provide
  Arbitrary<Pair> factors() {
    return pairs()
        .filter(pair -> pair.from.dimension() != clearbed.model.value.Dimension.TEMPERATURE);
  }
}
