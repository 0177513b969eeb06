package clearbed.check.rules;

import clearbed.base.config.ConfigNode;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** A check as the rule files give it: of each key the last file that has it. */
final class LayeredCheck {
  private static final String EXPECT = "expect";

  private final Map<String, ConfigNode> keys = new HashMap<>();
  private final Map<String, Integer> laid = new HashMap<>();
  private final List<Expected> expected = new ArrayList<>();
  private ConfigNode last;
  private int layers;

  /**
   * What is expected, as written.
   *
   * @param layer that says it, from 1
   */
  record Expected(int layer, String kind, String text) {}

  void lay(ConfigNode check) {
    last = check;
    layers++;
    for (ConfigNode entry : check.entries()) lay(entry.key(), entry);
  }

  private void lay(String key, ConfigNode entry) {
    keys.put(key, entry);
    laid.put(key, layers);
    if (!key.equals(EXPECT) || entry.entries().isEmpty()) return;
    ConfigNode what = entry.entries().get(0);
    expected.add(new Expected(layers, what.key(), what.text()));
  }

  boolean has(String key) {
    return keys.containsKey(key);
  }

  ConfigNode get(String key) {
    return has(key) ? keys.get(key) : last.get(key);
  }

  /** On one line. */
  String text(String key) {
    return get(key).text().trim().replaceAll("\\s+", " ");
  }

  /** On one line, with the figure that is asked for now where it was written for one before. */
  String wording(String key) {
    String text = text(key);
    if (expected.size() < 2 || text.isEmpty()) return text;
    int since = laid.getOrDefault(key, 0);
    Expected before = expected.get(0);
    for (Expected each : expected) if (each.layer() <= since) before = each;
    Expected now = expected.get(expected.size() - 1);
    if (before == now) return text;
    LayerFigures figures = LayerFigures.of(before, now);
    return figures == null ? text : figures.in(text);
  }
}
