package clearbed.recognise.schedule.column;

import clearbed.model.value.Unit;
import java.util.List;

/**
 * A column before it is known what it holds.
 *
 * @param top its upper headings, or those of its group
 * @param group whether the upper heading is one of several columns
 * @param cells some of those below
 */
record ColumnWords(
    int index, String top, String bottom, Group group, Unit unit, List<String> cells) {
  /** Where the heading of a group stands: over the column, or over one before it. */
  enum Group {
    NONE,
    OVER,
    BEFORE
  }

  /** The words over a column. */
  record Heads(String top, String bottom, Group group) {
    String text() {
      return (top + " " + bottom).trim();
    }
  }

  Heads heads() {
    return new Heads(top, bottom, group);
  }

  String text() {
    return heads().text();
  }
}
