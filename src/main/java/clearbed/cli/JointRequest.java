package clearbed.cli;

import clearbed.calc.DifferentialMovement;
import clearbed.calc.Expansions;
import clearbed.calc.Exposure;
import clearbed.calc.Given;
import clearbed.calc.Interval;
import clearbed.calc.JointLayout;
import clearbed.calc.Measure;
import clearbed.calc.MovementDesign;
import clearbed.calc.MovementGuideline;
import clearbed.calc.MovementInputs;
import clearbed.calc.SealantClass;
import clearbed.calc.SealantDepth;
import clearbed.calc.Subject;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.recognise.Quantities;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the options ask for, once they are sure to make sense. */
final class JointRequest {

  /** The options as typed; null where left out. */
  record Typed(
      String run,
      String spacing,
      String range,
      String sealant,
      String exposure,
      String width,
      String material,
      String expansion,
      String substrate,
      String tolerance,
      String other) {}

  /** All that the command shows. */
  record Answer(
      MovementDesign design,
      SealantDepth depth,
      Optional<JointLayout> layout,
      Optional<DifferentialMovement> substrate) {}

  private static final Quantity LARGEST_RANGE = Quantity.of(500, Unit.KELVIN_DIFFERENCE);

  private static final Quantity LARGEST_LENGTH = Quantity.of(10_000, Unit.METRE);
  private static final Quantity LARGEST_EXPANSION = Quantity.of(1e-3, Unit.PER_KELVIN);

  private final Typed typed;
  private final Expansions materials;
  private final MovementGuideline guideline;

  JointRequest(Typed typed, Expansions materials, MovementGuideline guideline) {
    this.typed = typed;
    this.materials = materials;
    this.guideline = guideline;
  }

  Answer answer() {
    Optional<Given> run = length("--run", typed.run);
    Optional<Given> spacing = length("--spacing", typed.spacing);
    Optional<Given> width = length("--width", typed.width);
    checkLengths(run, spacing, width);
    Measure measure = measure(spacing, run);
    MovementInputs inputs = inputs(measure, spacing, width);
    MovementDesign design = MovementDesign.of(inputs, guideline);
    return new Answer(
        design, depth(measure, design), layout(measure, run, spacing), substrate(measure, inputs));
  }

  private MovementInputs inputs(Measure measure, Optional<Given> spacing, Optional<Given> width) {
    MovementInputs in = MovementInputs.of(subject("joint"), measure, tile());
    if (spacing.isPresent()) in = in.withSpacing(spacing.get());
    if (width.isPresent()) in = in.withWidth(width.get());
    Optional<Given> range = range();
    if (range.isPresent()) in = in.withRange(range.get());
    Optional<Given> sealant = sealant();
    if (sealant.isPresent()) in = in.withCapability(sealant.get());
    Optional<Exposure> exposure = exposure();
    if (exposure.isPresent()) in = in.withExposure(exposure.get());
    Optional<Given> tolerance = notNegative("--tolerance", typed.tolerance);
    if (tolerance.isPresent()) in = in.withTolerance(tolerance.get());
    Optional<Given> other = notNegative("--other", typed.other);
    if (other.isPresent()) in = in.withOther(other.get());
    checkTolerance(width, tolerance);
    return in;
  }

  private void checkLengths(Optional<Given> run, Optional<Given> spacing, Optional<Given> width) {
    if (run.isEmpty() && spacing.isEmpty()) {
      throw refusal("--spacing", "not given; give the joint spacing, e.g. --spacing 12ft");
    }
    if (run.isPresent() && spacing.isPresent() && over(spacing.get(), run.get())) {
      throw refusal(
          "--spacing",
          typed.spacing + " is longer than the run of " + typed.run + "; give a shorter spacing");
    }
    Given field = spacing.orElseGet(run::get);
    if (width.isPresent() && width.get().high().compareTo(field.low()) >= 0) {
      throw refusal(
          "--width",
          typed.width + " is not narrower than the tile field beside it; check its unit");
    }
  }

  private void checkTolerance(Optional<Given> width, Optional<Given> tolerance) {
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
    if (typed.expansion != null) {
      return positive("--expansion", typed.expansion, Dimension.EXPANSION, "9e-6/K");
    }
    return material("--material", typed.material == null ? "glass" : typed.material);
  }

  private Given material(String option, String name) {
    return materials
        .material(name)
        .map(Expansions.Material::given)
        .orElseThrow(
            () ->
                refusal(
                    option,
                    "'"
                        + name
                        + "' is not in the table; name one of "
                        + String.join(", ", materials.names())));
  }

  private Optional<Given> range() {
    if (typed.range == null) return Optional.empty();
    Given range = positive("--range", typed.range, Dimension.TEMPERATURE_DIFFERENCE, "130F or 70K");
    if (range.high().compareTo(LARGEST_RANGE) > 0) {
      throw refusal(
          "--range", typed.range + " is no weather; give hottest less coldest, e.g. 130F or 70K");
    }
    return Optional.of(range);
  }

  private Optional<Given> sealant() {
    if (typed.sealant == null) return Optional.empty();
    SealantClass sealant =
        SealantClass.of(typed.sealant)
            .orElseThrow(
                () ->
                    refusal(
                        "--class",
                        "'"
                            + typed.sealant
                            + "' is no class of ASTM C920 (12.5, 25, 35, 50, 100/50) or ISO 11600"
                            + " (7.5, 12.5, 20, 25)"));
    return Optional.of(Given.stated(sealant, null, sealant.words()));
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

  private Optional<Given> length(String option, String text) {
    if (text == null) return Optional.empty();
    return Optional.of(positive(option, text, Dimension.LENGTH, "12ft, 3/8in, 10mm"));
  }

  private Optional<Given> notNegative(String option, String text) {
    if (text == null) return Optional.empty();
    Interval amount = amount(option, text, Dimension.LENGTH, "1/16in or 2mm");
    if (amount.low().number() < 0) {
      throw refusal(option, text + " is negative; give zero or more");
    }
    return Optional.of(Given.stated(amount, null, option + " " + text));
  }

  private Given positive(String option, String text, Dimension dimension, String like) {
    Interval amount = amount(option, text, dimension, like);
    if (amount.low().number() <= 0) {
      throw refusal(option, text + " is not above zero; give e.g. " + like);
    }
    if (dimension == Dimension.EXPANSION && amount.high().compareTo(LARGEST_EXPANSION) > 0) {
      throw refusal(option, text + " is no building material; give e.g. " + like);
    }
    return Given.stated(amount, null, option + " " + text);
  }

  private Interval amount(String option, String text, Dimension dimension, String like) {
    try {
      Content.Amount amount =
          Quantities.parse(text, dimension)
              .orElseThrow(
                  () ->
                      refusal(
                          option,
                          "'"
                              + text
                              + "' is not understood; give a figure with its unit, e.g. "
                              + like));
      return usable(option, text, dimension, Interval.of(amount));
    } catch (IllegalArgumentException e) {
      throw refusal(option, "'" + text + "' is no usable figure; give e.g. " + like);
    }
  }

  private static UsageFailure refusal(String option, String problem) {
    return new UsageFailure(option + ": " + problem);
  }

  private static Interval usable(String option, String text, Dimension dimension, Interval amount) {
    if (dimension == Dimension.LENGTH && amount.high().compareTo(LARGEST_LENGTH) > 0) {
      throw refusal(option, text + " is longer than any building; check its unit");
    }
    return amount;
  }

  private static Measure measure(Optional<Given> spacing, Optional<Given> run) {
    return Measure.of(spacing.or(() -> run).orElseThrow().low().unit());
  }

  private SealantDepth depth(Measure measure, MovementDesign design) {
    Given width = Given.stated(design.requiredWidth(), null, "required joint width");
    return SealantDepth.of(subject("depth"), measure, width, Optional.empty());
  }

  private Optional<JointLayout> layout(
      Measure measure, Optional<Given> run, Optional<Given> spacing) {
    if (run.isEmpty() || spacing.isEmpty()) return Optional.empty();
    try {
      return Optional.of(JointLayout.of(subject("layout"), measure, run.get(), spacing.get()));
    } catch (IllegalArgumentException e) {
      throw refusal("--spacing", e.getMessage() + "; check the units");
    }
  }

  private Optional<DifferentialMovement> substrate(Measure measure, MovementInputs inputs) {
    if (typed.substrate == null) return Optional.empty();
    Given under = material("--substrate", typed.substrate);
    if (inputs.spacing().isEmpty() || inputs.range().isEmpty()) {
      throw refusal("--substrate", "needs --spacing and --range as well");
    }
    Given range = inputs.range().get();
    DifferentialMovement.Inputs both =
        new DifferentialMovement.Inputs(
            measure, inputs.expansion(), under, inputs.spacing().get(), range, range);
    return Optional.of(DifferentialMovement.of(subject("substrate"), both));
  }

  private static Subject subject(String of) {
    return new Subject("joint", of);
  }
}
