package clearbed.recognise.schedule.column;

import clearbed.recognise.statement.code.TagList;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Which columns hold the marks of tiles, where others look as if they did. */
final class MarkRights {
  private static final Pattern ITEM =
      Pattern.compile("\\b(?:item|line|pos(?:ition)?|bid|no|number)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern COUNTED = Pattern.compile("([A-Z]{0,3}[-. ]?)(\\d{1,4})[.)]?");

  /** Fewer rows count nothing. */
  private static final int FEWEST_COUNTED = 4;

  private final Vocabulary vocabulary;
  private final HeardHeadings headings;

  MarkRights(Vocabulary vocabulary, HeardHeadings headings) {
    this.vocabulary = vocabulary;
    this.headings = headings;
  }

  /** Takes the marks from columns where another has more right to them. */
  void among(List<ColumnWords> words, Map<Integer, Map<String, ColumnScore>> scores) {
    numbersOfRooms(words, scores);
    namesOfFinishes(scores.values());
    onlyRooms(scores);
    countedItems(scores, words);
    onlyTags(scores, words);
  }

  /** "No. | Room | Part | Mark": the number before the name of a room is that of the room. */
  private void numbersOfRooms(
      List<ColumnWords> words, Map<Integer, Map<String, ColumnScore>> scores) {
    for (int i = 0; i + 1 < words.size(); i++) {
      String heading = words.get(i).text().toLowerCase(Locale.ROOT).replace(".", "");
      if (!vocabulary.list("schedule.roomNumber").matches(heading)) continue;
      ColumnScore room =
          scores.getOrDefault(words.get(i + 1).index(), Map.of()).get("location.room");
      if (room == null || room.heading() < ColumnScores.EXACT) continue;
      scores.getOrDefault(words.get(i).index(), new HashMap<>()).remove(HeadingEvidence.TAG);
    }
  }

  /** "Name | Material | Area" over "OCEAN 1": marks beside another column of places. */
  private static void namesOfFinishes(Collection<Map<String, ColumnScore>> columns) {
    int places = 0;
    Map<String, ColumnScore> named = null;
    for (Map<String, ColumnScore> own : columns) {
      ColumnScore tag = own.get(HeadingEvidence.TAG);
      ColumnScore room = own.get("location.room");
      boolean marks = tag != null && tag.cells() >= ColumnScores.HALF;
      if (marks && (tag.heading() >= ColumnScores.HINT || named != null)) return;
      if (marks && room != null) named = own;
      else if (room != null && room.heading() >= ColumnScores.EXACT) places++;
    }
    if (named != null && places > 0) named.remove("location.room");
  }

  /** Where the surfaces of rooms have their tags a column of more tags is another surface. */
  private static void onlyRooms(Map<Integer, Map<String, ColumnScore>> scores) {
    long surfaces =
        scores.values().stream()
            .filter(
                own ->
                    own.entrySet().stream()
                        .anyMatch(
                            e ->
                                e.getKey().startsWith(HeadingEvidence.SURFACE)
                                    && e.getValue().heading() >= ColumnScores.EXACT))
            .count();
    if (surfaces < 2) return;
    for (Map<String, ColumnScore> own : scores.values()) {
      ColumnScore tag = own.get(HeadingEvidence.TAG);
      if (tag != null && tag.heading() < ColumnScores.EXACT) own.remove(HeadingEvidence.TAG);
    }
  }

  /** "Item | Work | Tile type" over "C-1", "C-2" and so on: what counts the rows marks no tile. */
  private void countedItems(
      Map<Integer, Map<String, ColumnScore>> scores, List<ColumnWords> words) {
    for (ColumnWords w : words) {
      Map<String, ColumnScore> own = scores.getOrDefault(w.index(), Map.of());
      boolean item = own.get(HeadingEvidence.TAG) != null && ITEM.matcher(w.text()).find();
      if (!item || !counts(w.cells())) continue;
      boolean another =
          words.stream()
              .filter(o -> o.index() > w.index() && isOfTiles(o))
              .map(o -> scores.getOrDefault(o.index(), Map.of()).get(HeadingEvidence.TAG))
              .anyMatch(
                  tag ->
                      tag != null
                          && tag.heading() >= ColumnScores.EXACT
                          && tag.cells() >= ColumnScores.HALF);
      if (another) own.remove(HeadingEvidence.TAG);
    }
  }

  /** Marks of the same letters, each one more than the one above. */
  private static boolean counts(List<String> cells) {
    int last = -1;
    int others = 0;
    String letters = "";
    for (String cell : cells) {
      Matcher m = COUNTED.matcher(cell.strip());
      if (!m.matches()) {
        // "Bidder" and "Total" below the items.
        if (++others > 1) return false;
        continue;
      }
      int number = Integer.parseInt(m.group(2));
      if (last >= 0 && (number != last + 1 || !m.group(1).equals(letters))) return false;
      last = number;
      letters = m.group(1);
    }
    return cells.size() >= FEWEST_COUNTED;
  }

  /**
   * A heading that might be of tags gives way to a column of tags, as do marks of grouts and
   * joints.
   */
  private void onlyTags(Map<Integer, Map<String, ColumnScore>> scores, List<ColumnWords> words) {
    Set<Integer> tagged = new LinkedHashSet<>();
    for (ColumnWords w : words) {
      ColumnScore tag = scores.getOrDefault(w.index(), Map.of()).get(HeadingEvidence.TAG);
      if (tag != null && tag.cells() >= ColumnScores.FITS && isOfTiles(w)) tagged.add(w.index());
    }
    for (ColumnWords w : words) {
      Map<String, ColumnScore> own = scores.getOrDefault(w.index(), Map.of());
      ColumnScore tag = own.get(HeadingEvidence.TAG);
      boolean others = tagged.size() > (tagged.contains(w.index()) ? 1 : 0);
      if (tag == null || !others) continue;
      if (!isOfTiles(w) || isListOfUsers(w, tag, tagged, words)) own.remove(HeadingEvidence.TAG);
      else if (tag.cells() < ColumnScores.HALF_BORNE_OUT)
        own.put(
            HeadingEvidence.TAG,
            new ColumnScore(tag.heading() * 0.4, tag.cells(), 0, 0, tag.why()));
    }
  }

  /** "K1 | Cement adhesive | GM 01, GM 05": a row on the mark that stands alone, for the others. */
  private static boolean isListOfUsers(
      ColumnWords w, ColumnScore tag, Set<Integer> tagged, List<ColumnWords> words) {
    if (tag.heading() >= ColumnScores.HINT || !hasLists(w)) return false;
    return words.stream()
        .anyMatch(o -> o.index() < w.index() && tagged.contains(o.index()) && !hasLists(o));
  }

  private static boolean hasLists(ColumnWords w) {
    return w.cells().stream()
        .map(TagList::inCell)
        .anyMatch(list -> list != null && list.tags().size() > 1);
  }

  private boolean isOfTiles(ColumnWords w) {
    return headings.families(w.text()).isEmpty()
        && !HeardHeadings.OF_OTHERS.matcher(w.text()).find();
  }
}
