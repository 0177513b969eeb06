package clearbed.recognise.schedule;

import clearbed.model.Origin;
import clearbed.model.Table;
import java.util.List;

/** Whether a row of a schedule is glass tile: by its own words, then by those over it. */
final class RowGlass {
  /**
   * @param evidence the words that decide
   */
  record Result(boolean is, boolean decided, String evidence) {}

  private final ScheduleFinder means;

  RowGlass(ScheduleFinder means) {
    this.means = means;
  }

  Result of(
      Header header, Table.Row row, String material, String group, String title, Origin table) {
    String standard = means.rowReader.tileStandard(header, row);
    ScheduleFinder.Material known = means.known(material);
    GlassTest.Result own = known.result();
    if (own.decided()) return new Result(own.glass(), true, known.words());
    if (standard.contains("A137.2")) return new Result(true, true, standard);
    if (standard.contains("A137.1")) return new Result(false, true, standard);
    String sheet = table.sheet() == null ? "" : table.sheet();
    String heading = table.heading() == null ? "" : table.heading();
    for (String around : List.of(group, title, sheet, heading)) {
      GlassTest.Result said = means.known(around).result();
      if (said.decided()) return new Result(said.glass(), true, around);
    }
    return new Result(false, false, material.isBlank() ? "no material stated" : known.words());
  }
}
