package clearbed.check.computed.set;

import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.TileWords;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * The letters that marks of glass tile begin with in the schedules of a set: "GL" of GL1 to GL8. By
 * them a mark that no schedule has is known for one of a glass tile, whatever is said of it.
 */
final class GlassLetters {
  /** So many tiles of the same letters are no chance. */
  private static final int SEVERAL = 2;

  /** Right before a mark, in characters. */
  private static final int NEAR = 12;

  private final Set<String> several = new HashSet<>();
  private final Set<String> only = new HashSet<>();
  private final Set<String> mostly = new HashSet<>();

  /**
   * @param glass keys of the glass tiles
   * @param rows keys of whatever the schedules have
   */
  GlassLetters(Set<String> glass, Set<String> rows) {
    Map<String, Integer> tiles = new HashMap<>();
    Map<String, Integer> others = new HashMap<>();
    for (String key : rows)
      (glass.contains(key) ? tiles : others).merge(Tags.prefix(key), 1, Integer::sum);
    tiles.remove("");
    tiles.forEach(
        (letters, times) -> {
          if (times < SEVERAL) return;
          several.add(letters);
          if (!others.containsKey(letters)) only.add(letters);
          if (times > others.getOrDefault(letters, 0)) mostly.add(letters);
        });
  }

  boolean isEmpty() {
    return several.isEmpty();
  }

  /** True of a mark with letters that several glass tiles have. */
  boolean several(String key) {
    return several.contains(Tags.prefix(key));
  }

  /** True of a mark with letters that nothing else has. */
  boolean onlyGlass(String key) {
    return only.contains(Tags.prefix(key));
  }

  /**
   * "The bench front: tile with PW-4" is one of them where most of the letters are glass tiles;
   * "coping PW-8" need be none.
   */
  boolean areOfTileIn(String key, String text) {
    if (!mostly.contains(Tags.prefix(key))) return false;
    String plain = PlainText.of(text);
    int at = plain.indexOf(Tags.asWritten(key, plain));
    return at > 0 && TileWords.tile(plain.substring(Math.max(0, at - NEAR), at));
  }
}
