package clearbed.check;

import clearbed.calc.Exposure;
import clearbed.calc.Given;
import clearbed.calc.Interval;
import clearbed.calc.Measure;
import clearbed.calc.MovementDesign;
import clearbed.calc.MovementGuideline;
import clearbed.calc.MovementInputs;
import clearbed.calc.SealantClass;
import clearbed.calc.Subject;
import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Quantity;
import clearbed.model.Scope;
import clearbed.model.Unit;
import clearbed.model.Value;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** What the documents say of an entry's movement joints, ready for the arithmetic. */
final class MovementJoint {
  private static final String GLASS =
      "soda-lime glass, EN 572-1: 9.0e-6 /K; the tile maker's value is not stated";

  private final Entry entry;

  MovementJoint(Entry entry) {
    this.entry = entry;
  }

  /** The strictest surroundings of the entry; empty when no exposure is known. */
  Optional<Exposure> exposure() {
    Set<String> said = terms("location.exposure");
    if (said.isEmpty()) return Optional.empty();
    boolean floor = terms("location.surface").contains("floor");
    if (said.contains("exterior-freeze") && floor) return Optional.of(Exposure.EXTERIOR_COLD_DECK);
    if (said.contains("exterior") || said.contains("exterior-freeze"))
      return Optional.of(Exposure.EXTERIOR);
    boolean sunOrMoisture =
        said.stream().anyMatch(Set.of("wet", "steam", "submerged", "sun-heat")::contains);
    return Optional.of(sunOrMoisture ? Exposure.INTERIOR_SUN_OR_MOISTURE : Exposure.INTERIOR);
  }

  Optional<Given> width() {
    return given("movement.width", false);
  }

  Optional<Given> spacing() {
    return given("movement.spacing", true);
  }

  Optional<SealantClass> sealantClass() {
    // The weakest of the classes that govern is the one that must do.
    return entry.governing("sealant.class").stream()
        .map(v -> SealantClass.of(v.content().text()))
        .flatMap(Optional::stream)
        .min(Comparator.comparing(c -> c.capability().number()));
  }

  /**
   * Designs the joint.
   *
   * @param capability of the sealant to reckon with; empty when it is not known
   */
  MovementDesign design(String check, MovementGuideline guideline, Optional<Given> capability) {
    Measure measure =
        width().or(this::spacing).map(g -> Measure.of(g.low().unit())).orElse(Measure.INCH);
    MovementInputs inputs =
        MovementInputs.of(new Subject(check, entry.tag()), measure, expansion());
    if (exposure().isPresent()) inputs = inputs.withExposure(exposure().get());
    if (spacing().isPresent()) inputs = inputs.withSpacing(spacing().get());
    if (width().isPresent()) inputs = inputs.withWidth(width().get());
    Optional<Given> range = given("location.temperatureRange", true);
    if (range.isPresent()) inputs = inputs.withRange(range.get());
    if (capability.isPresent()) inputs = inputs.withCapability(capability.get());
    return MovementDesign.of(inputs, guideline);
  }

  private Given expansion() {
    return given("tile.expansion", true)
        .orElse(Given.assumed(Quantity.of(9.0e-6, Unit.PER_KELVIN), GLASS));
  }

  /**
   * The governing figure: of several the largest, or the smallest, whichever is worse for the
   * joint.
   */
  private Optional<Given> given(String attribute, boolean largest) {
    List<Value> values =
        entry.governing(attribute).stream()
            .filter(v -> v.content() instanceof Content.Amount)
            .toList();
    Comparator<Value> bySize = Comparator.comparing(v -> ((Content.Amount) v.content()).low());
    // Of equal figures, the one in the schedule that says most of the tile.
    Comparator<Value> home =
        Comparator.comparing(v -> v.origin().document().equals(entry.origin().document()) ? 0 : 1);
    Optional<Value> worst =
        values.stream().min((largest ? bySize.reversed() : bySize).thenComparing(home));
    return worst.map(
        v -> {
          Content.Amount amount = (Content.Amount) v.content();
          boolean assumed = v.scope() == Scope.ASSUMED;
          return new Given(Interval.of(amount), v.origin(), assumed, v.asWritten());
        });
  }

  private Set<String> terms(String attribute) {
    return entry.values(attribute).stream()
        .filter(v -> v.content() instanceof Content.Term && !v.excluded())
        .map(v -> v.content().text())
        .collect(Collectors.toSet());
  }
}
