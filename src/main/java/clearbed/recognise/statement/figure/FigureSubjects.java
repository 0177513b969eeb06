package clearbed.recognise.statement.figure;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/** Tells of which attribute a figure is: of that whose words stand nearest, as a rule. */
final class FigureSubjects {
  private static final String LOCATION = "location";

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

  /** Right behind a figure, but for the same in another unit. */
  private static final Pattern JOINT =
      Pattern.compile(
          "\\.?(?: ?\\([^)]{1,12}\\))? (?:wide )?(?:grout )?joints?\\b", Pattern.CASE_INSENSITIVE);

  static final String MOVEMENT_WIDTH = "movement.width";
  private static final String GROUT_WIDTH = "grout.width";

  private static final Set<String> OF_JOINTS = Set.of("movement", "sealant");

  /** How much farther a word behind a comma is, in characters: "width 10 mm, sealant depth ...". */
  private static final int ACROSS_A_COMMA = 20;

  private final Vocabulary vocabulary;
  private final BareFigures bare;

  FigureSubjects(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.bare = new BareFigures(vocabulary);
  }

  /** The attribute that the words around a figure name, or null. */
  Attribute named(Passage p, Content.Amount amount, int start, int end) {
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
        && p.carried.amount() != null
        && OF_JOINTS.contains(p.carried.amount().family())
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

  /** The attribute whose words stand nearest to a figure that it can have, or null. */
  Attribute nearest(Passage p, int start, int end, Predicate<Attribute> mayHave) {
    Attribute best = null;
    int distance = NEAR + 1;
    boolean joint = isOfJoint(p, end);
    for (Attribute a : vocabulary.attributes()) {
      if (a.kind() != Attribute.Kind.AMOUNT || !p.context.mayStateFamily(a.family())) continue;
      if (!mayHave.test(a) || a.id().equals("substrate.deflection")) continue;
      if (joint && !isOfJoint(a)) continue;
      if (a.family().equals("grout") && ofMovementJoints(p)) continue;
      // "Sample area. 2 m² are laid, grouted ..."
      if (!p.carried.title().isEmpty() && a.words().not().in(p.carried.title())) continue;
      boolean column = a.id().equals(p.context.attribute()) && !a.words().not().in(p.whole);
      int d = column ? -1000 : distance(p, a, start, end);
      if (d < distance) {
        distance = d;
        best = a;
      }
    }
    return best;
  }

  static boolean isOfJoint(Passage p, int end) {
    return JOINT.matcher(p.whole).region(end, p.whole.length()).lookingAt();
  }

  /** "Size variation within 0.5 mm, 2 mm joints": the second is of nothing but a joint. */
  static boolean isOfJoint(Attribute a) {
    return OF_JOINTS.contains(a.family()) || a.family().equals("grout");
  }

  /** "Movement joints: ... 1/4 in the 1/2 in joints": no grout is spoken of. */
  private boolean ofMovementJoints(Passage p) {
    return OF_JOINTS.contains(p.context.family())
        && !vocabulary.families().get("grout").in(p.whole);
  }

  /** What a figure without words of its own speaks of, or null: what the text spoke of before. */
  Attribute unnamed(Passage p, Content.Amount amount, int start, int end) {
    if (vocabulary.list("clause.tolerance").endsAt(p.text, start)) return null;
    if (p.carried.amount() != null && fits(p.carried.amount(), amount)) return p.carried.amount();
    Attribute introduced = introduced(p, amount);
    if (introduced != null) return introduced;
    if (isOnPlace(p)) return ofPlace(amount);
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

  /** True of a cell that says where a tile is: "Submerged, 60 to 104 °F" is of no work. */
  private boolean isOnPlace(Passage p) {
    return vocabulary
        .attribute(p.context.attribute())
        .filter(column -> column.family().equals(LOCATION))
        .isPresent();
  }

  /** The only attribute of a place that such a range may be of, or null. */
  private Attribute ofPlace(Content.Amount amount) {
    if (amount.low().equals(amount.high())) return null;
    List<Attribute> may =
        vocabulary.attributes().stream()
            .filter(a -> a.kind() == Attribute.Kind.AMOUNT && a.family().equals(LOCATION))
            .filter(a -> mayBe(amount, a))
            .toList();
    return only(may);
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
    return only(may);
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
    return only(may);
  }

  private static Attribute only(List<Attribute> may) {
    return may.size() == 1 ? may.get(0) : null;
  }

  static boolean fits(Attribute a, Content.Amount amount) {
    // A temperature is no difference of temperatures, whichever way it may be read.
    boolean same = amount.low().unit().dimension() == a.dimension() || !a.alone();
    return same && mayBe(amount, a);
  }

  static boolean mayBe(Content.Amount amount, Attribute a) {
    return Quantities.as(amount, a.dimension()).filter(a::accepts).isPresent();
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
      boolean titled = not.isEmpty() && a.words().cues().in(p.carried.title());
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
