package clearbed.samples;

import java.util.List;
import java.util.Set;

/**
 * One heading, clause or table of an outline.
 *
 * @param depth 0 for a part, 1 for an article, 2 and deeper for clauses under it
 * @param labels what the clause states ({@code mortar.standard}); never rendered
 * @param table rows of cells; empty for a clause of words
 */
public record Clause(int depth, Set<String> labels, String text, List<List<String>> table) {
  public Clause {
    labels = Set.copyOf(labels);
    table = table.stream().map(List::copyOf).toList();
  }

  public boolean isTable() {
    return !table.isEmpty();
  }

  public Clause withText(String words) {
    return new Clause(depth, labels, words, table);
  }

  public Clause withTable(List<List<String>> rows) {
    return new Clause(depth, labels, text, rows);
  }
}
