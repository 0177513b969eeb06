package clearbed.calc;

import clearbed.calc.MovementGuideline.Adjustment;
import clearbed.calc.MovementGuideline.Row;
import clearbed.calc.MovementGuideline.Rule;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.recognise.StandardFiles;
import java.io.IOException;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes a guideline of its file, or says at which line it is wrong and why. */
final class GuidelineFile {

  private record File(
      Words id,
      Words title,
      Words source,
      Span capabilityWhenUnknown,
      Map<String, Section> exposures) {}

  private record Section(
      Words label,
      Words source,
      Span spacing,
      Width width,
      List<Line> rows,
      Extra adjustment,
      Words atLeastAs,
      Span rangeWhenUnknown) {}

  private record Span(Words from, Words to) {}

  private record Width(Words least, Words preferred) {}

  private record Line(Words spacing, Words width) {}

  private record Extra(Words above, Words each, Words add) {}

  private final YamlFile yaml;

  private GuidelineFile(String name) {
    this.yaml = new YamlFile(name);
  }

  static MovementGuideline read(StandardFiles.Source source) throws IOException {
    GuidelineFile reader = new GuidelineFile(source.name());
    return reader.guideline(reader.yaml.read(source, File.class));
  }

  private MovementGuideline guideline(File file) throws IOException {
    if (file.exposures == null || file.exposures.isEmpty()) {
      throw yaml.wrong(0, "no exposures; give at least one under 'exposures'");
    }
    Map<Exposure, Rule> rules = new EnumMap<>(Exposure.class);
    for (Map.Entry<String, Section> section : file.exposures.entrySet()) {
      Rule rule = rule(section.getKey(), section.getValue());
      rules.put(rule.exposure(), rule);
    }
    checkReferences(rules);
    return new MovementGuideline(
        yaml.text(file.id, "id"),
        yaml.text(file.title, "title"),
        yaml.text(file.source, "source"),
        rules,
        span(file.capabilityWhenUnknown, "capabilityWhenUnknown", Dimension.RATIO));
  }

  private Rule rule(String word, Section section) throws IOException {
    int line = section == null || section.label == null ? 0 : section.label.line();
    Exposure exposure =
        Exposure.of(word)
            .orElseThrow(() -> yaml.wrong(line, "unknown exposure '" + word + "'; " + known()));
    if (section == null) throw yaml.wrong(0, "exposure '" + word + "' is empty");
    String at = "exposures." + word + ".";
    List<Row> rows = rows(section.rows, at);
    return new Rule(
        exposure,
        yaml.text(section.label, at + "label"),
        yaml.text(section.source, at + "source"),
        span(section.spacing, at + "spacing", Dimension.LENGTH),
        least(section.width, at + "width"),
        preferred(section.width, at + "width"),
        rows,
        adjustment(section.adjustment, at + "adjustment"),
        reference(section.atLeastAs, exposure),
        span(section.rangeWhenUnknown, at + "rangeWhenUnknown", Dimension.TEMPERATURE_DIFFERENCE));
  }

  private Interval span(Span span, String what, Dimension dimension) throws IOException {
    if (span == null) throw yaml.wrong(0, what + " is missing");
    Quantity from = yaml.positive(span.from, what + ".from", dimension);
    Quantity to = yaml.positive(span.to, what + ".to", dimension);
    if (from.compareTo(to) > 0) {
      throw yaml.wrong(span.to.line(), what + " runs from " + from + " down to " + to);
    }
    return new Interval(from, to);
  }

  private Quantity least(Width width, String what) throws IOException {
    if (width == null) throw yaml.wrong(0, what + " is missing");
    return yaml.positive(width.least, what + ".least", Dimension.LENGTH);
  }

  private Optional<Quantity> preferred(Width width, String what) throws IOException {
    if (width.preferred == null) return Optional.empty();
    return Optional.of(yaml.positive(width.preferred, what + ".preferred", Dimension.LENGTH));
  }

  private List<Row> rows(List<Line> lines, String at) throws IOException {
    if (lines == null) return List.of();
    Row[] rows = new Row[lines.size()];
    for (int i = 0; i < rows.length; i++) {
      String what = at + "rows[" + i + "].";
      Line line = lines.get(i);
      rows[i] =
          new Row(
              yaml.positive(line.spacing, what + "spacing", Dimension.LENGTH),
              yaml.positive(line.width, what + "width", Dimension.LENGTH));
      if (i > 0 && !rises(rows[i - 1], rows[i])) {
        throw yaml.wrong(
            line.spacing.line(),
            what + " must have a larger spacing and width than the row before");
      }
    }
    return List.of(rows);
  }

  private static boolean rises(Row before, Row after) {
    return after.spacing().compareTo(before.spacing()) > 0
        && after.width().compareTo(before.width()) > 0;
  }

  private Optional<Adjustment> adjustment(Extra extra, String what) throws IOException {
    if (extra == null) return Optional.empty();
    Dimension difference = Dimension.TEMPERATURE_DIFFERENCE;
    return Optional.of(
        new Adjustment(
            yaml.positive(extra.above, what + ".above", difference),
            yaml.positive(extra.each, what + ".each", difference),
            yaml.positive(extra.add, what + ".add", Dimension.LENGTH)));
  }

  private Optional<Exposure> reference(Words words, Exposure own) throws IOException {
    if (words == null) return Optional.empty();
    Optional<Exposure> other = Exposure.of(words.text());
    if (other.isEmpty() || other.get() == own) {
      throw yaml.wrong(words.line(), "atLeastAs: '" + words.text() + "' is no other exposure");
    }
    return other;
  }

  private void checkReferences(Map<Exposure, Rule> rules) throws IOException {
    for (Rule rule : rules.values()) {
      if (rule.atLeastAs().isEmpty()) continue;
      Rule other = rules.get(rule.atLeastAs().get());
      // One step only: a chain could run in a circle.
      if (other == null || other.atLeastAs().isPresent()) {
        throw yaml.wrong(
            0,
            rule.exposure().word() + ": atLeastAs must name an exposure of this file without one");
      }
    }
  }

  private static String known() {
    StringBuilder out = new StringBuilder("known are");
    for (Exposure e : Exposure.values()) out.append(' ').append(e.word());
    return out.toString();
  }
}
