package clearbed.resolve;

import clearbed.model.Content;
import clearbed.model.Origin;
import clearbed.model.Scope;
import clearbed.model.Value;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** An entry while its values are being gathered. */
final class Draft {
  final String tag;
  final String key;
  Origin origin;
  private int weight = -1;
  private final Map<String, Set<String>> terms = new HashMap<>();
  private final Set<String> said = new HashSet<>();
  private final Set<Twin> twins = new HashSet<>();
  final Map<String, Origin> blanks = new LinkedHashMap<>();
  final List<Origin> places = new ArrayList<>();
  final List<Value> values = new ArrayList<>();
  boolean glass;
  boolean scheduled;
  String evidence = "";

  Draft(String tag, String key, Origin origin) {
    this.tag = tag;
    this.key = key;
    this.origin = origin;
  }

  /** The row that says most of a tile is where people look for it. */
  void scheduledAt(Origin row, boolean decided, int statements) {
    int now = statements + (decided ? 1000 : 0);
    if (now > weight) {
      weight = now;
      origin = row;
    }
  }

  Set<String> terms(String attribute) {
    return new LinkedHashSet<>(terms.getOrDefault(attribute, Set.of()));
  }

  boolean says(String attribute) {
    return said.contains(attribute);
  }

  private record Twin(
      String attribute, Content content, boolean excluded, Scope scope, Origin origin) {}

  void add(Value value) {
    String attribute = value.attribute();
    boolean excluded = value.excluded();
    Twin twin = new Twin(attribute, value.content(), excluded, value.scope(), value.origin());
    if (!twins.add(twin)) return;
    values.add(value);
    if (excluded) return;
    if (!value.open()) said.add(attribute);
    if (value.content() instanceof Content.Term term) {
      terms.computeIfAbsent(attribute, key -> new LinkedHashSet<>()).add(term.text());
    }
  }

  Value derived(String attribute, String term, Value from) {
    return new Value(
        attribute, new Content.Term(term), false, from.asWritten(), from.origin(), Scope.ENTRY);
  }
}
