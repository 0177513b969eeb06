package clearbed.recognise.schedule.grid;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.row.ItemRows;
import clearbed.recognise.statement.Likeness;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * Cells that repeat those of another row or column of their table, by its mark: "same as GT-1",
 * also over several columns, and "as T1" where the tiles stand side by side.
 */
public final class SameCells {
  /** What rows and columns are called by: short. */
  private static final Pattern MARK = Pattern.compile("[\\p{L}\\d][\\p{L}\\d./ -]{0,11}");

  /** "A" counts the items of a bill. */
  private static final int LONGEST_WORDS = 12;

  /** The mark of a row stands in one of its first cells. */
  private static final int FIRST_CELLS = 2;

  /** A cell that repeats one that repeats one. */
  private static final int CHAIN = 4;

  private final Vocabulary vocabulary;
  private final Map<String, Table.Row> rows = new HashMap<>();
  private final Map<String, Table.Cell> columns = new HashMap<>();

  private SameCells(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The table with what such cells repeat; itself where it has none. */
  public static Table repeated(Table table, Vocabulary vocabulary) {
    if (table.rows().stream().noneMatch(row -> mayRepeat(row, vocabulary))) return table;
    Table now = table;
    for (int i = 0; i < CHAIN; i++) {
      SameCells same = new SameCells(vocabulary);
      same.names(now);
      List<Table.Row> out = now.rows().stream().map(same::repeated).toList();
      if (out.equals(now.rows())) return now;
      now = table.withRows(out);
    }
    return now;
  }

  private static boolean mayRepeat(Table.Row row, Vocabulary vocabulary) {
    return row.cells().stream()
        .anyMatch(
            c -> !c.text().isBlank() && Likeness.in(c.text(), vocabulary, mark -> true) != null);
  }

  private void names(Table table) {
    for (Table.Row row : table.rows()) {
      List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
      filled.stream()
          .limit(FIRST_CELLS)
          .filter(SameCells::isMark)
          .forEach(c -> rows.putIfAbsent(key(c.text()), row));
      List<Table.Cell> across = filled.stream().filter(c -> Tags.isMark(c.text().strip())).toList();
      boolean heads = across.size() >= FIRST_CELLS && across.size() >= filled.size() - FIRST_CELLS;
      if (heads && columns.isEmpty()) across.forEach(c -> columns.putIfAbsent(key(c.text()), c));
    }
  }

  private static boolean isMark(Table.Cell cell) {
    return cell.text().length() <= LONGEST_WORDS && MARK.matcher(cell.text().strip()).matches();
  }

  private static String key(String mark) {
    return Tags.key(PlainText.line(mark).strip());
  }

  private Table.Row repeated(Table.Row row) {
    List<Table.Cell> out = new ArrayList<>();
    boolean changed = false;
    for (Table.Cell cell : row.cells()) {
      List<Table.Cell> now = cell.text().isBlank() ? List.of() : repeated(row, cell);
      changed |= !now.isEmpty();
      if (now.isEmpty()) out.add(cell);
      else out.addAll(now);
    }
    return changed ? row.withCells(out) : row;
  }

  /** True of the mark of a row or column; "as a band" calls no item A. */
  private boolean isNamed(String mark) {
    boolean letter = mark.length() == 1 && Character.isLowerCase(mark.charAt(0));
    return !letter && (rows.containsKey(key(mark)) || columns.containsKey(key(mark)));
  }

  /** What a cell repeats, a cell for each column; empty where it repeats nothing. */
  private List<Table.Cell> repeated(Table.Row row, Table.Cell cell) {
    Likeness like = Likeness.in(cell.text(), vocabulary, this::isNamed);
    if (like == null) return List.of();
    String key = key(like.mark());
    String more = PlainText.of(cell.text()).substring(like.end()).strip();
    // "As GT-1 but white" may leave out something that is said of GT-1.
    boolean whole = like.start() == 0 && !like.differs();
    Table.Cell across = columns.get(key);
    boolean beside = across != null && across.firstRow() != row.number();
    if (whole && beside) {
      Table.Cell from = row.at(across.column());
      boolean other = from != null && from != cell && !from.text().isBlank();
      return other ? List.of(cell.withText(with(from, more))) : List.of();
    }
    Table.Row of = rows.get(key);
    if (of == null || of.number() == row.number()) return List.of();
    return whole ? ofRow(of, cell, more) : named(of, cell, like);
  }

  private static String with(Table.Cell from, String more) {
    return more.isEmpty() ? from.text() : from.text() + ", " + more;
  }

  private static List<Table.Cell> ofRow(Table.Row of, Table.Cell cell, String more) {
    List<Table.Cell> out = new ArrayList<>();
    for (int column = cell.column(); column < cell.column() + cell.columnSpan(); column++) {
      Table.Cell from = of.at(column);
      if (from == null || from.column() < column && column > cell.column()) continue;
      int span = Math.min(from.columnSpan(), cell.column() + cell.columnSpan() - column);
      out.add(
          new Table.Cell(
              column,
              span,
              false,
              with(from, out.isEmpty() ? more : ""),
              out.isEmpty() ? cell.remark() : "",
              from.firstRow(),
              from.page()));
    }
    return out;
  }

  /** "Glass mosaic as item A but ..." where item A is on GM-01: the tile by its own mark. */
  private List<Table.Cell> named(Table.Row of, Table.Cell cell, Likeness like) {
    if (!ItemRows.isNumber(like.mark())) return List.of();
    Table.Cell words = of.at(cell.column());
    String mark = words == null ? "" : new ItemRows(vocabulary).named(words.text());
    if (mark.isEmpty()) return List.of();
    String text = PlainText.of(cell.text());
    String but = like.differs() ? " but " : ", ";
    return List.of(
        cell.withText(
            text.substring(0, like.start()) + "as " + mark + but + text.substring(like.end())));
  }
}
