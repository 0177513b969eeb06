package clearbed.recognise.statement.limit;

import java.util.Comparator;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * A place that something is limited to, or left out of.
 *
 * @param kind a term of exposure, or a word of the name of a room
 * @param room as written but for capitals, where that tells it from others of its kind; else empty
 */
public record PlaceLimit(String kind, String room) implements Comparable<PlaceLimit> {
  /** Of rooms that stay dry the kind says little: a lobby is no corridor. */
  private static final Set<String> BY_NAME = Set.of("dry", "damp");

  /** Words for all places of a kind, which name no room. */
  private static final Pattern GENERAL =
      Pattern.compile(
          "\\b(?:dry|damp|interior|internal|indoors?|inside|exterior|external|outdoors?|outside|wet|humid|sun|heat|frost|freez|steam\\b|W ?0)|water|moisture|immers|submer",
          Pattern.CASE_INSENSITIVE);

  private static final Comparator<PlaceLimit> ORDER =
      Comparator.comparing(PlaceLimit::kind).thenComparing(PlaceLimit::room);

  /** All places of a kind. */
  static PlaceLimit of(String kind) {
    return new PlaceLimit(kind, "");
  }

  /**
   * @param name of the place, as written
   */
  static PlaceLimit named(String kind, String name) {
    String room = name.toLowerCase(Locale.ROOT);
    return BY_NAME.contains(kind) && namesRoom(room) ? new PlaceLimit(kind, room) : of(kind);
  }

  /** False for "wet areas", "interior" and other words for all places of a kind. */
  static boolean namesRoom(String place) {
    return !GENERAL.matcher(place).find();
  }

  @Override
  public int compareTo(PlaceLimit other) {
    return ORDER.compare(this, other);
  }

  /** {@code dry (lobby)}. */
  @Override
  public String toString() {
    return room.isEmpty() ? kind : kind + " (" + room + ")";
  }
}
