package clearbed.calc.joint;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Subject;
import clearbed.calc.guideline.Exposure;
import clearbed.model.Dimension;
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
    Subject subject,
    Measure measure,
    Given expansion,
    Optional<Exposure> exposure,
    Map<Part, Given> known) {

  /** A figure of the joint. */
  public enum Part {
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

    Part(String words, Dimension dimension, boolean positive) {
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
    known.forEach(Part::check);
    Map<Part, Given> copy = new EnumMap<>(Part.class);
    copy.putAll(known);
    known = Collections.unmodifiableMap(copy);
  }

  /** Nothing known yet but the tile. */
  public static MovementInputs of(Subject subject, Measure measure, Given expansion) {
    return new MovementInputs(subject, measure, expansion, Optional.empty(), Map.of());
  }

  public MovementInputs with(Exposure exposed) {
    return new MovementInputs(subject, measure, expansion, Optional.of(exposed), known);
  }

  public MovementInputs with(Part part, Given given) {
    Map<Part, Given> more = new EnumMap<>(Part.class);
    more.putAll(known);
    more.put(part, given);
    return new MovementInputs(subject, measure, expansion, exposure, more);
  }

  /** As before where it is not known. */
  public MovementInputs with(Part part, Optional<Given> given) {
    return given.map(one -> with(part, one)).orElse(this);
  }

  public Optional<Given> spacing() {
    return get(Part.SPACING);
  }

  public Optional<Given> width() {
    return get(Part.WIDTH);
  }

  public Optional<Given> range() {
    return get(Part.RANGE);
  }

  public Optional<Given> capability() {
    return get(Part.CAPABILITY);
  }

  public Optional<Given> tolerance() {
    return get(Part.TOLERANCE);
  }

  public Optional<Given> other() {
    return get(Part.OTHER);
  }

  public Optional<Given> least() {
    return get(Part.LEAST);
  }

  private Optional<Given> get(Part part) {
    return Optional.ofNullable(known.get(part));
  }
}
