package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.Map;
import java.util.Set;

/** The parts of the work, by the words that name them. */
final class Families {
  /** Parts of the work that no word shows. */
  private static final Set<String> WORDLESS = Set.of("process", "location");

  private final Map<String, Phrases> byName;

  Families(ConfigNode families, ListReader words) throws ConfigException {
    this.byName = words.byName(families);
  }

  Map<String, Phrases> byName() {
    return byName;
  }

  /**
   * Part of the work that a text speaks of: the first named, and tile only where no other is, as
   * the tile is what mortar or grout are for. Empty when it speaks of none.
   */
  String of(String text) {
    String best = "";
    int at = Integer.MAX_VALUE;
    for (Map.Entry<String, Phrases> family : byName.entrySet()) {
      Phrases.Hit hit = family.getValue().first(text);
      if (hit == null || hit.start() >= at) continue;
      boolean tile = family.getKey().equals("tile");
      if (tile && !best.isEmpty()) continue;
      best = family.getKey();
      at = tile ? Integer.MAX_VALUE : hit.start();
    }
    return best;
  }

  /** Refuses the name of a family that there is not. */
  void require(ConfigNode name) throws ConfigException {
    if (!WORDLESS.contains(name.text()) && !byName.containsKey(name.text()))
      throw name.unknown(
          name.text(), "no family named " + name.text() + " in families.yaml", byName.keySet());
  }
}
