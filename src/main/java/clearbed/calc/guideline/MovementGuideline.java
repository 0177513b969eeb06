package clearbed.calc.guideline;

import clearbed.base.config.StandardFiles;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.io.IOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Least widths and largest spacings of movement joints, by exposure, as a handbook tabulates them.
 *
 * @param source where the figures were published
 * @param rules at least one
 * @param plausible what an unknown sealant is reckoned to bear, least and most
 */
public record MovementGuideline(
    String id, String title, String source, Map<Exposure, ExposureRule> rules, Interval plausible) {
  public MovementGuideline {
    rules = Map.copyOf(rules);
  }

  /**
   * What holds in one exposure.
   *
   * @param spacing the closest and the widest spacing the guideline speaks of
   * @param least never under this width
   * @param preferred the width it prefers where it allows a lesser one
   * @param onFloors never under this width on floors, but for mosaic
   * @param rows widths by spacing, both rising; empty when the width does not depend on the spacing
   * @param atLeastAs an exposure whose rule holds too
   * @param plausibleRange temperature range reckoned with when none is known
   */
  public record ExposureRule(
      Exposure exposure,
      String label,
      String source,
      Interval spacing,
      Quantity least,
      Optional<Quantity> preferred,
      Optional<Quantity> onFloors,
      List<SpacingWidth> rows,
      Optional<Adjustment> adjustment,
      Optional<Exposure> atLeastAs,
      Interval plausibleRange) {
    public ExposureRule {
      rows = List.copyOf(rows);
    }

    private ExposureRule with(Interval spacing, Quantity least, Optional<Quantity> preferred) {
      return with(spacing, least, preferred, adjustment);
    }

    private ExposureRule with(
        Interval spacing,
        Quantity least,
        Optional<Quantity> preferred,
        Optional<Adjustment> adjustment) {
      return new ExposureRule(
          exposure,
          label,
          source,
          spacing,
          least,
          preferred,
          onFloors,
          rows,
          adjustment,
          atLeastAs,
          plausibleRange);
    }

    private ExposureRule underFoot() {
      Quantity floors = onFloors.map(width -> larger(width, least)).orElse(least);
      return with(spacing, floors, preferred.filter(width -> width.compareTo(floors) > 0));
    }

    private ExposureRule inMetric() {
      Interval wide = new Interval(spacing.low(), larger(spacing.high(), tenths(spacing.high())));
      return with(
          wide,
          whole(least),
          preferred.map(ExposureRule::whole),
          adjustment.map(Adjustment::inMetric));
    }

    /** The same in tenths of a metre, as handbooks write 12 ft as 3.7 m. */
    private static Quantity tenths(Quantity length) {
      return Quantity.of(Math.rint(length.in(Unit.METRE) * 10) / 10, Unit.METRE);
    }

    /** The same in whole millimetres where that is less, as handbooks write 1/8 in as 3 mm. */
    private static Quantity whole(Quantity width) {
      double metric = Math.rint(width.in(Unit.MILLIMETRE));
      return smaller(width, Quantity.of(metric, Unit.MILLIMETRE));
    }
  }

  /** The least width at a spacing. */
  public record SpacingWidth(Quantity spacing, Quantity width) {}

  /**
   * What hot and cold add to the least width: {@code add} for each {@code each} of temperature
   * range over {@code above}.
   */
  public record Adjustment(Quantity above, Quantity each, Quantity add) {

    /** A range of 100 °F is written as one of 56 K, which is a little more and no step more. */
    private Adjustment inMetric() {
      double kelvin = Math.rint(above.in(Unit.KELVIN_DIFFERENCE));
      return new Adjustment(larger(above, Quantity.of(kelvin, Unit.KELVIN_DIFFERENCE)), each, add);
    }
  }

  /**
   * Reads a guideline file.
   *
   * @param name of the file, for messages
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static MovementGuideline read(String name, byte[] yaml) throws IOException {
    return read(new StandardFiles.FileSource(name, yaml, true));
  }

  /**
   * Reads a guideline that ships with the tool, or was edited beside the installed program.
   *
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static MovementGuideline read(StandardFiles.FileSource source) throws IOException {
    return GuidelineFile.read(source);
  }

  /**
   * Reads the guideline that ships with the tool, or the edited one beside the installed program.
   *
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static MovementGuideline standard() throws IOException {
    return read(StandardFiles.open("guidelines/ej171.yaml"));
  }

  /** As it holds on floors for tile that is no mosaic. */
  public MovementGuideline onFloors() {
    return each(ExposureRule::underFoot);
  }

  /** As it reads in that system of units: a figure of the other one as handbooks write it. */
  public MovementGuideline in(Measure measure) {
    return measure != Measure.INCH ? each(ExposureRule::inMetric) : this;
  }

  private MovementGuideline each(UnaryOperator<ExposureRule> change) {
    Map<Exposure, ExposureRule> changed = new EnumMap<>(Exposure.class);
    rules.forEach((exposure, rule) -> changed.put(exposure, change.apply(rule)));
    return new MovementGuideline(id, title, source, changed, plausible);
  }

  /** The rule of an exposure, or empty when the guideline does not speak of it. */
  public Optional<ExposureRule> rule(Exposure exposure) {
    return Optional.ofNullable(rules.get(exposure));
  }

  /** The least width at a spacing and temperature range: the largest of all that holds there. */
  public Quantity width(Exposure exposure, Quantity spacing, Quantity range, Measure measure) {
    ExposureRule rule = rules.get(exposure);
    Quantity own = GuidelineTable.width(rule, spacing, range, measure);
    return rule.atLeastAs()
        .map(other -> larger(own, width(other, spacing, range, measure)))
        .orElse(own);
  }

  /** The largest spacing that the guideline allows a width; zero when it allows none. */
  public Quantity largestSpacing(
      Exposure exposure, Quantity width, Quantity range, Measure measure) {
    ExposureRule rule = rules.get(exposure);
    Quantity own = GuidelineTable.largestSpacing(rule, width, range, measure);
    return rule.atLeastAs()
        .map(other -> smaller(own, largestSpacing(other, width, range, measure)))
        .orElse(own);
  }

  public static Quantity larger(Quantity one, Quantity other) {
    return one.compareTo(other) >= 0 ? one : other;
  }

  public static Quantity smaller(Quantity one, Quantity other) {
    return one.compareTo(other) <= 0 ? one : other;
  }
}
