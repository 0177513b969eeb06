package clearbed.calc.guideline;

import static clearbed.calc.figure.FigureFile.positive;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.base.config.StandardFiles;
import clearbed.calc.figure.Interval;
import clearbed.calc.guideline.MovementGuideline.Adjustment;
import clearbed.calc.guideline.MovementGuideline.ExposureRule;
import clearbed.calc.guideline.MovementGuideline.SpacingWidth;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a guideline of its file, or says at which line it is wrong and why. */
final class GuidelineFile {
  private GuidelineFile() {}

  static MovementGuideline read(StandardFiles.FileSource source) throws IOException {
    ConfigNode file = ConfigFile.read(source, "guideline").root();
    ConfigNode exposures = file.get("exposures");
    if (exposures.entries().isEmpty())
      throw exposures.fault("no exposures; give at least one under 'exposures'");
    Map<Exposure, ExposureRule> rules = new EnumMap<>(Exposure.class);
    for (ConfigNode section : exposures.entries()) {
      ExposureRule rule = rule(section);
      rules.put(rule.exposure(), rule);
    }
    for (ConfigNode section : exposures.entries()) checkReference(section, rules);
    return new MovementGuideline(
        file.get("id").text().strip(),
        file.get("title").text().strip(),
        file.get("source").text().strip(),
        rules,
        span(file.get("capabilityWhenUnknown"), Dimension.RATIO));
  }

  private static ExposureRule rule(ConfigNode section) throws ConfigException {
    ConfigNode width = section.get("width");
    return new ExposureRule(
        Exposure.of(section.key()).orElseThrow(),
        section.get("label").text().strip(),
        section.get("source").text().strip(),
        span(section.get("spacing"), Dimension.LENGTH),
        positive(width.get("least"), Dimension.LENGTH),
        width.has("preferred")
            ? Optional.of(positive(width.get("preferred"), Dimension.LENGTH))
            : Optional.empty(),
        width.has("onFloors")
            ? Optional.of(positive(width.get("onFloors"), Dimension.LENGTH))
            : Optional.empty(),
        rows(section.get("rows")),
        section.has("adjustment")
            ? Optional.of(adjustment(section.get("adjustment")))
            : Optional.empty(),
        Exposure.of(section.get("atLeastAs").text()),
        span(section.get("rangeWhenUnknown"), Dimension.TEMPERATURE_DIFFERENCE));
  }

  private static Interval span(ConfigNode span, Dimension dimension) throws ConfigException {
    Quantity from = positive(span.get("from"), dimension);
    Quantity to = positive(span.get("to"), dimension);
    if (from.compareTo(to) > 0)
      throw span.fault(span.path() + " runs from " + from + " down to " + to);
    return new Interval(from, to);
  }

  private static List<SpacingWidth> rows(ConfigNode list) throws ConfigException {
    List<SpacingWidth> rows = new ArrayList<>();
    for (ConfigNode row : list.items()) {
      SpacingWidth next =
          new SpacingWidth(
              positive(row.get("spacing"), Dimension.LENGTH),
              positive(row.get("width"), Dimension.LENGTH));
      if (!rows.isEmpty() && !rises(rows.get(rows.size() - 1), next))
        throw row.fault(row.path() + " must have a larger spacing and width than the row before");
      rows.add(next);
    }
    return rows;
  }

  private static boolean rises(SpacingWidth before, SpacingWidth after) {
    return after.spacing().compareTo(before.spacing()) > 0
        && after.width().compareTo(before.width()) > 0;
  }

  private static Adjustment adjustment(ConfigNode extra) throws ConfigException {
    return new Adjustment(
        positive(extra.get("above"), Dimension.TEMPERATURE_DIFFERENCE),
        positive(extra.get("each"), Dimension.TEMPERATURE_DIFFERENCE),
        positive(extra.get("add"), Dimension.LENGTH));
  }

  private static void checkReference(ConfigNode section, Map<Exposure, ExposureRule> rules)
      throws ConfigException {
    ConfigNode word = section.get("atLeastAs");
    Optional<Exposure> other = Exposure.of(word.text());
    if (!section.has("atLeastAs")) return;
    if (other.isEmpty() || other.get().word().equals(section.key()))
      throw word.fault("atLeastAs: '" + word.text() + "' is no other exposure");
    ExposureRule rule = rules.get(other.get());
    // One step only: a chain could run in a circle.
    if (rule == null || rule.atLeastAs().isPresent())
      throw word.fault("atLeastAs must name an exposure of this file without one");
  }
}
