package clearbed.cli.joint;

import static clearbed.cli.joint.JointFigures.refusal;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Expansions;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.MovementInputs;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import clearbed.calc.joint.SealantClass;
import clearbed.model.value.Quantity;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** The options as figures of a joint; those that contradict each other are refused in one line. */
final class JointInputs {
  private final JointOptions typed;
  private final Expansions materials;
  private final MovementGuideline guideline;
  private final Optional<Given> run;
  private final Optional<Given> spacing;
  private final Optional<Given> width;

  JointInputs(JointOptions typed, Expansions materials, MovementGuideline guideline) {
    this.typed = typed;
    this.materials = materials;
    this.guideline = guideline;
    this.run = JointFigures.length("--run", typed.run);
    this.spacing = JointFigures.length("--spacing", typed.spacing);
    this.width = JointFigures.length("--width", typed.width);
    checkLengths();
  }

  Optional<Given> run() {
    return run;
  }

  /** The units to answer in: those of the first length that is typed. */
  Measure measure() {
    return Measure.of(spacing.or(() -> run).or(() -> width).orElseThrow().low().unit());
  }

  /** What is known of the movement, once the options are sure to agree with each other. */
  MovementInputs movement() {
    MovementInputs in =
        MovementInputs.of(subject("joint"), measure(), tile())
            .with(MovementFigure.SPACING, spacing)
            .with(MovementFigure.WIDTH, width)
            .with(MovementFigure.RANGE, range())
            .with(
                MovementFigure.CAPABILITY,
                sealant().map(s -> Given.stated(s.capability(), null, s.words())));
    Optional<Exposure> exposure = exposure();
    if (exposure.isPresent()) in = in.with(exposure.get());
    Optional<Given> tolerance = JointFigures.notNegative("--tolerance", typed.tolerance);
    Optional<Given> least = JointFigures.length("--least", typed.least);
    in =
        in.with(MovementFigure.TOLERANCE, tolerance)
            .with(MovementFigure.OTHER, JointFigures.notNegative("--other", typed.other))
            .with(MovementFigure.LEAST, least);
    least.ifPresent(this::checkLeast);
    checkTolerance(tolerance);
    return in;
  }

  private void checkLengths() {
    if (run.isEmpty() && spacing.isEmpty() && width.isEmpty()) {
      throw refusal(
          "--spacing",
          "not given; give the joint spacing, e.g. --spacing 12ft, or a --width to find it for");
    }
    if (run.isPresent() && spacing.isPresent() && over(spacing.get(), run.get())) {
      throw refusal(
          "--spacing",
          typed.spacing + " is longer than the run of " + typed.run + "; give a shorter spacing");
    }
    Optional<Given> field = spacing.or(() -> run);
    if (width.isPresent()
        && field.isPresent()
        && width.get().high().compareTo(field.get().low()) >= 0) {
      throw refusal(
          "--width",
          typed.width + " is not narrower than the tile field beside it; check its unit");
    }
  }

  private void checkLeast(Given least) {
    if (spacing.isPresent() && least.high().compareTo(spacing.get().low()) >= 0) {
      throw refusal(
          "--least",
          typed.least + " is not narrower than the tile field beside it; check its unit");
    }
  }

  private void checkTolerance(Optional<Given> tolerance) {
    if (width.isPresent()
        && tolerance.isPresent()
        && tolerance.get().high().compareTo(width.get().low()) >= 0) {
      throw refusal(
          "--tolerance",
          typed.tolerance + " leaves nothing of a joint " + typed.width + " wide; check its unit");
    }
  }

  private static boolean over(Given one, Given other) {
    return one.low().compareTo(other.high()) > 0;
  }

  private Given tile() {
    if (typed.expansion != null && typed.material != null) {
      throw refusal(
          "--expansion", "stands beside --material, which also gives an expansion; leave one out");
    }
    if (typed.expansion != null) return JointFigures.expansion("--expansion", typed.expansion);
    return material("--material", typed.material == null ? "glass" : typed.material);
  }

  Given material(String option, String name) {
    return materials
        .material(name)
        .map(Expansions.MaterialExpansion::given)
        .orElseThrow(
            () ->
                refusal(
                    option,
                    "'"
                        + name
                        + "' is not in the table; name one of "
                        + String.join(", ", materials.names())));
  }

  /** The range as given, else hottest less coldest where both are. */
  private Optional<Given> range() {
    Optional<Given> range = JointFigures.range("--range", typed.range);
    Optional<Given> coldest = JointFigures.temperature("--coldest", typed.coldest);
    Optional<Given> hottest = JointFigures.temperature("--hottest", typed.hottest);
    if (coldest.isPresent() != hottest.isPresent()) {
      throw refusal(
          coldest.isPresent() ? "--coldest" : "--hottest",
          "needs " + (coldest.isPresent() ? "--hottest" : "--coldest") + " as well");
    }
    if (coldest.isEmpty()) return range;
    Quantity between = hottest.get().high().minus(coldest.get().low());
    if (between.number() <= 0) {
      throw refusal("--hottest", typed.hottest + " is not above the coldest, " + typed.coldest);
    }
    if (range.isPresent() && range.get().high().compareTo(between) != 0) {
      throw refusal(
          "--range",
          typed.range + " is not what lies between --coldest and --hottest; leave it out");
    }
    String words = typed.hottest + " less " + typed.coldest;
    return Optional.of(Given.stated(between, null, words));
  }

  Optional<SealantClass> sealant() {
    if (typed.sealant == null) return Optional.empty();
    Optional<SealantClass> sealant = SealantClass.of(typed.sealant);
    if (sealant.isEmpty()) {
      throw refusal(
          "--class",
          "'"
              + typed.sealant
              + "' is no class of ASTM C920 (12.5, 25, 35, 50, 100/50) or ISO 11600"
              + " (7.5, 12.5, 20, 25)");
    }
    return sealant;
  }

  private Optional<Exposure> exposure() {
    if (typed.exposure == null) return Optional.empty();
    Optional<Exposure> exposure = Exposure.of(typed.exposure);
    if (exposure.isEmpty()) {
      throw refusal(
          "--exposure",
          "'"
              + typed.exposure
              + "' is not known; give "
              + Arrays.stream(Exposure.values())
                  .map(Exposure::word)
                  .collect(Collectors.joining(", ")));
    }
    if (guideline.rule(exposure.get()).isEmpty()) {
      throw refusal(
          "--exposure",
          guideline.id() + " has no figures for '" + typed.exposure + "'; add them to its file");
    }
    return exposure;
  }

  static CalculationSubject subject(String of) {
    return new CalculationSubject("joint", of);
  }
}
