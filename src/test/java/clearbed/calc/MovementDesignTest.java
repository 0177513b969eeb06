package clearbed.calc;

import static clearbed.calc.Cases.EJ171;
import static clearbed.calc.Cases.SUBJECT;
import static clearbed.calc.Cases.expansion;
import static clearbed.calc.Cases.inches;
import static clearbed.calc.Cases.length;
import static clearbed.calc.Cases.outdoors;
import static clearbed.calc.Cases.range;
import static clearbed.calc.Cases.sealant;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.Governs;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.MovementInputs;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import org.junit.jupiter.api.Test;

class MovementDesignTest {

  @Test
  void theLargerOfGuidelineAndMovementGoverns() {
    MovementInputs inputs = outdoors().with(MovementFigure.RANGE, range("100 °F"));

    MovementDesign guideline = design(inputs.with(MovementFigure.SPACING, length("8 ft")));
    MovementDesign movement =
        design(
            inputs
                .with(MovementFigure.SPACING, length("12 ft"))
                .with(MovementFigure.CAPABILITY, sealant("12.5")));

    assertThat(guideline.governs()).isEqualTo(Governs.GUIDELINE);
    assertThat(guideline.requiredWidth().high()).isEqualTo(inches(0.375));
    // 5e-6 × 144 in × 100 °F = 0.072 in; at 12.5 % 0.576 in, next sixteenth 5/8 in.
    assertThat(movement.governs()).isEqualTo(Governs.MOVEMENT);
    assertThat(movement.requiredWidth().high()).isEqualTo(inches(0.625));
  }

  @Test
  void metricWorkIsRoundedToWholeMillimetres() {
    MovementDesign design =
        design(
            MovementInputs.of(SUBJECT, Measure.METRIC, expansion("9e-6/K"))
                .with(Exposure.EXTERIOR)
                .with(MovementFigure.SPACING, length("3 m"))
                .with(MovementFigure.RANGE, range("50 K"))
                .with(MovementFigure.CAPABILITY, sealant("25LM")));

    // Between 9.525 mm at 2438.4 mm and 12.7 mm at 3657.6 mm: 10.9875 mm at 3 m.
    assertThat(design.requiredWidth().high()).isEqualTo(Quantity.of(11, Unit.MILLIMETRE));
    assertThat(design.leastWidth().high().in(Unit.MILLIMETRE)).isCloseTo(10.9875, within(1e-9));
    Sheet.agrees(design.calculation());
  }

  @Test
  void aWidthBetweenTwoRowsIsInterpolatedAndSaidToBeSo() {
    MovementDesign between =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("100 °F"))
                .with(MovementFigure.SPACING, length("10 ft")));
    MovementDesign on =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("100 °F"))
                .with(MovementFigure.SPACING, length("12 ft")));

    assertThat(between.guidelineWidth().high().in(Unit.INCH)).isCloseTo(0.4375, within(1e-12));
    assertThat(between.notes()).anyMatch(note -> note.contains("interpolated"));
    assertThat(on.notes()).noneMatch(note -> note.contains("interpolated"));
  }

  @Test
  void aSpacingBeyondTheGuidelineFallsShortAndIsNotExtrapolated() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("100 °F"))
                .with(MovementFigure.SPACING, length("16 ft")));

    assertThat(design.spacingFit()).isEqualTo(Fit.FALLS_SHORT);
    assertThat(design.guidelineWidth().high().in(Unit.INCH)).isCloseTo(0.5, within(1e-12));
    assertThat(design.notes()).anyMatch(note -> note.contains("gives no width for spacings over"));
  }

  @Test
  void aPartOfATemperatureStepCountsInFullAndIsSaidToBeSo() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("101 °F"))
                .with(MovementFigure.SPACING, length("12 ft")));

    assertThat(design.guidelineWidth().high().in(Unit.INCH)).isCloseTo(0.5625, within(1e-12));
    assertThat(design.notes()).anyMatch(note -> note.contains("counts in full"));
  }

  @Test
  void aDeckInTheColdNeedsTheLargerOfItsOwnAndTheExteriorWidth() {
    MovementInputs deck =
        outdoors().with(Exposure.EXTERIOR_COLD_DECK).with(MovementFigure.SPACING, length("12 ft"));

    MovementDesign usual = design(deck.with(MovementFigure.RANGE, range("130 °F")));
    MovementDesign extreme = design(deck.with(MovementFigure.RANGE, range("175 °F")));

    assertThat(usual.requiredWidth().high()).isEqualTo(inches(0.75));
    // 1/2 in and five sixteenths of addition.
    assertThat(extreme.requiredWidth().high()).isEqualTo(inches(0.8125));
    Sheet.agrees(extreme.calculation());
  }

  @Test
  void theVerdictIsOnTheUnroundedWidth() {
    // Needs 8.64 mm by movement, which is built 9 mm wide; 8.7 mm is enough all the same.
    MovementInputs inputs =
        MovementInputs.of(SUBJECT, Measure.METRIC, expansion("9e-6/K"))
            .with(Exposure.INTERIOR)
            .with(MovementFigure.SPACING, length("6 m"))
            .with(MovementFigure.RANGE, range("40 K"))
            .with(MovementFigure.CAPABILITY, sealant("25"));

    MovementDesign enough = design(inputs.with(MovementFigure.WIDTH, length("8.7 mm")));
    MovementDesign less = design(inputs.with(MovementFigure.WIDTH, length("8.6 mm")));

    assertThat(enough.widthFit()).isEqualTo(Fit.MEETS);
    assertThat(enough.strainFit()).isEqualTo(Fit.MEETS);
    assertThat(less.widthFit()).isEqualTo(Fit.FALLS_SHORT);
    assertThat(less.strainFit()).isEqualTo(Fit.FALLS_SHORT);
  }

  @Test
  void aRangeOfSpacingsGivesARangeOfVerdicts() {
    MovementInputs inputs =
        outdoors()
            .with(MovementFigure.RANGE, range("100 °F"))
            .with(MovementFigure.SPACING, length("8 ft to 12 ft"));

    assertThat(design(inputs.with(MovementFigure.WIDTH, length("7/16 in"))).widthFit())
        .isEqualTo(Fit.DEPENDS);
    assertThat(design(inputs.with(MovementFigure.WIDTH, length("1/2 in"))).widthFit())
        .isEqualTo(Fit.MEETS);
    assertThat(design(inputs.with(MovementFigure.WIDTH, length("1/4 in"))).widthFit())
        .isEqualTo(Fit.FALLS_SHORT);
    assertThat(design(inputs).requiredWidth()).isEqualTo(new Interval(inches(0.375), inches(0.5)));
  }

  @Test
  void anUnknownRangeThatCannotChangeTheVerdictIsSaidToBeHarmless() {
    MovementInputs inputs =
        outdoors()
            .with(MovementFigure.SPACING, length("12 ft"))
            .with(MovementFigure.WIDTH, length("3/8 in"));

    MovementDesign design = design(inputs);

    assertThat(design.widthFit()).isEqualTo(Fit.FALLS_SHORT);
    assertThat(design.unknowns())
        .singleElement()
        .satisfies(
            unknown -> {
              assertThat(unknown.name()).isEqualTo("range");
              assertThat(unknown.changesVerdict()).isFalse();
              assertThat(unknown.taken()).contains("60 °F").contains("160 °F");
            });
  }

  @Test
  void anUnknownRangeThatDecidesIsSaidToDecide() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.SPACING, length("12 ft"))
                .with(MovementFigure.WIDTH, length("5/8 in")));

    assertThat(design.widthFit()).isEqualTo(Fit.DEPENDS);
    assertThat(design.unknowns())
        .singleElement()
        .matches(MovementDesign.UnknownFigure::changesVerdict);
  }

  @Test
  void twoUnknownsThatDecideOnlyTogetherBothCount() {
    MovementInputs inputs =
        MovementInputs.of(SUBJECT, Measure.INCH, expansion("9e-6/K"))
            .with(Exposure.INTERIOR)
            .with(MovementFigure.SPACING, length("20 ft"))
            .with(MovementFigure.WIDTH, length("3/16 in"));

    assertThat(design(inputs).widthFit()).isEqualTo(Fit.DEPENDS);
    assertThat(design(inputs).unknowns())
        .extracting(MovementDesign.UnknownFigure::name)
        .containsExactly("range", "capability");
    assertThat(design(inputs).unknowns()).allMatch(MovementDesign.UnknownFigure::changesVerdict);
  }

  @Test
  void withNothingKnownTheWorstExposureIsShown() {
    MovementDesign design = design(MovementInputs.of(SUBJECT, Measure.INCH, expansion("9e-6/K")));

    assertThat(design.widthFit()).isEqualTo(Fit.UNKNOWN);
    assertThat(design.spacingFit()).isEqualTo(Fit.UNKNOWN);
    assertThat(design.unknowns())
        .extracting(MovementDesign.UnknownFigure::name)
        .containsExactly("exposure", "spacing", "width", "range", "capability");
    assertThat(design.requiredWidth().low()).isEqualTo(inches(0.125));
    assertThat(design.requiredWidth().high().compareTo(inches(0.75))).isPositive();
  }

  @Test
  void aWidthTheGuidelineForbidsHasNoSpacing() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("100 °F"))
                .with(MovementFigure.SPACING, length("8 ft"))
                .with(MovementFigure.WIDTH, length("1/4 in")));

    assertThat(design.spacingByGuideline().orElseThrow().high().number()).isZero();
    assertThat(design.largestSpacing().orElseThrow().high().number()).isZero();
    assertThat(design.spacingByArithmetic().orElseThrow().high().number()).isPositive();
  }

  @Test
  void theLargestSpacingReadsTheTableTheOtherWay() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("115 °F"))
                .with(MovementFigure.SPACING, length("8 ft"))
                .with(MovementFigure.WIDTH, length("1/2 in")));

    // 1/2 in less 1/16 in of addition is 7/16 in, half way between the rows.
    assertThat(design.spacingByGuideline().orElseThrow().high().in(Unit.FOOT))
        .isCloseTo(10, within(1e-9));
    assertThat(design.largestSpacing()).isEqualTo(design.spacingByGuideline());
  }

  @Test
  void aToleranceThatEatsTheWidthOverstrainsTheSealant() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.RANGE, range("100 °F"))
                .with(MovementFigure.SPACING, length("8 ft"))
                .with(MovementFigure.TOLERANCE, length("1/2 in"))
                .with(MovementFigure.WIDTH, length("1/2 in")));

    assertThat(design.strainFit()).isEqualTo(Fit.FALLS_SHORT);
    assertThat(design.spacingByArithmetic().orElseThrow().high().number()).isZero();
    Sheet.agrees(design.calculation());
  }

  @Test
  void theCalculationTellsWhatIsAssumedAndEndsInTheResult() {
    MovementDesign design =
        design(
            outdoors()
                .with(MovementFigure.SPACING, length("12 ft"))
                .with(MovementFigure.TOLERANCE, length("1/16 in")));
    Calculation calculation = design.calculation();

    assertThat(calculation.id()).isEqualTo("movement-width:GT-1");
    assertThat(calculation.inputs())
        .filteredOn(input -> input.name().equals("range"))
        .singleElement()
        .matches(Calculation.Input::assumed)
        .satisfies(input -> assertThat(input.basis()).contains("not stated"));
    assertThat(calculation.inputs())
        .filteredOn(input -> input.name().equals("spacing"))
        .singleElement()
        .matches(input -> !input.assumed());
    Calculation.Step last = calculation.steps().get(calculation.steps().size() - 1);
    assertThat(last.name()).isEqualTo("required");
    assertThat(last.result()).isEqualTo(design.requiredWidth().high());
  }

  @Test
  void nonsenseIsRefusedByName() {
    assertThatThrownBy(() -> outdoors().with(MovementFigure.RANGE, range("-10 °F")))
        .hasMessageContaining("temperature range")
        .hasMessageContaining("above zero");
    assertThatThrownBy(() -> outdoors().with(MovementFigure.SPACING, range("10 °F")))
        .hasMessageContaining("joint spacing")
        .hasMessageContaining("no length");
  }

  @Test
  void anExposureTheGuidelineDoesNotKnowIsRefused() {
    MovementGuideline indoors =
        new MovementGuideline(
            "own",
            "own",
            "own",
            java.util.Map.of(Exposure.INTERIOR, EJ171.rule(Exposure.INTERIOR).orElseThrow()),
            EJ171.plausible());

    assertThatThrownBy(() -> MovementDesign.of(outdoors(), indoors))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("own has no figures for the exposure 'exterior'");
  }

  private static MovementDesign design(MovementInputs inputs) {
    return MovementDesign.of(inputs, EJ171);
  }
}
