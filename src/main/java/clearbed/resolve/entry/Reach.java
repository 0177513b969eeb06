package clearbed.resolve.entry;

import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.recognise.statement.limit.PlaceLimit;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * Decides whether a clause's limits let it speak for an entry, and how closely. What the entry
 * leaves unknown limits nothing.
 */
public final class Reach {
  /** The clause does not speak for the entry. */
  public static final int NOT = -1;

  private static final int TAG = 100;
  private static final int GLASS = 1;
  private static final int CONDITION = 10;
  private static final String INSIDE = "interior";
  private static final String OUTSIDE = "exterior";

  private static final List<String> OF_THE_ENTRY =
      List.of("location.surface", "tile.translucency", "tile.backing", "tile.mounting");

  private final Vocabulary vocabulary;
  private final Set<String> tags;
  private final Set<String> prefixes;

  /** Of glass tile, by the words of each. */
  private final List<Set<String>> rooms;

  private final Map<String, Boolean> known = new ConcurrentHashMap<>();
  private final Map<Set<String>, Set<String>> named = new ConcurrentHashMap<>();

  /**
   * @param rooms as the schedules name them
   */
  public Reach(Vocabulary vocabulary, Set<String> tags, Set<String> rooms) {
    this.vocabulary = vocabulary;
    this.rooms = rooms.stream().map(Draft::roomWords).distinct().toList();
    this.tags = tags;
    this.prefixes =
        tags.stream().map(Tags::prefix).filter(p -> p.length() > 1).collect(Collectors.toSet());
  }

  /** How closely the limits fit the entry, the more the closer; {@link #NOT} when they do not. */
  public int of(Limits limits, Draft entry) {
    Set<String> named = named(limits);
    if (!named.isEmpty() && !named.contains(entry.key)) return NOT;
    if (limits.except().tags().contains(entry.key) || excepted(limits, entry)) return NOT;
    if (named.isEmpty() && limits.otherTileOnly()) return NOT;
    int fit = named.isEmpty() ? 0 : TAG;
    if (limits.glass()) fit += GLASS;
    // A clause that names the tile means it, wherever else its places are and whatever it is
    // called.
    int places = named.isEmpty() ? places(limits, entry) : 0;
    int surfaces = surfaces(limits, entry);
    int with = with(limits.with(), entry);
    if (with == NOT && !named.isEmpty()) with = 0;
    if (places == NOT || surfaces == NOT || with == NOT) return NOT;
    return fit + places + surfaces + with;
  }

  public boolean namesTag(Limits limits) {
    return !named(limits).isEmpty();
  }

  /**
   * The tags of the set that the limits name; one like them that nobody specifies is a tile by
   * itself, whose words are no other's.
   */
  Set<String> named(Limits limits) {
    if (limits.tags().isEmpty()) return Set.of();
    return named.computeIfAbsent(
        limits.tags(),
        all ->
            all.stream()
                .map(Tags::key)
                .flatMap(key -> Tags.meant(key, tags).stream())
                .filter(this::isTag)
                .collect(Collectors.toSet()));
  }

  private boolean isTag(String key) {
    return tags.contains(key) || prefixes.contains(Tags.prefix(key));
  }

  private int places(Limits limits, Draft entry) {
    Set<String> exposures = entry.terms("location.exposure");
    // The tile of a pool is under water, whatever else the schedule says of it.
    if (entry.terms("location.surface").contains("pool")) {
      exposures = new HashSet<>(exposures);
      exposures.add("submerged");
    }
    if (!limits.except().places().isEmpty() && !exposures.isEmpty()) {
      boolean all =
          exposures.stream()
              .allMatch(
                  e ->
                      limits.except().places().stream()
                          .anyMatch(p -> !isRoom(p) && vocabulary.places().covers(p.kind(), e)));
      boolean room = limits.except().places().stream().anyMatch(p -> isRoom(p) && isIn(p, entry));
      if (all || room) return NOT;
    }
    if (limits.exposures().isEmpty() || exposures.isEmpty()) return 0;
    // A wall outside in the sun stands in the sun, and is no interior wall for it.
    boolean outside = exposures.stream().anyMatch(e -> vocabulary.places().covers(OUTSIDE, e));
    Set<String> theirs = exposures;
    boolean any =
        limits.exposures().stream()
            .filter(p -> !outside || !p.kind().equals(INSIDE))
            .anyMatch(
                p ->
                    isRoom(p)
                        ? isIn(p, entry)
                        : theirs.stream().anyMatch(e -> vocabulary.places().covers(p.kind(), e)));
    return any || limits.exposures().stream().anyMatch(p -> entry.isIn(p.toString()))
        ? CONDITION
        : NOT;
  }

  /** True for the lobby where a schedule has one; else it stands for all places of its kind. */
  private boolean isRoom(PlaceLimit place) {
    String room = place.room();
    return !room.isEmpty()
        && known.computeIfAbsent(
            room, name -> rooms.stream().anyMatch(r -> r.containsAll(Draft.roomWords(name))));
  }

  /** A tile whose room nobody names is held against the kind of place. */
  private boolean isIn(PlaceLimit place, Draft entry) {
    if (entry.hasRoom()) return entry.isIn(place.room());
    return entry.terms("location.exposure").stream()
        .anyMatch(e -> vocabulary.places().covers(place.kind(), e));
  }

  /** True when the surface or a property of the entry is left out. */
  private static boolean excepted(Limits limits, Draft entry) {
    if (limits.except().isEmpty()) return false;
    return OF_THE_ENTRY.stream()
        .map(entry::terms)
        .anyMatch(terms -> !terms.isEmpty() && limits.except().covers(terms));
  }

  private int surfaces(Limits limits, Draft entry) {
    Set<String> surfaces = entry.terms("location.surface");
    // "Pool, walls below water" is a wall; a pool by itself is walls and floor.
    boolean pool = surfaces.contains("pool");
    boolean all = pool && surfaces.size() == 1;
    if (limits.surfaces().isEmpty() || surfaces.isEmpty() || all) return 0;
    // A clause on floors and walls alike limits nothing.
    if (limits.surfaces().containsAll(Set.of("floor", "wall"))) return 0;
    if (surfaces.stream().noneMatch(limits.surfaces()::contains)) return NOT;
    // What is said of pools is closer to its walls than what is said of walls.
    return pool ? 0 : CONDITION;
  }

  private int with(Map<String, Set<String>> with, Draft entry) {
    int fit = 0;
    for (Map.Entry<String, Set<String>> condition : with.entrySet()) {
      Set<String> terms = entry.terms(condition.getKey());
      if (terms.stream().noneMatch(condition.getValue()::contains)) return NOT;
      fit += CONDITION;
    }
    return fit;
  }
}
