package clearbed.recognise.section.clause;

import clearbed.recognise.statement.limit.Statement;
import java.util.List;
import java.util.Set;

/**
 * What a clause changes of what earlier documents say.
 *
 * @param clause number of the clause that it changes, or empty
 * @param tags that it changes, by key; empty for all that say what it takes out
 * @param old what it takes out
 * @param now what it puts in
 * @param whole true when it takes out all that the clause, or the tags, say
 */
public record Amendment(
    String clause, Set<String> tags, List<Statement> old, List<Statement> now, boolean whole) {
  public static final Amendment NONE = new Amendment("", Set.of(), List.of(), List.of(), false);

  public Amendment {
    tags = Set.copyOf(tags);
    old = List.copyOf(old);
    now = List.copyOf(now);
  }

  /** Below the title of a tile a change that names none is of that tile. */
  public Amendment of(Set<String> above) {
    return tags.isEmpty() && !above.isEmpty() && changes()
        ? new Amendment(clause, above, old, now, whole)
        : this;
  }

  /** True when it changes something. */
  public boolean changes() {
    return whole || !old.isEmpty() || !now.isEmpty();
  }
}
