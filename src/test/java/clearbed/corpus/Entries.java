package clearbed.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Compares the entries that the tool found with those that a set has. */
final class Entries {
  private Entries() {}

  /** A line for each glass entry missed, and for each other entry taken for glass. */
  static List<String> wrong(DraftSet set, JsonNode json) {
    Set<String> glass = new TreeSet<>();
    for (JsonNode entry : json.path("entries")) {
      if (entry.path("glass").asBoolean()) glass.add(entry.path("tag").asText());
    }
    List<String> out = new ArrayList<>();
    for (String tag : set.glass()) {
      if (!glass.contains(tag)) out.add(set.name() + ": glass entry not found: " + tag);
    }
    for (String tag : glass) {
      if (!set.glass().contains(tag)) out.add(set.name() + ": taken for a glass entry: " + tag);
    }
    return out;
  }
}
