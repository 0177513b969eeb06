package clearbed.check.rules;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The figures that an entry states, ready for the arithmetic. */
public final class Stated {
  private static final int MOST = 3;

  private final Entry entry;

  public Stated(Entry entry) {
    this.entry = entry;
  }

  /** The governing figure; of several the smallest. */
  public Optional<Given> smallest(String attribute, Dimension dimension) {
    return figure(
        attribute, dimension, Comparator.comparing(v -> ((Content.Amount) v.content()).low()));
  }

  /**
   * The same where an upper bound alone ({@code not over 1/2 in}) leaves the lower end open: it
   * then begins at the floor.
   */
  public Optional<Given> smallest(String attribute, Dimension dimension, Quantity floor) {
    return smallest(attribute, dimension)
        .map(
            given ->
                boundAbove(attribute, given) && floor.compareTo(given.low()) < 0
                    ? new Given(
                        new Interval(floor, given.high()),
                        given.origin(),
                        given.assumed(),
                        given.basis())
                    : given);
  }

  private boolean boundAbove(String attribute, Given given) {
    return entry.governing(attribute).stream()
        .anyMatch(
            v ->
                v.content() instanceof Content.Amount a
                    && (a.bound() == Bound.AT_MOST || a.bound() == Bound.BELOW)
                    && a.low().equals(given.low())
                    && v.origin().equals(given.origin()));
  }

  /** The governing figure; of several the largest. */
  public Optional<Given> largest(String attribute, Dimension dimension) {
    Comparator<Value> byUpperEnd = Comparator.comparing(v -> ((Content.Amount) v.content()).high());
    return figure(attribute, dimension, byUpperEnd.reversed());
  }

  private Optional<Given> figure(String attribute, Dimension dimension, Comparator<Value> order) {
    // Of equal figures, the one in the schedule that says most of the tile.
    Comparator<Value> home =
        Comparator.comparing(v -> v.origin().document().equals(entry.origin().document()) ? 0 : 1);
    return entry.governing(attribute).stream()
        .filter(v -> v.content() instanceof Content.Amount a && isOf(a, dimension))
        .min(order.thenComparing(home))
        .map(v -> given(v, Interval.of((Content.Amount) v.content())));
  }

  private static boolean isOf(Content.Amount amount, Dimension dimension) {
    return amount.low().unit().dimension() == dimension && amount.low().number() >= 0;
  }

  /** Figures of an attribute that were not understood, with their places; empty when all were. */
  public static String unread(Entry entry, String attribute) {
    return entry.unread(attribute).stream()
        .map(v -> v.content().text() + " (" + v.origin().place() + ")")
        .distinct()
        .limit(MOST)
        .collect(Collectors.joining("; "));
  }

  /** What is assumed for an attribute, with the figure that was not understood. */
  public static Given noted(Entry entry, String attribute, Given assumed) {
    String unread = unread(entry, attribute);
    return unread.isEmpty()
        ? assumed
        : Given.assumed(assumed.amount(), assumed.basis() + "; what is stated is " + unread);
  }

  public static Given given(Value v, Interval amount) {
    return new Given(amount, v.origin(), v.scope() == Scope.ASSUMED, v.asWritten());
  }

  /** What stands open where a value belongs: undecided until that is settled; else missing. */
  public Judgement openOrMissing(String attribute) {
    List<Value> open = entry.values(attribute).stream().filter(Value::open).toList();
    return open.isEmpty()
        ? new Judgement.Missing()
        : new Judgement.Undecided(
            "left open: " + open.get(0).content().text(), open.get(0).origin());
  }
}
