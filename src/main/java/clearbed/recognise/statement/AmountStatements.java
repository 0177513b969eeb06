package clearbed.recognise.statement;

import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.recognise.text.BoundWords;
import clearbed.recognise.text.FigureSearch;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Phrases;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Figures with a unit, each taken for the attribute whose words stand nearest. */
final class AmountStatements {
  private static final Pattern PLAIN_RATIO =
      Pattern.compile(
          "(?<![\\d.,/\\p{L}-])([01]?\\.\\d{1,2}|[01],\\d{1,2})(?!\\d|[.,]\\d|\\s*(?:in\\b(?!"
              + FigureSearch.ACCORDING
              + ")|mm|\"|%|percent))");
  private static final Pattern OTHER_END =
      Pattern.compile(
          "[^.;:\\d]{0,25}\\b(?:nor|and|but|or)\\s(?:not |no |never )?(?:more|less|over|under|greater|wider|narrower|larger|smaller|higher|lower|colder|hotter|warmer|exceed\\w*|above|below)\\b[^.;:\\d]*",
          Pattern.CASE_INSENSITIVE);

  /** Before how far a figure may be off. */
  private static final Pattern TOLERANCE =
      Pattern.compile(
          "(?:\\btolerances?(?: of)?|\\bplus(?: or minus)?|\\bminus|\\+/-|±)\\s*$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern WHOLE = Pattern.compile("\\d");

  private static final int NEAR = 90;

  /** In characters. */
  private static final int LONGEST_LINK = 34;

  /** Between a name and its figure: "size variation is held to 1/32 in.". */
  private static final Pattern LINK =
      Pattern.compile(
          "(?:[\\s:=]|\\b(?:is|are|be|shall|will|may|must|held|kept|limited|no|not|more|than|at|most|to|within|of|up|exceeds?|a|an|the|maximum|max\\.?|least|about|by|under|below)\\b)*",
          Pattern.CASE_INSENSITIVE);

  /** A word of the title that runs in is so far off, in characters. */
  private static final int IN_TITLE = 80;

  /** What a sentence is about is no farther from the figure behind its verb, in characters. */
  private static final int AS_SUBJECT = 60;

  /** Between the two: "... of the tile as it leaves the kiln shall not fall below 0.42". */
  private static final Pattern OF_ITS_SUBJECT =
      Pattern.compile(
          "(?:[^.;:]|\\.(?=\\w)){1,160}\\b(?:shall|must|will|is to|are to|has to|is|are)(?: fall| come| drop| lie)?"
              + "(?: not)?(?: fall| come| drop| lie)?(?:[\\s:=]|\\b(?:be|not|no|more|less|lower|higher|than|at|most|least|to|within|below|under|above|exceed|a|an|the|minimum|maximum)\\b)*"
              + "|, [^;:,]{1,100}, (?:and )?(?:of|at)(?: (?:not less than|no less than|at least|not more than|no more than|at most|a minimum of|a maximum of))? ?",
          Pattern.CASE_INSENSITIVE);

  /** Between a word and what turns it round. */
  private static final Pattern BRACKETED = Pattern.compile("\\) ?| ?\\([^()]{1,30}\\) ?");

  private static final String SLIP = "tile.slip";

  private static final String DEPTH = "sealant.depth";

  private static final Pattern NOTHING_BELOW =
      Pattern.compile(
          "\\b(?:nothing|none|never|no (?:\\w+ )?\\w+|not) (?:is |are |be |falls? |to be )?(?:below|under|less than|lower than) $",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern DIFFERENCE =
      Pattern.compile(
          "\\.?\\s+(?:wider|larger|bigger|thicker|greater|deeper|longer|narrower|smaller|more) than (?:the|its|that|each) ",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern FOR_A =
      Pattern.compile("\\bfor (?:an? |the )?$", Pattern.CASE_INSENSITIVE);

  /** Right behind a figure, but for the same in another unit. */
  private static final Pattern JOINT =
      Pattern.compile(
          "\\.?(?: ?\\([^)]{1,12}\\))? (?:wide )?(?:grout )?joints?\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern DEEP =
      Pattern.compile("\\.?\\s+(?:deep|in depth)\\b", Pattern.CASE_INSENSITIVE);

  private static final String VARIATION = "tile.sizeVariation";
  private static final String MOVEMENT_WIDTH = "movement.width";
  private static final String GROUT_WIDTH = "grout.width";

  private static final Set<String> OF_JOINTS = Set.of("movement", "sealant");

  /** How much farther a word behind a comma is, in characters: "width 10 mm, sealant depth ...". */
  private static final int ACROSS_A_COMMA = 20;

  private final Vocabulary vocabulary;
  private final BareFigures bare;
  private final WholeNumbers wholeNumbers;

  AmountStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.bare = new BareFigures(vocabulary);
    this.wholeNumbers = new WholeNumbers(vocabulary);
  }

  void addTo(Passage p, List<int[]> taken) {
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
  private static boolean isDifference(Passage p, Quantities.Found found) {
    return DIFFERENCE.matcher(p.text).region(found.end(), p.text.length()).lookingAt();
  }

  /** "May differ by 1/32 in. for a 1/8 in. joint" says for which joints, and asks for none. */
  private static boolean isForJoint(Passage p, Quantities.Found found) {
    return isOfJoint(p, found.end()) && FOR_A.matcher(p.text.substring(0, found.start())).find();
  }

  private boolean isVariation(Passage p, Quantities.Found found) {
    Attribute named = named(p, (Content.Amount) found.content(), found.start(), found.end());
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
    boolean spoken = a == p.carried.amount || a.words().cues().in(p.whole);
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

  /** The figures of a part; such as repeat the form of the part before are of the same things. */
  private void row(Passage p, List<Quantities.Found> plain) {
    List<Attribute> named = new ArrayList<>();
    for (Quantities.Found f : plain)
      named.add(named(p, (Content.Amount) f.content(), f.start(), f.end()));
    depthApart(p, plain, named);
    otherEnds(p, plain, named);
    List<Attribute> before = p.goesOn ? p.carried.row : List.of();
    boolean same = repeats(plain, named, before);
    List<Attribute> row = new ArrayList<>();
    for (int i = 0; i < plain.size(); i++) {
      Quantities.Found f = plain.get(i);
      Attribute known = same ? before.get(i) : named.get(i);
      Attribute of = amount(p, known, (Content.Amount) f.content(), f.start(), f.end());
      if (of != null) row.add(of);
    }
    p.carried.row = row.size() == plain.size() ? row : List.of();
  }

  /** "Not less than 1/16 in nor more than 1/8 in wide": both are the ends of one thing. */
  private void otherEnds(Passage p, List<Quantities.Found> plain, List<Attribute> named) {
    for (int i = 1; i < plain.size(); i++) {
      Attribute first = named.get(i - 1);
      Quantities.Found f = plain.get(i);
      String between = p.text.substring(plain.get(i - 1).end(), f.start());
      if (first != null
          && OTHER_END.matcher(between).matches()
          && fits(first, (Content.Amount) f.content())) named.set(i, first);
    }
  }

  /** "1/4 in with sealant 1/8 in deep": one of them is the depth, the other something else. */
  private void depthApart(Passage p, List<Quantities.Found> plain, List<Attribute> named) {
    for (int i = 0; i < plain.size(); i++) {
      Attribute a = named.get(i);
      if (a == null || !a.id().equals(DEPTH) || isDeep(p, plain.get(i))) continue;
      boolean other = false;
      for (int k = 0; k < plain.size(); k++)
        other |= k != i && named.get(k) == a && isDeep(p, plain.get(k));
      if (!other) continue;
      Quantities.Found f = plain.get(i);
      Attribute next =
          nearest(p, f.start(), f.end(), b -> b != a && mayBe((Content.Amount) f.content(), b));
      if (next == null) next = widthByLead(p, (Content.Amount) f.content());
      if (next != null) named.set(i, next);
    }
  }

  /** "Widths: GT-1 and GT-2, 1/4 in with sealant 1/8 in deep". */
  private Attribute widthByLead(Passage p, Content.Amount amount) {
    String lead = p.whole.substring(0, p.leadEnd);
    return vocabulary
        .attribute(MOVEMENT_WIDTH)
        .filter(a -> a.words().cues().in(lead) && fits(a, amount))
        .orElse(null);
  }

  private static boolean isDeep(Passage p, Quantities.Found f) {
    return DEEP.matcher(p.whole).region(f.end(), p.whole.length()).lookingAt();
  }

  /**
   * "GT-1, 3/4 in with sealant 3/8 in deep; GT-2, 1/2 in with sealant 1/4 in deep": where two
   * figures would be of one thing, or one of nothing, they are of what those before were of.
   */
  private static boolean repeats(
      List<Quantities.Found> plain, List<Attribute> named, List<Attribute> before) {
    if (before.size() < 2 || before.size() != plain.size()) return false;
    if (new HashSet<>(before).size() < before.size()) return false;
    boolean clear = !named.contains(null) && new HashSet<>(named).size() == named.size();
    if (clear) return false;
    for (int i = 0; i < plain.size(); i++) {
      Attribute own = named.get(i);
      if (!fits(before.get(i), (Content.Amount) plain.get(i).content())) return false;
      if (own != null && !before.contains(own)) return false;
    }
    return true;
  }

  private Attribute named(Passage p, Content.Amount amount, int start, int end) {
    Attribute best = nearest(p, start, end, a -> mayBe(amount, a));
    if (best == null) return null;
    if (best.id().equals(GROUT_WIDTH) && goesOnAboutMovement(p))
      return vocabulary.attribute(MOVEMENT_WIDTH).filter(a -> fits(a, amount)).orElse(best);
    if (!best.id().equals(MOVEMENT_WIDTH) || !ofGrout(p, start, end)) return best;
    return ofTheWork(p, amount, "grout");
  }

  /** "Field length 3 m; joint width 10 mm; sealant depth 5 mm." */
  private boolean goesOnAboutMovement(Passage p) {
    return p.goesOn
        && p.carried.amount != null
        && OF_JOINTS.contains(p.carried.amount.family())
        && !vocabulary.families().get("grout").in(p.whole)
        && !vocabulary.families().get("tile").in(p.whole);
  }

  /** "Joint mortar CG2 WA, width 2 mm": no joint is spoken of but those that are grouted. */
  private boolean ofGrout(Passage p, int start, int end) {
    return vocabulary.families().get("grout").in(p.whole)
        && p.familyNear(start, end).equals("grout")
        && !OF_JOINTS.contains(p.context.family())
        && OF_JOINTS.stream().noneMatch(f -> vocabulary.families().get(f).in(p.whole))
        && !vocabulary.families().get("movement").in(p.title());
  }

  private void amount(Passage p, Content.Amount amount, int start, int end) {
    amount(p, named(p, amount, start, end), amount, start, end);
  }

  /** What the figure is of; null when that is not known. */
  private Attribute amount(Passage p, Attribute named, Content.Amount amount, int start, int end) {
    Attribute best = named != null ? named : unnamed(p, amount, start, end);
    if (best == null || best.id().equals(SLIP) && WholeNumbers.ofDry(p.whole)) return null;
    Content.Amount meant = Quantities.as(amount, best.dimension()).orElseThrow();
    p.carried.amount = best;
    Content.Amount said =
        best.id().equals("location.temperatureRange")
            ? asRange(meant)
            : negatedBound(p, meant, start);
    p.add(best, said, false, start, end);
    return best;
  }

  /** The attribute whose words stand nearest to a figure that it can have, or null. */
  private Attribute nearest(Passage p, int start, int end, Predicate<Attribute> mayHave) {
    Attribute best = null;
    int distance = NEAR + 1;
    boolean joint = isOfJoint(p, end);
    for (Attribute a : vocabulary.attributes()) {
      if (a.kind() != Attribute.Kind.AMOUNT || !p.context.mayStateFamily(a.family())) continue;
      if (!mayHave.test(a) || a.id().equals("substrate.deflection")) continue;
      if (joint && !isOfJoint(a)) continue;
      if (a.family().equals("grout") && ofMovementJoints(p)) continue;
      // "Sample area. 2 m² are laid, grouted ..."
      if (!p.carried.title.isEmpty() && a.words().not().in(p.carried.title)) continue;
      boolean column = a.id().equals(p.context.attribute()) && !a.words().not().in(p.whole);
      int d = column ? -1000 : distance(p, a, start, end);
      if (d < distance) {
        distance = d;
        best = a;
      }
    }
    return best;
  }

  private static boolean isOfJoint(Passage p, int end) {
    return JOINT.matcher(p.whole).region(end, p.whole.length()).lookingAt();
  }

  /** "Size variation within 0.5 mm, 2 mm joints": the second is of nothing but a joint. */
  private static boolean isOfJoint(Attribute a) {
    return OF_JOINTS.contains(a.family()) || a.family().equals("grout");
  }

  /** "Movement joints: ... 1/4 in the 1/2 in joints": no grout is spoken of. */
  private boolean ofMovementJoints(Passage p) {
    return OF_JOINTS.contains(p.context.family())
        && !vocabulary.families().get("grout").in(p.whole);
  }

  /** A figure that is not plain is still of the attribute that is spoken of. */
  private void unclear(Passage p, Content.NotUnderstood figure, Quantities.Found found) {
    List<Content.Amount> readings = FigureSearch.readings(figure, found.unit());
    Attribute named =
        nearest(p, found.start(), found.end(), a -> readings.stream().anyMatch(r -> mayBe(r, a)));
    if (named != null) p.add(named, figure, false, found.start(), found.end());
  }

  /** What a figure without words of its own speaks of, or null: what the text spoke of before. */
  private Attribute unnamed(Passage p, Content.Amount amount, int start, int end) {
    if (TOLERANCE.matcher(p.text.substring(0, start)).find()) return null;
    if (p.carried.amount != null && fits(p.carried.amount, amount)) return p.carried.amount;
    Attribute introduced = introduced(p, amount);
    if (introduced != null) return introduced;
    // "The spa runs at 40 °C": one figure alone limits nothing.
    boolean limits = amount.bound() != Bound.EXACT || !amount.low().equals(amount.high());
    Attribute alone =
        vocabulary.attributes().stream()
            .filter(a -> limits && a.alone() && p.context.mayStateFamily(a.family()))
            .filter(a -> a.dimension() != Dimension.RATIO || amount.low().unit() == Unit.PERCENT)
            .filter(a -> !a.words().not().in(p.whole) && fits(a, amount))
            .findFirst()
            .orElse(null);
    // Little else in the work is an area: "Work in bays of 1 m2".
    boolean area = amount.low().unit().dimension() == Dimension.AREA;
    if (alone != null || !area && !bare.stands(p, start, end)) return alone;
    return ofTheWork(p, amount, p.familyNear(start, end));
  }

  /** "Coverage:" over "GT-1: 95 percent": the only attribute that the line names, or null. */
  private Attribute introduced(Passage p, Content.Amount amount) {
    String over = p.context.introduction();
    if (over.isEmpty()) return null;
    List<Attribute> may =
        vocabulary.attributes().stream()
            .filter(a -> a.kind() == Attribute.Kind.AMOUNT && fits(a, amount))
            .filter(a -> p.context.mayStateFamily(a.family()))
            .filter(a -> a.words().cues().in(over) && !a.words().not().in(over))
            .filter(a -> !a.words().not().in(p.whole))
            .toList();
    return may.size() == 1 ? may.get(0) : null;
  }

  /** The only attribute of the work spoken of that may have such a figure, or null. */
  private Attribute ofTheWork(Passage p, Content.Amount amount, String family) {
    List<Attribute> may =
        vocabulary.attributes().stream()
            .filter(a -> a.kind() == Attribute.Kind.AMOUNT && a.plausible() != null)
            .filter(a -> a.family().equals(family) && !family.equals("tile"))
            .filter(a -> !a.words().not().in(p.whole))
            .filter(a -> p.context.mayStateFamily(a.family()) && fits(a, amount))
            .toList();
    return may.size() == 1 ? may.get(0) : null;
  }

  private static boolean fits(Attribute a, Content.Amount amount) {
    // A temperature is no difference of temperatures, whichever way it may be read.
    boolean same = amount.low().unit().dimension() == a.dimension() || !a.alone();
    return same && mayBe(amount, a);
  }

  private static boolean mayBe(Content.Amount amount, Attribute a) {
    return Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent();
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
        vocabulary.list("negation.before").in(before) || NOTHING_BELOW.matcher(before).find();
    if (amount.bound() == Bound.BELOW && negated) {
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
          not.stream().anyMatch(n -> n.start() < hit.start() && turns(p.whole, n, hit));
      if (turned) continue;
      best = Math.min(best, distance(p, hit, start, end));
    }
    if (best == Integer.MAX_VALUE) {
      boolean titled = not.isEmpty() && a.words().cues().in(p.carried.title);
      return titled ? IN_TITLE + p.familyPenalty(a, start, end) : best;
    }
    for (Phrases.Hit hit : not) {
      if (distance(p, hit, start, end) <= best) return Integer.MAX_VALUE;
    }
    // "3 mm joints (tile size variation 0.8 mm)": its own full name stands right before it.
    boolean named = best <= LONGEST_LINK && namedInFull(p, a, start);
    return named ? best : best + p.familyPenalty(a, start, end);
  }

  /** "Tensile bond", "tensile (pull-off) bond". */
  private static boolean turns(String text, Phrases.Hit not, Phrases.Hit cue) {
    return cue.start() - not.end() <= 1
        || BRACKETED.matcher(text.substring(not.end(), cue.start())).matches();
  }

  private static boolean namedInFull(Passage p, Attribute a, int start) {
    return a.words().cues().all(p.whole).stream()
        .anyMatch(
            hit ->
                hit.end() <= start
                    && LINK.matcher(p.whole.substring(hit.end(), start)).matches()
                    && p.whole.substring(hit.start(), hit.end()).indexOf(' ') > 0);
  }

  private static int distance(Passage p, Phrases.Hit hit, int start, int end) {
    boolean apart = hit.start() >= end && p.whole.substring(end, hit.start()).indexOf(',') >= 0;
    int distance = hit.distanceTo(start, end) + (apart ? ACROSS_A_COMMA : 0);
    boolean far = distance > AS_SUBJECT && hit.end() <= start;
    return far && OF_ITS_SUBJECT.matcher(p.whole.substring(hit.end(), start)).matches()
        ? AS_SUBJECT
        : distance;
  }
}
