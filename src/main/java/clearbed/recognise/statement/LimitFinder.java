package clearbed.recognise.statement;

import clearbed.recognise.vocabulary.Phrases;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Finds what a text is limited to: tags, kinds of tile, places, surfaces. */
public final class LimitFinder {
  private static final Pattern TAG_PARTS = Pattern.compile("([A-Z]{1,5})[-. ]?(\\d{1,3})([A-Z]?)");
  private static final Pattern TAG =
      Pattern.compile(
          "(?<![A-Za-z0-9.-])(?:("
              + Tags.LETTERS
              + ")[-. ]?(\\d{1,3})([A-Za-z]?)|(?!ANSI|ASTM|ISO|EN[-.]|BS[-.]|TCNA|UL-)[A-Z]{1,4}[-.][A-Z]{1,3}-?\\d{1,3}|([A-Z]{2,4})-([A-Z]))(?![A-Za-z0-9]|[.-](?:\\d|[xX]\\b))");
  // "GT-5-8" is a range, and no tag by itself.
  private static final Pattern FIGURES_APART =
      Pattern.compile(
          "(?<![A-Za-z0-9.-])(?:[A-Z]{1,5}|[A-Z]{1,4}-[A-Z]{1,3})[-.]?\\d{1,3}-\\d{1,3}(?![A-Za-z0-9]|[.-]\\d)");
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
  List<Limits> exceptions(String text, boolean heading) {
    List<Limits> each = new ArrayList<>();
    for (String one : JOINED.split(text)) each.add(of(one, heading || !each.isEmpty()));
    boolean told = each.stream().noneMatch(l -> LaterWords.left(List.of(l)).isEmpty());
    return told ? each : List.of(of(text, heading));
  }

  /** True where a place is the first that a lead-in names. */
  boolean opensWithPlace(String lead) {
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
  List<Phrases.Hit> tagPlaces(String text) {
    List<Phrases.Hit> taught = vocabulary.taught().tagsIn(text);
    if (!mayHaveTags(text) || limitingTags(text).isEmpty()) return taught;
    Stream<Phrases.Hit> known = lists(text).stream().flatMap(list -> each(text, list));
    return Stream.concat(known, taught.stream()).toList();
  }

  private static Stream<Phrases.Hit> each(String text, At list) {
    Matcher m = TAG.matcher(text).region(list.start(), list.found().end());
    List<Phrases.Hit> each = m.results().map(r -> new Phrases.Hit(r.start(), r.end())).toList();
    boolean spelt = each.size() == list.found().tags().size();
    return spelt ? each.stream() : Stream.of(list.place());
  }

  /** Where glass tile and other tile are named. */
  List<Phrases.Hit> tilePlaces(String text) {
    String glassless = vocabulary.list("notTile").without(text);
    List<Phrases.Hit> out = new ArrayList<>(vocabulary.list("glassTile").all(glassless));
    String untitled = untitled(glassless);
    vocabulary.otherTile().values().forEach(other -> out.addAll(other.all(untitled)));
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
    Set<String> tags = tags(text, vocabulary);
    if (mayHaveTags(text))
      FAMILIES
          .matcher(text)
          .results()
          .flatMap(family -> LETTERS.matcher(family.group(1)).results())
          .forEach(letters -> tags.add(letters.group() + Tags.FAMILY));
    return tags.isEmpty() || !AND_OTHERS.matcher(text).find() ? tags : Set.of();
  }

  /**
   * Designations that look like tags, ranges spelt out; the caller knows which of them are tags.
   */
  public static Set<String> tags(String text) {
    Set<String> tags = new TreeSet<>();
    if (!mayHaveTags(text)) return tags;
    for (At list : lists(text)) list.found().tags().forEach(tag -> tags.add(tag(tag)));
    return tags;
  }

  /** The same, and those of forms that were taught. */
  public static Set<String> tags(String text, Vocabulary known) {
    Set<String> tags = tags(text);
    for (Phrases.Hit hit : known.taught().tagsIn(text))
      tags.add(tag(text.substring(hit.start(), hit.end())));
    return tags;
  }

  /** A list of tags and where it stands. */
  public record TagsAt(List<String> tags, int start, int end) {}

  private static final Pattern JOIN = Pattern.compile("\\s*(?:[,;&/+]|and\\b)\\s*(?:and\\b\\s*)?");

  /** The first tags of a text, of known forms or such as were taught; null when there are none. */
  public static TagsAt firstTags(String text, Vocabulary known) {
    TagsAt first = firstTags(text);
    for (Phrases.Hit hit : known.taught().tagsIn(text)) {
      if (first != null && first.start() <= hit.start()) continue;
      first = new TagsAt(List.of(text.substring(hit.start(), hit.end())), hit.start(), hit.end());
    }
    return first;
  }

  /** The first tags of a text, ranges spelt out, letter for letter; null when there are none. */
  public static TagsAt firstTags(String text) {
    if (!mayHaveTags(text)) return null;
    List<Citations.Found> cited = null;
    TagLookalikes lookalikes = new TagLookalikes(text);
    Matcher m = TAG.matcher(text);
    while (m.find()) {
      if (lookalikes.isOne(m)) continue;
      int at = m.start();
      if (cited == null) cited = Citations.find(text);
      if (cited.stream().anyMatch(c -> c.start() <= at && at < c.end())) continue;
      TagList.Found list = TagList.inText(text, m.start());
      return list == null
          ? new TagsAt(List.of(m.group()), m.start(), m.end())
          : new TagsAt(list.tags(), m.start(), list.end());
    }
    return null;
  }

  /** "GT-1, PT-4 and ST-2": all tags that a text opens with; null when it opens with none. */
  public static TagsAt opening(String text) {
    List<String> tags = new ArrayList<>();
    int end = 0;
    for (int at = 0; at >= 0; ) {
      TagsAt next = firstTags(text.substring(at));
      if (next == null || next.start() > 0) break;
      tags.addAll(next.tags());
      end = at + next.end();
      Matcher join = JOIN.matcher(text).region(end, text.length());
      at = join.lookingAt() ? join.end() : -1;
    }
    return tags.isEmpty() ? null : new TagsAt(List.copyOf(tags), 0, end);
  }

  /** A range of tags that stands for its ends alone, as there are too many between; or empty. */
  public static String unspelt(String text) {
    if (!mayHaveTags(text)) return "";
    return lists(text).stream()
        .map(list -> list.found().unspelt())
        .filter(range -> !range.isEmpty())
        .findFirst()
        .orElse("");
  }

  private record At(int start, TagList.Found found) {
    Phrases.Hit place() {
      return new Phrases.Hit(start, found.end());
    }
  }

  /** Tags by themselves are lists of one. */
  private static List<At> lists(String text) {
    List<At> lists = new ArrayList<>();
    int covered = 0;
    TagLookalikes lookalikes = new TagLookalikes(text);
    Matcher m = TAG.matcher(text);
    while (m.find()) {
      if (lookalikes.isOne(m)) continue;
      boolean within = m.start() < covered;
      TagList.Found list = within ? null : TagList.inText(text, m.start());
      if (list == null) list = new TagList.Found(List.of(m.group()), m.end(), "");
      lists.add(new At(m.start(), list));
      covered = Math.max(covered, list.end());
    }
    m = FIGURES_APART.matcher(text);
    while (m.find()) {
      TagList.Found list = TagList.inText(text, m.start());
      if (list != null && list.tags().size() > 1) lists.add(new At(m.start(), list));
    }
    return lists;
  }

  /** In every tag a capital stands before another, a figure, a mark or a blank. */
  private static boolean mayHaveTags(String text) {
    for (int at = text.length() - 2; at >= 0; at--) {
      char c = text.charAt(at);
      if (c < 'A' || c > 'Z') continue;
      char next = text.charAt(at + 1);
      boolean within = at > 0 && Character.isLetter(text.charAt(at - 1));
      if (next < 'a' || next > 'z' || within) return true;
    }
    return false;
  }

  /** Tags of a text, letter for letter. */
  public static List<String> written(String text) {
    return TAG.matcher(text).results().map(r -> r.group()).toList();
  }

  /** One way of writing a tag: {@code gt 1} and {@code GT-1} are the same, {@code GT-01} is not. */
  static String tag(String written) {
    String s = written.trim().toUpperCase(Locale.ROOT);
    Matcher m = TAG_PARTS.matcher(s);
    return m.matches() ? m.group(1) + "-" + m.group(2) + m.group(3) : s;
  }
}
