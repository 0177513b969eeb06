package clearbed.recognise.schedule;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.regex.Pattern;

/** The part of the work that a table is about, by what it is called. */
final class NamedPart {
  private static final Pattern FOLDER = Pattern.compile(".*/");

  /** "JointSchedule", "joint_schedule.csv". */
  private static final Pattern BETWEEN_WORDS = Pattern.compile("[_.,-]+|(?<=\\p{Ll})(?=\\p{Lu})");

  private final ScheduleFinder means;
  private final String over;
  private final String called;

  /**
   * @param over the heading over the table, or empty
   */
  NamedPart(ScheduleFinder means, Table table, String over) {
    this.means = means;
    this.over = means.family(over);
    this.called = called(table.origin());
  }

  /**
   * By the heading over the table, its title, or the name of its sheet or file; empty for none.
   *
   * @param title in the first rows, or empty
   */
  String named(String title) {
    if (!over.isEmpty()) return over;
    String own = title.isEmpty() ? "" : means.family(title);
    return own.isEmpty() ? called : own;
  }

  /** By the name of the sheet or the file, where it is of no tile: "JointSchedule.csv". */
  private String called(Origin at) {
    boolean grid = at.paragraph() == null && at.page() == null;
    if (!grid) return "";
    String name = at.sheet() == null ? FOLDER.matcher(at.document()).replaceFirst("") : at.sheet();
    String words = BETWEEN_WORDS.matcher(name).replaceAll(" ");
    String of = TileWords.tile(words) ? "" : means.family(words);
    return WorkFamilies.PARTS.contains(of) ? of : "";
  }
}
