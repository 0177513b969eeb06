package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingRows;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
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

  private static final Pattern FIGURE = Pattern.compile("\\P{L}*\\d\\P{L}*");

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

  /**
   * What stands in a column.
   *
   * @param beside cells with something beside them: what stands over several rows, or over columns,
   *     is no name
   */
  private record Cells(List<Table.Cell> all, List<Table.Cell> beside) {
    Cells() {
      this(new ArrayList<>(), new ArrayList<>());
    }

    /** The names; empty where they are too few among the others. */
    List<String> names(Predicate<String> isName) {
      List<String> out = new ArrayList<>();
      int left = beside.size();
      for (Table.Cell cell : beside) {
        if ((out.size() + left--) * 3 < beside.size()) return List.of();
        String text = words(cell);
        if (isName.test(text)) out.add(text);
      }
      return out.size() < FEWEST_UNDER_MARK || out.size() * 3 < beside.size() ? List.of() : out;
    }

    /** True where marks stand in it, or what counts rows. */
    boolean count(Vocabulary vocabulary) {
      return all.stream()
          .map(LabelColumns::words)
          .anyMatch(t -> COUNTER.matcher(t).matches() || CardTitle.of(t, vocabulary) != null);
    }
  }

  /**
   * @param marked true where the table stands under the mark of a tile
   */
  static LabelColumns of(Table table, boolean marked, Names names, Vocabulary vocabulary) {
    TreeMap<Integer, Cells> columns = new TreeMap<>();
    for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), SEARCHED))) {
      List<Table.Cell> own = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      for (Table.Cell cell : own) {
        Cells cells = columns.computeIfAbsent(cell.column(), any -> new Cells());
        cells.all().add(cell);
        if (own.size() > 1 && cell.columnSpan() <= 1) cells.beside().add(cell);
      }
      if (columns.size() > MOST_COLUMNS) return NONE;
    }
    Map<String, Boolean> known = new HashMap<>();
    Predicate<String> isName =
        words ->
            known.computeIfAbsent(
                words, text -> CardTitle.of(text, vocabulary) == null && names.are(text));
    LabelColumns told = of(columns, marked ? FEWEST_UNDER_MARK : FEWEST, isName, vocabulary);
    return told == NONE ? underMarks(table, columns, vocabulary) : told;
  }

  /**
   * "STN-1 | Limestone ledge" over "Family | Stone slab" and "Piece | 3/4 in thick": nothing in it
   * is said of other tiles, whatever the names are.
   */
  private static LabelColumns underMarks(
      Table table, TreeMap<Integer, Cells> columns, Vocabulary vocabulary) {
    if (columns.size() != 2 || columns.lastKey() != columns.firstKey() + 1) return NONE;
    int first = columns.firstKey();
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

  /** Looks for names only where they may stand: most tables have none. */
  private static LabelColumns of(
      TreeMap<Integer, Cells> columns,
      int fewest,
      Predicate<String> isName,
      Vocabulary vocabulary) {
    if (columns.size() < 2) return NONE;
    int first = columns.firstKey();
    int end = columns.lastKey() + 1;
    // The last name has no more than that behind it, figures as a rule.
    boolean named =
        columns.descendingMap().values().stream()
            .limit(WIDEST)
            .anyMatch(cells -> !cells.names(isName).isEmpty());
    if (!named) return NONE;
    List<Integer> out = new ArrayList<>();
    Set<String> known = new HashSet<>();
    boolean some = true;
    for (Map.Entry<Integer, Cells> e : columns.entrySet()) {
      int at = e.getKey();
      boolean value = !out.isEmpty() && out.get(out.size() - 1) == at - 1;
      if (value) continue;
      // Before the names nothing stands but marks and what counts.
      boolean led = at == first || at == first + 1 && columns.get(first).count(vocabulary);
      if (out.isEmpty() && !led) return NONE;
      List<String> own = e.getValue().names(isName);
      if (own.isEmpty()) continue;
      some = !out.isEmpty() || own.size() * 5 >= e.getValue().beside().size() * 2;
      out.add(at);
      known.addAll(own);
    }
    if (known.size() < fewest || !some) return NONE;
    for (int i = 0; i < out.size(); i++) {
      int next = i + 1 < out.size() ? out.get(i + 1) : end;
      if (next - out.get(i) < 2 || columns.subMap(out.get(i), next).size() > WIDEST) return NONE;
    }
    return new LabelColumns(List.copyOf(out), first, end, false);
  }

  /** The words of a cell that may be a name, without the colon behind them. */
  static String words(Table.Cell cell) {
    return name(PlainText.line(cell.text()));
  }

  static String name(String text) {
    int end = text.length();
    while (end > 0 && isBehindName(text.charAt(end - 1))) end--;
    return text.substring(0, end).strip();
  }

  private static boolean isBehindName(char c) {
    return Character.isWhitespace(c) || ":?.\u2026".indexOf(c) >= 0;
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
      if (FIGURE.matcher(words).matches()) return false;
      return headings.isName(words) || HeadingWords.namesColumn(vocabulary, words);
    }
  }
}
