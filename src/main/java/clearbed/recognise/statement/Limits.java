package clearbed.recognise.statement;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What a statement is limited to; an empty set limits nothing.
 *
 * @param tags entries named; {@code GW*} for all of these letters
 * @param glass true when glass tile is named
 * @param otherTile other kinds of tile named
 * @param exposures places named: terms of exposure, some with the room, and beside them words of
 *     room names
 * @param except places and tags left out
 * @param surfaces surfaces named
 * @param with terms of the tile's own attributes that it supposes ({@code translucent glass: ...})
 */
public record Limits(
    Set<String> tags,
    boolean glass,
    Set<String> otherTile,
    Set<String> exposures,
    Set<String> except,
    Set<String> surfaces,
    Map<String, Set<String>> with) {

  private static final String ANOTHER_MARK = "another mark";

  /** Of rooms that stay dry the kind says little: a lobby is no corridor. */
  private static final Set<String> BY_NAME = Set.of("dry", "damp");

  private static final String NAMED = " (";

  /** Words for all places of a kind, which name no room. */
  private static final Pattern GENERAL =
      Pattern.compile(
          "\\b(?:dry|damp|interior|internal|indoors?|inside|exterior|external|outdoors?|outside|wet|humid|sun|heat|frost|freez|steam\\b|W ?0)|water|moisture|immers|submer",
          Pattern.CASE_INSENSITIVE);

  public static final Limits NONE =
      new Limits(Set.of(), false, Set.of(), Set.of(), Set.of(), Set.of(), Map.of());

  /**
   * A place with the name of the room, where that tells it from others of its kind: {@code dry
   * (lobby)}.
   *
   * @param kind a term of exposure
   * @param name as written
   */
  static String place(String kind, String name) {
    String room = name.toLowerCase(Locale.ROOT);
    return BY_NAME.contains(kind) && namesRoom(room) ? kind + NAMED + room + ")" : kind;
  }

  /** False for "wet areas", "interior" and other words for all places of a kind. */
  static boolean namesRoom(String place) {
    return !GENERAL.matcher(place).find();
  }

  /** The kind of place, whichever room is named. */
  public static String kindOf(String place) {
    int at = place.indexOf(NAMED);
    return at < 0 ? place : place.substring(0, at);
  }

  /** The name of the room; empty where only a kind of place is named. */
  public static String roomOf(String place) {
    int at = place.indexOf(NAMED);
    return at < 0 ? "" : place.substring(at + NAMED.length(), place.length() - 1);
  }

  /** These limits; {@link #NONE} itself where they limit nothing, as most do. */
  Limits sparing() {
    boolean none =
        !glass
            && tags.isEmpty()
            && otherTile.isEmpty()
            && exposures.isEmpty()
            && except.isEmpty()
            && surfaces.isEmpty()
            && with.isEmpty();
    return none ? NONE : this;
  }

  /** These limits inside wider ones: what is not said here is taken from outside. */
  public Limits within(Limits outer) {
    if (this == NONE) return outer;
    boolean kindSaid = glass || !otherTile.isEmpty();
    return new Limits(
        // "Porcelain tile: ..." under a heading on GT-1 is not about GT-1.
        // Nor is "elsewhere" under GT-1, when it was GT-1 that was named.
        tags.isEmpty() && !otherTileOnly() && !except.containsAll(outer.tags) ? outer.tags : tags,
        kindSaid ? glass : outer.glass,
        // GT-1 under an article on ceramic tile is no ceramic tile for that.
        kindSaid || !tags.isEmpty() && !tags.equals(outer.tags) ? otherTile : outer.otherTile,
        exposures.isEmpty() && !except.containsAll(outer.exposures) ? outer.exposures : exposures,
        union(except, outer.except),
        surfaces.isEmpty() && !except.containsAll(outer.surfaces) ? outer.surfaces : surfaces,
        with.isEmpty() ? outer.with : with);
  }

  /** True when other tile is named and glass is not. */
  public boolean otherTileOnly() {
    return !glass && !otherTile.isEmpty();
  }

  /** To these tags and nothing else but what is left out. */
  public static Limits ofTags(Set<String> tags, Set<String> except) {
    return new Limits(tags, false, Set.of(), Set.of(), except, Set.of(), Map.of());
  }

  public Limits withTags(Set<String> now) {
    return new Limits(now, glass, otherTile, exposures, except, surfaces, with);
  }

  Limits withExposures(Set<String> now) {
    return new Limits(tags, glass, otherTile, now, except, surfaces, with);
  }

  public Limits withExcept(Set<String> now) {
    return new Limits(tags, glass, otherTile, exposures, now, surfaces, with);
  }

  /** About what these marks stand for and nothing else, should no schedule know them. */
  Limits ofMarksAlone() {
    return alsoOfTile(ANOTHER_MARK);
  }

  /** Where what was taken for marks is none. */
  public Limits ofNoMark() {
    Set<String> other =
        otherTile.stream()
            .filter(kind -> !kind.equals(ANOTHER_MARK))
            .collect(Collectors.toUnmodifiableSet());
    return new Limits(Set.of(), glass, other, exposures, except, surfaces, with);
  }

  /** About tile that is not of glass. */
  Limits ofOtherTile() {
    return alsoOfTile("other tile");
  }

  Limits notGlass() {
    return new Limits(tags, false, otherTile, exposures, except, surfaces, with);
  }

  private Limits alsoOfTile(String kind) {
    Set<String> other = union(otherTile, Set.of(kind));
    return new Limits(tags, glass, other, exposures, except, surfaces, with);
  }

  Limits supposing(Map<String, Set<String>> now) {
    return new Limits(tags, glass, otherTile, exposures, except, surfaces, now);
  }

  /** The same tiles wherever they are. */
  public Limits anywhere() {
    return new Limits(tags, glass, otherTile, Set.of(), Set.of(), Set.of(), Map.of());
  }

  /** Limited to both. */
  Limits and(Limits other) {
    if (other == NONE) return this;
    if (this == NONE) return other;
    Map<String, Set<String>> both = new LinkedHashMap<>(with);
    other.with.forEach((attribute, terms) -> both.merge(attribute, terms, Limits::union));
    return new Limits(
        union(tags, other.tags),
        glass || other.glass,
        union(otherTile, other.otherTile),
        union(exposures, other.exposures),
        union(except, other.except),
        union(surfaces, other.surfaces),
        both);
  }

  /** The kinds of tile alone. */
  Limits kind() {
    return new Limits(Set.of(), glass, otherTile, Set.of(), Set.of(), Set.of(), Map.of()).sparing();
  }

  static Set<String> union(Set<String> a, Set<String> b) {
    if (b.isEmpty()) return a;
    Set<String> out = new TreeSet<>(a);
    out.addAll(b);
    return out;
  }
}
