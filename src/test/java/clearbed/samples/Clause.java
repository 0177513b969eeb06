package clearbed.samples;

import java.util.List;

/**
 * One heading, clause or table of an outline.
 *
 * @param depth 0 for a part, 1 for an article, 2 and deeper for clauses under it
 * @param table rows of cells; empty for a clause of words
 */
public record Clause(int depth, String text, List<List<String>> table) {
  public Clause {
    table = table.stream().map(List::copyOf).toList();
  }

  public boolean isTable() {
    return !table.isEmpty();
  }

  public Clause withText(String words) {
    return new Clause(depth, words, table);
  }

  public Clause withTable(List<List<String>> rows) {
    return new Clause(depth, text, rows);
  }
}
