package clearbed.corpus;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/** Rows of a schedule or a table, the tag in the first cell. */
final class Rows {
  private Rows() {}

  /** The row with its cells passed through the edit, when it is the row of a glass entry. */
  static List<String> edit(
      List<String> row, List<String> labels, Set<String> glass, UnaryOperator<Statement> edit) {
    String tag = row.get(0);
    if (row.size() != labels.size() || !glass.contains(tag)) return row;
    List<String> out = new ArrayList<>();
    out.add(tag);
    for (int i = 1; i < row.size(); i++) {
      String label = labels.get(i);
      Statement before = new Statement(label, Set.of(tag), row.get(i), true);
      out.add(label.isEmpty() ? row.get(i) : edit.apply(before).text());
    }
    return out;
  }
}
