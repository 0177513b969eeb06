package clearbed.recognise.statement.figure;

import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.FlatnessClass;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Flatness (a deviation in a length) and deflection (a part of the span). */
public final class FlatnessStatements {
  private static final Pattern BRACKETED = Pattern.compile("\\([^)]*\\)|\\[[^\\]]*\\]");

  /** A deviation is a small part of the length that it is measured over. */
  private static final double PART = 0.1;

  /** Words between the two figures, in characters. */
  private static final int NEAR = 60;

  /** A straightedge is named so close before its length, in characters. */
  private static final int BEFORE = 30;

  /** "3 mm gap in 2 m" speaks of nothing else, in words. */
  private static final int PLAIN = 2;

  private final Vocabulary vocabulary;
  private final Attribute flatness;
  private final Attribute deflection;
  private final Pattern ratio;

  public FlatnessStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.flatness = vocabulary.attribute("substrate.flatness").orElseThrow();
    this.deflection = vocabulary.attribute("substrate.deflection").orElseThrow();
    this.ratio = Pattern.compile(vocabulary.ratioOfSpan(), Pattern.CASE_INSENSITIVE);
  }

  /** Adds them and returns which stretches of the text they took. */
  public List<int[]> addTo(Passage p) {
    List<int[]> taken = new ArrayList<>();
    boolean column = p.context.attribute().equals(flatness.id());
    boolean named = flatness.words().cues().in(p.text) || p.carried.flatness();
    if (!column && !named && flatness.words().not().in(p.whole)) return taken;
    List<Content.Deviation> deviations = new ArrayList<>();
    int start = Integer.MAX_VALUE;
    int end = 0;
    List<Length> lengths = lengths(p);
    for (int i = 0; i + 1 < lengths.size(); i++) {
      Length a = lengths.get(i);
      Length b = lengths.get(i + 1);
      Content.Deviation deviation = deviation(p.text, a, b, named || column);
      if (deviation == null) continue;
      taken.add(new int[] {a.start, b.end});
      i++;
      if (restated(p.text, a)) continue;
      deviations.add(deviation);
      start = Math.min(start, a.start);
      end = b.end;
    }
    if (deviations.isEmpty()) addClass(p, taken);
    if (!deviations.isEmpty()) {
      p.add(flatness, new Content.Flatness(deviations), false, start, end);
      p.carried.flatness(true);
    }
    return taken;
  }

  /** "Evenness to DIN 18202, table 3, row 4", "surface regularity SR1": figures by their names. */
  private void addClass(Passage p, List<int[]> taken) {
    MatchResult first = null;
    List<Content.Deviation> figures = List.of();
    for (FlatnessClass classes : vocabulary.flatnessClasses()) {
      Matcher m = classes.name().matcher(p.text);
      while (m.find() && (first == null || m.start() < first.start())) {
        List<Content.Deviation> of = classes.figures().get(m.group(1));
        if (of == null) continue;
        first = m.toMatchResult();
        figures = of;
      }
    }
    if (first == null) return;
    p.add(flatness, new Content.Flatness(figures), false, first.start(), first.end());
    taken.add(new int[] {first.start(), first.end()});
  }

  /**
   * A figure that may be one of the two.
   *
   * @param end behind it and behind the same in another unit
   */
  private record Length(int start, int end, Quantity quantity) {}

  private static List<Length> lengths(Passage p) {
    List<Length> out = new ArrayList<>();
    for (Quantities.Found f : Quantities.find(p.text, p.context.mark())) {
      if (!(f.content() instanceof Content.Amount amount)
          || amount.low().unit().dimension() != Dimension.LENGTH) continue;
      Length last = out.isEmpty() ? null : out.get(out.size() - 1);
      if (f.restates() && last != null)
        out.set(out.size() - 1, new Length(last.start, f.end(), last.quantity));
      else out.add(new Length(f.start(), f.end(), amount.low()));
    }
    return out;
  }

  /** What the two say together, or null. */
  private Content.Deviation deviation(String text, Length a, Length b, boolean named) {
    String between = BRACKETED.matcher(text.substring(a.end, b.start)).replaceAll("");
    if (between.length() > NEAR || between.indexOf(';') >= 0) return null;
    boolean rising = small(a, b);
    if (!rising && !small(b, a)) return null;
    if (vocabulary.list("flatness.ofAThing").startsAt(text, b.end)) return null;
    if (vocabulary.list("flatness.ofAThing").startsAt(text, a.end)) return null;
    boolean joined = vocabulary.list("flatness.over").endsAt(between, between.length());
    boolean plain = between.trim().split("\\s+").length <= PLAIN;
    if (rising && joined && (plain || named && between.indexOf(',') < 0))
      return new Content.Deviation(a.quantity, b.quantity);
    // "A straightedge of 2 m" and "a 2 m straightedge".
    String before = text.substring(Math.max(0, a.start - BEFORE), a.start);
    boolean edge =
        vocabulary.list("flatness.edge").in(between) || vocabulary.list("flatness.edge").in(before);
    return !rising && edge ? new Content.Deviation(b.quantity, a.quantity) : null;
  }

  private static boolean small(Length a, Length of) {
    return a.quantity.number() > 0
        && a.quantity.in(Unit.METRE) <= PART * of.quantity.in(Unit.METRE) * (1 + 1e-9);
  }

  /** "(6 mm in 3 m)" behind the same in feet. */
  private static boolean restated(String text, Length first) {
    return first.start > 0 && "([".indexOf(text.charAt(first.start - 1)) >= 0;
  }

  public void addDeflection(Passage p) {
    Matcher m = ratio.matcher(p.text);
    while (m.find()) {
      String n = m.group(1);
      for (int g = 2; n == null && g <= m.groupCount(); g++) n = m.group(g);
      Quantity part = Quantity.of(Integer.parseInt(n), Unit.ONE);
      p.add(deflection, Content.Amount.exact(part), false, m.start(), m.end());
    }
  }
}
