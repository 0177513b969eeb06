package clearbed.calc;

import clearbed.model.Dimension;
import java.util.Optional;

/**
 * What is known of a movement joint; what is left empty is not known.
 *
 * @param spacing length of the field that moves into one joint
 * @param width of the joint as stated
 * @param range temperature difference of the tile surface between hottest and coldest
 * @param expansion coefficient of the tile
 * @param capability movement capability of the sealant, as a ratio
 * @param tolerance what construction may take off the width; empty is reckoned as none
 * @param other movement that does not come of temperature; empty is reckoned as none
 * @param least width that the maker of the sealant asks for; empty is reckoned as none
 */
public record MovementInputs(
    Subject subject,
    Measure measure,
    Given expansion,
    Optional<Exposure> exposure,
    Optional<Given> spacing,
    Optional<Given> width,
    Optional<Given> range,
    Optional<Given> capability,
    Optional<Given> tolerance,
    Optional<Given> other,
    Optional<Given> least) {

  public MovementInputs {
    expansion.positive("the expansion", Dimension.EXPANSION);
    spacing.ifPresent(given -> given.positive("the joint spacing", Dimension.LENGTH));
    width.ifPresent(given -> given.positive("the joint width", Dimension.LENGTH));
    range.ifPresent(
        given -> given.positive("the temperature range", Dimension.TEMPERATURE_DIFFERENCE));
    capability.ifPresent(given -> given.positive("the movement capability", Dimension.RATIO));
    tolerance.ifPresent(given -> given.notNegative("the tolerance", Dimension.LENGTH));
    other.ifPresent(given -> given.notNegative("the other movement", Dimension.LENGTH));
    least.ifPresent(
        given -> given.notNegative("the sealant maker's least width", Dimension.LENGTH));
  }

  /** Nothing known yet but the tile. */
  public static MovementInputs of(Subject subject, Measure measure, Given expansion) {
    Optional<Given> none = Optional.empty();
    return new MovementInputs(
        subject, measure, expansion, Optional.empty(), none, none, none, none, none, none, none);
  }

  public MovementInputs withExposure(Exposure known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        Optional.of(known),
        spacing,
        width,
        range,
        capability,
        tolerance,
        other,
        least);
  }

  public MovementInputs withSpacing(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        Optional.of(known),
        width,
        range,
        capability,
        tolerance,
        other,
        least);
  }

  public MovementInputs withWidth(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        spacing,
        Optional.of(known),
        range,
        capability,
        tolerance,
        other,
        least);
  }

  public MovementInputs withRange(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        spacing,
        width,
        Optional.of(known),
        capability,
        tolerance,
        other,
        least);
  }

  public MovementInputs withCapability(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        spacing,
        width,
        range,
        Optional.of(known),
        tolerance,
        other,
        least);
  }

  public MovementInputs withTolerance(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        spacing,
        width,
        range,
        capability,
        Optional.of(known),
        other,
        least);
  }

  public MovementInputs withOther(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        spacing,
        width,
        range,
        capability,
        tolerance,
        Optional.of(known),
        least);
  }

  public MovementInputs withLeast(Given known) {
    return new MovementInputs(
        subject,
        measure,
        expansion,
        exposure,
        spacing,
        width,
        range,
        capability,
        tolerance,
        other,
        Optional.of(known));
  }
}
