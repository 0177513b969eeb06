package clearbed.model;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * What was worked out of texts lately, for schedules and issues say the same words over and over.
 * May be asked by several threads; what is kept depends on the key alone.
 *
 * @param <K> a text and what else the answer depends on
 */
public final class Lately<K, V> {
  /** Of each generation; with texts of usual length both take a few megabytes. */
  private static final int MOST = 4_000;

  private static final int LONGEST_TEXT = 500;

  private volatile Map<K, V> young = new ConcurrentHashMap<>();
  private volatile Map<K, V> old = Map.of();

  /**
   * The answer for a key, worked out when it is not known.
   *
   * @param text of the key; for a long one nothing is kept
   * @param answer never null
   */
  public V of(K key, String text, Supplier<V> answer) {
    if (text.length() > LONGEST_TEXT) return answer.get();
    V known = young.get(key);
    if (known != null) return known;
    known = old.get(key);
    if (known == null) known = answer.get();
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
