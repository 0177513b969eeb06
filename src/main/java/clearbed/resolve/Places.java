package clearbed.resolve;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.PlaceSentences;
import clearbed.recognise.statement.limit.TermReader;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Sentences;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.resolve.entry.Draft;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Works out exposure, surface and footwear from room names where the documents do not state them.
 */
final class Places {
  private static final Pattern WORDS = Pattern.compile("[^\\p{L}]+");
  private static final String EXPOSURE = "location.exposure";
  private static final String FOOTWEAR = "location.footwear";

  /** Of "Place: pool walls, submerged." what stands behind the label. */
  private static final Pattern BEHIND_LABEL = Pattern.compile("\\s*:\\s*([^.;]+)");

  /** Sentences at the beginning of a clause that may place its tile. */
  private static final int PLACING = 4;

  /** A sentence that places is no longer, in characters. */
  private static final int LONGEST_PLACE = 120;

  /** What a tile is called behind its tag is no longer, in characters. */
  private static final int LONGEST_NAME = 40;

  /** "Frieze above 8 ft": how high or far is the only figure in a place. */
  private static final Dimension HEIGHT = Dimension.LENGTH;

  /** What more a clause may say of a tile that is placed: never that it is dry. */
  private static final String ROOM = "location.room";

  private static final Set<String> HARSHER =
      Set.of("submerged", "steam", "exterior-freeze", "exterior", "sun-heat", "wet");

  /** "Planter wall. Exterior, wet, freezing winters": more than the name of a place. */
  private static final Pattern SENTENCES = Pattern.compile("[.;]\\s+\\p{L}");

  private final Vocabulary vocabulary;
  private final TermReader terms;
  private final PlaceSentences fragments;

  Places(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.terms = new TermReader(vocabulary);
    this.fragments = new PlaceSentences(vocabulary);
  }

  void derive(Draft draft) {
    List<Value> places =
        draft.values.stream().filter(v -> v.attribute().startsWith("location.")).toList();
    for (String attribute : List.of(EXPOSURE, "location.surface", FOOTWEAR)) {
      if (!draft.terms(attribute).isEmpty()) continue;
      // What stands as the surface tells it better than the name of the room.
      for (Value v : places) {
        if (!v.attribute().equals(attribute)) continue;
        for (String term : terms.in(attribute, v.asWritten()))
          draft.add(draft.derived(attribute, term, v));
      }
      if (!draft.terms(attribute).isEmpty()) continue;
      for (Value v : places) {
        // "Wet, barefoot" is an exposure by its own word, and says more.
        boolean tells =
            v.content() instanceof Content.Words
                || v.attribute().equals("location.surface")
                || attribute.equals(FOOTWEAR);
        if (!tells) continue;
        for (String term : terms.in(attribute, v.asWritten()))
          draft.add(draft.derived(attribute, term, v));
      }
      if (draft.terms(attribute).isEmpty()) titled(draft, attribute);
      if (draft.terms(attribute).isEmpty()) located(draft, attribute);
      if (!draft.scheduled) product(draft, attribute);
    }
    exposed(draft);
  }

  /**
   * "GT-5, courtyard pylons (exterior, full sun, freezing winters). Glass mosaic ...": clauses tell
   * what a schedule that says "Exterior" leaves out.
   */
  private void exposed(Draft draft) {
    for (Value v : List.copyOf(draft.values)) {
      boolean described =
          v.attribute().equals(ROOM)
              && v.content() instanceof Content.Words
              && SENTENCES.matcher(v.asWritten()).find();
      if (!described) continue;
      Set<String> more = harsher(terms.in(EXPOSURE, v.asWritten()), v.asWritten(), draft);
      for (String term : more) add(draft, EXPOSURE, term, v.asWritten(), v.origin());
    }
    for (Clause clause : draft.about) {
      Set<String> more = new LinkedHashSet<>(labelled(EXPOSURE, clause.text()));
      if (clause.subject().own() && clause.subject().tags().size() == 1)
        placing(clause.text()).stream()
            .filter(
                words -> TagFinder.tags(words).stream().map(Tags::key).allMatch(draft.key::equals))
            .forEach(words -> more.addAll(terms.in(EXPOSURE, words)));
      more.addAll(terms.in(EXPOSURE, place(draft, clause)));
      for (String term : harsher(more, clause.text(), draft))
        add(draft, EXPOSURE, term, clause.text(), clause.origin());
    }
  }

  private Set<String> harsher(Set<String> terms, String text, Draft draft) {
    Set<String> more = new LinkedHashSet<>(terms);
    more.retainAll(HARSHER);
    // A pool hall that is called damp is damp.
    if (!vocabulary.list("resolves.wet").in(text)) more.remove("wet");
    more.removeAll(draft.terms(EXPOSURE));
    return more;
  }

  /** "GT-1 "Tideline": north concourse, interior wall, dry": nothing but the place of the tile. */
  private void located(Draft draft, String attribute) {
    for (Clause clause : draft.about) {
      Set<String> named = terms.in(attribute, place(draft, clause));
      for (String term : named) add(draft, attribute, term, clause.text(), clause.origin());
      if (!named.isEmpty()) return;
    }
  }

  /** What stands behind the tag and the colon, where it can be nothing but a place; or empty. */
  private String place(Draft draft, Clause clause) {
    String text = PlainText.of(clause.text());
    TagFinder.TagsAt tags = clause.subject().own() ? TagFinder.firstTags(text) : null;
    if (tags == null || tags.tags().stream().noneMatch(t -> Tags.key(t).equals(draft.key)))
      return "";
    int colon = text.indexOf(": ", tags.end());
    if (colon < 0 || colon - tags.end() > LONGEST_NAME) return "";
    String words = Sentences.of(text.substring(colon + 2)).get(0).text();
    boolean tells =
        words.length() <= LONGEST_PLACE
            && words.indexOf(':') < 0
            && Citations.find(words).isEmpty()
            && Quantities.find(words).stream().allMatch(f -> f.unit().dimension() == HEIGHT)
            && !vocabulary.glass().describesTile(words)
            && vocabulary.family(words).isEmpty()
            && vocabulary.isVerbless(words);
    return tells ? words : "";
  }

  /** The sentences that open a clause and say where its tile is: they ask for nothing. */
  private List<String> placing(String text) {
    return Sentences.of(PlainText.of(text)).stream()
        .limit(PLACING)
        .map(Sentences.Sentence::text)
        .filter(words -> words.length() <= LONGEST_PLACE && words.indexOf(':') < 0)
        .filter(
            words -> Citations.find(words).isEmpty() && !vocabulary.glass().describesTile(words))
        .filter(vocabulary::isVerbless)
        .toList();
  }

  /** "2.1 TYPE GM-A - LAP POOL WALLS, SUBMERGED" places the tile. */
  private void titled(Draft draft, String attribute) {
    for (Clause clause : draft.about) {
      String title = clause.heading();
      if (title.isEmpty() || !isTitle(draft, title)) continue;
      Set<String> named = terms.in(attribute, title);
      if (attribute.equals(EXPOSURE)) named = outright(named, title);
      for (String term : named) add(draft, attribute, term, title, clause.origin());
      return;
    }
  }

  /** "Pool hall, north wall, damp": of a place that is called damp the room tells nothing more. */
  private static Set<String> outright(Set<String> terms, String words) {
    Set<String> said = new LinkedHashSet<>(terms);
    List<String> own = List.of(WORDS.split(words.toLowerCase(Locale.ROOT)));
    said.retainAll(own);
    return said.isEmpty() ? terms : said;
  }

  private static boolean isTitle(Draft draft, String title) {
    return draft.tag.equalsIgnoreCase(title)
        || Tags.inOpening(title).stream().anyMatch(tag -> Tags.key(tag).equals(draft.key));
  }

  /** A tile that no schedule places may be placed by the opening of its product clause. */
  private void product(Draft draft, String attribute) {
    if (!draft.terms(attribute).isEmpty()) return;
    String opening = draft.evidence.split("(?<=[a-z)])\\.\\s|;", 2)[0];
    Set<String> named = new LinkedHashSet<>(terms.places(attribute, opening));
    // "GM-1: cast glass mosaic, 20 x 20 mm, opaque, pool walls."
    for (String words : fragments.in(opening)) named.addAll(terms.in(attribute, words));
    named.addAll(labelled(attribute, draft.evidence));
    for (String term : named) add(draft, attribute, term, draft.evidence, draft.origin);
    for (Clause clause : draft.about) {
      for (String term : labelled(attribute, clause.text()))
        add(draft, attribute, term, clause.text(), clause.origin());
    }
  }

  private Set<String> labelled(String attribute, String text) {
    Set<String> named = new LinkedHashSet<>();
    Matcher behind = BEHIND_LABEL.matcher(text);
    for (Phrases.Hit label : vocabulary.list("places.labels").all(text)) {
      if (behind.region(label.end(), text.length()).lookingAt())
        named.addAll(terms.in(attribute, behind.group(1)));
    }
    return named;
  }

  private static void add(Draft draft, String attribute, String term, String words, Origin origin) {
    draft.add(new Value(attribute, new Content.Term(term), false, words, origin, Scope.ENTRY));
  }
}
