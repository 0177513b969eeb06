package clearbed.recognise;

import clearbed.model.Content;
import clearbed.model.Origin;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** One part of a text with all that is known of it before it is read. */
final class Passage {
  private static final int NEGATION_NEAR = 70;

  // "No change of plane shall be without a joint", "no colour other than white".
  private static final Pattern TWICE_NEGATED =
      Pattern.compile(
          "(?i)\\b(?:no|none|neither|not)\\b[^.;]{0,140}\\b(?:without|lacking|lack|omit(?:ted)?)\\b");

  // "Epoxy grout with no hard aggregate, ANSI A118.3": it is the aggregate that is ruled out.
  private static final Pattern WITH_NONE_OF =
      Pattern.compile("(?i)\\b(?:with no|without|free of|free from) [^,.;:]{1,40}, $");

  private static final Pattern OTHER_THAN =
      Pattern.compile(
          "(?i)\\b(?:no|not|nothing|none)\\b[^.;]{0,60}\\b(?:other than|but|except)\\s+(?:\\w+\\s+){0,2}$");

  private final Vocabulary vocabulary;
  private final Map<Phrases.Hit, String> cues = new LinkedHashMap<>();
  private final Origin origin;
  private final Limits limits;
  // As written, and with open items blanked out.
  final String whole;
  final String text;
  final Context context;
  // A lead-in names what its paragraph is about, however far the figure stands behind it.
  final int leadEnd;
  final Carried carried;
  private final boolean deniedTwice;

  Passage(
      Vocabulary vocabulary,
      Parts.Part part,
      String closed,
      Context context,
      Origin origin,
      Limits limits,
      Carried carried) {
    this.vocabulary = vocabulary;
    this.leadEnd = part.lead().length();
    this.whole = part.text();
    this.text = closed;
    this.context = context;
    this.origin = origin;
    this.limits = limits;
    this.carried = carried;
    this.deniedTwice = TWICE_NEGATED.matcher(closed).find();
    vocabulary
        .families()
        .forEach((family, phrases) -> phrases.all(whole).forEach(hit -> cues.put(hit, family)));
  }

  Origin origin() {
    return origin;
  }

  Statement open(String words) {
    return new Statement("text", new Content.Open(words), false, whole, origin, limits);
  }

  void add(List<Statement> out, Attribute attribute, Content content, boolean excluded) {
    if (!context.mayStateFamily(attribute.family())) return;
    Statement statement =
        new Statement(attribute.id(), content, excluded, whole, origin, limitsFor(attribute));
    boolean known =
        out.stream()
            .anyMatch(
                s ->
                    s.attribute().equals(attribute.id())
                        && s.content().equals(content)
                        && s.excluded() == excluded
                        && s.limits().equals(statement.limits()));
    if (!known) out.add(statement);
  }

  /**
   * Work on site is not limited by the places its sentence names: "do not fill the pool until
   * cured".
   */
  private Limits limitsFor(Attribute attribute) {
    boolean places =
        attribute.family().equals("process")
            || attribute.id().equals("movement.places")
            || attribute.id().equals("movement.layout");
    if (!places) return limits;
    return limits.anywhere();
  }

  String familyNear(int start, int end) {
    String best = "";
    int distance = Integer.MAX_VALUE;
    for (Map.Entry<Phrases.Hit, String> cue : cues.entrySet()) {
      if (Set.of("tile", "substrate").contains(cue.getValue())
          && !context.family().equals(cue.getValue())) continue;
      Phrases.Hit hit = cue.getKey();
      int d = hit.distanceTo(start, end);
      String between =
          hit.end() <= start
              ? whole.substring(hit.end(), start)
              : hit.start() >= end ? whole.substring(end, hit.start()) : "";
      if (between.contains(",")) d += 15;
      // A lead-in speaks for all that follows it; the tile in it is what the rest is for.
      boolean leads = between.contains(":") || hit.end() <= start;
      if (leads && !cue.getValue().equals("tile")) d -= 10;
      if (d < distance) {
        distance = d;
        best = cue.getValue();
      }
    }
    return best.isEmpty() ? context.family() : best;
  }

  int familyPenalty(Attribute a, int start, int end) {
    String family = familyNear(start, end);
    if (family.isEmpty() || family.equals(a.family())) return 0;
    boolean kin =
        Set.of("sealant", "movement").contains(family)
            && Set.of("sealant", "movement").contains(a.family());
    return kin ? 5 : 30;
  }

  boolean negated(int start, int end) {
    String before = text.substring(0, start);
    if (deniedTwice) return false;
    String near = before.substring(Math.max(0, before.length() - NEGATION_NEAR));
    if (OTHER_THAN.matcher(near).find() || WITH_NONE_OF.matcher(near).find()) return false;
    Phrases.Hit last = null;
    for (Phrases.Hit hit : vocabulary.list("negation.before").all(before)) last = hit;
    if (last != null
        && before.length() - last.end() < NEGATION_NEAR
        && !before
            .substring(last.end())
            .matches("(?is).*(?:,\\s*(?:use|provide|set in|and (?:use|provide))|: ).*"))
      return true;
    return vocabulary.list("negation.after").in(text.substring(end));
  }
}
