package clearbed.recognise.statement.figure;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClassCodes;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.BoundWords;
import clearbed.recognise.text.FigureSearch;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.WordIn;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Figures with a unit, each taken for the attribute whose words stand nearest. */
public final class AmountStatements {
  private static final Pattern PLAIN_RATIO =
      Pattern.compile(
          "(?<![\\d.,/\\p{L}-])([01]?\\.\\d{1,2}|[01],\\d{1,2})(?!\\d|[.,]\\d|\\s*(?:in\\b(?!"
              + WordIn.ACCORDING
              + ")|mm|\"|%|percent))");
  private static final Pattern WHOLE = Pattern.compile("\\d");

  private static final String SLIP = "tile.slip";

  private static final String VARIATION = "tile.sizeVariation";

  private static final Pattern FOR_A =
      Pattern.compile("\\bfor (?:an? |the )?$", Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final FigureSubjects subjects;
  private final FigureRows rows;
  private final WholeNumbers wholeNumbers;

  public AmountStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.subjects = new FigureSubjects(vocabulary);
    this.rows = new FigureRows(vocabulary, subjects);
    this.wholeNumbers = new WholeNumbers(vocabulary);
  }

  public void addTo(Passage p, List<int[]> taken) {
    List<int[]> names = new ArrayList<>(taken);
    for (Citations.Found c : Citations.find(p.text)) names.add(new int[] {c.start(), c.end()});
    for (MatchResult c : ClassCodes.unmistakable(p.text)) names.add(new int[] {c.start(), c.end()});
    List<Quantities.Found> plain = new ArrayList<>();
    boolean forSome = false;
    List<Quantities.Found> all = Quantities.find(p.text, p.context.mark());
    Set<Quantities.Found> converted = converted(p.text, all);
    for (Quantities.Found found : all) {
      boolean forJoint = isForJoint(p, found);
      forSome |= forJoint;
      if (found.restates() || SizeStatements.inside(names, found) || converted.contains(found))
        continue;
      boolean aside = isThicknessBehind(p, found) || isDifference(p, found) || forJoint;
      if (found.content() instanceof Content.Amount && !aside) plain.add(found);
      if (found.content() instanceof Content.NotUnderstood unclear && !SizeStatements.isSize(found))
        unclear(p, unclear, found);
    }
    // Then so is what stands before it: "1/32 in. for a 1/8 in. joint".
    if (forSome) plain.removeIf(f -> isVariation(p, f));
    row(p, plain);
    Matcher m = PLAIN_RATIO.matcher(p.text);
    while (m.find()) {
      // "Notes 1,2" are two, but for those who write a comma before decimals.
      if (m.group(1).indexOf(',') > 0 && !p.context.mark().showsComma()) continue;
      double number = Double.parseDouble(m.group(1).replace(',', '.'));
      Content.Amount amount = Content.Amount.exact(Quantity.of(number, Unit.ONE));
      Bound bound = BoundWords.bound(p.text.substring(0, m.start()), p.text.substring(m.end()));
      amount(p, new Content.Amount(amount.low(), amount.high(), bound), m.start(), m.end());
    }
    wholeNumbers.addTo(p);
    vocabulary
        .full()
        .forEach((id, words) -> full(p, vocabulary.attribute(id).orElseThrow(), words));
    if (p.context.attribute().isEmpty()) return;
    bareNumber(p);
  }

  /** "1/16 in = 1.6 mm, 1/8 in = 3.2 mm": a table of units states none of its figures. */
  private static Set<Quantities.Found> converted(String text, List<Quantities.Found> all) {
    Set<Quantities.Found> out = new HashSet<>();
    for (int i = 1; i < all.size(); i++) {
      Quantities.Found one = all.get(i - 1);
      Quantities.Found other = all.get(i);
      boolean equal =
          one.end() <= other.start()
              && text.substring(one.end(), other.start()).strip().equals("=");
      if (equal) out.addAll(List.of(one, other));
    }
    return out.size() > 2 ? out : Set.of();
  }

  /** "A cord 2 mm wider than the joint". */
  private boolean isDifference(Passage p, Quantities.Found found) {
    return vocabulary.list("clause.difference").startsAt(p.text, found.end());
  }

  /** "May differ by 1/32 in. for a 1/8 in. joint" says for which joints, and asks for none. */
  private static boolean isForJoint(Passage p, Quantities.Found found) {
    return FigureSubjects.isOfJoint(p, found.end())
        && FOR_A.matcher(p.text.substring(0, found.start())).find();
  }

  private boolean isVariation(Passage p, Quantities.Found found) {
    Attribute named =
        subjects.named(p, (Content.Amount) found.content(), found.start(), found.end());
    return named != null && named.id().equals(VARIATION);
  }

  /** "On cement board 12 mm, joints 3 mm": the first is of the board. */
  private boolean isThicknessBehind(Passage p, Quantities.Found found) {
    if (found.unit().dimension() != Dimension.LENGTH) return false;
    String before = p.text.substring(0, found.start()).stripTrailing();
    Attribute substrate = vocabulary.attribute("substrate.type").orElse(null);
    return p.context.describesTile()
        && substrate != null
        && substrate.words().anyTerm().endsAt(before, before.length());
  }

  /** "90 percent of the back, and behind clear tile all of it". */
  private static void full(Passage p, Attribute a, Phrases words) {
    boolean spoken = a == p.carried.amount() || a.words().cues().in(p.whole);
    if (!spoken || !p.context.mayStateFamily(a.family())) return;
    Content.Amount all = Content.Amount.exact(Quantity.of(100, Unit.PERCENT));
    List<Phrases.Hit> hits = words.all(p.text);
    if (hits.isEmpty()) return;
    List<Quantities.Found> figures = Quantities.find(p.text);
    for (Phrases.Hit hit : hits) {
      boolean figure = figures.stream().anyMatch(f -> near(f, hit));
      if (!figure && !p.negated(hit.start(), hit.end()))
        p.add(a, all, false, hit.start(), hit.end());
    }
  }

  private static boolean near(Quantities.Found figure, Phrases.Hit hit) {
    return figure.unit() == Unit.PERCENT && hit.distanceTo(figure.start(), figure.end()) < 12;
  }

  /** A cell that holds a number only; its header gave the unit. */
  private void bareNumber(Passage p) {
    Attribute column = vocabulary.attribute(p.context.attribute()).orElse(null);
    if (column == null || column.dimension() != Dimension.RATIO) return;
    // "1" under "Bed" is a mark of something, and no share of all.
    if (WHOLE.matcher(p.text.strip()).matches()) return;
    Quantities.parse(p.text, Dimension.RATIO, p.context.mark())
        .filter(column::accepts)
        .ifPresent(a -> p.add(column, a, false));
  }

  private void row(Passage p, List<Quantities.Found> plain) {
    List<Attribute> known = rows.attributes(p, plain);
    List<Attribute> row = new ArrayList<>();
    for (int i = 0; i < plain.size(); i++) {
      Quantities.Found f = plain.get(i);
      Attribute of = amount(p, known.get(i), (Content.Amount) f.content(), f.start(), f.end());
      if (of != null) row.add(of);
    }
    p.carried.row(row.size() == plain.size() ? row : List.of());
  }

  private void amount(Passage p, Content.Amount amount, int start, int end) {
    amount(p, subjects.named(p, amount, start, end), amount, start, end);
  }

  /** What the figure is of; null when that is not known. */
  private Attribute amount(Passage p, Attribute named, Content.Amount amount, int start, int end) {
    Attribute best = named != null ? named : subjects.unnamed(p, amount, start, end);
    if (best == null || best.id().equals(SLIP) && WholeNumbers.ofDry(p.whole)) return null;
    Content.Amount meant = Quantities.as(amount, best.dimension()).orElseThrow();
    p.carried.amount(best);
    Content.Amount said =
        best.id().equals("location.temperatureRange")
            ? asRange(meant)
            : negatedBound(p, meant, start);
    p.add(best, said, false, start, end);
    return best;
  }

  /** A figure that is not plain is still of the attribute that is spoken of. */
  private void unclear(Passage p, Content.NotUnderstood figure, Quantities.Found found) {
    List<Content.Amount> readings = FigureSearch.readings(figure, found.unit());
    Attribute named =
        subjects.nearest(
            p,
            found.start(),
            found.end(),
            a -> readings.stream().anyMatch(r -> FigureSubjects.mayBe(r, a)));
    if (named != null) p.add(named, figure, false, found.start(), found.end());
  }

  /** "-10 to 150 °F" at a surface is a range of 160 °F. */
  private static Content.Amount asRange(Content.Amount ends) {
    if (ends.low().equals(ends.high())) return ends;
    return new Content.Amount(
        ends.high().minus(ends.low()), ends.high().minus(ends.low()), ends.bound());
  }

  /** "Do not use ... below 400 psi" asks for 400 psi at least. */
  private Content.Amount negatedBound(Passage p, Content.Amount amount, int start) {
    String before = p.text.substring(0, start);
    boolean negated =
        vocabulary.list("negation.before").in(before)
            || vocabulary.list("clause.nothingBelow").endsAt(before, before.length());
    if (amount.bound() == Bound.BELOW && negated) {
      return new Content.Amount(amount.low(), amount.high(), Bound.AT_LEAST);
    }
    return amount;
  }
}
