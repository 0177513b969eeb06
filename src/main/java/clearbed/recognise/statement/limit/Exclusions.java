package clearbed.recognise.statement.limit;

import java.util.Set;

/**
 * What a statement does not hold for.
 *
 * @param terms of surfaces, and of the tile's own attributes
 */
public record Exclusions(Set<String> tags, Set<PlaceLimit> places, Set<String> terms) {
  public static final Exclusions NOTHING = new Exclusions(Set.of(), Set.of(), Set.of());

  public boolean isEmpty() {
    return tags.isEmpty() && places.isEmpty() && terms.isEmpty();
  }

  public Exclusions and(Exclusions other) {
    if (other.isEmpty()) return this;
    return new Exclusions(
        Limits.union(tags, other.tags),
        Limits.union(places, other.places),
        Limits.union(terms, other.terms));
  }

  public Exclusions andTags(Set<String> more) {
    return and(new Exclusions(more, Set.of(), Set.of()));
  }

  /** True when all of these are left out, as surfaces or properties of a tile or as places. */
  public boolean covers(Set<String> all) {
    return all.stream().allMatch(t -> terms.contains(t) || places.contains(PlaceLimit.of(t)));
  }
}
