package clearbed.cli;

import static clearbed.cli.JointFigures.refusal;

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
import clearbed.calc.MovementInputs.Part;
import clearbed.calc.SealantClass;
import clearbed.calc.SealantDepth;
import clearbed.calc.SealingTemperature;
import clearbed.calc.Subject;
import clearbed.model.Quantity;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** What the options ask for, once they are sure to make sense. */
final class JointRequest {

  /**
   * All that the command shows.
   *
   * @param complete true when tolerance and other movement are given as well
   * @param widestSpacing of the guideline in the exposure; the largest of all where that is unknown
   */
  record Answer(
      Measure measure,
      boolean complete,
      Quantity widestSpacing,
      MovementDesign design,
      SealantDepth depth,
      Optional<JointLayout> layout,
      Optional<DifferentialMovement> substrate,
      Optional<SealingTemperature> sealed) {

    boolean exposureKnown() {
      return design.unknowns().stream().noneMatch(one -> one.name().equals("exposure"));
    }
  }

  private final JointOptions typed;
  private final Expansions materials;
  private final MovementGuideline guideline;

  JointRequest(JointOptions typed, Expansions materials, MovementGuideline guideline) {
    this.typed = typed;
    this.materials = materials;
    this.guideline = guideline;
  }

  Answer answer() {
    Optional<Given> run = JointFigures.length("--run", typed.run);
    Optional<Given> spacing = JointFigures.length("--spacing", typed.spacing);
    Optional<Given> width = JointFigures.length("--width", typed.width);
    checkLengths(run, spacing, width);
    Measure measure = Measure.of(spacing.or(() -> run).or(() -> width).orElseThrow().low().unit());
    MovementInputs inputs = inputs(measure, spacing, width);
    MovementGuideline figures = figures(measure);
    MovementDesign design = MovementDesign.of(inputs, figures);
    return new Answer(
        measure,
        inputs.tolerance().isPresent() && inputs.other().isPresent(),
        widest(inputs, figures),
        design,
        depth(measure, design),
        layout(measure, run, spacing.or(() -> largest(design))),
        substrate(measure, inputs),
        sealed(measure, inputs));
  }

  private MovementGuideline figures(Measure measure) {
    return (typed.floor ? guideline.onFloors() : guideline).in(measure);
  }

  private MovementInputs inputs(Measure measure, Optional<Given> spacing, Optional<Given> width) {
    MovementInputs in =
        MovementInputs.of(subject("joint"), measure, tile())
            .with(Part.SPACING, spacing)
            .with(Part.WIDTH, width)
            .with(Part.RANGE, range())
            .with(Part.CAPABILITY, sealant().map(s -> Given.stated(s, null, s.words())));
    Optional<Exposure> exposure = exposure();
    if (exposure.isPresent()) in = in.with(exposure.get());
    Optional<Given> tolerance = JointFigures.notNegative("--tolerance", typed.tolerance);
    Optional<Given> least = JointFigures.length("--least", typed.least);
    in =
        in.with(Part.TOLERANCE, tolerance)
            .with(Part.OTHER, JointFigures.notNegative("--other", typed.other))
            .with(Part.LEAST, least);
    least.ifPresent(given -> checkLeast(given, spacing));
    checkTolerance(width, tolerance);
    return in;
  }

  private void checkLengths(Optional<Given> run, Optional<Given> spacing, Optional<Given> width) {
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

  private void checkLeast(Given least, Optional<Given> spacing) {
    if (spacing.isPresent() && least.high().compareTo(spacing.get().low()) >= 0) {
      throw refusal(
          "--least",
          typed.least + " is not narrower than the tile field beside it; check its unit");
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
    if (typed.expansion != null) return JointFigures.expansion("--expansion", typed.expansion);
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

  private Optional<SealantClass> sealant() {
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

  private Quantity widest(MovementInputs inputs, MovementGuideline figures) {
    return figures.rules().values().stream()
        .filter(rule -> inputs.exposure().map(rule.exposure()::equals).orElse(true))
        .map(rule -> rule.spacing().high())
        .max(Quantity::compareTo)
        .orElseThrow();
  }

  /** The spacing that a stated width allows, where none is given. */
  private static Optional<Given> largest(MovementDesign design) {
    return design
        .largestSpacing()
        .map(Interval::low)
        .filter(spacing -> spacing.number() > 0)
        .map(spacing -> Given.assumed(spacing, "the largest for the stated width"));
  }

  private SealantDepth depth(Measure measure, MovementDesign design) {
    Interval width = design.requiredWidth();
    Given required = Given.stated(width, null, "required joint width");
    return SealantDepth.of(subject("depth"), measure, required, Optional.empty());
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
    Optional<Given> cooler = JointFigures.range("--substrate-range", typed.substrateRange);
    if (typed.substrate == null) {
      if (cooler.isPresent()) throw refusal("--substrate-range", "needs --substrate as well");
      return Optional.empty();
    }
    boolean figure = !typed.substrate.isEmpty() && Character.isDigit(typed.substrate.charAt(0));
    Given under =
        figure
            ? JointFigures.expansion("--substrate", typed.substrate)
            : material("--substrate", typed.substrate);
    if (inputs.spacing().isEmpty() || inputs.range().isEmpty()) {
      throw refusal("--substrate", "needs --spacing and --range as well");
    }
    Given range = inputs.range().get();
    DifferentialMovement.Inputs both =
        new DifferentialMovement.Inputs(
            measure,
            inputs.expansion(),
            under,
            inputs.spacing().get(),
            range,
            cooler.orElse(range));
    return Optional.of(DifferentialMovement.of(subject("substrate"), both));
  }

  private Optional<SealingTemperature> sealed(Measure measure, MovementInputs inputs) {
    Optional<Given> sealed = JointFigures.temperature("--sealed", typed.sealed);
    if (sealed.isEmpty()) return Optional.empty();
    Optional<SealantClass> sealant = sealant();
    if (typed.coldest == null || inputs.spacing().isEmpty() || sealant.isEmpty()) {
      throw refusal("--sealed", "needs --coldest, --hottest, --spacing and --class as well");
    }
    Given none = Given.assumed(Quantity.of(0, measure.small()), "none stated");
    try {
      return Optional.of(
          SealingTemperature.of(
              subject("sealed"),
              new SealingTemperature.Inputs(
                  measure,
                  inputs.expansion(),
                  inputs.spacing().get(),
                  JointFigures.temperature("--coldest", typed.coldest).orElseThrow(),
                  JointFigures.temperature("--hottest", typed.hottest).orElseThrow(),
                  sealed.get(),
                  sealant.get(),
                  inputs.tolerance().orElse(none))));
    } catch (IllegalArgumentException e) {
      throw refusal("--sealed", e.getMessage());
    }
  }

  private static Subject subject(String of) {
    return new Subject("joint", of);
  }
}
