package clearbed.recognise.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.List;
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
import org.junit.jupiter.params.provider.ValueSource;

class QuantitiesTest {

  private static Content.Amount only(String text) {
    List<Quantities.Found> found =
        Quantities.find(text).stream().filter(f -> !f.restates()).toList();
    assertThat(found).as(text).hasSize(1);
    assertThat(found.get(0).content()).as(text).isInstanceOf(Content.Amount.class);
    return (Content.Amount) found.get(0).content();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "400 psi | 400 | PSI",
        "2.76 MPa | 2.76 | MEGAPASCAL",
        "2,76 MPa | 2.76 | MEGAPASCAL",
        "2.8 N/mm² | 2.8 | NEWTON_PER_SQUARE_MILLIMETRE",
        "1/8 in | 0.125 | INCH",
        "1/8\" | 0.125 | INCH",
        "1/8” | 0.125 | INCH",
        "⅜ in. | 0.375 | INCH",
        "1½ inches | 1.5 | INCH",
        "1 1/2 in | 1.5 | INCH",
        "1-1/2 in | 1.5 | INCH",
        "3\u00A0mm | 3 | MILLIMETRE",
        "3\u202Fmm | 3 | MILLIMETRE",
        "12'-6\" | 12.5 | FOOT",
        "12 ft 6 in | 12.5 | FOOT",
        "12’ 6” | 12.5 | FOOT",
        "20'-0\" | 20 | FOOT",
        "95 % | 95 | PERCENT",
        "95 percent | 95 | PERCENT",
        "50 deg. F | 50 | FAHRENHEIT",
        "50°F | 50 | FAHRENHEIT",
        "10 °C | 10 | CELSIUS",
        "-10 °C | -10 | CELSIUS",
        "10 sq. ft. | 10 | SQUARE_FOOT",
        "1,000 sq ft | 1000 | SQUARE_FOOT",
        "72 hours | 72 | HOUR",
        "21 days | 21 | DAY"
      })
  void reads_a_figure_and_its_unit(String text, double number, Unit unit) {
    Content.Amount amount = only(text.trim());
    assertThat(amount.low().unit()).isEqualTo(unit);
    assertThat(amount.low().number()).isCloseTo(number, within(1e-9));
    assertThat(amount.high()).isEqualTo(amount.low());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "not less than 400 psi | AT_LEAST",
        "at least 400 psi | AT_LEAST",
        "minimum 400 psi | AT_LEAST",
        "400 psi minimum | AT_LEAST",
        "400 psi min. | AT_LEAST",
        "400 psi or more | AT_LEAST",
        "≥ 400 psi | AT_LEAST",
        "greater than 400 psi | ABOVE",
        "in excess of 400 psi | ABOVE",
        "> 400 psi | ABOVE",
        "not more than 400 psi | AT_MOST",
        "maximum of 400 psi | AT_MOST",
        "400 psi max. | AT_MOST",
        "up to 400 psi | AT_MOST",
        "≤ 400 psi | AT_MOST",
        "less than 400 psi | BELOW",
        "under 400 psi | BELOW",
        "400 psi | EXACT"
      })
  void reads_how_the_figure_is_meant(String text, Bound bound) {
    assertThat(only(text.trim()).bound()).isEqualTo(bound);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "400 psi [2.76 MPa]",
        "400 psi (2.76 MPa)",
        "400 psi / 2.76 MPa",
        "400 psi minimum (2.76 MPa)",
        "400 psi (approx. 2.76 MPa)"
      })
  void a_second_unit_restates_the_first(String text) {
    List<Quantities.Found> found = Quantities.find(text);
    assertThat(found).hasSize(2);
    assertThat(found.get(0).restates()).isFalse();
    assertThat(found.get(1).restates()).isTrue();
    assertThat(((Content.Amount) found.get(1).content()).low())
        .isEqualTo(Quantity.of(2.76, Unit.MEGAPASCAL));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "1/16 to 1/8 in | 0.0625 | 0.125 | INCH",
        "1/16\" - 1/8\" | 0.0625 | 0.125 | INCH",
        "1/16–1/8 in | 0.0625 | 0.125 | INCH",
        "8 to 12 ft | 8 | 12 | FOOT",
        "8-12 ft | 8 | 12 | FOOT",
        "50 to 100 °F | 50 | 100 | FAHRENHEIT",
        "between 50 and 100 deg F | 50 | 100 | FAHRENHEIT",
        "-10 to 150 °F | -10 | 150 | FAHRENHEIT"
      })
  void reads_a_range(String text, double low, double high, Unit unit) {
    Content.Amount amount = only(text.trim());
    assertThat(amount.low()).isEqualTo(Quantity.of(low, unit));
    assertThat(amount.high()).isEqualTo(Quantity.of(high, unit));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '~',
      value = {
        "12 x 24 in | 12 in x 24 in",
        "12\" x 24\" | 12 in x 24 in",
        "12” × 24” | 12 in x 24 in",
        "300 x 600 x 8 mm | 300 mm x 600 mm x 8 mm",
        "1 by 1 in | 1 in x 1 in",
        "1-1/2 x 3 in | 1.5 in x 3 in",
        "½ in x ½ in | 0.5 in x 0.5 in",
        "12 in x 24 in x 8 mm | 12 in x 24 in x 8 mm",
        "2 cm x 2 cm | 2 cm x 2 cm"
      })
  void reads_sides_multiplied(String text, String expected) {
    List<Quantities.Found> found = Quantities.find(text.trim());
    assertThat(found).hasSize(1);
    assertThat(found.get(0).content().text()).isEqualTo(expected.trim());
  }

  @Test
  void a_size_without_unit_takes_that_of_its_header() {
    assertThat(Quantities.unitOfHeader("Size (mm)")).isEqualTo(Unit.MILLIMETRE);
    assertThat(Quantities.unitOfHeader("Bond, psi")).isEqualTo(Unit.PSI);
    assertThat(Quantities.unitOfHeader("Grout joint mm")).isEqualTo(Unit.MILLIMETRE);
    assertThat(Quantities.unitOfHeader("Movement joints at m")).isEqualTo(Unit.METRE);
    assertThat(Quantities.unitOfHeader("TEMP RANGE °F")).isEqualTo(Unit.FAHRENHEIT);
    assertThat(Quantities.unitOfHeader("Joint, in., not over")).isEqualTo(Unit.INCH);
    assertThat(Quantities.unitOfHeader("Size, mm (length x width)")).isEqualTo(Unit.MILLIMETRE);
    assertThat(Quantities.unitOfHeader("Bond psi [28 days]")).isEqualTo(Unit.PSI);
    assertThat(Quantities.unitOfHeader("Grout (colour by architect)")).isNull();
    assertThat(Quantities.unitOfHeader("Size")).isNull();
    assertThat(Quantities.unitOfHeader("Set in")).isNull();
    assertThat(Quantities.size("300 x 600", Unit.MILLIMETRE).orElseThrow().text())
        .isEqualTo("300 mm x 600 mm");
    assertThat(Quantities.size("300 x 600", null)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "ANSI A118.4", "GT-1", "Section 09 30 00", "2.3 B.1", "in", "ft of"})
  void takes_no_number_for_a_figure_that_has_none(String text) {
    assertThat(Quantities.find(text)).as(text).isEmpty();
  }

  @Test
  void a_rise_of_temperature_is_no_temperature() {
    assertThat(Quantities.parse("70 °F", Dimension.TEMPERATURE_DIFFERENCE).orElseThrow().low())
        .isEqualTo(Quantity.of(70, Unit.FAHRENHEIT_DIFFERENCE));
    assertThat(Quantities.parse("70 °F", Dimension.TEMPERATURE).orElseThrow().low())
        .isEqualTo(Quantity.of(70, Unit.FAHRENHEIT));
    assertThat(Quantities.parse("70 °F", Dimension.LENGTH)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"9.0 x 10-6 /K", "9.0e-6/K", "9 x 10^-6 per °C", "9.0 × 10⁻⁶ /K"})
  void reads_an_expansion_coefficient(String text) {
    assertThat(only(text).low().in(Unit.PER_KELVIN)).isCloseTo(9e-6, within(1e-12));
  }

  @Property(tries = 300)
  void no_text_makes_it_throw(@ForAll String text) {
    for (Quantities.Found found : Quantities.find(text)) {
      assertThat(found.start()).isGreaterThanOrEqualTo(0);
      assertThat(found.end()).isGreaterThan(found.start());
    }
    for (Dimension dimension : Dimension.values()) Quantities.parse(text, dimension);
    Quantities.size(text, Unit.INCH);
    Quantities.unitOfHeader(text);
  }

  @Property(tries = 300)
  void no_text_made_of_figures_makes_it_throw(@ForAll("figureSoup") String text) {
    for (Quantities.Found found : Quantities.find(text))
      assertThat(found.end()).isGreaterThan(found.start());
    for (Dimension dimension : Dimension.values()) Quantities.parse(text, dimension);
    Quantities.size(text, Unit.INCH);
  }

  @Provide
  Arbitrary<String> figureSoup() {
    return Arbitraries.of(
            "1",
            "12",
            "1/2",
            "/",
            "0",
            "-",
            " ",
            "in",
            "ft",
            "'",
            "\"",
            "mm",
            "x",
            "by",
            "to",
            "psi",
            "(",
            ")",
            "[",
            "]",
            ".",
            ",",
            "½",
            "⅓",
            "°F",
            "°",
            "–",
            "e-6",
            "10-6",
            "/K",
            "%",
            "min.",
            "\u00A0",
            "9999999999999999999999")
        .list()
        .ofMaxSize(14)
        .map(parts -> String.join("", parts));
  }

  @Property(tries = 300)
  void what_it_prints_it_reads_back(
      @ForAll @DoubleRange(min = 0.001, max = 99999) @Scale(4) double number,
      @ForAll("written") Unit unit) {
    Quantity printed = Quantity.of(Double.parseDouble(Quantity.figure(number)), unit);
    assertThat(Quantities.parse(printed.toString(), unit.dimension()))
        .as(printed.toString())
        .hasValueSatisfying(
            amount -> {
              assertThat(amount.low().unit()).isEqualTo(unit);
              assertThat(amount.low().number()).isCloseTo(printed.number(), within(1e-9));
            });
  }

  @Provide
  Arbitrary<Unit> written() {
    return Arbitraries.of(Unit.values())
        .filter(
            unit ->
                // Letters alone cannot tell a difference from a temperature, nobody writes pascals
                // without a prefix, and expansion is written with a power of ten.
                unit.dimension() != Dimension.TEMPERATURE_DIFFERENCE
                    && unit != Unit.PASCAL
                    && unit.dimension() != Dimension.VOLUME
                    && unit.dimension() != Dimension.EXPANSION);
  }
}
