package clearbed.check.rules;

import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What a layer changes of the checks below it, in words for the people who read the findings. */
final class LayerChanges {
  private LayerChanges() {}

  /**
   * One line for each check that the layer names, in its order.
   *
   * @param below the checks before the layer is laid
   */
  static List<String> of(ConfigFile layer, Map<String, LayeredCheck> below) {
    List<String> lines = new ArrayList<>();
    for (ConfigNode check : layer.root().get("checks").items()) {
      String id = check.get("id").text();
      String what = below.containsKey(id) ? change(check, below.get(id)) : "added";
      if (!what.isEmpty()) lines.add(id + ": " + what + " (" + layer.name() + ")");
    }
    return lines;
  }

  private static String change(ConfigNode now, LayeredCheck before) {
    List<String> words = new ArrayList<>();
    List<String> others = new ArrayList<>();
    for (ConfigNode key : now.entries()) {
      switch (key.key()) {
        case "id" -> {}
        case "off" -> words.add(key.isTrue() ? "switched off" : "switched on");
        case "level" -> words.add("level " + key.text() + " in place of " + before.text("level"));
        default -> others.add(key.key());
      }
    }
    if (!others.isEmpty()) words.add("own " + String.join(", ", others));
    return String.join("; ", words);
  }
}
