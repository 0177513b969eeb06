package clearbed.samples;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A schedule before it is rendered.
 *
 * <p>Written as text under {@code @title}, {@code @columns}, {@code @rows} and {@code @notes}
 * lines: a title or note a line; columns as {@code key | group | heading | width}; rows as cells
 * between bars. A row of a single cell is a sub-heading within the table.
 */
public record Schedule(
    List<String> titles, List<Column> columns, List<List<String>> rows, List<String> notes) {

  /**
   * @param key attribute that the column states; never rendered
   * @param group upper line of the header, or empty
   * @param width in characters
   */
  public record Column(String key, String group, String heading, int width) {}

  public Schedule {
    titles = List.copyOf(titles);
    columns = List.copyOf(columns);
    rows = rows.stream().map(List::copyOf).toList();
    notes = List.copyOf(notes);
  }

  public Schedule withRows(List<List<String>> other) {
    return new Schedule(titles, columns, other, notes);
  }

  public Schedule withColumns(List<Column> other, List<List<String>> cells) {
    return new Schedule(titles, other, cells, notes);
  }

  public Schedule withNotes(List<String> other) {
    return new Schedule(titles, columns, rows, other);
  }

  /** Index of the column of that key, or -1. */
  public int column(String key) {
    for (int i = 0; i < columns.size(); i++) if (columns.get(i).key().equals(key)) return i;
    return -1;
  }

  public boolean hasGroups() {
    return columns.stream().anyMatch(column -> !column.group().isEmpty());
  }

  /** Reads the notation above. */
  public static Schedule parse(String source) {
    Map<String, List<String>> parts = new LinkedHashMap<>();
    List<String> current = new ArrayList<>();
    for (String line : source.lines().toList()) {
      if (line.startsWith("%")) continue;
      if (line.startsWith("@")) {
        current = parts.computeIfAbsent(line.substring(1).strip(), key -> new ArrayList<>());
      } else if (!line.isBlank()) {
        current.add(line.strip());
      }
    }
    List<Column> columns =
        parts.getOrDefault("columns", List.of()).stream().map(Schedule::parseColumn).toList();
    List<List<String>> rows =
        parts.getOrDefault("rows", List.of()).stream().map(Schedule::cells).toList();
    for (List<String> row : rows) {
      if (row.size() != columns.size() && row.size() != 1) {
        throw new IllegalArgumentException(
            row.size() + " cells for " + columns.size() + " columns: " + row);
      }
    }
    return new Schedule(
        parts.getOrDefault("title", List.of()),
        columns,
        rows,
        parts.getOrDefault("notes", List.of()));
  }

  private static Column parseColumn(String line) {
    List<String> cells = cells(line);
    return new Column(cells.get(0), cells.get(1), cells.get(2), Integer.parseInt(cells.get(3)));
  }

  private static List<String> cells(String line) {
    return Arrays.stream(line.split("\\|", -1)).map(String::strip).toList();
  }
}
