package clearbed.docs;

import clearbed.check.rules.Rule;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Says in words when a check applies. */
record Conditions(Vocabulary vocabulary) {

  String of(Rule rule) {
    String when = rule.when().isEmpty() ? always(rule) : "where " + words(rule.when());
    return rule.unless().isEmpty() ? when : when + "; not where " + words(rule.unless());
  }

  private static String always(Rule rule) {
    return rule.ofTheSet() ? "to the whole set" : "to every glass tile";
  }

  private String words(List<Map<String, List<String>>> ways) {
    return ways.stream().map(this::way).collect(Collectors.joining("; or where "));
  }

  private String way(Map<String, List<String>> way) {
    return way.entrySet().stream()
        .map(each -> label(each.getKey()) + " is " + String.join(" or ", each.getValue()))
        .collect(Collectors.joining(" and "));
  }

  private String label(String attribute) {
    return vocabulary.label(attribute).toLowerCase(Locale.ROOT);
  }
}
