package clearbed.recognise;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds what a text is limited to: tags, kinds of tile, places, surfaces. */
final class LimitFinder {
  private static final Pattern TAG_PARTS = Pattern.compile("([A-Z]{1,5})[-. ]?(\\d{1,3})([A-Z]?)");
  private static final Pattern TAG =
      Pattern.compile(
          "(?<![A-Za-z0-9.-])(?:([A-Z]{1,5})[-. ]?(\\d{1,3})([A-Za-z]?)|(?!ANSI|ASTM|ISO|EN-|BS-|TCNA|UL-)[A-Z]{1,4}-[A-Z]{1,3}-?\\d{1,3}|([A-Z]{2,4})-([A-Z]))(?![A-Za-z0-9]|[.-]\\d)");
  // "GT-5-8" is a range, and no tag by itself.
  private static final Pattern FIGURES_APART =
      Pattern.compile(
          "(?<![A-Za-z0-9.-])(?:[A-Z]{1,5}|[A-Z]{1,4}-[A-Z]{1,3})[-.]?\\d{1,3}-\\d{1,3}(?![A-Za-z0-9]|[.-]\\d)");
  // "GT-1 and other tile with a side of 15 in" is not limited to GT-1.
  private static final Pattern AND_OTHERS =
      Pattern.compile("\\d[A-Z]?,? and (?:all |any )?other\\b|\\b(?:other|remaining) glass\\b");
  // In capitals "AT 16 FT" looks like a mark.
  private static final Pattern NO_MARK =
      Pattern.compile(
          "(?:AT|SET|TO|IN|OF|FOR|AND|OR|BY|PER|MIN|MAX|NO|THE|ON|IS|AS|ALL|WITH|FROM|OVER|THAN|UNDER|EACH|EVERY|USE|CLASS|TYPE|PART|STEP|LEVEL|SHEET|NOTE|ROOM|ITEM|ABOUT|AFTER|UNTIL|CURE|WAIT|GROUT|FIRST|LAST|ARE|NOT|ONLY|WHEN|BE|HOLD|KEEP|PAST) .*");
  // Adhesives, grouts and sealants of ISO 13007 and ISO 11600 have classes that look like marks.
  private static final Pattern ISO_CLASS =
      Pattern.compile(
          "C[12][A-Z]{0,2}\\d?|[RD][12][A-Z]?|CG[12][A-Z]?|S[12]|[FG][- ]?\\d{1,2}[A-Z]?");
  private static final Pattern ISO_CLASSES =
      Pattern.compile("\\b(?:12004|13007|13888|11600)\\b|\\bclass\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern CLAUSE_BEHIND = Pattern.compile("/\\d{3}(?!\\d)");
  private static final Pattern MEASURED =
      Pattern.compile("\\s?(?:" + UnitWords.PATTERN + ")(?![A-Za-z])", Pattern.CASE_INSENSITIVE);
  private static final Pattern LIST_OF_PLACES =
      Pattern.compile(
          "\\b\\p{L}{3,15}(?:, (?:the )?\\p{L}{3,15}){0,4},? (?:and|or|&) (?:the )?\\p{L}{3,15}\\b");
  private static final Pattern BETWEEN_PLACES =
      Pattern.compile("\\s*,\\s*(?:and |or )?|\\s+(?:and|or|&)\\s+");
  private static final Pattern OTHER_TILE =
      Pattern.compile("\\bother (?:\\w+ )?(?:tiles?|tiling)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern PUBLISHER =
      Pattern.compile("(?i).*(?:ansi|astm|iso|en|bs|tcna|ul)[ /-]*");
  // "Floors and framing that carry glass tile" is not limited to floors.
  private static final Pattern AND_WHAT_CARRIES =
      Pattern.compile(
          ",? (?:and|or|&) (?:\\w+ )?(?:framing|frames?|structures?|supports?|backgrounds?|substrates?|studs?)\\b",
          Pattern.CASE_INSENSITIVE);
  private static final int LIST_GAP = 30;
  private static final int LEAD_REACH = 120;
  private static final Pattern JOINED =
      Pattern.compile("(?:,|,?\\s+(?:and|or|/))\\s+(?:at |in |for )?$");
  private static final Pattern STOP =
      Pattern.compile(
          "[.;:()]|\\b(?:is|are|shall|with|use|set|provide)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern SUITED =
      Pattern.compile(
          "(?:suit\\w*|approved|rated|recommended|designed|intended|formulated|acceptable|listed|appropriate|tested|certified|manufactured|made)\\s+(?:\\w+\\s+)?$",
          Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final Pattern placeLead;

  LimitFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.placeLead = Pattern.compile(vocabulary.placeLead() + "$", Pattern.CASE_INSENSITIVE);
  }

  /**
   * @param heading true for a heading or lead-in, where naming a place is enough
   */
  Limits of(String text, boolean heading) {
    String glassless = vocabulary.list("notTile").without(text);
    boolean glass =
        vocabulary.list("glassTile").in(glassless)
            || (heading && vocabulary.list("glassAlone").in(glassless));
    Set<String> other = new TreeSet<>();
    vocabulary
        .otherTile()
        .forEach(
            (kind, phrases) -> {
              if (phrases.in(glassless)) other.add(kind);
            });
    return new Limits(
            limitingTags(text),
            glass,
            other,
            exposures(text, heading),
            Set.of(),
            places(text, vocabulary.surfacePlaces(), heading),
            Map.of())
        .sparing();
  }

  /**
   * "Grout for glass tile: ... Grout for other tile: ..."
   *
   * @param limits of words behind some that speak of glass tile
   */
  static Limits behindGlass(Limits limits, String text) {
    return !limits.glass() && OTHER_TILE.matcher(text).find() ? limits.ofOtherTile() : limits;
  }

  /** True when the text is limited to tags. */
  boolean namesTags(String text) {
    return !limitingTags(text).isEmpty();
  }

  private static Set<String> limitingTags(String text) {
    Set<String> tags = tags(text);
    return tags.isEmpty() || !AND_OTHERS.matcher(text).find() ? tags : Set.of();
  }

  /**
   * Designations that look like tags, ranges spelt out; the caller knows which of them are tags.
   */
  static Set<String> tags(String text) {
    Set<String> tags = new TreeSet<>();
    if (!mayHaveTags(text)) return tags;
    for (TagList.Found list : lists(text)) list.tags().forEach(tag -> tags.add(tag(tag)));
    return tags;
  }

  /** A list of tags and where it stands. */
  record TagsAt(List<String> tags, int start, int end) {}

  /** The first tags of a text, ranges spelt out, letter for letter; null when there are none. */
  static TagsAt firstTags(String text) {
    if (!mayHaveTags(text)) return null;
    List<Citations.Found> cited = Citations.mayCite(text) ? Citations.find(text) : List.of();
    Matcher m = TAG.matcher(text);
    while (m.find()) {
      int at = m.start();
      boolean standard = cited.stream().anyMatch(c -> c.start() <= at && at < c.end());
      if (standard || !isTag(m, text)) continue;
      TagList.Found list = TagList.inText(text, m.start());
      return list == null
          ? new TagsAt(List.of(m.group()), m.start(), m.end())
          : new TagsAt(list.tags(), m.start(), list.end());
    }
    return null;
  }

  /** A range of tags that stands for its ends alone, as there are too many between; or empty. */
  static String unspelt(String text) {
    if (!mayHaveTags(text)) return "";
    return lists(text).stream()
        .map(TagList.Found::unspelt)
        .filter(range -> !range.isEmpty())
        .findFirst()
        .orElse("");
  }

  /** Tags by themselves are lists of one. */
  private static List<TagList.Found> lists(String text) {
    List<TagList.Found> lists = new ArrayList<>();
    int covered = 0;
    Matcher m = TAG.matcher(text);
    while (m.find()) {
      if (!isTag(m, text)) continue;
      boolean within = m.start() < covered;
      TagList.Found list = within ? null : TagList.inText(text, m.start());
      if (list == null) list = new TagList.Found(List.of(m.group()), m.end(), "");
      lists.add(list);
      covered = Math.max(covered, list.end());
    }
    m = FIGURES_APART.matcher(text);
    while (m.find()) {
      TagList.Found list = TagList.inText(text, m.start());
      if (list != null && list.tags().size() > 1) lists.add(list);
    }
    return lists;
  }

  private static boolean isTag(Matcher m, String text) {
    boolean isoClass = ISO_CLASS.matcher(m.group()).matches() && ISO_CLASSES.matcher(text).find();
    String before = text.substring(Math.max(0, m.start() - 6), m.start());
    // "Build a 4 ft panel", in capitals.
    boolean measured =
        m.group().indexOf(' ') > 0
            && MEASURED.matcher(text).region(m.end(), text.length()).lookingAt();
    // "T20/110" is the number of a clause.
    boolean clause = CLAUSE_BEHIND.matcher(text).region(m.end(), text.length()).lookingAt();
    return !isoClass
        && !measured
        && !clause
        && !NO_MARK.matcher(m.group()).matches()
        && !PUBLISHER.matcher(before).matches();
  }

  /** In every tag a capital stands before another, a figure, a mark or a blank. */
  private static boolean mayHaveTags(String text) {
    for (int at = text.length() - 2; at >= 0; at--) {
      char c = text.charAt(at);
      if (c < 'A' || c > 'Z') continue;
      char next = text.charAt(at + 1);
      if (next < 'a' || next > 'z') return true;
    }
    return false;
  }

  /** Tags of a text, letter for letter. */
  static List<String> written(String text) {
    return TAG.matcher(text).results().map(r -> r.group()).toList();
  }

  /** One way of writing a tag: {@code gt 1} and {@code GT-1} are the same, {@code GT-01} is not. */
  static String tag(String written) {
    String s = written.trim().toUpperCase(Locale.ROOT);
    Matcher m = TAG_PARTS.matcher(s);
    return m.matches() ? m.group(1) + "-" + m.group(2) + m.group(3) : s;
  }

  /** Places, and the words of rooms in a list with them: "Pool, spa and deck: ...". */
  private Set<String> exposures(String text, boolean heading) {
    Set<String> places = places(text, vocabulary.exposurePlaces(), heading);
    if (places.isEmpty()) return places;
    Matcher list = LIST_OF_PLACES.matcher(text);
    while (list.find()) {
      List<String> words = List.of(BETWEEN_PLACES.split(list.group().toLowerCase(Locale.ROOT)));
      boolean place =
          words.stream()
              .anyMatch(
                  w -> vocabulary.exposurePlaces().values().stream().anyMatch(p -> p.matches(w)));
      if (place) words.stream().map(w -> w.replaceFirst("^the ", "")).forEach(places::add);
    }
    return places;
  }

  private Set<String> places(String text, Map<String, Phrases> vocabulary, boolean heading) {
    Set<String> found = new TreeSet<>();
    mentions(text, vocabulary, heading).values().forEach(found::add);
    return found;
  }

  /** Places by offset, so that a figure can be matched with the place nearest to it. */
  Map<Integer, String> exposureMentions(String text) {
    return mentions(text, vocabulary.exposurePlaces(), false);
  }

  private Map<Integer, String> mentions(
      String text, Map<String, Phrases> vocabulary, boolean heading) {
    Map<Integer, String> found = new LinkedHashMap<>();
    List<Phrases.Hit> introduced = new ArrayList<>();
    places(text, vocabulary)
        .forEach(
            (hit, term) -> {
              if (AND_WHAT_CARRIES.matcher(text).region(hit.end(), text.length()).lookingAt())
                return;
              if (!heading && !introduced(text, hit, introduced)) return;
              introduced.add(hit);
              found.put(hit.start(), term);
            });
    return found;
  }

  /** The places named, from left to right; of those that overlap the longest. */
  private static Map<Phrases.Hit, String> places(String text, Map<String, Phrases> vocabulary) {
    List<Map.Entry<Phrases.Hit, String>> hits = new ArrayList<>();
    vocabulary.forEach(
        (term, phrases) -> phrases.all(text).forEach(hit -> hits.add(Map.entry(hit, term))));
    hits.sort(
        (a, b) ->
            (b.getKey().end() - b.getKey().start()) - (a.getKey().end() - a.getKey().start()));
    boolean[] taken = new boolean[text.length() + 1];
    List<Map.Entry<Phrases.Hit, String>> free = new ArrayList<>();
    for (Map.Entry<Phrases.Hit, String> entry : hits) {
      Phrases.Hit hit = entry.getKey();
      if (taken[hit.start()] || taken[hit.end() - 1]) continue;
      for (int i = hit.start(); i < hit.end(); i++) taken[i] = true;
      free.add(entry);
    }
    free.sort((a, b) -> a.getKey().start() - b.getKey().start());
    Map<Phrases.Hit, String> places = new LinkedHashMap<>();
    free.forEach(entry -> places.put(entry.getKey(), entry.getValue()));
    return places;
  }

  /**
   * @param earlier the places further left that are introduced
   */
  private boolean introduced(String text, Phrases.Hit hit, List<Phrases.Hit> earlier) {
    String before = text.substring(Math.max(0, hit.start() - LEAD_REACH), hit.start());
    Matcher m = placeLead.matcher(before);
    if (m.find()) return !SUITED.matcher(before.substring(0, m.start())).find();
    // "at pools, ramp 102 and steam rooms", "in wet or exterior areas": the second place shares the
    // preposition of the first.
    Matcher joined = JOINED.matcher(before);
    if (earlier.isEmpty() || !joined.find()) return false;
    int end = hit.start() - before.length() + joined.start();
    for (int i = earlier.size() - 1; i >= 0; i--) {
      Phrases.Hit first = earlier.get(i);
      if (end - first.end() > LIST_GAP) return false;
      if (end >= first.end() && !STOP.matcher(text.substring(first.end(), end)).find()) return true;
    }
    return false;
  }
}
