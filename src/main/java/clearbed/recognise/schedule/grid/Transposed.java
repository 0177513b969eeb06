package clearbed.recognise.schedule.grid;

import clearbed.model.document.Table;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;

/**
 * A schedule that lists attributes downwards and tiles across, turned round; cells keep their own
 * place.
 */
public final class Transposed {
  private static final int WIDEST = 200;

  /** Fewer lines nobody counts. */
  private static final int COUNTED = 4;

  private static final Pattern NUMBER = Pattern.compile("\\d{1,3}[.)]?");

  private static final Pattern UNIT =
      Pattern.compile("(?:" + UnitWords.PATTERN + ")", Pattern.CASE_INSENSITIVE);

  private static final Pattern NOTHING =
      Pattern.compile("[-\u2013\u2014/]|n/?a", Pattern.CASE_INSENSITIVE);

  private Transposed() {}

  /** The turned grid, or null when the grid is too large to be such a schedule. */
  public static Table of(Table table) {
    if (isTooLong(table)) return null;
    Map<Integer, List<Table.Cell>> columns = new TreeMap<>();
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) {
        if (cell.column() > WIDEST) return null;
        columns.computeIfAbsent(cell.column(), c -> new ArrayList<>()).add(turned(row, cell));
        // A value that runs over several tiles is that of each.
        int end = isNamed(row, cell) ? Math.min(cell.column() + cell.columnSpan(), WIDEST) : 0;
        for (int column = cell.column() + 1; column < end; column++)
          columns.computeIfAbsent(column, c -> new ArrayList<>()).add(continued(row, cell));
      }
    }
    List<Table.Row> rows = new ArrayList<>();
    columns.forEach((column, cells) -> rows.add(new Table.Row(column + 1, cells, false)));
    return new Table(table.origin(), rows, table.sheet(), true);
  }

  /** True of more lines than a tile has properties. */
  public static boolean isTooLong(Table table) {
    return table.rows().size() > WIDEST;
  }

  /**
   * The same without "Line", "1", "2" and so on before the names of properties; itself where it is
   * too long.
   */
  public static Table uncounted(Table table) {
    if (isTooLong(table)) return table;
    int first = first(table);
    List<String> cells =
        table.rows().stream()
            .map(row -> row.at(first))
            .filter(cell -> cell != null && !cell.text().isBlank())
            .map(cell -> cell.text().strip())
            .toList();
    long numbers = cells.stream().filter(text -> NUMBER.matcher(text).matches()).count();
    boolean counts =
        numbers >= COUNTED
            && cells.stream().distinct().count() == cells.size()
            && (cells.size() - numbers) * 4 <= numbers;
    if (!counts) return table;
    List<Table.Row> rows =
        table.rows().stream()
            .map(
                row ->
                    new Table.Row(
                        row.number(),
                        row.cells().stream().filter(cell -> cell.column() != first).toList(),
                        row.hidden()))
            .toList();
    return table.withRows(rows);
  }

  /**
   * The same with the units of a column of their own behind the names: "Thickness | mm | 4" is
   * "Thickness mm | 4".
   */
  public static Table measured(Table table) {
    int names = first(table);
    int units = units(table, names);
    if (units < 0) return table;
    List<Table.Row> rows = new ArrayList<>();
    for (Table.Row row : table.rows()) {
      Table.Cell unit = row.at(units);
      boolean says = unit != null && unit.column() == units && UNIT.matcher(text(unit)).matches();
      List<Table.Cell> cells = new ArrayList<>();
      for (Table.Cell cell : row.cells()) {
        if (cell.column() == units) continue;
        boolean measures = says && cell.column() == names && !cell.text().isBlank();
        cells.add(measures ? cell.withText(text(cell) + " " + text(unit)) : cell);
      }
      rows.add(row.withCells(cells));
    }
    return table.withRows(rows);
  }

  /** The column behind the names of which all but what heads it are units; -1 for none. */
  private static int units(Table table, int names) {
    if (isTooLong(table)) return -1;
    int column = names + 1;
    int units = 0;
    int others = 0;
    for (Table.Row row : table.rows()) {
      Table.Cell cell = row.at(column);
      if (cell == null || cell.column() != column || cell.text().isBlank()) continue;
      if (UNIT.matcher(text(cell)).matches()) units++;
      else if (!NOTHING.matcher(text(cell)).matches()) others++;
    }
    return units > 1 && others <= 1 ? column : -1;
  }

  private static String text(Table.Cell cell) {
    return PlainText.line(cell.text()).strip();
  }

  /** The first column that holds something. */
  public static int first(Table table) {
    return table.rows().stream()
        .flatMap(row -> row.cells().stream())
        .filter(cell -> !cell.text().isBlank())
        .mapToInt(Table.Cell::column)
        .min()
        .orElse(0);
  }

  /** True of a value: the name of what it is stands before it. */
  private static boolean isNamed(Table.Row row, Table.Cell cell) {
    return row.cells().stream().anyMatch(c -> c.column() < cell.column() && c.hasOwnWords());
  }

  private static Table.Cell continued(Table.Row row, Table.Cell cell) {
    Table.Cell first = turned(row, cell);
    return new Table.Cell(
        first.column(), 1, true, first.text(), "", first.firstRow(), first.page());
  }

  private static Table.Cell turned(Table.Row row, Table.Cell cell) {
    return new Table.Cell(
        row.number() - 1,
        1,
        cell.continued(),
        cell.text(),
        cell.remark(),
        cell.column() + 1,
        cell.page());
  }
}
