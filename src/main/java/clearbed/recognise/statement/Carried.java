package clearbed.recognise.statement;

import clearbed.recognise.vocabulary.Attribute;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * What the parts before have spoken of: "coverage: 100 percent behind clear tile; 95 percent
 * elsewhere". One text long.
 */
final class Carried {
  Attribute amount;

  /** What the figures of the part before were of, in order. */
  List<Attribute> row = List.of();

  boolean flatness;
  private final Map<String, List<Limits>> limits = new HashMap<>();

  /** A value of the attribute was limited so. */
  void note(String attribute, Limits its) {
    limits.computeIfAbsent(attribute, a -> new ArrayList<>()).add(its);
  }

  /** What values of the attribute were limited to, in order. */
  List<Limits> of(String attribute) {
    return limits.getOrDefault(attribute, List.of());
  }
}
