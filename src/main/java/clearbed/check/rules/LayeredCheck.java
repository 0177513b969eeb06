package clearbed.check.rules;

import clearbed.base.config.ConfigNode;
import java.util.HashMap;
import java.util.Map;

/** A check as the rule files give it: of each key the last file that has it. */
final class LayeredCheck {
  private final Map<String, ConfigNode> keys = new HashMap<>();
  private ConfigNode last;

  void lay(ConfigNode check) {
    last = check;
    for (ConfigNode entry : check.entries()) keys.put(entry.key(), entry);
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
}
