package clearbed.recognise;

import java.util.Locale;

/**
 * Which runs of three characters a text holds: tells at once of most words that they are not in it.
 * A text is asked for hundreds of phrases in a row, hence what was made of the last one is kept.
 */
final class Grams {
  private static final int BITS = 2048;

  private final ThreadLocal<Text> last = new ThreadLocal<>();

  /** The runs of a text, in lower case. */
  Text of(String text) {
    Text known = last.get();
    if (known != null && known.text == text) return known;
    Text made = new Text(text);
    last.set(made);
    return made;
  }

  /** The runs of a word that are looked for: the first, the last and one between. */
  static int[] ofWord(String word) {
    int runs = word.length() - 2;
    if (runs < 1) return new int[0];
    return new int[] {hash(word, 0), hash(word, runs - 1), hash(word, runs / 2)};
  }

  private static int hash(String text, int at) {
    int mixed = (text.charAt(at) * 31 + text.charAt(at + 1)) * 31 + text.charAt(at + 2);
    return (mixed ^ mixed >>> 11) & BITS - 1;
  }

  /** What a text holds. */
  static final class Text {
    private final String text;
    final String lower;
    private final long[] held = new long[BITS / 64];

    private Text(String text) {
      this.text = text;
      this.lower = text.toLowerCase(Locale.ROOT);
      for (int at = lower.length() - 3; at >= 0; at--) {
        int hash = hash(lower, at);
        held[hash >> 6] |= 1L << hash;
      }
    }

    /** False when a word of these runs cannot be in it. */
    boolean mayHold(int[] runs) {
      for (int run : runs) {
        if ((held[run >> 6] & 1L << run) == 0) return false;
      }
      return true;
    }
  }
}
