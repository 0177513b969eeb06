package clearbed.resolve.entry;

import clearbed.model.value.Value;
import clearbed.recognise.Facts;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.limit.Statement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.BiPredicate;
import java.util.function.Consumer;

/**
 * What the clauses of a set state, sorted by the tags they name: an entry need not look at what is
 * said of others.
 */
public final class Sayings {
  /**
   * @param at in reading order
   * @param value that it gives to every entry it speaks for
   */
  public record Saying(int at, Statement statement, Value value) {}

  private final List<Saying> general = new ArrayList<>();
  private final Map<String, List<Saying>> byTag = new HashMap<>();

  /**
   * @param owned keys of the entries that clauses speak of alone, by their title
   * @param taken amendments whose words go to the entries that they change
   * @param followed what a clause states as said of the tiles that it is for; null where of none
   * @param mayState whether a section may state a thing without naming a tag
   * @param value of a statement in a section
   */
  public Sayings(
      List<Facts> facts,
      Reach reach,
      Map<Clause, String> owned,
      Set<Clause> taken,
      BiFunction<Clause, Statement, Statement> followed,
      BiPredicate<Section, Statement> mayState,
      BiFunction<Section, Statement, Value> value) {
    int at = 0;
    for (Facts f : facts) {
      for (Section section : f.sections()) {
        for (Clause clause : section.clauses()) {
          if (taken.contains(clause)) continue;
          for (Statement said : clause.statements()) {
            Statement s = said.attribute().equals("text") ? null : followed.apply(clause, said);
            if (s == null) continue;
            String owner = owned.get(clause);
            Set<String> tags = owner == null ? reach.named(s.limits()) : Set.of(owner);
            if (tags.isEmpty() && !mayState.test(section, s)) continue;
            Saying saying = new Saying(at++, s, value.apply(section, s));
            for (String tag : tags) byTag.computeIfAbsent(tag, t -> new ArrayList<>()).add(saying);
            if (tags.isEmpty()) general.add(saying);
          }
        }
      }
    }
  }

  /** Gives the value of each, of some more than once. */
  public void values(Consumer<Value> taker) {
    general.forEach(saying -> taker.accept(saying.value));
    byTag.values().forEach(own -> own.forEach(saying -> taker.accept(saying.value)));
  }

  /** What may be said of an entry, in reading order. */
  public List<Saying> of(String key) {
    List<Saying> own = byTag.getOrDefault(key, List.of());
    if (own.isEmpty()) return general;
    List<Saying> out = new ArrayList<>(general.size() + own.size());
    int next = 0;
    for (Saying saying : general) {
      while (next < own.size() && own.get(next).at < saying.at) out.add(own.get(next++));
      out.add(saying);
    }
    out.addAll(own.subList(next, own.size()));
    return out;
  }
}
