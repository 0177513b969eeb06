package clearbed.recognise.schedule.row;

import clearbed.model.document.Origin;
import clearbed.model.document.ThinList;
import clearbed.recognise.schedule.cell.GlassTest;
import clearbed.recognise.statement.limit.Statement;
import java.util.List;
import java.util.Map;

/**
 * A row of a tile schedule.
 *
 * @param tag as written; a description where the row gives none
 * @param tagged false when the row gives no tag
 * @param glass true for glass tile
 * @param decided false when the row does not say of what the tile is; another row with its tag may
 * @param evidence the words that decided it
 * @param origin of the tag cell
 * @param statements empty for rows on something else than glass tile
 * @param blanks empty cells under a known header, by attribute
 * @param used true on the card of a room, which uses the tile and schedules none
 */
public record ScheduleRow(
    String tag,
    boolean tagged,
    boolean glass,
    boolean decided,
    String evidence,
    Origin origin,
    List<Statement> statements,
    Map<String, Origin> blanks,
    boolean used) {
  public ScheduleRow {
    statements = ThinList.copyOf(statements);
    blanks = blanks instanceof BlankCells ? blanks : Map.copyOf(blanks);
  }

  /** Of a schedule. */
  public ScheduleRow(
      String tag,
      boolean tagged,
      boolean glass,
      boolean decided,
      String evidence,
      Origin origin,
      List<Statement> statements,
      Map<String, Origin> blanks) {
    this(tag, tagged, glass, decided, evidence, origin, statements, blanks, false);
  }

  /** The row of a tile that is described in running words, which state the rest. */
  public static ScheduleRow told(String tag, String words, GlassTest.Result glass, Origin origin) {
    return new ScheduleRow(
        tag, true, glass.glass(), glass.decided(), words, origin, List.of(), Map.of());
  }

  /** The same on the card of a room. */
  public ScheduleRow onCard() {
    return new ScheduleRow(tag, tagged, glass, decided, evidence, origin, statements, blanks, true);
  }

  /**
   * @param told true where others say what it is
   */
  public ScheduleRow withoutStatements(boolean told) {
    boolean now = decided || told;
    return new ScheduleRow(tag, tagged, glass, now, evidence, origin, List.of(), Map.of(), used);
  }

  public ScheduleRow withStatements(List<Statement> now) {
    return new ScheduleRow(tag, tagged, glass, decided, evidence, origin, now, blanks, used);
  }
}
