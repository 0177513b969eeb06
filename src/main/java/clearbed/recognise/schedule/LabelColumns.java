package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * The columns of a grid whose cells name what stands beside them: of "Size | 1 x 1 in | Grout |
 * Epoxy" over "Thickness | 1/4 in | Colour | White" the first and the third.
 *
 * @param at rising; empty where there are none
 * @param first the first column that holds something: that of the names, or of marks before them
 * @param end behind the last column that holds something
 * @param anyName true where the names need not be known, as marks stand over them
 */
record LabelColumns(List<Integer> at, int first, int end, boolean anyName) {
  static final LabelColumns NONE = new LabelColumns(List.of(), 0, 0, false);

  private static final Pattern EITHER = Pattern.compile("\\s*/\\s*|\\s+or\\s+");
  private static final Pattern ANY_NAME = Pattern.compile("\\p{L}[^\\d.;]{1,39}");

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 120;

  private static final int FEWEST = 3;

  /** Of a table that stands under the mark of what it describes. */
  private static final int FEWEST_UNDER_MARK = 2;

  /** Beside a name stand its value and two remarks on it. */
  private static final int WIDEST = 3;

  private static final int MOST_COLUMNS = 40;
  private static final int LONGEST_NAME = 40;

  /** Before the name of a layer stands what counts it. */
  static final Pattern COUNTER =
      Pattern.compile("\\p{L}?\\d{1,2}[.)]?|\\p{L}[.)]?|[-\u2013\u2014\u2022*]");

  private static final class Tally {
    final Set<String> names = new HashSet<>();
    int known;
    int filled;
    int counters;
  }

  /**
   * @param marked true where the table stands under the mark of a tile
   */
  static LabelColumns of(Table table, boolean marked, Names names, Vocabulary vocabulary) {
    Map<Integer, Tally> tallies = new TreeMap<>();
    Map<String, Boolean> known = new HashMap<>();
    for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), SEARCHED))) {
      List<Table.Cell> own = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      for (Table.Cell cell : own) {
        Tally tally = tallies.computeIfAbsent(cell.column(), any -> new Tally());
        String text = words(cell);
        boolean title = CardTitle.of(text, vocabulary) != null;
        if (COUNTER.matcher(text).matches() || title) tally.counters++;
        // What stands over several rows, or over columns, is no name.
        if (own.size() < 2 || cell.columnSpan() > 1) continue;
        tally.filled++;
        if (title || !known.computeIfAbsent(text, names::are)) continue;
        tally.known++;
        tally.names.add(text);
      }
      if (tallies.size() > MOST_COLUMNS) return NONE;
    }
    LabelColumns told = of(new TreeMap<>(tallies), marked ? FEWEST_UNDER_MARK : FEWEST);
    return told == NONE ? underMarks(table, new TreeMap<>(tallies), vocabulary) : told;
  }

  /**
   * "STN-1 | Limestone ledge" over "Family | Stone slab" and "Piece | 3/4 in thick": nothing in it
   * is said of other tiles, whatever the names are.
   */
  private static LabelColumns underMarks(
      Table table, TreeMap<Integer, Tally> tallies, Vocabulary vocabulary) {
    if (tallies.size() != 2 || tallies.lastKey() != tallies.firstKey() + 1) return NONE;
    int first = tallies.firstKey();
    int marks = 0;
    int names = 0;
    for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), SEARCHED))) {
      Table.Cell cell = row.at(first);
      if (cell == null || !cell.hasOwnWords()) continue;
      CardTitle title = CardTitle.of(cell.text(), vocabulary);
      if (title != null && title.isAlone()) marks++;
      else if (marks > 0 && ANY_NAME.matcher(words(cell)).matches()) names++;
      else return NONE;
    }
    boolean cards = marks > 0 && names >= 2 * marks;
    return cards ? new LabelColumns(List.of(first), first, first + 2, true) : NONE;
  }

  private static LabelColumns of(TreeMap<Integer, Tally> tallies, int fewest) {
    if (tallies.size() < 2) return NONE;
    int first = tallies.firstKey();
    int end = tallies.lastKey() + 1;
    List<Integer> out = new ArrayList<>();
    Set<String> known = new HashSet<>();
    for (Map.Entry<Integer, Tally> e : tallies.entrySet()) {
      Tally t = e.getValue();
      boolean value = !out.isEmpty() && out.get(out.size() - 1) == e.getKey() - 1;
      if (value || t.known < FEWEST_UNDER_MARK || t.known * 3 < t.filled) continue;
      out.add(e.getKey());
      known.addAll(t.names);
    }
    if (known.size() < fewest) return NONE;
    Tally only = tallies.get(out.get(0));
    if (out.size() == 1 && only.known * 5 < only.filled * 2) return NONE;
    // Before the names nothing stands but marks and what counts.
    Tally before = tallies.firstEntry().getValue();
    boolean led = out.get(0) == first || out.get(0) == first + 1 && before.counters > 0;
    if (!led) return NONE;
    for (int i = 0; i < out.size(); i++) {
      int next = i + 1 < out.size() ? out.get(i + 1) : end;
      if (next - out.get(i) < 2 || tallies.subMap(out.get(i), next).size() > WIDEST) return NONE;
    }
    return new LabelColumns(List.copyOf(out), first, end, false);
  }

  /** The words of a cell that may be a name, without the colon behind them. */
  static String words(Table.Cell cell) {
    return name(PlainText.line(cell.text()));
  }

  static String name(String text) {
    return text.strip().replaceAll("[\\s:?.\u2026]+$", "");
  }

  /**
   * "Thickness / width" beside "Covering" is the thickness of the tile, beside "Jointing" the width
   * of the joint; a heading that measures nothing stands for itself.
   */
  static String measured(String name, String head, Vocabulary vocabulary) {
    Header.Column column = HeadingWords.named(vocabulary, head);
    if (column == null || !column.measures()) return head;
    boolean ofTile = HeadingWords.isOfMaterial(vocabulary, name);
    for (String half : EITHER.split(head)) {
      String full = ofTile ? half : name + " " + half;
      Header.Column told = HeadingWords.named(vocabulary, full);
      if (told != null && told.measures()) return full;
    }
    return name + " " + head;
  }

  /** Column behind the values of a name. */
  int endOf(int label) {
    int next = at.indexOf(label) + 1;
    return next < at.size() ? at.get(next) : end;
  }

  /** Tells what may be a name. */
  record Names(HeadingRows headings, Vocabulary vocabulary) {
    boolean are(String words) {
      if (words.isEmpty() || words.length() > LONGEST_NAME) return false;
      if (HeadingWords.named(vocabulary, words) != null) return true;
      return HeadingWords.isOfTags(vocabulary, words) || headings.isName(words);
    }
  }
}
