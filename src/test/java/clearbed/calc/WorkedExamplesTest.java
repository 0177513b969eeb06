package clearbed.calc;

import static clearbed.calc.Cases.EJ171;
import static clearbed.calc.Cases.SUBJECT;
import static clearbed.calc.Cases.expansion;
import static clearbed.calc.Cases.feet;
import static clearbed.calc.Cases.inches;
import static clearbed.calc.Cases.length;
import static clearbed.calc.Cases.number;
import static clearbed.calc.Cases.outdoors;
import static clearbed.calc.Cases.range;
import static clearbed.calc.Cases.sealant;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Examples and table rows that others published, the source beside each. */
class WorkedExamplesTest {

  // TCNA Handbook EJ171, as a tile trade journal answered readers in 2025: 3/8 in at 8 ft, 1/2 in
  // at
  // 12 ft; 1/16 in more for each 15 °F over 100 °F, "a 115 degree change" adding 1/16 in.
  @ParameterizedTest
  @CsvSource({
    "8 ft, 100 °F, 0.375",
    "12 ft, 100 °F, 0.5",
    "8 ft, 115 °F, 0.4375",
    "12 ft, 115 °F, 0.5625",
    "12 ft, 130 °F, 0.625",
  })
  void exteriorWidthsOfTheHandbook(String spacing, String range, double inches) {
    MovementDesign design =
        MovementDesign.of(outdoors().withSpacing(length(spacing)).withRange(range(range)), EJ171);

    assertThat(design.guidelineWidth().high().in(Unit.INCH)).isCloseTo(inches, within(1e-9));
    assertThat(design.requiredWidth().high().in(Unit.INCH)).isEqualTo(inches);
    Sheet.agrees(design.calculation());
  }

  // The same, of the 2005 edition, as a flooring trade magazine listed it: 3/8 in at 12 ft, 1/2 in
  // at 16 ft. An edition is a file.
  @Test
  void anEarlierEditionIsAnotherFile() throws IOException {
    String earlier =
        """
        id: ej171-2005
        title: EJ171, 2005
        source: trade magazine
        capabilityWhenUnknown: { from: 12.5 %, to: 50 % }
        exposures:
          exterior:
            label: exterior
            source: 2005 edition
            spacing: { from: 12 ft, to: 16 ft }
            width: { least: 3/8 in }
            rows:
              - { spacing: 12 ft, width: 3/8 in }
              - { spacing: 16 ft, width: 1/2 in }
            rangeWhenUnknown: { from: 60 °F, to: 160 °F }
        """;
    MovementGuideline guideline =
        MovementGuideline.read("2005.yaml", earlier.getBytes(StandardCharsets.UTF_8));

    MovementInputs inputs = outdoors().withRange(range("100 °F"));
    assertThat(width(inputs.withSpacing(length("12 ft")), guideline)).isEqualTo(0.375);
    assertThat(width(inputs.withSpacing(length("16 ft")), guideline)).isEqualTo(0.5);
  }

  private static double width(MovementInputs inputs, MovementGuideline guideline) {
    return MovementDesign.of(inputs, guideline).requiredWidth().high().in(Unit.INCH);
  }

  // National Tile Contractors Association, Reference Manual 2024/25: interior 20 to 25 ft (6.1 to
  // 7.6 m), exterior and interior in sun or moisture 8 to 12 ft (2.4 to 3.7 m).
  @ParameterizedTest
  @CsvSource({
    "INTERIOR, 6.1, 7.6",
    "INTERIOR_SUN_OR_MOISTURE, 2.4, 3.7",
    "EXTERIOR, 2.4, 3.7",
  })
  void spacingsOfTheHandbook(Exposure exposure, double from, double to) {
    Interval spacing = EJ171.rule(exposure).orElseThrow().spacing();

    assertThat(spacing.low().in(Unit.METRE)).isCloseTo(from, within(0.05));
    assertThat(spacing.high().in(Unit.METRE)).isCloseTo(to, within(0.05));
  }

  // A glass management association's bulletin on joint design: 240 in of aluminium, 23e-6 for each
  // degree, a range of 80 degrees: 0.44 in.
  @Test
  void freeMovementOfAPanel() {
    Quantity movement =
        ThermalMovement.free(
            Quantity.of(23e-6, Unit.PER_FAHRENHEIT),
            inches(240),
            Quantity.of(80, Unit.FAHRENHEIT_DIFFERENCE),
            Measure.INCH);

    assertThat(movement.in(Unit.INCH)).isCloseTo(0.44, within(0.005));
  }

  // A trade glossary: 100 ft of gypsum board, 9.0e-6 per °F, 50 °F: 0.54 in.
  @Test
  void freeMovementOfAWall() {
    Quantity movement =
        ThermalMovement.free(
            Quantity.of(9.0e-6, Unit.PER_FAHRENHEIT),
            feet(100),
            Quantity.of(50, Unit.FAHRENHEIT_DIFFERENCE),
            Measure.INCH);

    assertThat(movement.in(Unit.INCH)).isCloseTo(0.54, within(1e-9));
  }

  // Brick Industry Association, Technical Note 18A, as a specifier's journal works it: 4e-6 per °F
  // over 100 °F and 0.0005 of moisture make 0.0009 of the length; a joint of 3/8 in with a sealant
  // of
  // 50 % goes with a spacing of 208 in (17 ft 4 in).
  @Test
  void spacingThatAJointCarries() {
    Quantity spacing =
        JointWidth.largestSpacing(
            inches(0.375),
            inches(0),
            Quantity.of(50, Unit.PERCENT),
            inches(0),
            Quantity.of(0.0009 / 100, Unit.PER_FAHRENHEIT),
            Quantity.of(100, Unit.FAHRENHEIT_DIFFERENCE),
            Measure.INCH);

    assertThat(spacing.in(Unit.INCH)).isCloseTo(208, within(0.5));
    assertThat(spacing.in(Unit.FOOT)).isCloseTo(17 + 4 / 12.0, within(0.05));
  }

  // Solutions to a university course on building technology, 2007: brick panels of 360 in, 3.6e-6
  // per °F. Closing: 45 °F 0.0583 in, with moisture 0.072 in and structure 0.25 in 0.3803 in, times
  // 2 for a sealant of 50 % 0.7607 in. Opening: 90 °F 0.1166 in, in all 0.3666 in, times 2 0.7332
  // in.
  @ParameterizedTest
  @CsvSource({
    "45 °F, 0.322, 0.3803, 0.7607",
    "90 °F, 0.25, 0.3666, 0.7332",
  })
  void widthWithMovementOtherThanByTemperature(
      String range, double other, double movement, double width) {
    MovementInputs inputs =
        MovementInputs.of(SUBJECT, Measure.INCH, expansion("3.6e-6/°F"))
            .withExposure(Exposure.EXTERIOR)
            .withSpacing(length("360 in"))
            .withRange(range(range))
            .withCapability(sealant("50"))
            .withOther(Given.stated(inches(other), null, "moisture and structure"));
    MovementDesign bare = MovementDesign.of(inputs, EJ171);
    MovementDesign tolerant = MovementDesign.of(inputs.withTolerance(length("1/8 in")), EJ171);

    assertThat(bare.movement().high().in(Unit.INCH)).isCloseTo(movement, within(1e-4));
    assertThat(bare.computedWidth().high().in(Unit.INCH)).isCloseTo(width, within(1e-4));
    assertThat(tolerant.computedWidth().high().in(Unit.INCH))
        .isCloseTo(width + 0.125, within(1e-4));
  }

  // TCNA Handbook EJ171, as reported: joints four times the expected movement; Class 25 is that.
  @Test
  void classTwentyFiveIsFourTimesTheMovement() {
    Quantity width = JointWidth.required(inches(0.1), Quantity.of(25, Unit.PERCENT), inches(0));

    assertThat(width.in(Unit.INCH)).isCloseTo(0.4, within(1e-12));
  }

  // Tile Council of North America, answers on deflection: at L/360 a span of 10 ft bends 1/3 in;
  // home-building pages: 12 ft 0.4 in, 15 ft 1/2 in.
  @ParameterizedTest
  @CsvSource({"10, 0.33333333333", "12, 0.4", "15, 0.5"})
  void deflectionOfASpan(double feet, double inches) {
    assertThat(Deflection.of(feet(feet), 360, Measure.INCH).in(Unit.INCH))
        .isCloseTo(inches, within(1e-9));
  }

  // ANSI A108.02 as trade magazines report it: under 15 in 1/4 in in 10 ft and 1/16 in in 12 in;
  // from 15 in 1/8 in in 10 ft (3 mm in 3 m) and 1/16 in in 24 in.
  @ParameterizedTest
  @CsvSource({"14.99 in, 0.25, 12", "15 in, 0.125, 24", "381 mm, 0.125, 24", "4 in, 0.25, 12"})
  void flatnessByEdge(String edge, double overall, double localOver) {
    Flatness flatness = Flatness.of(SUBJECT, length(edge), Optional.empty());

    assertThat(flatness.allowance().overall().deviation()).isEqualTo(inches(overall));
    assertThat(flatness.allowance().overall().over()).isEqualTo(inches(120));
    assertThat(flatness.allowance().local().deviation()).isEqualTo(inches(1.0 / 16));
    assertThat(flatness.allowance().local().over()).isEqualTo(inches(localOver));
    Sheet.agrees(flatness.calculation());
  }

  // A gallon is 231 cubic inches (NIST SP 811, appendix B): it fills 154 ft of a joint 1/2 in by
  // 1/4 in.
  @Test
  void aGallonOfSealant() {
    Takeoff takeoff = Takeoff.of(SUBJECT, TakeoffTest.joints("154 ft", "1/2 in", "1/4 in"));

    assertThat(takeoff.sealant().in(Unit.GALLON)).isCloseTo(1, within(1e-9));
  }

  // TCNA Handbook, as a construction handbook reports it: not under 1/8 in, not over half the
  // width.
  @ParameterizedTest
  @CsvSource({"1/2 in, 0.25", "3/8 in, 0.1875", "1/8 in, 0.125", "3/4 in, 0.375"})
  void sealantDepth(String width, double inches) {
    SealantDepth depth = SealantDepth.of(SUBJECT, Measure.INCH, length(width), Optional.empty());

    assertThat(depth.depth().high().in(Unit.INCH)).isCloseTo(inches, within(1e-12));
    Sheet.agrees(depth.calculation());
  }

  // ANSI A108.02, 4.3.8, as trade magazines report it: three times the variation, in no case under
  // 1/16 in.
  @ParameterizedTest
  @CsvSource({"1/16 in, 0.1875", "1/64 in, 0.0625", "0.5 mm, 0.0625"})
  void groutWidth(String variation, double inches) {
    GroutWidth grout =
        GroutWidth.of(SUBJECT, Measure.INCH, Optional.of(length(variation)), Optional.empty());

    assertThat(grout.least().high().in(Unit.INCH)).isCloseTo(inches, within(1e-9));
    Sheet.agrees(grout.calculation());
  }

  @Test
  void deflectionIsComparedByItsStiffness() {
    Deflection stiff =
        Deflection.of(SUBJECT, Measure.INCH, length("10 ft"), number(480), number(360));
    Deflection soft =
        Deflection.of(SUBJECT, Measure.METRIC, length("3 m"), number(240), number(360));

    assertThat(stiff.fit()).isEqualTo(Fit.MEETS);
    assertThat(soft.fit()).isEqualTo(Fit.FALLS_SHORT);
    assertThat(soft.stated().high().in(Unit.MILLIMETRE)).isCloseTo(12.5, within(1e-9));
    Sheet.agrees(stiff.calculation());
    Sheet.agrees(soft.calculation());
  }
}
