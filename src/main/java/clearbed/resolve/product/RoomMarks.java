package clearbed.resolve.product;

import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Statement;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Letters of the marks that the schedules of a set have for rooms, "T.04, T.05 showers" under
 * "Room": elsewhere in the set they are rooms as well, and no tiles that nobody schedules.
 */
final class RoomMarks {
  private static final String ROOM = "location.room";

  /** One mark alone might be of the tile beside it. */
  private static final int FEWEST = 2;

  private RoomMarks() {}

  /**
   * @param tiles letters of the marks of rows
   */
  static Set<String> letters(List<Facts> facts, Set<String> tiles) {
    Set<String> marks = new TreeSet<>();
    for (Facts f : facts)
      for (ScheduleRow row : f.rows())
        for (Statement s : row.statements())
          if (s.attribute().equals(ROOM)) marks.addAll(opening(s.content().text()));
    Set<String> out = new TreeSet<>();
    for (String mark : marks) {
      String letters = Tags.prefix(Tags.key(mark));
      boolean several =
          marks.stream().filter(m -> Tags.prefix(Tags.key(m)).equals(letters)).count() >= FEWEST;
      if (several && !letters.isEmpty() && !tiles.contains(letters)) out.add(letters);
    }
    return out;
  }

  private static List<String> opening(String room) {
    TagFinder.TagsAt at = TagFinder.opening(room);
    return at == null ? List.of() : at.tags();
  }
}
