package clearbed.check.rules;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.ProjectFact;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * What a rule file assumes where neither a document nor a project fact states it. It goes into the
 * arithmetic, flagged, and never counts as stated.
 */
public final class Assumptions {
  /** The attributes that the arithmetic takes and no check asks to be stated. */
  static final Set<String> ATTRIBUTES = Set.of("location.temperatureRange", "tile.expansion");

  private final List<ProjectFact> all;
  private final Entry entry;

  public Assumptions(List<ProjectFact> all, Entry entry) {
    this.all = all;
    this.entry = entry;
  }

  /** The assumption for the entry; of several the one that stands last. */
  public Optional<Given> of(String attribute, Dimension dimension) {
    return all.stream()
        .filter(one -> one.attribute().equals(attribute) && holds(one))
        .filter(one -> one.content() instanceof Content.Amount a && isOf(a, dimension))
        .reduce((earlier, later) -> later)
        .map(
            one ->
                Given.assumed(
                    Interval.of((Content.Amount) one.content()),
                    one.words() + " (" + one.file() + ")"));
  }

  private static boolean isOf(Content.Amount amount, Dimension dimension) {
    return amount.low().unit().dimension() == dimension && amount.low().number() > 0;
  }

  private boolean holds(ProjectFact one) {
    return (one.tags().isEmpty() || one.tags().stream().anyMatch(entry.tag()::equalsIgnoreCase))
        && (one.exposures().isEmpty()
            || texts("location.exposure").stream()
                .anyMatch(e -> one.exposures().stream().anyMatch(p -> covers(p, e))))
        && (one.rooms().isEmpty()
            || texts("location.room").stream()
                .anyMatch(r -> one.rooms().stream().anyMatch(word -> r.contains(lower(word)))));
  }

  /** {@code exterior} speaks for {@code exterior-freeze} too. */
  private static boolean covers(String named, String exposure) {
    return exposure.equals(named) || exposure.startsWith(named + "-");
  }

  private List<String> texts(String attribute) {
    return entry.values(attribute).stream()
        .filter(v -> !v.excluded())
        .map(Value::content)
        .map(content -> lower(content.text()))
        .toList();
  }

  private static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }
}
