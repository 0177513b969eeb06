package clearbed.model.value;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.measure.MetricPrefix;
import javax.measure.Unit;
import javax.measure.UnitConverter;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import systems.uom.common.USCustomary;
import tech.units.indriya.unit.Units;

/** Our conversions against an independent units library, and against published figures. */
class UnitsAgainstReferenceTest {
  private static final Unit<?> INCH = USCustomary.INCH;
  private static final Unit<?> POUND_FORCE =
      USCustomary.POUND.multiply(Units.METRE_PER_SQUARE_SECOND).multiply(9.80665);

  private static final Map<clearbed.model.value.Unit, Unit<?>> REFERENCE =
      Map.ofEntries(
          Map.entry(clearbed.model.value.Unit.METRE, Units.METRE),
          Map.entry(clearbed.model.value.Unit.MILLIMETRE, MetricPrefix.MILLI(Units.METRE)),
          Map.entry(clearbed.model.value.Unit.CENTIMETRE, MetricPrefix.CENTI(Units.METRE)),
          Map.entry(clearbed.model.value.Unit.INCH, USCustomary.INCH),
          Map.entry(clearbed.model.value.Unit.FOOT, USCustomary.FOOT),
          Map.entry(clearbed.model.value.Unit.YARD, USCustomary.YARD),
          Map.entry(clearbed.model.value.Unit.MIL, USCustomary.INCH.divide(1000)),
          Map.entry(clearbed.model.value.Unit.SQUARE_METRE, Units.SQUARE_METRE),
          Map.entry(clearbed.model.value.Unit.SQUARE_FOOT, USCustomary.FOOT.pow(2)),
          Map.entry(clearbed.model.value.Unit.SQUARE_INCH, INCH.pow(2)),
          Map.entry(clearbed.model.value.Unit.CUBIC_METRE, Units.CUBIC_METRE),
          Map.entry(clearbed.model.value.Unit.LITRE, Units.LITRE),
          Map.entry(clearbed.model.value.Unit.MILLILITRE, MetricPrefix.MILLI(Units.LITRE)),
          Map.entry(clearbed.model.value.Unit.GALLON, USCustomary.GALLON_LIQUID),
          Map.entry(clearbed.model.value.Unit.CUBIC_FOOT, USCustomary.FOOT.pow(3)),
          Map.entry(clearbed.model.value.Unit.PASCAL, Units.PASCAL),
          Map.entry(clearbed.model.value.Unit.KILOPASCAL, MetricPrefix.KILO(Units.PASCAL)),
          Map.entry(clearbed.model.value.Unit.MEGAPASCAL, MetricPrefix.MEGA(Units.PASCAL)),
          Map.entry(
              clearbed.model.value.Unit.NEWTON_PER_SQUARE_MILLIMETRE,
              Units.NEWTON.divide(MetricPrefix.MILLI(Units.METRE).pow(2))),
          Map.entry(clearbed.model.value.Unit.PSI, POUND_FORCE.divide(INCH.pow(2))),
          Map.entry(clearbed.model.value.Unit.KELVIN, Units.KELVIN),
          Map.entry(clearbed.model.value.Unit.CELSIUS, Units.CELSIUS),
          Map.entry(clearbed.model.value.Unit.FAHRENHEIT, USCustomary.FAHRENHEIT),
          Map.entry(clearbed.model.value.Unit.KELVIN_DIFFERENCE, Units.KELVIN),
          Map.entry(clearbed.model.value.Unit.CELSIUS_DIFFERENCE, Units.KELVIN),
          Map.entry(
              clearbed.model.value.Unit.FAHRENHEIT_DIFFERENCE, Units.KELVIN.multiply(5).divide(9)),
          Map.entry(clearbed.model.value.Unit.PER_KELVIN, Units.KELVIN.inverse()),
          Map.entry(
              clearbed.model.value.Unit.PER_FAHRENHEIT,
              Units.KELVIN.multiply(5).divide(9).inverse()),
          Map.entry(clearbed.model.value.Unit.KILOGRAM, Units.KILOGRAM),
          Map.entry(clearbed.model.value.Unit.POUND, USCustomary.POUND),
          Map.entry(
              clearbed.model.value.Unit.PERM,
              USCustomary.POUND
                  .divide(7000)
                  .divide(Units.HOUR)
                  .divide(USCustomary.FOOT.pow(2))
                  .divide(Units.PASCAL.multiply(3386.389))),
          Map.entry(clearbed.model.value.Unit.HOUR, Units.HOUR),
          Map.entry(clearbed.model.value.Unit.DAY, Units.DAY));

  @Test
  void every_unit_with_a_dimension_has_a_reference() {
    for (clearbed.model.value.Unit unit : clearbed.model.value.Unit.values()) {
      if (unit.dimension() != Dimension.RATIO) assertThat(REFERENCE).containsKey(unit);
    }
  }

  @Property(tries = 2000)
  void converts_as_the_reference_does(
      @ForAll("pairs") Pair pair, @ForAll @DoubleRange(min = -1e6, max = 1e6) double number)
      throws Exception {
    clearbed.model.value.Unit from = pair.from();
    clearbed.model.value.Unit to = pair.to();
    UnitConverter converter = REFERENCE.get(from).getConverterToAny(REFERENCE.get(to));
    double expected = converter.convert(number);
    double actual = Quantity.of(number, from).in(to);
    // A temperature near zero of its scale is the difference of two large numbers.
    double scale = Math.max(Math.abs(expected), from.dimension() == Dimension.TEMPERATURE ? 1 : 0);
    assertThat(Math.abs(actual - expected)).isLessThanOrEqualTo(1e-9 * Math.max(scale, 1e-300));
  }

  @Property(tries = 500)
  void converts_there_and_back(
      @ForAll("pairs") Pair pair,
      @ForAll @DoubleRange(min = 1e-3, max = 1e6) @Scale(3) double number) {
    clearbed.model.value.Unit from = pair.from();
    clearbed.model.value.Unit to = pair.to();
    Quantity there = Quantity.of(number, from).to(to);
    assertThat(there).isEqualByComparingTo(Quantity.of(number, from));
    assertThat(there.in(from)).isCloseTo(number, withinPercentage(1e-6));
  }

  /** Two units of one dimension. */
  record Pair(clearbed.model.value.Unit from, clearbed.model.value.Unit to) {}

  @Provide
  Arbitrary<Pair> pairs() {
    List<Pair> pairs = new ArrayList<>();
    for (clearbed.model.value.Unit from : REFERENCE.keySet()) {
      for (clearbed.model.value.Unit to : REFERENCE.keySet()) {
        if (from.dimension() == to.dimension()) pairs.add(new Pair(from, to));
      }
    }
    return Arbitraries.of(pairs);
  }

  /** Factors of NIST Special Publication 811 (2008), appendix B.8, as many digits as it prints. */
  @ParameterizedTest
  @CsvSource({
    "INCH, METRE, 0.0254", // exact
    "FOOT, METRE, 0.3048", // exact
    "YARD, METRE, 0.9144", // exact
    "MIL, METRE, 0.0000254", // "mil (0.001 in)", exact
    "SQUARE_FOOT, SQUARE_METRE, 0.09290304", // exact
    "SQUARE_INCH, SQUARE_METRE, 0.00064516", // exact
    "CUBIC_FOOT, CUBIC_METRE, 0.02831685",
    "GALLON, CUBIC_METRE, 0.003785412", // "gallon (U.S.)"
    "GALLON, LITRE, 3.785412",
    "PSI, PASCAL, 6894.757",
    "PSI, KILOPASCAL, 6.894757",
    "POUND, KILOGRAM, 0.45359237", // avoirdupois, exact
    "FAHRENHEIT_DIFFERENCE, KELVIN_DIFFERENCE, 0.5555556", // "degree Fahrenheit, interval"
    "HOUR, DAY, 0.04166667"
  })
  void agrees_with_the_published_factor(
      clearbed.model.value.Unit from, clearbed.model.value.Unit to, double factor) {
    // Seven digits are printed; half of the last one of 2.8... is 1.8e-5 %.
    assertThat(Quantity.of(1, from).in(to)).isCloseTo(factor, withinPercentage(2e-5));
  }

  /** NIST SP 811 (2008), B.8, "perm (0 °C)": 5.721 35 E-11 kilograms in a pascal, second, m². */
  @Test
  void a_perm_is_what_is_published() {
    assertThat(clearbed.model.value.Unit.PERM.toSi(1))
        .isCloseTo(5.72135e-11, withinPercentage(2e-5));
  }

  /** Formulas of NIST SP 811 (2008), B.8: t/°C = (t/°F - 32)/1.8; T/K = t/°C + 273.15. */
  @ParameterizedTest
  @CsvSource({
    "32, FAHRENHEIT, 0, CELSIUS",
    "212, FAHRENHEIT, 100, CELSIUS",
    "-40, FAHRENHEIT, -40, CELSIUS",
    "50, FAHRENHEIT, 10, CELSIUS",
    "0, CELSIUS, 273.15, KELVIN",
    "100, CELSIUS, 212, FAHRENHEIT"
  })
  void converts_temperatures_with_their_offset(
      double number,
      clearbed.model.value.Unit from,
      double expected,
      clearbed.model.value.Unit to) {
    assertThat(Quantity.of(number, from).in(to))
        .isCloseTo(expected, org.assertj.core.api.Assertions.within(1e-9));
  }

  @Test
  void a_difference_of_temperatures_has_no_offset() {
    Quantity range =
        Quantity.of(130, clearbed.model.value.Unit.FAHRENHEIT)
            .minus(Quantity.of(-10, clearbed.model.value.Unit.FAHRENHEIT));
    assertThat(range).isEqualTo(Quantity.of(140, clearbed.model.value.Unit.FAHRENHEIT_DIFFERENCE));
    assertThat(range.in(clearbed.model.value.Unit.KELVIN_DIFFERENCE))
        .isCloseTo(140 * 5.0 / 9, withinPercentage(1e-9));
    assertThat(
            Quantity.of(20, clearbed.model.value.Unit.CELSIUS)
                .minus(Quantity.of(50, clearbed.model.value.Unit.FAHRENHEIT))
                .in(clearbed.model.value.Unit.CELSIUS_DIFFERENCE))
        .isCloseTo(10, withinPercentage(1e-9));
  }

  @Test
  void quantities_of_two_dimensions_do_not_mix() {
    Quantity length = Quantity.of(1, clearbed.model.value.Unit.INCH);
    Quantity pressure = Quantity.of(1, clearbed.model.value.Unit.PSI);
    assertThatIllegalArgumentException().isThrownBy(() -> length.compareTo(pressure));
    assertThatIllegalArgumentException().isThrownBy(() -> length.plus(pressure));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                Quantity.of(50, clearbed.model.value.Unit.FAHRENHEIT)
                    .plus(Quantity.of(50, clearbed.model.value.Unit.FAHRENHEIT)));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Quantity.of(Double.NaN, clearbed.model.value.Unit.INCH));
  }
}
