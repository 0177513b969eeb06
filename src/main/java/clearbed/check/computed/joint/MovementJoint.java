package clearbed.check.computed.joint;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.MovementInputs;
import clearbed.calc.joint.MovementInputs.MovementFigure;
import clearbed.calc.joint.SealantClass;
import clearbed.check.judge.TilePlace;
import clearbed.check.rules.Assumptions;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.Comparator;
import java.util.Optional;
import java.util.Set;

/** What the documents say of an entry's movement joints, ready for the arithmetic. */
public final class MovementJoint {
  private static final String GLASS =
      "soda-lime glass, EN 572-1: 9.0e-6 /K; the tile maker's value is not stated";

  /** No joint in tile is built narrower (TCNA Handbook EJ171, as reported: never under 1/8 in). */
  private static final Quantity NARROWEST = Quantity.of(0.125, Unit.INCH);

  private static final Set<Exposure> INSIDE =
      Set.of(Exposure.INTERIOR, Exposure.INTERIOR_SUN_OR_MOISTURE);

  /** A class of sealant and the value that states it. */
  record Sealant(SealantClass sealantClass, Value value) {
    Given capability() {
      return Given.stated(sealantClass.capability(), value.origin(), value.asWritten());
    }
  }

  private final Entry entry;
  private final Stated stated;
  private final Assumptions assumptions;
  private final MovementGuideline guideline;
  private final RuleSet rules;

  public MovementJoint(Entry entry, Project project, RuleSet rules) {
    this.entry = entry;
    this.stated = new Stated(entry);
    this.assumptions = new Assumptions(rules.assumptions(), entry);
    this.guideline = rules.guideline(project.practice());
    this.rules = rules;
  }

  /** Its surroundings, as the guideline tells them apart; empty when no exposure is known. */
  Optional<Exposure> exposure() {
    return surroundings().map(this::onSlab);
  }

  private Exposure onSlab(Exposure e) {
    if (!INSIDE.contains(e) || !floorAlone()) return e;
    boolean tells = guideline.rule(Exposure.INTERIOR_ABOVE_GROUND).isPresent();
    if (e == Exposure.INTERIOR && tells && TilePlace.aboveGround(entry, rules.vocabulary()))
      return Exposure.INTERIOR_ABOVE_GROUND;
    return guideline.rule(Exposure.INTERIOR_FLOOR).isPresent() ? Exposure.INTERIOR_FLOOR : e;
  }

  private boolean floorAlone() {
    Set<String> surfaces = terms("location.surface");
    return surfaces.contains("floor") && !surfaces.contains("wall");
  }

  /** The guideline's figures for this tile, in the units that the joint is stated in. */
  MovementGuideline figures() {
    boolean large = floorAlone() && !TilePlace.mosaic(entry, rules.vocabulary());
    return (large ? guideline.onFloors() : guideline).in(measure());
  }

  /** True for a pool of which nothing says whether it is inside or out of doors. */
  boolean poolAnywhere() {
    return terms("location.exposure").contains("submerged")
        && surroundings().map(INSIDE::contains).orElse(false)
        && !TilePlace.indoors(entry, rules.vocabulary());
  }

  /** The strictest surroundings of the entry; empty when no exposure is known. */
  private Optional<Exposure> surroundings() {
    Set<String> said = terms("location.exposure");
    if (said.isEmpty()) return Optional.empty();
    boolean floor = terms("location.surface").contains("floor");
    // The floor of a pool is no deck, whatever the winters are like.
    boolean deck = floor && !said.contains("submerged");
    if (said.contains("exterior-freeze") && deck) return Optional.of(Exposure.EXTERIOR_COLD_DECK);
    boolean outside = said.contains("exterior") || said.contains("exterior-freeze");
    if (outside || said.contains("submerged") && TilePlace.outdoors(entry, rules.vocabulary()))
      return Optional.of(Exposure.EXTERIOR);
    boolean sunOrMoisture =
        said.stream().anyMatch(Set.of("wet", "steam", "submerged", "sun-heat")::contains);
    return Optional.of(sunOrMoisture ? Exposure.INTERIOR_SUN_OR_MOISTURE : Exposure.INTERIOR);
  }

  public Optional<Given> width() {
    return stated
        .smallest("movement.width", Dimension.LENGTH, NARROWEST)
        .filter(MovementJoint::aboveZero);
  }

  public Optional<Given> spacing() {
    return stated.largest("movement.spacing", Dimension.LENGTH).filter(MovementJoint::aboveZero);
  }

  /** The longest unbroken dimension. */
  Optional<Given> run() {
    return stated.largest("location.run", Dimension.LENGTH).filter(MovementJoint::aboveZero);
  }

  private static boolean aboveZero(Given given) {
    return given.low().number() > 0;
  }

  /** Of several that govern, the weakest is the one that must do. */
  Optional<Sealant> sealant() {
    return entry.governing("sealant.class").stream()
        .flatMap(v -> SealantClass.of(v.content().text()).map(c -> new Sealant(c, v)).stream())
        .min(Comparator.comparing(s -> s.sealantClass().capability().number()));
  }

  /** The system of units that the joint is stated in, or the one that the rules keep to. */
  Measure measure() {
    if (rules.units().alone()) return rules.units();
    return width().or(this::spacing).map(g -> Measure.of(g.low().unit())).orElse(Measure.INCH);
  }

  /**
   * Designs the joint.
   *
   * @param capability of the sealant to reckon with; empty when it is not known
   */
  MovementDesign design(String check, Optional<Given> capability) {
    return design(check, capability, exposure());
  }

  /** The same in other surroundings. */
  MovementDesign design(String check, Optional<Given> capability, Optional<Exposure> exposure) {
    MovementInputs inputs =
        MovementInputs.of(rules.subject(check, entry.tag()), measure(), expansion());
    if (exposure.isPresent()) inputs = inputs.with(exposure.get());
    return MovementDesign.of(
        inputs
            .with(MovementFigure.SPACING, sure("movement.spacing", spacing()))
            .with(MovementFigure.WIDTH, width())
            .with(
                MovementFigure.RANGE,
                figure("location.temperatureRange", Dimension.TEMPERATURE_DIFFERENCE))
            .with(MovementFigure.CAPABILITY, capability),
        figures());
  }

  Given expansion() {
    Given glass = Given.assumed(Quantity.of(9.0e-6, Unit.PER_KELVIN), GLASS);
    return figure("tile.expansion", Dimension.EXPANSION)
        .orElseGet(() -> Stated.noted(entry, "tile.expansion", glass));
  }

  /** As stated in a document or a project fact, else as a rule file assumes it. */
  private Optional<Given> figure(String attribute, Dimension dimension) {
    return sure(attribute, stated.largest(attribute, dimension).filter(MovementJoint::aboveZero))
        .or(
            () ->
                assumptions
                    .of(attribute, dimension)
                    .map(given -> Stated.noted(entry, attribute, given)));
  }

  /** As it is, unless another figure beside it was not understood. */
  private Optional<Given> sure(String attribute, Optional<Given> given) {
    return entry.unread(attribute).isEmpty() ? given : Optional.empty();
  }

  private Set<String> terms(String attribute) {
    return TilePlace.terms(entry, attribute);
  }
}
