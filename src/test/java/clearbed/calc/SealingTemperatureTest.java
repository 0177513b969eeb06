package clearbed.calc;

import static clearbed.calc.Cases.SUBJECT;
import static clearbed.calc.Cases.expansion;
import static clearbed.calc.Cases.length;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.joint.JointWidth;
import clearbed.calc.joint.SealantClass;
import clearbed.calc.joint.SealingTemperature;
import clearbed.calc.joint.ThermalMovement;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Opening and closing apart: cold-sealed joints close, hot-sealed ones open. */
class SealingTemperatureTest {

  @Test
  void whatIsSealedColdClosesMostAndWhatIsSealedHotOpensMost() {
    SealingTemperature cold = of(20, 20, "25");
    SealingTemperature hot = of(140, 140, "25");

    // 5e-6 × 144 in × 130 °F and × 30 °F.
    assertThat(cold.closing().in(Unit.INCH)).isCloseTo(0.0936, within(1e-9));
    assertThat(cold.opening().in(Unit.INCH)).isCloseTo(0.0216, within(1e-9));
    assertThat(cold.opens()).isFalse();
    assertThat(hot.opening().in(Unit.INCH)).isCloseTo(0.108, within(1e-9));
    assertThat(hot.opens()).isTrue();
  }

  @Test
  void aSealantThatOpensMoreThanItClosesIsReckonedByEach() {
    // Sealed hot it opens by 0.108 in and closes by 0.0072 in: ÷ 1 and ÷ 0.5.
    assertThat(of(140, 140, "100/50").width().in(Unit.INCH)).isCloseTo(0.108, within(1e-9));
    // Sealed cold it closes by 0.0936 in: ÷ 0.5.
    assertThat(of(20, 20, "100/50").width().in(Unit.INCH)).isCloseTo(0.1872, within(1e-9));
  }

  @Test
  void aRangeOfSealingTemperaturesTakesTheWorstOfEach() {
    SealingTemperature joint = of(40, 80, "25");

    // Opening from 80 °F down to -10 °F, closing from 40 °F up to 150 °F.
    assertThat(joint.opening().in(Unit.INCH)).isCloseTo(5e-6 * 144 * 90, within(1e-9));
    assertThat(joint.closing().in(Unit.INCH)).isCloseTo(5e-6 * 144 * 110, within(1e-9));
    Sheet.agrees(joint.calculation());
  }

  @Property
  void sealedAtAnyTemperatureItComesToTheWidthOfTheWholeRange(
      @ForAll @DoubleRange(min = 1, max = 20) double feet,
      @ForAll @DoubleRange(min = -40, max = 60) double coldest,
      @ForAll @DoubleRange(min = 1, max = 120) double over) {
    Given field = Given.stated(Quantity.of(feet, Unit.FOOT), null, "");
    SealingTemperature joint =
        of(
            field,
            temperature(coldest, coldest),
            temperature(coldest + over, coldest + over),
            temperature(coldest, coldest + over),
            "35");
    Quantity movement =
        ThermalMovement.free(
            Quantity.of(5e-6, Unit.PER_FAHRENHEIT),
            field.high(),
            Quantity.of(over, Unit.FAHRENHEIT_DIFFERENCE),
            Measure.INCH);

    double whole =
        JointWidth.required(movement, Quantity.of(35, Unit.PERCENT), Cases.inches(0.125))
            .in(Unit.INCH);
    assertThat(joint.width().in(Unit.INCH)).isCloseTo(whole, within(whole * 1e-9));
  }

  @Test
  void aSealingTemperatureOutsideTheRangeIsRefused() {
    assertThatThrownBy(() -> of(160, 170, "25")).hasMessageContaining("not between the coldest");
  }

  private static SealingTemperature of(double from, double to, String sealant) {
    return of(
        length("12 ft"),
        temperature(-10, -10),
        temperature(150, 150),
        temperature(from, to),
        sealant,
        "0 in");
  }

  private static SealingTemperature of(
      Given field, Given coldest, Given hottest, Given sealed, String sealant) {
    return of(field, coldest, hottest, sealed, sealant, "1/8 in");
  }

  private static SealingTemperature of(
      Given field, Given coldest, Given hottest, Given sealed, String sealant, String tolerance) {
    return SealingTemperature.of(
        SUBJECT,
        new SealingTemperature.SealingInputs(
            Measure.INCH,
            expansion("5e-6/°F"),
            field,
            coldest,
            hottest,
            sealed,
            SealantClass.of(sealant).orElseThrow(),
            length(tolerance)));
  }

  private static Given temperature(double from, double to) {
    return Given.stated(
        new Interval(Quantity.of(from, Unit.FAHRENHEIT), Quantity.of(to, Unit.FAHRENHEIT)),
        null,
        "");
  }
}
