package clearbed.recognise.statement.limit;

import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds what a text is limited to: tags, kinds of tile, places, surfaces. */
public final class LimitFinder {
  // "GT-1 and other tile with a side of 15 in" is not limited to GT-1.
  private static final Pattern AND_OTHERS =
      Pattern.compile("\\d[A-Z]?,? and (?:all |any |the )*(?:other|remaining)\\b");
  private static final Pattern LISTED_BETWEEN =
      Pattern.compile("[,/&]|\\b(?:and|or)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern OTHER_TILE =
      Pattern.compile("\\bother (?:\\w+ )?(?:tiles?|tiling)\\b", Pattern.CASE_INSENSITIVE);

  /** What a publication before its number says of tile: "Specifications for Ceramic Tile, A108". */
  private static final Pattern TITLE =
      Pattern.compile(
          "\\b(?:Specifications?|Test Methods?|Practice|Guide|Classification) (?:for|of)"
              + "(?: (?:[A-Z][\\w-]*,?|for|of|and|the|in|on|by|to|with|a|an|or)){1,30}"
              + "(?=,? \\(?(?:(?:ANSI|ASTM|ISO|EN|BS) )?[A-Z]\\d)");

  // "All GW types", "PG and WG codes": tags by their letters alone.
  private static final Pattern FAMILIES =
      Pattern.compile(
          "(?<![\\w.-])([A-Z]{1,4}(?:(?:, | and | or | & |/)[A-Z]{1,4})*) (?:codes|types|marks|items|tiles|series|numbers)\\b");
  private static final Pattern LETTERS = Pattern.compile("[A-Z]+");

  private static final Pattern JOINED = Pattern.compile(",? (?:and|or) |, ");

  private final Vocabulary vocabulary;
  private final PlaceFinder places;

  public LimitFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.places = new PlaceFinder(vocabulary);
  }

  /**
   * @param heading true for a heading or lead-in, where naming a place is enough
   */
  public Limits of(String text, boolean heading) {
    String glassless = vocabulary.list("notTile").without(text);
    String untitled = untitled(glassless);
    boolean glass =
        vocabulary.list("glassTile").in(glassless)
            || (heading && vocabulary.list("glassAlone").in(glassless));
    Set<String> other = new TreeSet<>();
    vocabulary
        .glass()
        .otherTile()
        .forEach(
            (kind, phrases) -> {
              if (phrases.in(untitled)) other.add(kind);
            });
    return new Limits(
            limitingTags(text),
            glass,
            other,
            places.exposures(text, heading),
            Exclusions.NOTHING,
            places.surfaces(text, heading),
            Map.of())
        .sparing();
  }

  /** What a lead-in is limited to: "Grout, all glass tile except floors:" is of all but these. */
  public Limits ofLead(String lead) {
    Phrases.Hit except = vocabulary.list("except").first(lead);
    if (except == null || except.start() == 0) return of(lead, true);
    Limits main = of(lead.substring(0, except.start()), true);
    Exclusions left = LaterWords.left(exceptions(lead.substring(except.start()), true));
    return left.isEmpty() ? main : main.withExcept(left);
  }

  /**
   * "Except at pools and GT-4" leaves out both; "except at exterior walls" what is both.
   *
   * @param heading true for a heading or lead-in, where naming a place is enough
   */
  public List<Limits> exceptions(String text, boolean heading) {
    List<Limits> each = new ArrayList<>();
    for (String one : JOINED.split(text)) each.add(of(one, heading || !each.isEmpty()));
    boolean told = each.stream().noneMatch(l -> LaterWords.left(List.of(l)).isEmpty());
    return told ? each : List.of(of(text, heading));
  }

  /** True where a place is the first that a lead-in names. */
  public boolean opensWithPlace(String lead) {
    return !lead.isEmpty() && places.named(lead).stream().anyMatch(place -> place.start() == 0);
  }

  /** True for "studs, slab and pool wall": what a tile is carried by, whatever its place. */
  public boolean listsStructures(String text) {
    List<Phrases.Hit> hits = vocabulary.list("places.structures").all(text);
    for (int i = 1; i < hits.size(); i++) {
      // A floor slab is one.
      int from = hits.get(i - 1).end();
      int to = hits.get(i).start();
      if (to > from && LISTED_BETWEEN.matcher(text.substring(from, to)).find()) return true;
    }
    return false;
  }

  /**
   * "Grout for glass tile: ... Grout for other tile: ..."
   *
   * @param limits of words behind some that speak of glass tile
   */
  public static Limits behindGlass(Limits limits, String text) {
    return !limits.glass() && OTHER_TILE.matcher(text).find() ? limits.ofOtherTile() : limits;
  }

  /** Where tags stand that limit the text; a range of them is one. */
  public List<Phrases.Hit> tagPlaces(String text) {
    List<Phrases.Hit> taught = vocabulary.taught().tagsIn(text);
    if (!TagFinder.mayHaveTags(text) || limitingTags(text).isEmpty()) return taught;
    return Stream.concat(TagFinder.places(text).stream(), taught.stream()).toList();
  }

  /** Where glass tile and other tile are named. */
  public List<Phrases.Hit> tilePlaces(String text) {
    String glassless = vocabulary.list("notTile").without(text);
    List<Phrases.Hit> out = new ArrayList<>(vocabulary.list("glassTile").all(glassless));
    String untitled = untitled(glassless);
    vocabulary.glass().otherTile().values().forEach(other -> out.addAll(other.all(untitled)));
    return out;
  }

  /** With blanks for the titles of publications. */
  private static String untitled(String text) {
    return TITLE.matcher(text).replaceAll(title -> " ".repeat(title.group().length()));
  }

  /** True when the text is limited to tags. */
  public boolean namesTags(String text) {
    return !limitingTags(text).isEmpty();
  }

  private Set<String> limitingTags(String text) {
    Set<String> tags = TagFinder.tags(text, vocabulary);
    if (TagFinder.mayHaveTags(text))
      FAMILIES
          .matcher(text)
          .results()
          .flatMap(family -> LETTERS.matcher(family.group(1)).results())
          .forEach(letters -> tags.add(letters.group() + Tags.FAMILY));
    return tags.isEmpty() || !AND_OTHERS.matcher(text).find() ? tags : Set.of();
  }
}
