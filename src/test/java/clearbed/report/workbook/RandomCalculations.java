package clearbed.report.workbook;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.DifferentialMovement;
import clearbed.calc.joint.GroutWidth;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.MovementInputs;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import clearbed.calc.joint.SealantClass;
import clearbed.calc.joint.SealantDepth;
import clearbed.calc.joint.SealingTemperature;
import clearbed.calc.joint.SpacingLimit;
import clearbed.calc.surface.Deflection;
import clearbed.calc.surface.SubstrateFlatness;
import clearbed.calc.takeoff.Takeoff;
import clearbed.calc.takeoff.TakeoffInputs;
import clearbed.model.report.Calculation;
import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Every kind of calculation with figures at random, each twice: other figures, same units. */
final class RandomCalculations {

  /** The same calculation over two sets of figures. */
  record Pair(Calculation before, Calculation after) {}

  /** Draws figures in fixed units, so that both of a pair are written alike. */
  private interface Kind {
    Calculation of(String tag, Measure measure, Random random) throws IOException;
  }

  private static final List<String> CLASSES = List.of("12.5", "20", "25", "35", "50", "100/50");

  private RandomCalculations() {}

  /**
   * Pairs of every kind in both systems of units, as many of movement joints as asked for.
   *
   * @param joints of each exposure and system a share
   */
  static List<Pair> pairs(int joints) throws IOException {
    Random random = new Random(171);
    List<Pair> out = new ArrayList<>();
    MovementGuideline guideline = MovementGuideline.standard();
    for (int i = 0; i < joints; i++) {
      List<Exposure> all = guideline.rules().keySet().stream().sorted().toList();
      Exposure exposure = all.get(i % all.size());
      boolean makers = i % 3 == 0;
      Kind kind = (tag, measure, r) -> joint(tag, measure, r, guideline, exposure, makers);
      out.add(pair("J" + i, measure(i / 4), kind, random));
    }
    List<Kind> others =
        List.of(
            RandomCalculations::layout,
            RandomCalculations::substrate,
            RandomCalculations::depth,
            RandomCalculations::grout,
            RandomCalculations::deflection,
            RandomCalculations::flatness,
            RandomCalculations::takeoff,
            RandomCalculations::sealed,
            (tag, measure, r) -> limit(tag, measure, r, guideline));
    for (int i = 0; i < others.size() * 6; i++) {
      out.add(pair("K" + i, measure(i / others.size()), others.get(i % others.size()), random));
    }
    return out;
  }

  private static Measure measure(int i) {
    return Measure.values()[i % 2];
  }

  private static Pair pair(String tag, Measure measure, Kind kind, Random random)
      throws IOException {
    return new Pair(kind.of(tag, measure, random), kind.of(tag, measure, random));
  }

  private static Calculation joint(
      String tag,
      Measure measure,
      Random random,
      MovementGuideline guideline,
      Exposure exposure,
      boolean makers) {
    MovementInputs inputs =
        MovementInputs.of(subject(tag), measure, alpha(measure, random))
            .with(exposure)
            .with(MovementFigure.SPACING, large(measure, random, 2, 9))
            .with(MovementFigure.WIDTH, small(measure, random, 2, 30))
            .with(MovementFigure.RANGE, range(measure, random))
            .with(
                MovementFigure.CAPABILITY,
                Given.stated(sealant(random).capability(), null, "class"))
            .with(MovementFigure.TOLERANCE, small(measure, random, 0, 4))
            .with(MovementFigure.OTHER, small(measure, random, 0, 2));
    if (makers) inputs = inputs.with(MovementFigure.LEAST, small(measure, random, 3, 20));
    return MovementDesign.of(inputs, guideline).calculation();
  }

  private static Calculation layout(String tag, Measure measure, Random random) {
    return JointLayout.of(
            subject(tag), measure, large(measure, random, 3, 60), large(measure, random, 2, 9))
        .calculation();
  }

  private static Calculation substrate(String tag, Measure measure, Random random) {
    DifferentialMovement.FieldInputs inputs =
        new DifferentialMovement.FieldInputs(
            measure,
            alpha(measure, random),
            alpha(measure, random),
            large(measure, random, 2, 9),
            range(measure, random),
            range(measure, random));
    return DifferentialMovement.of(subject(tag), inputs).calculation();
  }

  private static Calculation depth(String tag, Measure measure, Random random) {
    return SealantDepth.of(
            subject(tag),
            measure,
            small(measure, random, 3, 30),
            Optional.of(small(measure, random, 2, 15)))
        .calculation();
  }

  private static Calculation grout(String tag, Measure measure, Random random) {
    return GroutWidth.of(
            subject(tag),
            measure,
            Optional.of(small(measure, random, 0, 3)),
            Optional.of(small(measure, random, 1, 8)))
        .calculation();
  }

  private static Calculation deflection(String tag, Measure measure, Random random) {
    Given n = number(random, 180, 720);
    return Deflection.of(
            subject(tag), measure, large(measure, random, 1, 9), n, number(random, 360, 480))
        .calculation();
  }

  private static Calculation flatness(String tag, Measure measure, Random random) {
    Content.Deviation stated =
        new Content.Deviation(
            small(measure, random, 2, 9).high(), large(measure, random, 1.5, 4).high());
    return SubstrateFlatness.of(
            subject(tag),
            small(measure, random, 20, 900),
            Optional.of(new Content.Flatness(List.of(stated))))
        .calculation();
  }

  private static Calculation takeoff(String tag, Measure measure, Random random) {
    Unit area = measure == Measure.INCH ? Unit.SQUARE_FOOT : Unit.SQUARE_METRE;
    TakeoffInputs inputs =
        new TakeoffInputs(
            stated(Quantity.of(draw(random, 3, 90), Unit.SQUARE_METRE).to(area)),
            small(measure, random, 20, 600),
            small(measure, random, 20, 600),
            small(measure, random, 1, 6),
            small(measure, random, 4, 12),
            small(measure, random, 2, 6),
            large(measure, random, 0, 90),
            small(measure, random, 4, 20),
            small(measure, random, 3, 10),
            TakeoffInputs.Yields.common());
    return Takeoff.of(subject(tag), inputs).calculation();
  }

  private static Calculation sealed(String tag, Measure measure, Random random) {
    Unit unit = measure == Measure.INCH ? Unit.FAHRENHEIT : Unit.CELSIUS;
    double cold = draw(random, -30, 0);
    double hot = draw(random, 30, 75);
    double one = draw(random, cold, hot);
    SealingTemperature.SealingInputs inputs =
        new SealingTemperature.SealingInputs(
            measure,
            alpha(measure, random),
            large(measure, random, 2, 9),
            stated(Quantity.of(cold, Unit.CELSIUS).to(unit)),
            stated(Quantity.of(hot, Unit.CELSIUS).to(unit)),
            stated(Quantity.of(one, Unit.CELSIUS).to(unit)),
            sealant(random),
            small(measure, random, 0, 4));
    return SealingTemperature.of(subject(tag), inputs).calculation();
  }

  private static Calculation limit(
      String tag, Measure measure, Random random, MovementGuideline guideline) {
    return SpacingLimit.of(
            subject(tag),
            measure,
            large(measure, random, 2, 9),
            guideline.rule(Exposure.EXTERIOR).orElseThrow())
        .calculation();
  }

  private static CalculationSubject subject(String tag) {
    return new CalculationSubject("movement-width", tag);
  }

  private static SealantClass sealant(Random random) {
    return SealantClass.of(CLASSES.get(random.nextInt(CLASSES.size()))).orElseThrow();
  }

  private static Given alpha(Measure measure, Random random) {
    Unit unit = measure == Measure.INCH ? Unit.PER_FAHRENHEIT : Unit.PER_KELVIN;
    return stated(Quantity.of(draw(random, 4e-6, 24e-6), Unit.PER_KELVIN).to(unit));
  }

  private static Given range(Measure measure, Random random) {
    return stated(
        Quantity.of(draw(random, 5, 95), Unit.KELVIN_DIFFERENCE).to(measure.difference()));
  }

  /** Between figures in metres. */
  private static Given large(Measure measure, Random random, double low, double high) {
    return stated(Quantity.of(draw(random, low, high), Unit.METRE).to(measure.large()));
  }

  /** Between figures in millimetres. */
  private static Given small(Measure measure, Random random, double low, double high) {
    return stated(Quantity.of(draw(random, low, high), Unit.MILLIMETRE).to(measure.small()));
  }

  private static Given number(Random random, double low, double high) {
    return stated(Quantity.of(Math.rint(draw(random, low, high)), Unit.ONE));
  }

  private static Given stated(Quantity quantity) {
    return Given.stated(quantity, null, "drawn");
  }

  private static double draw(Random random, double low, double high) {
    return low + (high - low) * random.nextDouble();
  }
}
