package clearbed.model;

import java.util.List;
import java.util.Map;
import java.util.function.Predicate;

/**
 * One tile of the schedule, by tag, with all that the documents say of it.
 *
 * @param tag as written, or a description where the documents give none
 * @param glass true for glass tile
 * @param evidence the words that decided whether it is glass
 * @param origin of the tag, in the schedule that says most of it
 * @param places every place that schedules this tag
 * @param values in the order of their attributes, closest scope first, then by place
 * @param blanks empty schedule cells where a value was to be expected, by attribute
 */
public record Entry(
    String tag,
    boolean glass,
    String evidence,
    Origin origin,
    List<Origin> places,
    List<Value> values,
    Map<String, Origin> blanks) {
  public Entry {
    places = List.copyOf(places);
    values = ThinList.copyOf(values);
    blanks = Map.copyOf(blanks);
  }

  public Entry(
      String tag,
      boolean glass,
      String evidence,
      Origin origin,
      List<Origin> places,
      List<Value> values) {
    this(tag, glass, evidence, origin, places, values, Map.of());
  }

  /** Values of one attribute, closest scope first. */
  public List<Value> values(String attribute) {
    return values(attribute, value -> true);
  }

  private List<Value> values(String attribute, Predicate<Value> test) {
    if (values instanceof Placed<Value> placed) {
      return placed.named(attribute, Value::attribute, test);
    }
    return values.stream().filter(v -> v.attribute().equals(attribute) && test.test(v)).toList();
  }

  /**
   * Values of one attribute that state or require something at the closest place that says
   * anything: entry before article before general, and within a scope words on glass tile before
   * words on tile at large.
   */
  public List<Value> governing(String attribute) {
    List<Value> stated = values(attribute, value -> !value.excluded() && !value.open());
    // Words that were not understood ("modified thin-set") do not displace a standard or figure
    // stated elsewhere.
    List<Value> understood =
        stated.stream().filter(value -> !(value.content() instanceof Content.Words)).toList();
    if (!understood.isEmpty()) stated = understood;
    if (stated.isEmpty()) return List.of();
    Scope closest = stated.stream().map(Value::scope).min(Scope::compareTo).orElseThrow();
    List<Value> near = stated.stream().filter(value -> value.scope() == closest).toList();
    List<Value> specific = near.stream().filter(Value::specific).toList();
    return specific.isEmpty() ? near : specific;
  }
}
