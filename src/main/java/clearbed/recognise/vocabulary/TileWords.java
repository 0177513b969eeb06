package clearbed.recognise.vocabulary;

import java.util.regex.Pattern;

/**
 * Whether words are about tile at all. Every paragraph of every letter is asked: the patterns begin
 * with a letter, as to try for the beginning of a word at every place takes long.
 */
public final class TileWords {
  private static final Pattern TILE =
      Pattern.compile("[tm](?<!\\w.)(?:iles?|iling|osaics?)\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern TILE_WORK =
      Pattern.compile(
          "[tmg](?<!\\w.)(?:iles?|iling|osaics?|rout\\w*|esserae)\\b", Pattern.CASE_INSENSITIVE);

  private TileWords() {}

  /** True when the text speaks of tile. */
  public static boolean tile(String text) {
    return TILE.matcher(text).find();
  }

  /** True when the text speaks of tile or of its grout. */
  public static boolean tileWork(String text) {
    return TILE_WORK.matcher(text).find();
  }
}
