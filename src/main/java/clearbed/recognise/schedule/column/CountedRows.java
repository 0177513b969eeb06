package clearbed.recognise.schedule.column;

import clearbed.recognise.vocabulary.HeadingEvidence;
import java.util.List;
import java.util.Map;

/** Rows that are counted "A", "B", "C": letters that could be classes of anything. */
final class CountedRows {
  /** Fewer might be classes. */
  private static final int FEWEST = 3;

  private CountedRows() {}

  /** Takes from a column that counts what its letters alone speak for. */
  static void in(ColumnWords w, Map<String, ColumnScore> scores) {
    if (!are(w.cells())) return;
    // "Line" heads products as well.
    scores.remove(HeadingEvidence.MATERIAL);
    scores.values().removeIf(s -> s.cells() > 0 && s.heading() < ColumnScores.HINT);
  }

  /** Each letter is the one behind that above, from the first. */
  private static boolean are(List<String> cells) {
    char next = 'A';
    for (String cell : cells) {
      String text = cell.strip();
      if (text.length() != 1 || text.charAt(0) != next) return false;
      next++;
    }
    return cells.size() >= FEWEST;
  }
}
