package clearbed.corpus;

import java.util.Set;

/**
 * Words of a set that state one attribute, in a clause or in a cell.
 *
 * @param label attribute, such as {@code mortar.bond}
 * @param tags the glass entries that need the statement
 * @param cell true for a cell of a schedule or table, false for words in a clause
 */
record Statement(String label, Set<String> tags, String text, boolean cell) {
  Statement {
    tags = Set.copyOf(tags);
  }

  Statement withText(String words) {
    return new Statement(label, tags, words, cell);
  }

  boolean isCell() {
    return cell;
  }
}
