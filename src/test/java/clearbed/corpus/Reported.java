package clearbed.corpus;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * A finding as the tool reported it.
 *
 * @param tags entries it names; empty for a finding about the set
 */
record Reported(String check, Set<String> tags, boolean loud, String message) {
  Reported {
    tags = Set.copyOf(tags);
  }

  /** Findings of a findings file, those that a rule layer suppressed left out. */
  static List<Reported> of(JsonNode json) {
    List<Reported> out = new ArrayList<>();
    for (JsonNode finding : json.path("findings")) {
      if (finding.path("suppressed").asText("").isEmpty()) out.add(one(finding));
    }
    return out;
  }

  private static Reported one(JsonNode finding) {
    Set<String> tags = new LinkedHashSet<>();
    if (finding.hasNonNull("tag")) tags.add(finding.path("tag").asText());
    finding.path("tags").forEach(tag -> tags.add(tag.asText()));
    tags.remove("");
    boolean loud = !finding.path("level").asText().equals("note");
    return new Reported(
        finding.path("check").asText(), tags, loud, finding.path("message").asText());
  }

  /** One key for each entry named, so that a finding that gained an entry counts as new. */
  Set<String> keys() {
    Set<String> keys = new LinkedHashSet<>();
    if (tags.isEmpty()) keys.add(check + " " + message);
    for (String tag : tags) keys.add(check + " " + tag);
    return keys;
  }
}
