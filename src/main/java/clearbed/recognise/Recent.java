package clearbed.recognise;

import java.util.LinkedHashMap;
import java.util.Map;

/** What was asked for lately; bounded, since some columns never say a thing twice. */
final class Recent<K, V> extends LinkedHashMap<K, V> {
  private static final long serialVersionUID = 1L;
  private static final int MOST = 500;

  Recent() {
    super(16, 0.75f, true);
  }

  @Override
  protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
    return size() > MOST;
  }
}
