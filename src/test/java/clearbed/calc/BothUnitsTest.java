package clearbed.calc;

import static clearbed.calc.Cases.feet;
import static clearbed.calc.Cases.inches;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.calc.figure.BothUnits;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class BothUnitsTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0.375|INCH|3/8 in (9.52 mm)",
        "1.25|INCH|1-1/4 in (31.8 mm)",
        "0.0936|INCH|0.094 in (2.38 mm)",
        "0|INCH|0 in (0 mm)",
        "16|MILLIMETRE|16 mm (0.630 in)",
        "12|FOOT|12 ft (3.66 m)",
        "130|FAHRENHEIT_DIFFERENCE|130 °F (72.2 K)",
        "-10|FAHRENHEIT|-10 °F (-23.3 °C)",
        "9e-6|PER_KELVIN|9e-6/K (5e-6/°F)",
        "25|PERCENT|25 %",
        "1|GALLON|1 gal (3.79 L)",
        "50|POUND|50 lb (22.7 kg)",
        "400|PSI|400 psi (2.76 MPa)",
      })
  void writesAFigureInBothSystems(double number, Unit unit, String words) {
    assertThat(BothUnits.of(Quantity.of(number, unit))).isEqualTo(words);
  }

  @Test
  void eachSystemIsRoundedUpForItself() {
    // 0.6 in is 15.24 mm: the sixteenth above it is 5/8 in (15.875 mm), the millimetre 16.
    assertThat(Rounding.width(inches(0.6), Measure.INCH)).isEqualTo("5/8 in (16 mm)");
    assertThat(Rounding.width(inches(0.6), Measure.METRIC)).isEqualTo("16 mm (5/8 in)");
    // 15.1 mm is 0.594 in: 16 mm, but 5/8 in; 14.9 mm: 15 mm, 5/8 in.
    assertThat(Rounding.width(Quantity.of(14.9, Unit.MILLIMETRE), Measure.METRIC))
        .isEqualTo("15 mm (5/8 in)");
  }

  @Test
  void aLargestSpacingIsRoundedDownInEachSystem() {
    assertThat(Rounding.spacing(feet(11.99), Measure.INCH)).isEqualTo("11 ft 11 in (3.65 m)");
    assertThat(Rounding.spacing(feet(12), Measure.INCH)).isEqualTo("12 ft (3.65 m)");
    assertThat(Rounding.spacing(Quantity.of(3.6576, Unit.METRE), Measure.METRIC))
        .isEqualTo("3.65 m (12 ft)");
  }

  @Property
  void aSpacingIsNeverRoundedUp(
      @ForAll @DoubleRange(min = 0.1, max = 100) double metres, @ForAll Measure measure) {
    Quantity spacing = Quantity.of(metres, Unit.METRE);
    double down = Rounding.down(spacing, measure).in(Unit.METRE);

    assertThat(down).isLessThanOrEqualTo(metres + 1e-7);
    assertThat(metres - down).isLessThan(measure == Measure.INCH ? 0.0254001 : 0.0100001);
  }

  @ParameterizedTest
  @EnumSource(Unit.class)
  void theConversionOfTheSheetIsThatOfTheUnits(Unit unit) throws Exception {
    if (BothUnits.counterpart(unit).isEmpty()) return;
    Unit other = BothUnits.counterpart(unit).get();
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      var row = book.createSheet().createRow(0);
      row.createCell(0).setCellValue(37.5);
      Cell cell = row.createCell(1);
      cell.setCellFormula(BothUnits.conversion("A1", unit, other));
      double found =
          book.getCreationHelper().createFormulaEvaluator().evaluate(cell).getNumberValue();
      double expected = Quantity.of(37.5, unit).in(other);

      assertThat(found).isCloseTo(expected, within(Math.abs(expected) * 1e-9));
    }
  }

  @ParameterizedTest
  @EnumSource(Unit.class)
  void theCounterpartOfACounterpartIsOfTheFirstSystem(Unit unit) {
    BothUnits.counterpart(unit)
        .ifPresent(
            other -> {
              assertThat(other.dimension()).isEqualTo(unit.dimension());
              assertThat(BothUnits.counterpart(other)).isPresent().get().isNotEqualTo(other);
            });
  }
}
