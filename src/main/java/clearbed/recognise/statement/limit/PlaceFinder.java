package clearbed.recognise.statement.limit;

import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Finds the places and surfaces that a text names, and tells those that limit what it says. */
public final class PlaceFinder {
  /**
   * A place named; offsets are of the text.
   *
   * @param surface true for a surface, false for an exposure
   * @param introduced true when a preposition, its own or that of a list, makes it a limit
   */
  public record Place(int start, int end, boolean surface, String term, boolean introduced) {}

  private static final Pattern LIST_OF_PLACES =
      Pattern.compile(
          "\\b\\p{L}{3,15}(?:, (?:the )?\\p{L}{3,15}){0,4},? (?:and|or|&) (?:the )?\\p{L}{3,15}\\b");

  /** "Shower floor and pool": no word of a room. */
  private static final Pattern SURFACE = Pattern.compile("(?:floor|wall|ceiling)s?");

  private static final Pattern BETWEEN_PLACES =
      Pattern.compile("\\s*,\\s*(?:and |or )?|\\s+(?:and|or|&)\\s+");
  private static final int LIST_GAP = 30;
  private static final int LEAD_REACH = 120;
  private static final Pattern JOINED =
      Pattern.compile(
          "(?:,|,?\\s+(?:and|or|/))\\s+(?:at |in |for |on )?(?:(?:the|all|any|both) )?$");
  private static final Pattern INCLUDING =
      Pattern.compile("\\bincl(?:uding|usive|\\.)?", Pattern.CASE_INSENSITIVE);

  private static final Pattern BESIDE_ROOM =
      Pattern.compile(
          "\\b(?:at|in|for|on|and|or|the|all) ((?!(?:the|all|any|both|each|every|no|not|other|and|or|in|at|on|for)\\b)[a-z]{3,12} )$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern ARTICLES =
      Pattern.compile("(?:(?:the|all|each|every|both) )*", Pattern.CASE_INSENSITIVE);

  private static final Pattern ITS_TILE =
      Pattern.compile(
          "(?: [\\w-]+)?? (?:floor|wall|ceiling|soffit|tile|mosaic)s?\\b",
          Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;
  private final Pattern lead;
  private final Pattern suited;

  public PlaceFinder(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.lead = Pattern.compile(vocabulary.places().lead() + "$", Pattern.CASE_INSENSITIVE);
    this.suited = Pattern.compile(vocabulary.places().suited() + "$", Pattern.CASE_INSENSITIVE);
  }

  /**
   * Places, and the words of rooms in a list with them: "Pool, spa and deck: ...".
   *
   * @param heading true where naming a place is enough
   */
  Set<PlaceLimit> exposures(String text, boolean heading) {
    Set<PlaceLimit> places = new TreeSet<>();
    for (Place place : limiting(text, heading, false))
      places.add(PlaceLimit.named(place.term(), text.substring(place.start(), place.end())));
    if (places.isEmpty()) return places;
    narrow(text, places);
    Matcher list = LIST_OF_PLACES.matcher(text);
    while (list.find()) {
      List<String> words = List.of(BETWEEN_PLACES.split(list.group().toLowerCase(Locale.ROOT)));
      boolean place =
          words.stream()
              .anyMatch(
                  w ->
                      vocabulary.places().exposures().values().stream()
                          .anyMatch(p -> p.matches(w)));
      if (place)
        words.stream()
            .map(w -> w.replaceFirst("^the ", ""))
            .filter(w -> !SURFACE.matcher(w).matches())
            .map(PlaceLimit::of)
            .forEach(places::add);
    }
    return places;
  }

  /**
   * Surfaces named, as in {@link #exposures}: "at pools, showers and exterior walls" is not of
   * walls alone.
   */
  Set<String> surfaces(String text, boolean heading) {
    Set<String> surfaces = new TreeSet<>();
    for (Place place : limiting(text, heading, true)) surfaces.add(place.term());
    if (surfaces.isEmpty()) return surfaces;
    int items = 0;
    int without = 0;
    int from = 0;
    Matcher between = BETWEEN_PLACES.matcher(text);
    while (from <= text.length()) {
      int end = between.find() ? between.start() : text.length();
      String item = text.substring(from, end);
      if (!longest(item, vocabulary.places().exposures(), false).isEmpty()) {
        items++;
        if (longest(item, vocabulary.places().surfaces(), true).isEmpty()) without++;
      }
      from = end == text.length() ? end + 1 : between.end();
    }
    return items > without && without > 1 ? Set.of() : surfaces;
  }

  private List<Place> limiting(String text, boolean heading, boolean surface) {
    return named(text, surface).stream().filter(place -> heading || place.introduced()).toList();
  }

  /** "Internal, dry" is the dry part of the inside: a place within another narrows it. */
  private void narrow(String text, Set<PlaceLimit> places) {
    if (places.size() < 2 || INCLUDING.matcher(text).find()) return;
    Attribute exposure = vocabulary.attribute("location.exposure").orElseThrow();
    Set<String> all = places.stream().map(PlaceLimit::kind).collect(Collectors.toSet());
    places.removeIf(
        wide ->
            wide.room().isEmpty()
                && !exposure.hasTerm(wide.kind())
                && all.stream()
                    .anyMatch(
                        p ->
                            !p.equals(wide.kind())
                                && vocabulary.places().coversAll(wide.kind(), p)));
  }

  /** All places and surfaces named, from left to right. */
  public List<Place> named(String text) {
    List<Place> all = new ArrayList<>(named(text, false));
    all.addAll(named(text, true));
    all.sort(Comparator.comparingInt(Place::start));
    return all;
  }

  private List<Place> named(String text, boolean surface) {
    Map<String, Phrases> words =
        surface ? vocabulary.places().surfaces() : vocabulary.places().exposures();
    List<Place> out = new ArrayList<>();
    List<Place> introduced = new ArrayList<>();
    for (Place place : longest(text, words, surface)) {
      boolean ofAnother = vocabulary.list("places.notAlone").startsAt(text, place.end());
      if (ofAnother) continue;
      boolean limits = introduced(text, place, introduced) || !surface && isSubject(text, place);
      Place found = new Place(place.start(), place.end(), surface, place.term(), limits);
      if (limits) introduced.add(found);
      out.add(found);
    }
    return out;
  }

  /** The places named, from left to right; of those that overlap the longest. */
  private static List<Place> longest(String text, Map<String, Phrases> words, boolean surface) {
    List<Place> hits = new ArrayList<>();
    words.forEach(
        (term, phrases) -> {
          for (Phrases.Hit hit : phrases.all(text))
            hits.add(new Place(hit.start(), hit.end(), surface, term, false));
        });
    hits.sort(Comparator.comparingInt((Place p) -> p.start() - p.end()));
    boolean[] taken = new boolean[text.length() + 1];
    List<Place> free = new ArrayList<>();
    for (Place hit : hits) {
      if (taken[hit.start()] || taken[hit.end() - 1]) continue;
      for (int i = hit.start(); i < hit.end(); i++) taken[i] = true;
      free.add(hit);
    }
    free.sort(Comparator.comparingInt(Place::start));
    return free;
  }

  private static boolean namesRoom(String text, Place place) {
    return PlaceLimit.namesRoom(text.substring(place.start(), place.end()));
  }

  /** "At the entrance facade", "and the north terrace": where the name of the room begins. */
  private int withName(String text, int start) {
    Matcher name = BESIDE_ROOM.matcher(text).region(Math.max(0, start - LIST_GAP), start);
    // "On concrete basin and slab" is about what carries the tile.
    return name.find() && !isSubstrate(name.group(1)) ? name.start(1) : start;
  }

  private boolean isSubstrate(String words) {
    return vocabulary
        .attribute("substrate.type")
        .filter(a -> a.words().anyTerm().in(words))
        .isPresent();
  }

  /** "Restroom floors get a membrane": the room whose surface or tile a sentence opens with. */
  private static boolean isSubject(String text, Place place) {
    return namesRoom(text, place)
        && ARTICLES.matcher(text.substring(0, place.start())).matches()
        && ITS_TILE.matcher(text).region(place.end(), text.length()).lookingAt();
  }

  /**
   * @param earlier the places further left that are introduced
   */
  private boolean introduced(String text, Place place, List<Place> earlier) {
    int start =
        !place.surface() && namesRoom(text, place) ? withName(text, place.start()) : place.start();
    String before = text.substring(Math.max(0, start - LEAD_REACH), start);
    Matcher m = lead.matcher(before);
    if (m.find()) return !suited.matcher(before.substring(0, m.start())).find();
    // "at pools, ramp 102 and steam rooms", "in wet or exterior areas": the second place shares the
    // preposition of the first.
    Matcher joined = JOINED.matcher(before);
    if (earlier.isEmpty() || !joined.find()) return false;
    int end = start - before.length() + joined.start();
    for (int i = earlier.size() - 1; i >= 0; i--) {
      Place first = earlier.get(i);
      if (end - first.end() > LIST_GAP) return false;
      if (end < first.end()) continue;
      String between = text.substring(first.end(), end);
      boolean stopped =
          between.chars().anyMatch(c -> ".;:()".indexOf(c) >= 0)
              || vocabulary.list("clause.verb").in(between);
      if (!stopped) return true;
    }
    return false;
  }
}
