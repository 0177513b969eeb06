package clearbed.check.rules;

import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Whether a rule applies to an entry: yes, no, or not to be said until an attribute is known. */
public final class Applicability {

  /** Yes, no, or unknown with the attribute that would tell. */
  public record Answer(Boolean applies, String why) {}

  private final Vocabulary vocabulary;

  public Applicability(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  public Answer of(Rule rule, Entry entry) {
    Answer when = rule.when().isEmpty() ? new Answer(true, "") : any(rule.when(), entry);
    if (!Boolean.TRUE.equals(when.applies()) || rule.unless().isEmpty()) return when;
    Answer unless = any(rule.unless(), entry);
    return Boolean.TRUE.equals(unless.applies()) ? new Answer(false, unless.why()) : when;
  }

  private Answer any(List<Map<String, List<String>>> ways, Entry entry) {
    Answer best = null;
    for (Map<String, List<String>> way : ways) {
      Answer answer = all(way, entry);
      if (Boolean.TRUE.equals(answer.applies())) return answer;
      if (best == null || answer.applies() == null) best = answer;
    }
    return best;
  }

  private Answer all(Map<String, List<String>> conditions, Entry entry) {
    Answer unknown = null;
    String why = "";
    for (Map.Entry<String, List<String>> c : conditions.entrySet()) {
      Set<String> said = said(entry, c.getKey());
      String label = vocabulary.label(c.getKey()).toLowerCase(Locale.ROOT);
      boolean unread = !entry.unread(c.getKey()).isEmpty();
      if (c.getValue().contains("stated")) {
        if (said.isEmpty() && !unread) return new Answer(false, "no " + label + " stated");
      } else if (said.isEmpty()) {
        String how = unread ? "understood" : "stated";
        unknown = new Answer(null, "depends on " + label + ", which is not " + how);
      } else if (said.stream().noneMatch(c.getValue()::contains)) {
        return new Answer(false, label + ": " + String.join(", ", said));
      } else {
        why = label + ": " + String.join(", ", said);
      }
    }
    return unknown != null ? unknown : new Answer(true, why);
  }

  private static Set<String> said(Entry entry, String attribute) {
    // Exposures add up over the places of a tile; any other attribute is what governs.
    List<Value> values =
        attribute.startsWith("location.") ? entry.values(attribute) : entry.governing(attribute);
    return values.stream()
        .filter(v -> !v.excluded() && !v.open())
        .filter(
            v ->
                !(v.content() instanceof Content.Words)
                    && !(v.content() instanceof Content.Absent)
                    && !(v.content() instanceof Content.NotUnderstood))
        .map(v -> v.content().text())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }
}
