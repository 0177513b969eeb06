package clearbed.recognise;

import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Figures with a unit, each taken for the attribute whose words stand nearest, and sizes. */
final class AmountStatements {
  private static final Pattern PLAIN_RATIO =
      Pattern.compile(
          "(?<![\\d.,/-])([01]?\\.\\d{1,2}|[01],\\d{1,2})(?!\\d|[.,]\\d|\\s*(?:in\\b|mm|\"|%|percent))");
  private static final Pattern SIZE_OF_TAG =
      Pattern.compile(
          "^[A-Z]{1,5}[-. ]?\\d{1,3}[A-Z]?\\b[^.;]{0,40}\\b(?:(?:nominal|tile|face|module) )?(?:size|dimension)s?\\b",
          Pattern.CASE_INSENSITIVE);
  private static final int NEAR = 90;

  private final Vocabulary vocabulary;
  private final WholeNumbers wholeNumbers;

  AmountStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.wholeNumbers = new WholeNumbers(vocabulary);
  }

  void addTo(List<Statement> out, Passage p, List<int[]> taken) {
    for (Quantities.Found found : Quantities.find(p.text, p.context.mark())) {
      if (found.restates() || inside(taken, found)) continue;
      if (found.content() instanceof Content.Amount amount)
        amount(p, out, amount, found.start(), found.end());
      if (found.content() instanceof Content.NotUnderstood unclear && !isSize(found))
        unclear(p, out, unclear, found);
    }
    Matcher m = PLAIN_RATIO.matcher(p.text);
    while (m.find()) {
      // "Notes 1,2" are two, but for those who write a comma before decimals.
      if (m.group(1).indexOf(',') > 0 && !p.context.mark().showsComma()) continue;
      double number = Double.parseDouble(m.group(1).replace(',', '.'));
      Content.Amount amount = Content.Amount.exact(Quantity.of(number, Unit.ONE));
      Bound bound = BoundWords.bound(p.text.substring(0, m.start()), p.text.substring(m.end()));
      amount(p, out, new Content.Amount(amount.low(), amount.high(), bound), m.start(), m.end());
    }
    wholeNumbers.addTo(out, p);
    if (p.context.attribute().isEmpty()) return;
    bareNumber(p, out);
  }

  /** A cell that holds a number only; its header gave the unit. */
  private void bareNumber(Passage p, List<Statement> out) {
    Attribute column = vocabulary.attribute(p.context.attribute()).orElse(null);
    if (column == null || column.dimension() != Dimension.RATIO) return;
    Quantities.parse(p.text, Dimension.RATIO, p.context.mark())
        .filter(column::accepts)
        .ifPresent(a -> p.add(out, column, a, false));
  }

  private void amount(Passage p, List<Statement> out, Content.Amount amount, int start, int end) {
    Attribute named =
        nearest(
            p,
            start,
            end,
            a -> Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent());
    Attribute best = named != null ? named : unnamed(p, amount);
    if (best == null) return;
    Content.Amount meant = Quantities.as(amount, best.dimension()).orElseThrow();
    p.carried.amount = best;
    p.add(
        out,
        best,
        best.id().equals("location.temperatureRange")
            ? asRange(meant)
            : negatedBound(p, meant, start),
        false);
  }

  /** The attribute whose words stand nearest to a figure that it can have, or null. */
  private Attribute nearest(Passage p, int start, int end, Predicate<Attribute> mayHave) {
    Attribute best = null;
    int distance = NEAR + 1;
    for (Attribute a : vocabulary.attributes()) {
      if (a.kind() != Attribute.Kind.AMOUNT || !p.context.mayStateFamily(a.family())) continue;
      if (!mayHave.test(a) || a.id().equals("substrate.deflection")) continue;
      boolean column = a.id().equals(p.context.attribute()) && !a.words().not().in(p.whole);
      int d = column ? -1000 : distance(p, a, start, end);
      if (d < distance) {
        distance = d;
        best = a;
      }
    }
    return best;
  }

  /** A figure that is not plain is still of the attribute that is spoken of. */
  private void unclear(
      Passage p, List<Statement> out, Content.NotUnderstood figure, Quantities.Found found) {
    List<Content.Amount> readings = FigureSearch.readings(figure, found.unit());
    Attribute named =
        nearest(
            p,
            found.start(),
            found.end(),
            a ->
                readings.stream()
                    .anyMatch(r -> Quantities.as(r, a.dimension()).filter(a::accepts).isPresent()));
    if (named != null) p.add(out, named, figure, false);
  }

  /** "GT-1: nominal size 7 in x 9 in" gives a tile's size wherever it stands. */
  private static boolean sizeOfATag(Passage p) {
    return SIZE_OF_TAG.matcher(p.whole).find();
  }

  /** What a figure without words of its own speaks of, or null: what the text spoke of before. */
  private Attribute unnamed(Passage p, Content.Amount amount) {
    if (p.carried.amount != null && fits(p.carried.amount, amount)) return p.carried.amount;
    return vocabulary.attributes().stream()
        .filter(a -> a.alone() && p.context.mayStateFamily(a.family()))
        .filter(a -> !a.words().not().in(p.whole) && fits(a, amount))
        .findFirst()
        .orElse(null);
  }

  private static boolean fits(Attribute a, Content.Amount amount) {
    // A temperature is no difference of temperatures, whichever way it may be read.
    boolean same = amount.low().unit().dimension() == a.dimension() || !a.alone();
    return same && Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent();
  }

  /** "-10 to 150 °F" at a surface is a range of 160 °F. */
  private static Content.Amount asRange(Content.Amount ends) {
    if (ends.low().equals(ends.high())) return ends;
    return new Content.Amount(
        ends.high().minus(ends.low()), ends.high().minus(ends.low()), ends.bound());
  }

  /** "Do not use ... below 400 psi" asks for 400 psi at least. */
  private Content.Amount negatedBound(Passage p, Content.Amount amount, int start) {
    if (amount.bound() == Bound.BELOW
        && vocabulary.list("negation.before").in(p.text.substring(0, start))) {
      return new Content.Amount(amount.low(), amount.high(), Bound.AT_LEAST);
    }
    return amount;
  }

  private int distance(Passage p, Attribute a, int start, int end) {
    int best = Integer.MAX_VALUE;
    List<Phrases.Hit> not = a.words().not().all(p.whole);
    for (Phrases.Hit hit : a.words().cues().all(p.whole)) {
      // "Tensile bond strength" is no bond strength, however near the figure stands.
      boolean turned =
          not.stream().anyMatch(n -> n.end() <= hit.start() && hit.start() - n.end() <= 1);
      if (!turned) best = Math.min(best, hit.distanceTo(start, end));
    }
    if (best == Integer.MAX_VALUE) return best;
    for (Phrases.Hit hit : not) {
      if (hit.distanceTo(start, end) <= best) return Integer.MAX_VALUE;
    }
    return best + p.familyPenalty(a, start, end);
  }

  private static boolean inside(List<int[]> taken, Quantities.Found found) {
    return taken.stream().anyMatch(t -> found.start() < t[1] && t[0] < found.end());
  }

  void addSize(List<Statement> out, Passage p, List<int[]> taken) {
    Attribute attribute = vocabulary.attribute("tile.size").orElse(null);
    if (attribute == null || !(p.context.describesTile() || sizeOfATag(p))) return;
    boolean column = p.context.attribute().equals(attribute.id());
    String family = p.context.family();
    for (Quantities.Found found : Quantities.find(p.text, p.context.mark())) {
      if (!isSize(found) || inside(taken, found)) continue;
      boolean tile =
          column
              || ((family.isEmpty() || family.equals("tile"))
                  && !attribute.words().not().in(p.whole));
      if (tile) {
        p.add(out, attribute, found.content(), false);
        return;
      }
    }
  }

  private static boolean isSize(Quantities.Found found) {
    return found.content() instanceof Content.Size
        || found.content() instanceof Content.NotUnderstood figure
            && FigureSearch.SIZE.matcher(figure.written()).lookingAt();
  }
}
