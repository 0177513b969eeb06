package clearbed.recognise.statement;

import clearbed.model.value.Content;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.ClassCodes;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.part.Passage;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/** The terms that a text uses of attributes that have terms. */
final class TermStatements {
  /** Right before what a tile stands on, but for a size or two words: "on 1/2 in. ". */
  private static final Pattern ON =
      Pattern.compile(
          "(?:^|[\\s,;(])(?:on|onto|over|against|fixed to|bonded to|applied to)\\s+(?:(?:[\\w./-]+)\\s+){0,3}(?:\\w+-)?$",
          Pattern.CASE_INSENSITIVE);

  /** "GT-1 and GT-2 go on cement backer board", wherever that is said. */
  private static final Pattern GOES_ON =
      Pattern.compile(
          "\\b(?:goe?s?|stands?|sits?|is|are) (?:on|onto|over):?(?: the| a)?\\s+(?:(?:[\\w./-]+)\\s+){0,3}(?:\\w+-)?$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern FIRST_WORDS = Pattern.compile(":\\s*(?:[\\w./-]+\\s+){0,3}");

  private static final String COATED = "low-temperature-coated";

  private static final int ON_REACH = 50;

  /** "CG2" and "C2" are known by the letters behind them, in characters. */
  private static final int CODE_GOES_ON = 6;

  /** Perimeters, changes of plane and structural joints together are those of movement joints. */
  private static final int PLACES_LISTED = 3;

  /** "C2TE S1" and "R10/V4" state two attributes in one code. */
  private static final List<Set<String>> ONE_CODE =
      List.of(
          Set.of("mortar.isoClass", "mortar.deformability"),
          Set.of("tile.rampShod", "tile.displacement"),
          // "PTV 38, slider 57"
          Set.of("tile.pendulum", "tile.slider"));

  /** What is bought ready: one code or name of it says several things. */
  private static final Set<String> OF_A_PRODUCT = Set.of("mortar", "grout");

  private final Vocabulary vocabulary;

  TermStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  void addTo(Passage p) {
    for (Attribute a : vocabulary.attributes()) {
      if (a.kind() != Attribute.Kind.TERM || !p.context.mayStateFamily(a.family())) continue;
      boolean column = a.id().equals(p.context.attribute());
      if (!column && (!termsAllowed(p, a) || ofAnotherColumn(p, a))) continue;
      if (!column && a.id().equals("mortar.chemistry") && saysHowToSet(p)) continue;
      Map<Phrases.Hit, String> hits = termHits(p, a);
      if (onBack(p, a)) hits.values().removeIf(term -> !term.equals(COATED));
      if (!column && a.family().equals("tile"))
        hits.keySet()
            .removeIf(hit -> vocabulary.list("clause.takenIn").startsAt(p.text, hit.end()));
      if (column && a.single()) withoutAsides(p.text, hits);
      // "Translucent: no, opaque" asks and answers.
      boolean asked = p.leadEnd > 0 && a.words().headers().matches(p.text.substring(0, p.leadEnd));
      if (asked) hits.keySet().removeIf(hit -> hit.end() <= p.leadEnd);
      boolean listed =
          a.id().equals("movement.places")
              && (Set.copyOf(hits.values()).size() >= PLACES_LISTED
                  // "At every perimeter; where one backing meets another; over structural joints."
                  || !p.carried.of(a.id()).isEmpty());
      for (Map.Entry<Phrases.Hit, String> hit : hits.entrySet()) {
        if (OF_A_PRODUCT.contains(a.family()) && p.isSubject(hit.getKey().end())) continue;
        boolean needs = !column && a.needsFamily() && !listed;
        if (needs && !speaksOf(p, a.family(), hit.getKey())) continue;
        int start = hit.getKey().start();
        int end = hit.getKey().end();
        boolean negated = p.negated(start, end) && !hit.getValue().equals("none");
        p.add(a, new Content.Term(hit.getValue()), negated, start, end);
      }
    }
  }

  /**
   * "Not see-through (clear face over metal leaf)": of what a tile has once, brackets behind it
   * explain it and do not give it again, unless they name another tile.
   */
  private static void withoutAsides(String text, Map<Phrases.Hit, String> hits) {
    int open = text.indexOf('(');
    int close = text.indexOf(')', open + 1);
    if (open <= 0 || close < 0 || hits.keySet().stream().noneMatch(hit -> hit.end() <= open))
      return;
    if (!TagFinder.tags(text.substring(open, close)).isEmpty()) return;
    hits.keySet().removeIf(hit -> hit.start() > open && hit.end() <= close);
  }

  /** "Metal film, low-temperature coating" under "Back" says how the back was coated. */
  private static boolean onBack(Passage p, Attribute a) {
    return a.id().equals("tile.kind") && p.context.attribute().equals("tile.backing");
  }

  /**
   * A cell on one aspect of the tile does not speak of another: "clear film-faced" is a mounting,
   * and a substrate of "cement mortar bed" is no mortar.
   */
  private boolean ofAnotherColumn(Passage p, Attribute a) {
    Attribute column = vocabulary.attribute(p.context.attribute()).orElse(null);
    if (column == null || column.id().equals("notes")) return false;
    // "Fused, metal foil on back" under "How made" says both.
    boolean both = a.id().equals("tile.backing") && column.id().equals("tile.kind");
    if (onBack(p, a) || both) return false;
    if (inOneCode(p, a)) return false;
    boolean kin = column.family().equals(a.family());
    boolean joint =
        Set.of("sealant", "movement").containsAll(Set.of(column.family()))
            && Set.of("sealant", "movement").contains(a.family());
    // "C2TE S1, white" under "Adhesive" has its colour beside its class.
    return kin
        ? column.kind() == Attribute.Kind.TERM && !OF_A_PRODUCT.contains(a.family())
        : !joint;
  }

  private static boolean inOneCode(Passage p, Attribute a) {
    String column = p.context.attribute();
    return ONE_CODE.stream()
        .filter(c -> c.contains(a.id()))
        .anyMatch(
            c -> c.contains(column) || p.said().stream().anyMatch(s -> c.contains(s.attribute())));
  }

  /** "Cement mortar by ANSI A108.5, epoxy by ANSI A108.6" gives no tile either of them. */
  private boolean saysHowToSet(Passage p) {
    return TagFinder.tags(p.whole).isEmpty() && Citations.sayHowToSet(p.whole, vocabulary);
  }

  private boolean termsAllowed(Passage p, Attribute a) {
    if (a.family().equals("location")) return false;
    if (inOneCode(p, a)) return true;
    if (a.id().equals("tile.backing") || a.id().equals("tile.mounting")) {
      return p.context.describesTile()
          && !vocabulary.list("clause.setInMortar").in(p.whole)
          && namesAspect(p, a);
    }
    return !a.family().equals("tile")
        || (p.context.describesTile()
            && !List.of("mortar", "grout", "sealant", "movement").contains(p.context.family()));
  }

  /** "None" is a backing only where backing is spoken of. */
  private boolean namesAspect(Passage p, Attribute a) {
    return vocabulary
        .list(a.id().equals("tile.backing") ? "clause.onBacking" : "clause.onMounting")
        .in(p.whole);
  }

  private Map<Phrases.Hit, String> termHits(Passage p, Attribute a) {
    Map<Phrases.Hit, String> all = new LinkedHashMap<>();
    List<Map.Entry<Phrases.Hit, String>> hits = new ArrayList<>();
    a.words()
        .terms()
        .forEach((term, phrases) -> phrases.all(p.text).forEach(h -> hits.add(Map.entry(h, term))));
    hits.sort(
        (x, y) ->
            (y.getKey().end() - y.getKey().start()) - (x.getKey().end() - x.getKey().start()));
    for (Map.Entry<Phrases.Hit, String> hit : hits) {
      Phrases.Hit h = hit.getKey();
      boolean overlapped =
          all.keySet().stream()
              .anyMatch(
                  k ->
                      h.start() < k.end()
                          && k.start() < h.end()
                          && !all.get(k).equals(hit.getValue()));
      if (!overlapped || a.id().equals("sealant.use")) all.put(h, hit.getValue());
    }
    return all;
  }

  private boolean ofSealants(Passage p) {
    return Citations.find(p.whole).stream()
        .anyMatch(
            f -> vocabulary.standards().states(f.standard().designation(), "sealant.standard"));
  }

  /** "On cement backer board over steel studs", of a tile. */
  private static boolean standsOn(Passage p, Phrases.Hit hit) {
    String before = p.text.substring(Math.max(0, hit.start() - ON_REACH), hit.start());
    return p.context.describesTile() && ON.matcher(before).find()
        || GOES_ON.matcher(before).find()
        || followsTags(p, hit);
  }

  /** "GT-2: cement backer board on studs. GT-3: ..." under a title of any words. */
  private static boolean followsTags(Passage p, Phrases.Hit hit) {
    if (p.leadEnd == 0 || hit.start() < p.leadEnd || TileWords.tile(p.whole)) return false;
    return Tags.alone(p.whole.substring(0, p.leadEnd))
        && FIRST_WORDS.matcher(p.text.substring(p.leadEnd, hit.start())).matches();
  }

  private boolean speaksOf(Passage p, String family, Phrases.Hit hit) {
    if (family.equals("tile")) return true;
    // "It is class CG2 WA": such a code is of nothing else.
    String code =
        p.text.substring(hit.start(), Math.min(p.text.length(), hit.end() + CODE_GOES_ON));
    if (OF_A_PRODUCT.contains(family) && ClassCodes.opensWithUnmistakable(code)) return true;
    // ASTM C920 and ISO 11600 are of sealants alone, whatever the heading.
    if (family.equals("sealant") && ofSealants(p)) return true;
    String near = p.familyNear(hit.start(), hit.end());
    if (near.equals(family)) return true;
    // "In white ANSI A118.3 epoxy": what the standard was taken for, its colour is of.
    if (near.isEmpty()
        && p.said().stream().anyMatch(s -> s.attribute().equals(family + ".standard"))) return true;
    if (family.equals("substrate") && standsOn(p, hit)) return true;
    return near.isEmpty() && p.context.family().equals(family)
        || (family.equals("sealant") && near.equals("movement"))
            && (ofSealants(p) || vocabulary.families().get("sealant").in(p.whole))
        || (family.equals("movement")
            && Set.of("sealant", "movement").contains(p.context.family()));
  }
}
