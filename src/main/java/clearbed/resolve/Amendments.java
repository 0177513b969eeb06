package clearbed.resolve;

import clearbed.model.Scope;
import clearbed.model.Value;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * What an addendum or a revision says of a tile takes the place of what earlier documents say of
 * it. Documents are known as such by their names; what they replace stays in sight as a general
 * value.
 */
final class Amendments {
  private static final Pattern AMENDS =
      Pattern.compile(
          "(?:^|[^\\p{L}])(?:addend(?:um|a)|bulletin|revision|amendment)(?:[^\\p{L}]|$)",
          Pattern.CASE_INSENSITIVE);

  private Amendments() {}

  static List<Value> applied(List<Value> values) {
    Map<String, Boolean> known = new HashMap<>();
    Predicate<Value> amends =
        v -> known.computeIfAbsent(v.origin().document(), Amendments::isAmendment);
    Set<String> amended =
        values.stream()
            .filter(v -> v.scope() == Scope.ENTRY && amends.test(v))
            .map(Value::attribute)
            .filter(attribute -> !attribute.startsWith("location."))
            .collect(Collectors.toSet());
    if (amended.isEmpty()) return values;
    return values.stream()
        .map(v -> replaced(v, amended) && !amends.test(v) ? general(v) : v)
        .toList();
  }

  private static boolean replaced(Value v, Set<String> amended) {
    return amended.contains(v.attribute()) && v.scope() == Scope.ENTRY;
  }

  private static boolean isAmendment(String document) {
    return AMENDS.matcher(document.substring(document.lastIndexOf('/') + 1)).find();
  }

  private static Value general(Value v) {
    return new Value(
        v.attribute(), v.content(), v.excluded(), v.asWritten(), v.origin(), Scope.GENERAL, false);
  }
}
