package clearbed.model.value;

import clearbed.model.document.Origin;
import clearbed.model.document.Placed;
import clearbed.model.document.ThinList;
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
 * @param superseded values that a later document took out
 * @param blanks empty schedule cells where a value was to be expected, by attribute
 */
public record Entry(
    String tag,
    boolean glass,
    String evidence,
    Origin origin,
    List<Origin> places,
    List<Value> values,
    List<Value> superseded,
    Map<String, Origin> blanks) {
  private static final int NOT_STATED = Integer.MAX_VALUE;
  private static final int NOT_UNDERSTOOD = 100;

  public Entry {
    places = List.copyOf(places);
    values = ThinList.copyOf(values);
    superseded = List.copyOf(superseded);
    blanks = Map.copyOf(blanks);
  }

  public Entry(
      String tag,
      boolean glass,
      String evidence,
      Origin origin,
      List<Origin> places,
      List<Value> values) {
    this(tag, glass, evidence, origin, places, values, List.of(), Map.of());
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
   * Values that stand in cells.
   *
   * @param test is given values that may be without their cell
   */
  public List<Value> valuesInCells(Predicate<Value> test) {
    if (values instanceof Placed<Value> placed) return placed.inCells(test);
    return values.stream().filter(v -> v.origin().cell() != null && test.test(v)).toList();
  }

  /**
   * Values of one attribute that state or require something at the closest place that says
   * anything: entry before article before general, and within a scope words on glass tile before
   * words on tile at large. Figures there that were not understood are {@link #unread}.
   */
  public List<Value> governing(String attribute) {
    return closest(attribute, value -> !(value.content() instanceof Content.NotUnderstood));
  }

  /**
   * Figures of one attribute at the closest place that were not understood: whatever else governs,
   * they may say otherwise.
   */
  public List<Value> unread(String attribute) {
    return closest(attribute, value -> value.content() instanceof Content.NotUnderstood);
  }

  private List<Value> closest(String attribute, Predicate<Value> test) {
    int[] closest = {NOT_STATED};
    values(
        attribute,
        value -> {
          closest[0] = Math.min(closest[0], distance(value));
          return false;
        });
    if (closest[0] == NOT_STATED) return List.of();
    return values(attribute, value -> distance(value) == closest[0] && test.test(value));
  }

  /** How far a value is from governing, the less the closer. */
  private static int distance(Value value) {
    if (value.excluded() || value.open()) return NOT_STATED;
    int distance = value.scope().ordinal() * 2 + (value.specific() ? 0 : 1);
    // Words that were not understood ("modified thin-set") do not displace a standard or figure
    // stated elsewhere.
    return value.content() instanceof Content.Words ? NOT_UNDERSTOOD + distance : distance;
  }
}
