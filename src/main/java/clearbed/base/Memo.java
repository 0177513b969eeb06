package clearbed.base;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Bounded, thread-safe memo of results that depend on their key alone; of two generations, the
 * older is forgotten as a whole.
 *
 * <p>Other than by {@link Map#computeIfAbsent}, a result may be asked for while another is
 * computed.
 *
 * @param <K> a text, and what else the result depends on
 */
public final class Memo<K, V> {
  /** Entries of each generation; with texts of usual length both take a few megabytes. */
  private static final int MOST = 4_000;

  /** In characters; of a longer text nothing is kept. */
  private static final int LONGEST_TEXT = 500;

  private final Function<K, String> text;
  private volatile Map<K, V> young = new ConcurrentHashMap<>();
  private volatile Map<K, V> old = Map.of();

  /**
   * @param text of a key
   */
  public Memo(Function<K, String> text) {
    this.text = text;
  }

  /** A memo of results that depend on a text and nothing else. */
  public static <V> Memo<String, V> ofTexts() {
    return new Memo<>(text -> text);
  }

  /**
   * The result for a key, computed when it is not known.
   *
   * @param compute never gives null
   */
  public V get(K key, Supplier<V> compute) {
    if (text.apply(key).length() > LONGEST_TEXT) return compute.get();
    V known = young.get(key);
    if (known != null) return known;
    known = old.get(key);
    if (known == null) known = compute.get();
    if (young.size() >= MOST) age();
    young.put(key, known);
    return known;
  }

  private synchronized void age() {
    if (young.size() < MOST) return;
    old = young;
    young = new ConcurrentHashMap<>();
  }
}
