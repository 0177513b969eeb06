package clearbed.calc.joint;

import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.model.value.Quantity;
import java.util.Optional;

/** One joint with every figure fixed; a design with ranges is judged at its best and worst case. */
record MovementCase(
    MovementGuideline guideline,
    Exposure exposure,
    Measure measure,
    Quantity expansion,
    Quantity spacing,
    Quantity range,
    Quantity other,
    Quantity capability,
    Quantity tolerance,
    Optional<Quantity> least,
    Optional<Quantity> width) {

  Quantity movement() {
    return ThermalMovement.free(expansion, spacing, range, measure).plus(other);
  }

  Quantity computedWidth() {
    return JointWidth.required(movement(), capability, tolerance);
  }

  Quantity guidelineWidth() {
    return guideline.width(exposure, spacing, range, measure);
  }

  Quantity leastWidth() {
    Quantity needed = MovementGuideline.larger(computedWidth(), guidelineWidth());
    return least
        .map(makers -> MovementGuideline.larger(needed, makers.to(measure.small())))
        .orElse(needed);
  }

  Quantity requiredWidth() {
    return Rounding.up(leastWidth(), measure);
  }

  Optional<Quantity> strain() {
    return width.map(stated -> JointWidth.strain(movement(), stated, tolerance, measure));
  }

  Optional<Quantity> spacingByArithmetic() {
    return width.map(
        stated ->
            JointWidth.largestSpacing(
                stated, tolerance, capability, other, expansion, range, measure));
  }

  Optional<Quantity> spacingByGuideline() {
    return width.map(stated -> guideline.largestSpacing(exposure, stated, range, measure));
  }

  Optional<Quantity> largestSpacing() {
    return spacingByArithmetic()
        .map(one -> MovementGuideline.smaller(one, spacingByGuideline().orElseThrow()))
        .map(one -> underTheMakers() ? one.times(0) : one);
  }

  /** No spacing makes a joint do that is narrower than its sealant may be laid. */
  boolean underTheMakers() {
    return least.isPresent() && width.orElseThrow().compareTo(least.get()) < 0;
  }

  /** What governs the least width. */
  Governs governs() {
    Quantity needed = leastWidth();
    if (guidelineWidth().compareTo(needed) >= 0) return Governs.GUIDELINE;
    return computedWidth().compareTo(needed) >= 0 ? Governs.MOVEMENT : Governs.MAKER;
  }

  /** The stated width beyond the least; negative when it is too narrow. */
  Optional<Quantity> margin() {
    return width.map(stated -> stated.to(measure.small()).minus(leastWidth()));
  }

  /** The stated width against what is needed, not against what it is rounded up to. */
  boolean widthMeets() {
    return width.orElseThrow().compareTo(leastWidth()) >= 0;
  }

  boolean strainMeets() {
    return strain().orElseThrow().compareTo(capability) <= 0;
  }

  boolean spacingMeets() {
    return spacing.compareTo(rule().spacing().high()) <= 0;
  }

  MovementGuideline.ExposureRule rule() {
    return guideline.rule(exposure).orElseThrow();
  }
}
