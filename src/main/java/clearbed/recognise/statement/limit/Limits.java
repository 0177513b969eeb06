package clearbed.recognise.statement.limit;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What a statement is limited to; an empty set limits nothing.
 *
 * @param tags entries named; {@code GW*} for all of these letters
 * @param glass true when glass tile is named
 * @param otherTile other kinds of tile named
 * @param exposures places named: terms of exposure, and beside them words of room names
 * @param surfaces surfaces named
 * @param with terms of the tile's own attributes that it supposes ({@code translucent glass: ...})
 */
public record Limits(
    Set<String> tags,
    boolean glass,
    Set<String> otherTile,
    Set<PlaceLimit> exposures,
    Exclusions except,
    Set<String> surfaces,
    Map<String, Set<String>> with) {

  private static final String ANOTHER_MARK = "another mark";

  public static final Limits NONE =
      new Limits(Set.of(), false, Set.of(), Set.of(), Exclusions.NOTHING, Set.of(), Map.of());

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
        tags.isEmpty() && !otherTileOnly() && !except.tags().containsAll(outer.tags)
            ? outer.tags
            : tags,
        kindSaid ? glass : outer.glass,
        // GT-1 under an article on ceramic tile is no ceramic tile for that.
        kindSaid || !tags.isEmpty() && !tags.equals(outer.tags) ? otherTile : outer.otherTile,
        exposures.isEmpty() && !except.places().containsAll(outer.exposures)
            ? outer.exposures
            : exposures,
        except.and(outer.except),
        surfaces.isEmpty() && !except.covers(outer.surfaces) ? outer.surfaces : surfaces,
        with.isEmpty() ? outer.with : with);
  }

  /** True when other tile is named and glass is not. */
  public boolean otherTileOnly() {
    return !glass && !otherTile.isEmpty();
  }

  /** To these tags and nothing else but what is left out. */
  public static Limits ofTags(Set<String> tags, Exclusions except) {
    return new Limits(tags, false, Set.of(), Set.of(), except, Set.of(), Map.of());
  }

  public Limits withTags(Set<String> now) {
    return new Limits(now, glass, otherTile, exposures, except, surfaces, with);
  }

  Limits withExposures(Set<PlaceLimit> now) {
    return new Limits(tags, glass, otherTile, now, except, surfaces, with);
  }

  public Limits withExcept(Exclusions now) {
    return new Limits(tags, glass, otherTile, exposures, now, surfaces, with);
  }

  /** About what these marks stand for and nothing else, should no schedule know them. */
  public Limits ofMarksAlone() {
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
  public Limits ofOtherTile() {
    return alsoOfTile("other tile");
  }

  Limits notGlass() {
    return new Limits(tags, false, otherTile, exposures, except, surfaces, with);
  }

  private Limits alsoOfTile(String kind) {
    Set<String> other = union(otherTile, Set.of(kind));
    return new Limits(tags, glass, other, exposures, except, surfaces, with);
  }

  public Limits supposing(Map<String, Set<String>> now) {
    return new Limits(tags, glass, otherTile, exposures, except, surfaces, now);
  }

  /** The same tiles wherever they are. */
  public Limits anywhere() {
    return new Limits(tags, glass, otherTile, Set.of(), Exclusions.NOTHING, Set.of(), Map.of());
  }

  /** Any tile that is in these places. */
  public Limits placesAlone() {
    return exposures.isEmpty()
        ? NONE
        : new Limits(Set.of(), false, Set.of(), exposures, Exclusions.NOTHING, Set.of(), Map.of());
  }

  /** Limited to both. */
  public Limits and(Limits other) {
    if (other == NONE) return this;
    if (this == NONE) return other;
    Map<String, Set<String>> both = new LinkedHashMap<>(with);
    other.with.forEach((attribute, terms) -> both.merge(attribute, terms, Limits::union));
    return new Limits(
        union(tags, other.tags),
        glass || other.glass,
        union(otherTile, other.otherTile),
        union(exposures, other.exposures),
        except.and(other.except),
        union(surfaces, other.surfaces),
        both);
  }

  /** The kinds of tile alone. */
  public Limits kind() {
    return new Limits(Set.of(), glass, otherTile, Set.of(), Exclusions.NOTHING, Set.of(), Map.of())
        .sparing();
  }

  static <T extends Comparable<T>> Set<T> union(Set<T> a, Set<T> b) {
    if (b.isEmpty()) return a;
    Set<T> out = new TreeSet<>(a);
    out.addAll(b);
    return out;
  }
}
