package clearbed.cli.joint;

import static clearbed.cli.joint.JointFigures.refusal;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Expansions;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.DifferentialMovement;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.MovementInputs;
import clearbed.calc.joint.SealantClass;
import clearbed.calc.joint.SealantDepth;
import clearbed.calc.joint.SealingTemperature;
import clearbed.model.value.Quantity;
import java.util.Optional;

/** Works out the joint that the options ask for. */
final class JointRequest {

  private final JointOptions typed;
  private final JointInputs options;
  private final MovementGuideline guideline;

  JointRequest(JointOptions typed, Expansions materials, MovementGuideline guideline) {
    this.typed = typed;
    this.options = new JointInputs(typed, materials, guideline);
    this.guideline = guideline;
  }

  JointAnswer answer() {
    Measure measure = options.measure();
    MovementInputs inputs = options.movement();
    MovementGuideline figures = figures(measure);
    MovementDesign design = MovementDesign.of(inputs, figures);
    return new JointAnswer(
        measure,
        inputs.tolerance().isPresent() && inputs.other().isPresent(),
        widest(inputs, figures),
        design,
        depth(measure, design),
        layout(measure, options.run(), inputs.spacing().or(() -> largest(design))),
        substrate(measure, inputs),
        sealed(measure, inputs));
  }

  private MovementGuideline figures(Measure measure) {
    return (typed.floor ? guideline.onFloors() : guideline).in(measure);
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
    return SealantDepth.of(JointInputs.subject("depth"), measure, required, Optional.empty());
  }

  private Optional<JointLayout> layout(
      Measure measure, Optional<Given> run, Optional<Given> spacing) {
    if (run.isEmpty() || spacing.isEmpty()) return Optional.empty();
    try {
      return Optional.of(
          JointLayout.of(JointInputs.subject("layout"), measure, run.get(), spacing.get()));
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
            : options.material("--substrate", typed.substrate);
    if (inputs.spacing().isEmpty() || inputs.range().isEmpty()) {
      throw refusal("--substrate", "needs --spacing and --range as well");
    }
    Given range = inputs.range().get();
    DifferentialMovement.FieldInputs both =
        new DifferentialMovement.FieldInputs(
            measure,
            inputs.expansion(),
            under,
            inputs.spacing().get(),
            range,
            cooler.orElse(range));
    return Optional.of(DifferentialMovement.of(JointInputs.subject("substrate"), both));
  }

  private Optional<SealingTemperature> sealed(Measure measure, MovementInputs inputs) {
    Optional<Given> sealed = JointFigures.temperature("--sealed", typed.sealed);
    if (sealed.isEmpty()) return Optional.empty();
    Optional<SealantClass> sealant = options.sealant();
    if (typed.coldest == null || inputs.spacing().isEmpty() || sealant.isEmpty()) {
      throw refusal("--sealed", "needs --coldest, --hottest, --spacing and --class as well");
    }
    Given none = Given.assumed(Quantity.of(0, measure.small()), "none stated");
    try {
      return Optional.of(
          SealingTemperature.of(
              JointInputs.subject("sealed"),
              new SealingTemperature.SealingInputs(
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
}
