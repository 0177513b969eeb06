package clearbed.recognise;

import clearbed.model.Origin;
import java.util.List;

/**
 * A row of a tile schedule.
 *
 * @param tag as written; a description where the row gives none
 * @param tagged false when the row gives no tag
 * @param glass true for glass tile
 * @param evidence the words that decided it
 * @param origin of the tag cell
 */
public record ScheduleRow(
    String tag,
    boolean tagged,
    boolean glass,
    String evidence,
    Origin origin,
    List<Statement> statements) {
  public ScheduleRow {
    statements = List.copyOf(statements);
  }
}
