package clearbed.calc.joint;

import static clearbed.calc.Cases.EJ171;
import static clearbed.calc.Cases.SUBJECT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.calc.Cases;
import clearbed.calc.Sheet;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

class MovementPropertiesTest {
  private static final Exposure[] OF_THE_GUIDELINE = {
    Exposure.INTERIOR,
    Exposure.INTERIOR_SUN_OR_MOISTURE,
    Exposure.EXTERIOR,
    Exposure.EXTERIOR_COLD_DECK
  };

  @Property
  void widthGrowsWithLengthRangeAndExpansion(
      @ForAll("joints") MovementInputs inputs, @ForAll @DoubleRange(min = 1, max = 3) double more) {
    Quantity width = least(inputs);

    assertThat(least(inputs.with(MovementFigure.SPACING, times(inputs.spacing(), more))))
        .isGreaterThanOrEqualTo(width);
    assertThat(least(inputs.with(MovementFigure.RANGE, times(inputs.range(), more))))
        .isGreaterThanOrEqualTo(width);
    MovementInputs warmer =
        new MovementInputs(
            inputs.subject(),
            inputs.measure(),
            times(Optional.of(inputs.expansion()), more),
            inputs.exposure(),
            inputs.known());
    assertThat(least(warmer)).isGreaterThanOrEqualTo(width);
  }

  @Property
  void movementDoublesWithLength(@ForAll("joints") MovementInputs inputs) {
    Quantity once = free(inputs, 1);
    Quantity twice = free(inputs, 2);

    assertThat(twice.number()).isCloseTo(2 * once.number(), within(once.number() * 1e-12));
  }

  private static Quantity free(MovementInputs inputs, double times) {
    return ThermalMovement.free(
        inputs.expansion().high(),
        inputs.spacing().orElseThrow().high().times(times),
        inputs.range().orElseThrow().high(),
        inputs.measure());
  }

  @Property
  void theSpacingOfTheComputedWidthIsTheSpacingItWasComputedFor(
      @ForAll("joints") MovementInputs inputs) {
    MovementCase one = MovementRange.of(inputs, EJ171).worst();
    Quantity back =
        JointWidth.largestSpacing(
            one.computedWidth(),
            one.tolerance(),
            one.capability(),
            one.other(),
            one.expansion(),
            one.range(),
            one.measure());

    double spacing = one.spacing().in(Unit.METRE);
    assertThat(back.in(Unit.METRE)).isCloseTo(spacing, within(spacing * 1e-9));
  }

  @Property
  void theGuidelineSpacingOfTheGuidelineWidthIsTheSpacingItWasReadAt(
      @ForAll @DoubleRange(min = 8, max = 12) double feet,
      @ForAll @DoubleRange(min = 10, max = 180) double degrees) {
    Quantity range = Quantity.of(degrees, Unit.FAHRENHEIT_DIFFERENCE);
    Quantity width =
        EJ171.width(Exposure.EXTERIOR, Quantity.of(feet, Unit.FOOT), range, Measure.INCH);
    Quantity back = EJ171.largestSpacing(Exposure.EXTERIOR, width, range, Measure.INCH);

    assertThat(back.in(Unit.FOOT)).isCloseTo(feet, within(1e-6));
  }

  @Property
  void aJointOfTheRequiredWidthIsEnoughInEveryRespect(@ForAll("joints") MovementInputs inputs) {
    Quantity required = MovementDesign.of(inputs, EJ171).requiredWidth().high();
    MovementDesign built =
        MovementDesign.of(
            inputs.with(MovementFigure.WIDTH, Given.stated(required, null, "built")), EJ171);

    assertThat(built.widthFit()).isEqualTo(Fit.MEETS);
    assertThat(built.strainFit()).isEqualTo(Fit.MEETS);
  }

  @Property
  void theStrainMeetsTheCapabilityExactlyWhenTheComputedWidthIsMet(
      @ForAll("joints") MovementInputs inputs,
      @ForAll @DoubleRange(min = 0.5, max = 2) double share) {
    MovementCase one = MovementRange.of(inputs, EJ171).worst();
    Quantity width = one.computedWidth().times(share);
    MovementCase stated =
        MovementRange.of(inputs.with(MovementFigure.WIDTH, Given.stated(width, null, "")), EJ171)
            .worst();

    assertThat(stated.strainMeets()).isEqualTo(width.compareTo(one.computedWidth()) >= 0);
  }

  @Property
  void roundingNeverRoundsARequiredWidthDown(
      @ForAll @DoubleRange(min = 0.001, max = 500) @Scale(9) double number,
      @ForAll Measure measure) {
    Quantity width = Quantity.of(number, measure.small());
    Quantity rounded = Rounding.up(width, measure);
    double step = measure == Measure.INCH ? 1.0 / 16 : 1;

    assertThat(rounded.number()).isGreaterThanOrEqualTo(number - 1e-9);
    assertThat(rounded.number() - number).isLessThan(step);
    assertThat(rounded.number() / step).isCloseTo(Math.rint(rounded.number() / step), within(1e-9));
  }

  @Property
  void roundingLeavesAWidthThatCanBeBuiltAsItIs(
      @ForAll @net.jqwik.api.constraints.IntRange(min = 1, max = 160) int steps) {
    Quantity inch = Quantity.of(steps / 16.0 * 25.4, Unit.MILLIMETRE);
    Quantity millimetre = Quantity.of(steps / 25.4, Unit.INCH);

    assertThat(Rounding.up(inch, Measure.INCH).number()).isCloseTo(steps / 16.0, within(1e-12));
    assertThat(Rounding.up(millimetre, Measure.METRIC).number()).isEqualTo(steps);
  }

  @Property
  void everyFieldOfALayoutIsWithinTheSpacing(
      @ForAll @DoubleRange(min = 0.5, max = 400) double run,
      @ForAll @DoubleRange(min = 0.5, max = 30) double spacing) {
    JointLayout layout =
        JointLayout.of(
            SUBJECT,
            Measure.INCH,
            Given.stated(Quantity.of(run, Unit.FOOT), null, ""),
            Given.stated(Quantity.of(spacing, Unit.FOOT), null, ""));

    assertThat(layout.field().in(Unit.FOOT)).isLessThanOrEqualTo(spacing + 1e-6);
    assertThat(layout.field().in(Unit.FOOT) * layout.fields()).isCloseTo(run, within(1e-9));
    assertThat(layout.positions()).hasSize(layout.joints());
    // One field fewer would be longer than the spacing.
    if (layout.joints() > 0) {
      assertThat(run / layout.joints()).isGreaterThan(spacing);
    }
  }

  @Property
  void tileAndSubstrateThatExpandAndHeatAlikeDoNotMovePastEachOther(
      @ForAll("joints") MovementInputs inputs) {
    Given range = inputs.range().orElseThrow();
    Given length = inputs.spacing().orElseThrow();
    Given expansion = inputs.expansion();
    DifferentialMovement movement =
        DifferentialMovement.of(
            SUBJECT,
            new DifferentialMovement.FieldInputs(
                inputs.measure(), expansion, expansion, length, range, range));

    assertThat(movement.bothHeated().high().number()).isZero();
    assertThat(movement.tileOnly().high().number()).isPositive();
  }

  @Property
  void differentialMovementDoesNotAskWhichMaterialIsOnTop(
      @ForAll @DoubleRange(min = 4, max = 25) double one,
      @ForAll @DoubleRange(min = 4, max = 25) double other,
      @ForAll @DoubleRange(min = 1, max = 100) double kelvin) {
    assertThat(between(one, other, kelvin)).isCloseTo(between(other, one, kelvin), within(1e-12));
  }

  private static double between(double tile, double substrate, double kelvin) {
    Given range = Given.stated(Quantity.of(kelvin, Unit.KELVIN_DIFFERENCE), null, "");
    DifferentialMovement movement =
        DifferentialMovement.of(
            SUBJECT,
            new DifferentialMovement.FieldInputs(
                Measure.METRIC,
                Given.stated(Quantity.of(tile * 1e-6, Unit.PER_KELVIN), null, ""),
                Given.stated(Quantity.of(substrate * 1e-6, Unit.PER_KELVIN), null, ""),
                Given.stated(Quantity.of(5, Unit.METRE), null, ""),
                range,
                range));
    return movement.bothHeated().high().number();
  }

  @Property(tries = 40)
  void aSpreadsheetGivesTheSameAsTheseFunctions(
      @ForAll("joints") MovementInputs inputs,
      @ForAll @DoubleRange(min = 0.05, max = 2) double width) {
    Given stated = Given.stated(Quantity.of(width, Unit.INCH), null, "");

    Sheet.agrees(MovementDesign.of(inputs, EJ171).calculation());
    Sheet.agrees(MovementDesign.of(inputs.with(MovementFigure.WIDTH, stated), EJ171).calculation());
    Sheet.agrees(overConcrete(inputs).calculation());
    Given run = times(inputs.spacing(), 7.3);
    Sheet.agrees(
        JointLayout.of(SUBJECT, inputs.measure(), run, inputs.spacing().orElseThrow())
            .calculation());
  }

  private static DifferentialMovement overConcrete(MovementInputs inputs) {
    return DifferentialMovement.of(
        SUBJECT,
        new DifferentialMovement.FieldInputs(
            inputs.measure(),
            inputs.expansion(),
            Cases.expansion("10e-6/K"),
            inputs.spacing().orElseThrow(),
            inputs.range().orElseThrow(),
            Cases.range("25 °F")));
  }

  @Provide
  Arbitrary<MovementInputs> joints() {
    Arbitrary<Given> expansion = any(2e-6, 30e-6, Unit.PER_KELVIN, Unit.PER_FAHRENHEIT);
    Arbitrary<Given> spacing = any(1, 20, Unit.METRE, Unit.FOOT, Unit.INCH, Unit.MILLIMETRE);
    Arbitrary<Given> range =
        any(1, 110, Unit.KELVIN_DIFFERENCE, Unit.FAHRENHEIT_DIFFERENCE, Unit.CELSIUS_DIFFERENCE);
    Arbitrary<Given> sealant =
        Arbitraries.of("7.5", "12.5", "20", "25", "35", "50", "100/50").map(Cases::sealant);
    Arbitrary<Given> tolerance = any(0, 0.01, Unit.METRE, Unit.INCH);
    Arbitrary<Given> other = any(0, 0.01, Unit.MILLIMETRE, Unit.INCH);
    return Combinators.combine(
            expansion,
            spacing,
            range,
            sealant,
            tolerance,
            other,
            Arbitraries.of(OF_THE_GUIDELINE),
            Arbitraries.of(Measure.values()))
        .as(
            (alpha, field, degrees, capability, gap, moved, exposure, measure) ->
                MovementInputs.of(SUBJECT, measure, alpha)
                    .with(exposure)
                    .with(MovementFigure.SPACING, field)
                    .with(MovementFigure.RANGE, degrees)
                    .with(MovementFigure.CAPABILITY, capability)
                    .with(MovementFigure.TOLERANCE, gap)
                    .with(MovementFigure.OTHER, moved));
  }

  /** Figures between two SI values, written in one of the units. */
  private static Arbitrary<Given> any(double low, double high, Unit si, Unit... others) {
    Unit[] units = java.util.Arrays.copyOf(others, others.length + 1);
    units[others.length] = si;
    return Combinators.combine(
            Arbitraries.doubles().between(low, high).ofScale(si == Unit.PER_KELVIN ? 8 : 4),
            Arbitraries.of(units))
        .as((number, unit) -> Given.stated(Quantity.of(number, si).to(unit), null, ""));
  }

  private static Quantity least(MovementInputs inputs) {
    return MovementDesign.of(inputs, EJ171).leastWidth().high();
  }

  private static Given times(Optional<Given> given, double factor) {
    return Given.stated(given.orElseThrow().high().times(factor), null, "");
  }
}
