package clearbed.calc.joint;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.Exposure;
import clearbed.model.value.Dimension;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What is known of a movement joint; what is not there is not known.
 *
 * @param expansion coefficient of the tile
 */
public record MovementInputs(
    CalculationSubject subject,
    Measure measure,
    Given expansion,
    Optional<Exposure> exposure,
    Map<MovementFigure, Given> known) {

  /** A figure of the joint. */
  public enum MovementFigure {
    /** Length of the field that moves into one joint. */
    SPACING("the joint spacing", Dimension.LENGTH, true),
    /** Width of the joint as stated. */
    WIDTH("the joint width", Dimension.LENGTH, true),
    /** Temperature difference of the tile surface between hottest and coldest. */
    RANGE("the temperature range", Dimension.TEMPERATURE_DIFFERENCE, true),
    /** Movement capability of the sealant, as a ratio. */
    CAPABILITY("the movement capability", Dimension.RATIO, true),
    /** What construction may take off the width; reckoned as none where it is not known. */
    TOLERANCE("the tolerance", Dimension.LENGTH, false),
    /** Movement that does not come of temperature; reckoned as none where it is not known. */
    OTHER("the other movement", Dimension.LENGTH, false),
    /** Width that the maker of the sealant asks for; reckoned as none where it is not known. */
    LEAST("the sealant maker's least width", Dimension.LENGTH, false);

    private final String words;
    private final Dimension dimension;
    private final boolean positive;

    MovementFigure(String words, Dimension dimension, boolean positive) {
      this.words = words;
      this.dimension = dimension;
      this.positive = positive;
    }

    private void check(Given given) {
      if (positive) given.positive(words, dimension);
      else given.notNegative(words, dimension);
    }
  }

  public MovementInputs {
    expansion.positive("the expansion", Dimension.EXPANSION);
    known.forEach(MovementFigure::check);
    Map<MovementFigure, Given> copy = new EnumMap<>(MovementFigure.class);
    copy.putAll(known);
    known = Collections.unmodifiableMap(copy);
  }

  /** Nothing known yet but the tile. */
  public static MovementInputs of(CalculationSubject subject, Measure measure, Given expansion) {
    return new MovementInputs(subject, measure, expansion, Optional.empty(), Map.of());
  }

  public MovementInputs with(Exposure exposed) {
    return new MovementInputs(subject, measure, expansion, Optional.of(exposed), known);
  }

  public MovementInputs with(MovementFigure part, Given given) {
    Map<MovementFigure, Given> more = new EnumMap<>(MovementFigure.class);
    more.putAll(known);
    more.put(part, given);
    return new MovementInputs(subject, measure, expansion, exposure, more);
  }

  /** As before where it is not known. */
  public MovementInputs with(MovementFigure part, Optional<Given> given) {
    return given.map(one -> with(part, one)).orElse(this);
  }

  public Optional<Given> spacing() {
    return get(MovementFigure.SPACING);
  }

  public Optional<Given> width() {
    return get(MovementFigure.WIDTH);
  }

  public Optional<Given> range() {
    return get(MovementFigure.RANGE);
  }

  public Optional<Given> capability() {
    return get(MovementFigure.CAPABILITY);
  }

  public Optional<Given> tolerance() {
    return get(MovementFigure.TOLERANCE);
  }

  public Optional<Given> other() {
    return get(MovementFigure.OTHER);
  }

  public Optional<Given> least() {
    return get(MovementFigure.LEAST);
  }

  private Optional<Given> get(MovementFigure part) {
    return Optional.ofNullable(known.get(part));
  }
}
