package clearbed.samples;

import java.util.ArrayList;
import java.util.List;

/** A schedule as plain rows of text: header, then rows. */
final class Grid {
  private Grid() {}

  /** The group, where there is one, is joined to the heading. */
  static List<List<String>> of(Schedule schedule) {
    List<List<String>> out = new ArrayList<>();
    out.add(schedule.columns().stream().map(Grid::heading).toList());
    out.addAll(schedule.rows().stream().filter(row -> row.size() > 1).toList());
    return out;
  }

  private static String heading(Schedule.Column column) {
    return (column.group() + " " + column.heading()).strip();
  }
}
