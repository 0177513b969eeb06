package clearbed.resolve;

import clearbed.model.Content;
import clearbed.model.Origin;
import clearbed.model.Scope;
import clearbed.model.Value;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** An entry while its values are being gathered. */
final class Draft {
  final String tag;
  final String key;
  Origin origin;
  private int weight = -1;
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
    return values.stream()
        .filter(
            v ->
                v.attribute().equals(attribute)
                    && !v.excluded()
                    && v.content() instanceof Content.Term)
        .map(v -> v.content().text())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  boolean says(String attribute) {
    return values.stream()
        .anyMatch(v -> v.attribute().equals(attribute) && !v.excluded() && !v.open());
  }

  void add(Value value) {
    boolean twin =
        values.stream()
            .anyMatch(
                v ->
                    v.attribute().equals(value.attribute())
                        && v.content().equals(value.content())
                        && v.excluded() == value.excluded()
                        && v.scope() == value.scope()
                        && v.origin().equals(value.origin()));
    if (!twin) values.add(value);
  }

  Value derived(String attribute, String term, Value from) {
    return new Value(
        attribute, new Content.Term(term), false, from.asWritten(), from.origin(), Scope.ENTRY);
  }
}
