package clearbed.recognise.statement;

import clearbed.model.value.Content;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.Set;
import java.util.regex.Pattern;

/** Attributes that a text requires without naming a value. */
final class Requirements {
  private static final Pattern NO = Pattern.compile("(?i)(?:no|none|not required|n)\\b.*");

  private static final Set<String> ON_MEMBRANES =
      Set.of("membrane.confirmation", "mortar.membraneUse");

  private static final String STOPS = ",;()";

  /** Words before a denial that make a subject of its own. */
  private static final int SUBJECT = 3;

  private static final String MOUNTING = "Mounting";

  private final Vocabulary vocabulary;

  Requirements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  void addTo(Passage p) {
    // Under "Delivered as": "sheets with edge dots; compatible with the adhesive".
    boolean ofMounting = p.context.attribute().equals("tile.mounting");
    // Not so "Back: painted; the mesh is compatible with the adhesive", which is of the mesh.
    boolean ofLabel = p.leadEnd == 0 && vocabulary.list("clause.ofLabel").in(p.text);
    String text = p.carried.named(p.text);
    String over = p.context.introduction();
    // "The following are not required: ..."
    boolean none = vocabulary.list("negation.notRequired").in(over);
    for (Attribute a : vocabulary.attributes()) {
      if (a.kind() != Attribute.Kind.REQUIRED || !p.context.mayStateFamily(a.family())) continue;
      boolean column = a.id().equals(p.context.attribute());
      if (column) {
        columnRequirement(p, a);
        continue;
      }
      boolean required =
          a.words().requiredIn(text)
              || ON_MEMBRANES.contains(a.id()) && a.words().requiredIn(p.carried.spelt(p.text))
              || requiredUnder(p.title(), p.text, a)
              || !a.id().startsWith("process.") && requiredUnder(over, p.text, a)
              || ofLabel && requiredUnder(p.carried.label(), p.text, a)
              || ofMounting && requiredUnder(MOUNTING, p.text, a);
      if (!required || asksNothing(p, a)) continue;
      String open = undecided(p);
      if (!open.isEmpty()) {
        p.add(a, new Content.Open(open), false);
      } else {
        boolean denied =
            !a.id().startsWith("process.c") && (none || denied(p.text, a) || leftOut(p.text, a));
        p.add(a, new Content.Required(), denied);
      }
    }
  }

  /** The words that leave to somebody what is spoken of, or empty. */
  private String undecided(Passage p) {
    // As written: what is open has been blanked out of the text.
    Phrases.Hit hit = vocabulary.list("negation.undecided").first(p.whole);
    boolean awaited =
        hit != null && vocabulary.list("negation.awaits").in(p.whole.substring(0, hit.start()));
    if (hit != null && !awaited) return p.whole.substring(hit.start(), hit.end());
    // "The tile maker's word on the membrane: TBD".
    boolean open = p.leadEnd > 0 && !p.whole.equals(p.text);
    boolean nothingElse =
        open && p.text.substring(p.leadEnd).chars().noneMatch(Character::isLetter);
    return nothingElse ? p.whole.substring(p.leadEnd).replaceFirst("^:\\s*", "") : "";
  }

  /**
   * "White bed, ridges pressed flat, on a membrane (bonding to it is not covered by the maker)": a
   * denial with a subject of its own denies nothing outside its commas.
   */
  private boolean denied(String text, Attribute a) {
    Phrases.Hit not = vocabulary.list("negation.notRequired").first(text);
    if (not == null) return false;
    int from = not.start();
    while (from > 0 && STOPS.indexOf(text.charAt(from - 1)) < 0) from--;
    int to = not.end();
    while (to < text.length() && STOPS.indexOf(text.charAt(to)) < 0) to++;
    boolean own = text.substring(from, not.start()).strip().split("\\s+").length >= SUBJECT;
    return !own || !a.words().requiredIn(text.substring(0, from) + text.substring(to));
  }

  /** In its own words, and in all of the text: the time of a cure may stand behind a semicolon. */
  private boolean asksNothing(Passage p, Attribute a) {
    String whole = p.origin().text() == null ? p.text : p.origin().text();
    return vocabulary.asksNothing(a.id(), p.text) && vocabulary.asksNothing(a.id(), whole);
  }

  /** "No backer rod", "do not build a mock-up": of what must be asked for nothing is asked. */
  private boolean leftOut(String text, Attribute a) {
    Phrases.Hit named = vocabulary.mustBeAsked(a.id()) ? a.words().cues().first(text) : null;
    return named != null && vocabulary.list("negation.rightBefore").endsAt(text, named.start());
  }

  /** "GROUTING / Start: 48 hours after fixing", "CUT. Wear eye protection." */
  private static boolean requiredUnder(String title, String text, Attribute a) {
    return !title.isEmpty() && a.words().requiredUnder(title, text);
  }

  private void columnRequirement(Passage p, Attribute a) {
    if (p.text.isBlank() || vocabulary.list("empty").matches(p.text.trim())) return;
    boolean no = NO.matcher(p.text.trim()).matches();
    p.add(a, new Content.Required(), no);
  }
}
