package clearbed.calc;

import static clearbed.calc.Cases.SUBJECT;
import static clearbed.calc.Cases.expansion;
import static clearbed.calc.Cases.inches;
import static clearbed.calc.Cases.length;
import static clearbed.calc.Cases.number;
import static clearbed.calc.Cases.range;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.joint.DifferentialMovement;
import clearbed.calc.joint.GroutWidth;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.SealantDepth;
import clearbed.calc.surface.Deflection;
import clearbed.calc.surface.SubstrateFlatness;
import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FitOfStatedFiguresTest {

  @ParameterizedTest
  @CsvSource({
    "1/2 in, 1/4 in, MEETS",
    "1/2 in, 1/8 in, FALLS_SHORT",
    "1/4 in, 3 mm, MEETS",
    "1/4 in, 2.5 mm, FALLS_SHORT",
    "1/2 in, 5/16 in, MEETS",
    "1/2 in, 1/2 in, MEETS",
    "1/2 in, 9/16 in, FALLS_SHORT",
    "1/4 in, 1/4 in, MEETS",
    "1/8 in, 1/4 in, MEETS",
    "1/2 in, 1/16 in, FALLS_SHORT",
    "1/8 in, 1/8 in, MEETS",
    "3/8 in to 1/2 in, 1/4 in, MEETS",
    "1/4 in to 1/2 in, 3/8 in, DEPENDS",
    "10 mm, 5 mm, MEETS",
  })
  void sealantDepth(String width, String depth, Fit fit) {
    assertThat(
            SealantDepth.of(SUBJECT, Measure.INCH, length(width), Optional.of(length(depth))).fit())
        .isEqualTo(fit);
  }

  @ParameterizedTest
  @CsvSource({
    "1/32 in, 1/8 in, MEETS",
    "1/16 in, 1/8 in, FALLS_SHORT",
    "1/32 in to 1/16 in, 1/8 in, DEPENDS",
    "0.5 mm, 2 mm, MEETS",
    "0 mm, 1 mm, FALLS_SHORT",
  })
  void groutWidth(String variation, String width, Fit fit) {
    assertThat(
            GroutWidth.of(
                    SUBJECT,
                    Measure.INCH,
                    Optional.of(length(variation)),
                    Optional.of(length(width)))
                .fit())
        .isEqualTo(fit);
  }

  @ParameterizedTest
  @CsvSource({
    "12 in, 1/4 in, 10 ft, MEETS",
    "12 in, 3/8 in, 10 ft, FALLS_SHORT",
    "24 in, 1/4 in, 10 ft, FALLS_SHORT",
    "24 in, 1/8 in, 10 ft, MEETS",
    "300 mm, 6 mm, 3 m, MEETS",
    "600 mm, 3 mm, 3 m, MEETS",
    "12 in to 24 in, 1/4 in, 10 ft, DEPENDS",
    "24 in, 1/16 in, 24 in, UNKNOWN",
  })
  void flatness(String edge, String deviation, String over, Fit fit) {
    Content.Flatness stated =
        new Content.Flatness(
            List.of(new Content.Deviation(length(deviation).high(), length(over).high())));

    assertThat(SubstrateFlatness.of(SUBJECT, length(edge), Optional.of(stated)).fit())
        .isEqualTo(fit);
  }

  @Test
  void ofSeveralFlatnessesOneMaySuffice() {
    Content.Flatness both =
        new Content.Flatness(
            List.of(
                new Content.Deviation(inches(0.25), inches(120)),
                new Content.Deviation(inches(0.125), inches(120))));

    assertThat(SubstrateFlatness.of(SUBJECT, length("24 in"), Optional.of(both)).fit())
        .isEqualTo(Fit.MEETS);
  }

  @Test
  void aRangeOfStiffnessDepends() {
    Given n =
        Given.stated(
            new Interval(Quantity.of(240, Unit.ONE), Quantity.of(480, Unit.ONE)), null, "");

    assertThat(Deflection.of(SUBJECT, Measure.INCH, length("10 ft"), n, number(360)).fit())
        .isEqualTo(Fit.DEPENDS);
  }

  @Test
  void differentialMovementOfGlassOnConcreteIsSmallWhenBothHeat() {
    Given range = range("70 K");
    DifferentialMovement movement =
        DifferentialMovement.of(
            SUBJECT,
            new DifferentialMovement.FieldInputs(
                Measure.METRIC,
                expansion("9e-6/K"),
                expansion("10e-6/K"),
                length("4 m"),
                range,
                range));

    // (10 - 9) × 10^-6 × 4000 mm × 70 K and 9 × 10^-6 × 4000 mm × 70 K.
    assertThat(movement.bothHeated().high())
        .isEqualByComparingTo(Quantity.of(0.28, Unit.MILLIMETRE));
    assertThat(movement.tileOnly().high()).isEqualByComparingTo(Quantity.of(2.52, Unit.MILLIMETRE));
  }

  @Test
  void differentialMovementOfUncertainMaterialsMayBeNone() {
    Given range = range("70 K");
    Interval masonry =
        new Interval(Quantity.of(6e-6, Unit.PER_KELVIN), Quantity.of(10e-6, Unit.PER_KELVIN));
    DifferentialMovement movement =
        DifferentialMovement.of(
            SUBJECT,
            new DifferentialMovement.FieldInputs(
                Measure.METRIC,
                expansion("9e-6/K"),
                Given.assumed(masonry, "masonry"),
                length("4 m"),
                range,
                range));

    assertThat(movement.bothHeated().low().number()).isZero();
    assertThat(movement.bothHeated().high())
        .isEqualByComparingTo(Quantity.of(0.84, Unit.MILLIMETRE));
    Sheet.agrees(movement.calculation());
  }

  @Test
  void aLayoutThatNobodyBuildsIsRefused() {
    assertThatThrownBy(
            () -> JointLayout.of(SUBJECT, Measure.METRIC, length("9000 m"), length("1 mm")))
        .hasMessageContaining("too many joints");
  }

  @Test
  void aRunOfExactlyTheSpacingIsOneField() {
    JointLayout layout =
        JointLayout.of(SUBJECT, Measure.METRIC, length("12 ft"), length("3.6576 m"));

    assertThat(layout.fields()).isEqualTo(1);
    assertThat(layout.positions()).isEmpty();
    Sheet.agrees(layout.calculation());
  }
}
