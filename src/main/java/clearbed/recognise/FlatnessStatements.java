package clearbed.recognise;

import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Flatness (a deviation in a length) and deflection (a part of the span). */
final class FlatnessStatements {
  private static final Pattern SPAN_RATIO =
      Pattern.compile(
          "(?:\\bL|\\bspan)\\s*/\\s*(\\d{2,4})\\b|\\b1/(\\d{3})\\s+(?:of\\s+)?(?:the\\s+)?span",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern FLATNESS =
      Pattern.compile(
          "("
              + Numbers.PATTERN
              + "\\s*"
              + UnitWords.PATTERN
              + ")\\s*(?:\\([^)]*\\)\\s*|\\[[^\\]]*\\]\\s*)?(?:(?:gap|out of (?:plane|true|level|flat)|out|deviation|departure|variation|maximum|max\\.?|or less)\\s+){0,2}(?:in|per|over|within|under|beneath|along|at|from|below)\\s+(?:a\\s+|any\\s+)?("
              + Numbers.PATTERN
              + "[ -]*"
              + UnitWords.PATTERN
              + ")(?!\\s*(?:wide|thick|c))",
          Pattern.CASE_INSENSITIVE);

  // "gap under a 2 m straightedge not more than 3 mm"
  private static final Pattern UNDER_AN_EDGE =
      Pattern.compile(
          "\\b(?:under|over|below|along|beneath|with|using|by) (?:a |any |the )?("
              + Numbers.PATTERN
              + "[ -]*"
              + UnitWords.PATTERN
              + ")[ -]*(?:long )?(?:straight ?-?edge|rule|level)\\b[^.;\\d]{0,40}("
              + Numbers.PATTERN
              + "\\s*"
              + UnitWords.PATTERN
              + ")",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern SLOPE =
      Pattern.compile("\\b(?:slope|fall|drain|pitch|rise|grade)\\w*\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern FLAT = Pattern.compile("\\bflat", Pattern.CASE_INSENSITIVE);
  private static final Pattern FIGURE = Pattern.compile(".*\\d.*");

  private final Vocabulary vocabulary;

  FlatnessStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Adds them and returns which stretches of the text they took. */
  List<int[]> addTo(List<Statement> out, Passage p) {
    List<int[]> taken = new ArrayList<>();
    Attribute attribute = vocabulary.attribute("substrate.flatness").orElse(null);
    if (attribute == null) return taken;
    boolean column = p.context.attribute().equals(attribute.id());
    boolean spoken =
        attribute.words().cues().in(p.text)
            || p.carried.flatness
            || !SLOPE.matcher(p.whole).find()
            || FLAT.matcher(p.origin().text()).find();
    if (!column && (!spoken || !FIGURE.matcher(p.text).matches())) return taken;
    List<Content.Deviation> deviations = new ArrayList<>();
    Matcher m = FLATNESS.matcher(p.text);
    int from = 0;
    while (m.find(from)) {
      from = m.end();
      Quantity deviation = length(p, m.group(1));
      Quantity over = length(p, m.group(2));
      if (deviation == null || over == null || deviation.compareTo(over.times(0.1)) > 0) continue;
      taken.add(new int[] {m.start(), m.end()});
      if (m.group(0).contains("[")
          || p.text.substring(0, m.start()).endsWith("(")
          || p.text.substring(0, m.start()).endsWith("[")) continue;
      deviations.add(new Content.Deviation(deviation, over));
    }
    Matcher under = UNDER_AN_EDGE.matcher(p.text);
    while (under.find()) {
      Quantity over = length(p, under.group(1));
      Quantity deviation = length(p, under.group(2));
      if (deviation == null || over == null || deviation.compareTo(over.times(0.1)) > 0) continue;
      taken.add(new int[] {under.start(), under.end()});
      deviations.add(new Content.Deviation(deviation, over));
    }
    if (!deviations.isEmpty()) {
      p.add(out, attribute, new Content.Flatness(deviations), false);
      p.carried.flatness = true;
    }
    return taken;
  }

  private static Quantity length(Passage p, String written) {
    return Quantities.parse(written, Dimension.LENGTH, p.context.mark())
        .map(Content.Amount::low)
        .orElse(null);
  }

  void addDeflection(List<Statement> out, Passage p) {
    Attribute attribute = vocabulary.attribute("substrate.deflection").orElse(null);
    Matcher m = SPAN_RATIO.matcher(p.text);
    while (attribute != null && m.find()) {
      String n = m.group(1) != null ? m.group(1) : m.group(2);
      p.add(
          out, attribute, Content.Amount.exact(Quantity.of(Integer.parseInt(n), Unit.ONE)), false);
    }
  }
}
