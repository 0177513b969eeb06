package clearbed.calc;

import clearbed.base.config.StandardFiles;
import clearbed.model.Quantity;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Least widths and largest spacings of movement joints, by exposure, as a handbook tabulates them.
 *
 * @param source where the figures were published
 * @param rules at least one
 * @param plausible what an unknown sealant is reckoned to bear, least and most
 */
public record MovementGuideline(
    String id, String title, String source, Map<Exposure, Rule> rules, Interval plausible) {
  public MovementGuideline {
    rules = Map.copyOf(rules);
  }

  /**
   * What holds in one exposure.
   *
   * @param spacing the closest and the widest spacing the guideline speaks of
   * @param least never under this width
   * @param preferred the width it prefers where it allows a lesser one
   * @param rows widths by spacing, both rising; empty when the width does not depend on the spacing
   * @param atLeastAs an exposure whose rule holds too
   * @param plausibleRange temperature range reckoned with when none is known
   */
  public record Rule(
      Exposure exposure,
      String label,
      String source,
      Interval spacing,
      Quantity least,
      Optional<Quantity> preferred,
      List<Row> rows,
      Optional<Adjustment> adjustment,
      Optional<Exposure> atLeastAs,
      Interval plausibleRange) {
    public Rule {
      rows = List.copyOf(rows);
    }
  }

  /** The least width at a spacing. */
  public record Row(Quantity spacing, Quantity width) {}

  /**
   * What hot and cold add to the least width: {@code add} for each {@code each} of temperature
   * range over {@code above}.
   */
  public record Adjustment(Quantity above, Quantity each, Quantity add) {}

  /**
   * Reads a guideline file.
   *
   * @param name of the file, for messages
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static MovementGuideline read(String name, byte[] yaml) throws IOException {
    return read(new StandardFiles.Source(name, yaml, true));
  }

  /**
   * Reads a guideline that ships with the tool, or was edited beside the installed program.
   *
   * @throws IOException with file, line and reason when it cannot be understood
   */
  public static MovementGuideline read(StandardFiles.Source source) throws IOException {
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

  /** The rule of an exposure, or empty when the guideline does not speak of it. */
  public Optional<Rule> rule(Exposure exposure) {
    return Optional.ofNullable(rules.get(exposure));
  }

  /** The least width at a spacing and temperature range: the largest of all that holds there. */
  public Quantity width(Exposure exposure, Quantity spacing, Quantity range, Measure measure) {
    Rule rule = rules.get(exposure);
    Quantity own = GuidelineTable.width(rule, spacing, range, measure);
    return rule.atLeastAs()
        .map(other -> larger(own, width(other, spacing, range, measure)))
        .orElse(own);
  }

  /** The largest spacing that the guideline allows a width; zero when it allows none. */
  public Quantity largestSpacing(
      Exposure exposure, Quantity width, Quantity range, Measure measure) {
    Rule rule = rules.get(exposure);
    Quantity own = GuidelineTable.largestSpacing(rule, width, range, measure);
    return rule.atLeastAs()
        .map(other -> smaller(own, largestSpacing(other, width, range, measure)))
        .orElse(own);
  }

  static Quantity larger(Quantity one, Quantity other) {
    return one.compareTo(other) >= 0 ? one : other;
  }

  static Quantity smaller(Quantity one, Quantity other) {
    return one.compareTo(other) <= 0 ? one : other;
  }
}
