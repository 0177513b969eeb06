package clearbed.recognise.vocabulary.phrase;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Which words of the vocabulary a text holds, found in one pass over it. A text is asked for
 * hundreds of phrases in a row, and the cells of a row are gone through for one thing after the
 * other, hence what was found in the last few is kept.
 *
 * <p>Every word is filed under one of its runs of three characters. All words are to be numbered
 * before the first text is asked.
 */
public final class WordsHeld {
  private static final int RUN = 3;
  private static final int FILES = 8192;
  private static final int SMALL = 128;
  private static final int[] NONE = {};

  /** Texts kept; a power of two. */
  private static final int KEPT = 4096;

  /** In characters; of longer texts one is kept. */
  private static final int LONG = 2_000;

  private final Map<String, Integer> numbers = new HashMap<>();
  private final List<char[]> words = new ArrayList<>();

  /** Numbers of words too short to have a run, by their first characters. */
  private final int[][] small = new int[SMALL][];

  /** Number of the word of no characters, which every text holds; -1 where there is none. */
  private int empty = -1;

  /** By the hash of a run: numbers of words and, beside each, where in the word the run stands. */
  private final int[][] files = new int[FILES][];

  /**
   * By the hash of the text. Threads share it without a lock, as each document has threads of its
   * own: what is kept never changes, and what one overwrites is looked at again.
   */
  private final Text[] last = new Text[KEPT];

  /**
   * The number by which a word is asked for.
   *
   * @param word in lower case
   */
  int number(String word) {
    Integer known = numbers.get(word);
    if (known != null) return known;
    int number = words.size();
    numbers.put(word, number);
    words.add(word.toCharArray());
    if (word.isEmpty()) empty = number;
    else if (word.length() < RUN) fileSmall(word, number);
    else file(word, number);
    return number;
  }

  private void fileSmall(String word, int number) {
    int first = word.charAt(0) & SMALL - 1;
    int[] there = small[first] == null ? NONE : small[first];
    small[first] = Arrays.copyOf(there, there.length + 1);
    small[first][there.length] = number;
  }

  /** Under the run that fewest words are filed under yet. */
  private void file(String word, int number) {
    int best = 0;
    for (int at = 1; at <= word.length() - RUN; at++) {
      if (filed(word, at).length < filed(word, best).length) best = at;
    }
    int[] there = filed(word, best);
    int[] more = Arrays.copyOf(there, there.length + 2);
    more[there.length] = number;
    more[there.length + 1] = best;
    files[hash(word, best)] = more;
  }

  private int[] filed(String text, int at) {
    int[] there = files[hash(text, at)];
    return there == null ? NONE : there;
  }

  private static int hash(String text, int at) {
    return hash(text.charAt(at), text.charAt(at + 1), text.charAt(at + 2));
  }

  private static int hash(char first, char second, char third) {
    int mixed = (first * 31 + second) * 31 + third;
    return (mixed ^ mixed >>> 13) & FILES - 1;
  }

  /** What a text holds. */
  public Text in(String text) {
    int hash = text.length() > LONG ? 0 : text.hashCode();
    int at = (hash ^ hash >>> 16) & KEPT - 1;
    Text known = last[at];
    if (known != null && known.text.equals(text)) return known;
    Text now = new Text(text, held(text.toLowerCase(Locale.ROOT).toCharArray()));
    last[at] = now;
    return now;
  }

  private long[] held(char[] letters) {
    long[] held = new long[(words.size() + 63) / 64];
    for (int at = letters.length - RUN; at >= 0; at--) {
      int[] there = files[hash(letters[at], letters[at + 1], letters[at + 2])];
      if (there == null) continue;
      for (int i = 0; i < there.length; i += 2) {
        int word = there[i];
        if (stands(word, letters, at - there[i + 1])) held[word >> 6] |= 1L << word;
      }
    }
    if (empty >= 0) held[empty >> 6] |= 1L << empty;
    for (int at = letters.length - 1; at >= 0; at--) {
      int[] there = small[letters[at] & SMALL - 1];
      if (there == null) continue;
      for (int word : there) {
        if (stands(word, letters, at)) held[word >> 6] |= 1L << word;
      }
    }
    return held;
  }

  private boolean stands(int number, char[] letters, int from) {
    char[] word = words.get(number);
    int to = from + word.length;
    return from >= 0
        && to <= letters.length
        && Arrays.equals(word, 0, word.length, letters, from, to);
  }

  /** Several words, to be asked for at once. */
  static final class Some {
    private final int[] at;
    private final long[] bits;

    Some(IntStream numbers) {
      Map<Integer, Long> masks = new HashMap<>();
      numbers.forEach(n -> masks.merge(n >> 6, 1L << n, (a, b) -> a | b));
      at = masks.keySet().stream().mapToInt(i -> i).sorted().toArray();
      bits = Arrays.stream(at).mapToLong(masks::get).toArray();
    }
  }

  /** The words in a text. */
  public static final class Text {
    private final String text;
    private final long[] held;

    private Text(String text, long[] held) {
      this.text = text;
      this.held = held;
    }

    boolean holds(int word) {
      return (held[word >> 6] & 1L << word) != 0;
    }

    boolean holdsAny(Some words) {
      for (int i = 0; i < words.at.length; i++) {
        if ((held[words.at[i]] & words.bits[i]) != 0) return true;
      }
      return false;
    }
  }
}
