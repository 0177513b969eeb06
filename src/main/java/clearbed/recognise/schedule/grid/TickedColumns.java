package clearbed.recognise.schedule.grid;

import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * Tables in which a cross under "Wall" says what the word says: the columns under one group heading
 * become one column, whose cells have the words of those that are ticked.
 */
public final class TickedColumns {
  private static final Pattern TICK =
      Pattern.compile("[xX\u00d7\u2713\u2714\u2611\u2612\u2022\u25cf\u25a0\u221a]");

  private static final Pattern NONE = Pattern.compile("[-\u2010-\u2015\u2610\u25a1]?");

  /** Rows among which headings stand, and headings of one group. */
  private static final int SEARCHED = 60;

  private static final int MOST_COLUMNS = 60;

  /** What is ticked, in characters. */
  private static final int LONGEST = 40;

  private static final String BETWEEN = "; ";

  /**
   * A table read so.
   *
   * @param heads the headings whose words stand below them now
   * @param ticks the further crosses of each row
   */
  public record TickedTable(Table table, List<Table.Row> heads, List<Table.Row> ticks) {}

  /**
   * Columns of one group.
   *
   * @param head index of the row of their headings; the group stands in the row above
   * @param first column of the group
   * @param words over each column
   * @param end index of the row behind the last that is ticked
   */
  private record TickedGroup(int head, int first, Map<Integer, String> words, int end) {
    boolean holds(Table.Cell cell) {
      return words.containsKey(cell.column());
    }
  }

  private TickedColumns() {}

  public static TickedTable of(Table table) {
    List<Table.Row> rows = table.rows();
    if (rows.stream().noneMatch(row -> row.cells().stream().anyMatch(TickedColumns::isTick)))
      return new TickedTable(table, List.of(), List.of());
    TickedTable read = new TickedTable(table, new ArrayList<>(), new ArrayList<>());
    List<Table.Row> out = new ArrayList<>(rows);
    for (int head = 1; head < Math.min(rows.size(), SEARCHED); head++)
      for (TickedGroup group : groups(rows, head)) fold(out, group, read);
    if (read.heads().isEmpty()) return read;
    out.removeIf(row -> row.cells().stream().noneMatch(Table.Cell::hasOwnWords));
    return new TickedTable(table.withRows(out), read.heads(), read.ticks());
  }

  private static boolean isTick(Table.Cell cell) {
    return TICK.matcher(cell.text().strip()).matches();
  }

  private static List<TickedGroup> groups(List<Table.Row> rows, int head) {
    List<TickedGroup> out = new ArrayList<>();
    if (rows.get(head).number() != rows.get(head - 1).number() + 1) return out;
    List<Table.Cell> over =
        rows.get(head - 1).cells().stream().filter(Table.Cell::hasOwnWords).toList();
    for (int i = 0; i < over.size(); i++) {
      Table.Cell cell = over.get(i);
      // Saved as text, a heading over several columns stands over the first of them alone.
      int next = i + 1 < over.size() ? over.get(i + 1).column() : cell.column() + MOST_COLUMNS;
      int behind = cell.columnSpan() > 1 ? cell.column() + cell.columnSpan() : next;
      TickedGroup group = group(rows, head, cell.column(), behind);
      if (group != null) out.add(group);
    }
    return out;
  }

  /** The group over some columns, or null where they are not ticked. */
  private static TickedGroup group(List<Table.Row> rows, int head, int first, int behind) {
    Map<Integer, String> words = new TreeMap<>();
    for (Table.Cell cell : rows.get(head).cells()) {
      if (cell.column() < first || cell.column() >= behind || !cell.hasOwnWords()) continue;
      if (isTick(cell) || cell.text().length() > LONGEST) return null;
      words.put(cell.column(), PlainText.line(cell.text()).strip());
    }
    if (words.size() < 2) return null;
    int end = head + 1;
    int ticks = 0;
    for (; end < rows.size(); end++) {
      int found = ticks(rows.get(end), words);
      if (found < 0) break;
      ticks += found;
    }
    return ticks < 2 ? null : new TickedGroup(head, first, words, end);
  }

  /** How many columns a row ticks; -1 where it has other words in one. */
  private static int ticks(Table.Row row, Map<Integer, String> words) {
    int ticks = 0;
    for (Table.Cell cell : row.cells()) {
      if (!words.containsKey(cell.column()) || !cell.hasOwnWords()) continue;
      if (isTick(cell)) ticks++;
      else if (!NONE.matcher(cell.text().strip()).matches()) return -1;
    }
    return ticks;
  }

  private static void fold(List<Table.Row> rows, TickedGroup group, TickedTable read) {
    for (int i = group.head() - 1; i < group.end(); i++) {
      Table.Row row = rows.get(i);
      List<Table.Cell> cells = new ArrayList<>();
      List<Table.Cell> gone = new ArrayList<>();
      List<String> ticked = new ArrayList<>();
      for (Table.Cell cell : row.cells()) {
        boolean over = i < group.head() && cell.column() == group.first();
        if (over) cells.add(moved(cell, cell.column(), cell.text()));
        else if (i < group.head() || !group.holds(cell)) cells.add(cell);
        else {
          gone.add(cell);
          if (isTick(cell)) ticked.add(group.words().get(cell.column()));
        }
      }
      if (!ticked.isEmpty()) {
        Table.Cell first = gone.stream().filter(TickedColumns::isTick).findFirst().orElseThrow();
        gone.remove(first);
        cells.add(moved(first, group.first(), String.join(BETWEEN, ticked)));
        cells.sort((a, b) -> Integer.compare(a.column(), b.column()));
      }
      if (gone.isEmpty() && ticked.isEmpty() && i >= group.head()) continue;
      if (!gone.isEmpty())
        (i == group.head() ? read.heads() : read.ticks()).add(row.withCells(gone));
      rows.set(i, row.withCells(cells));
    }
  }

  /** Over one column. */
  private static Table.Cell moved(Table.Cell cell, int column, String words) {
    return new Table.Cell(column, 1, false, words, cell.remark(), cell.firstRow(), cell.page());
  }
}
