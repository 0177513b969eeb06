package clearbed.recognise.schedule.grid;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.Header;
import clearbed.recognise.schedule.column.HeadingRows;
import clearbed.recognise.statement.code.Tags;
import java.util.ArrayList;
import java.util.List;

/**
 * Cuts a grid where schedules stand beside each other with an empty column between them, each under
 * a heading of its own. Rows and cells keep their addresses.
 */
public final class SideBySide {
  /** Rows that a heading may stand lower than the one beside it. */
  private static final int LOWER = 2;

  private static final int MOST_TITLES = 8;
  private static final int LOOKED_AT = 60;

  /** Of more empty columns between the words of one row none parts two tables. */
  private static final int MOST_GAPS = 60;

  /** Rows that a heading is known by. */
  private static final int SHOWN = 14;

  private final HeadingRows headingRows;

  public SideBySide(HeadingRows headingRows) {
    this.headingRows = headingRows;
  }

  /**
   * Where two tables meet.
   *
   * @param column the first that is empty between them
   * @param start index of the row that the first heading stands in
   */
  private record Seam(int column, int start) {}

  /** The tables on the grid: itself, where there is but one. */
  public List<Table> of(Table table) {
    List<Table> parts = new ArrayList<>();
    cut(table, parts);
    return parts;
  }

  private void cut(Table table, List<Table> parts) {
    List<Table.Row> rows = table.rows();
    for (int i = 0; i + 1 < rows.size(); i++) {
      Seam seam = seam(rows, i);
      if (seam == null) continue;
      cut(table, seam, parts);
      return;
    }
    parts.add(table);
  }

  private void cut(Table table, Seam seam, List<Table> parts) {
    List<Table.Row> rows = table.rows();
    int titles = titles(rows, seam);
    int end = end(rows, seam);
    if (titles > 0) parts.add(table.withRows(rows.subList(0, titles)));
    List<Table.Row> above = rows.subList(titles, seam.start());
    List<Table.Row> beside = rows.subList(seam.start(), end);
    boolean apart = above.stream().anyMatch(row -> !right(row, seam.column(), false).isEmpty());
    List<Table.Row> left = new ArrayList<>();
    List<Table.Row> right = new ArrayList<>();
    for (Table.Row row : above) {
      left.add(apart ? row.withCells(left(row, seam.column())) : row);
      right.add(apart ? row.withCells(right(row, seam.column(), true)) : row);
    }
    for (Table.Row row : beside) {
      left.add(row.withCells(left(row, seam.column())));
      right.add(row.withCells(right(row, seam.column(), true)));
    }
    left.removeIf(row -> row.cells().isEmpty());
    right.removeIf(row -> row.cells().isEmpty());
    parts.add(table.withRows(left));
    // A third table may stand further right, and others below.
    cut(table.withRows(right), parts);
    if (end < rows.size()) cut(table.withRows(rows.subList(end, rows.size())), parts);
  }

  /** The cells that begin left of a column, those that reach over it too. */
  private static List<Table.Cell> left(Table.Row row, int column) {
    return row.cells().stream().filter(c -> c.column() < column).toList();
  }

  /**
   * @param shared true to take those, too, that reach over the column from the left
   */
  private static List<Table.Cell> right(Table.Row row, int column, boolean shared) {
    return row.cells().stream()
        .filter(c -> c.column() > column || shared && c.column() + c.columnSpan() - 1 > column)
        .toList();
  }

  private Seam seam(List<Table.Row> rows, int at) {
    Table.Row row = rows.get(at);
    List<Table.Cell> filled = row.cells().stream().filter(c -> !c.text().isBlank()).toList();
    int gaps = 0;
    for (int i = 2; i + 1 < filled.size() && gaps < MOST_GAPS; i++) {
      Table.Cell before = filled.get(i - 1);
      int next = filled.get(i).column();
      int end = before.column() + before.columnSpan();
      for (int gap = end; gap < next && gaps < MOST_GAPS; gap++) {
        gaps++;
        if (isFilled(rows.get(at + 1), gap)) continue;
        Seam seam = seam(rows, at, gap);
        if (seam != null) return seam;
      }
    }
    return null;
  }

  /** One side has its heading in the row; that of the other may stand a little off. */
  private Seam seam(List<Table.Row> rows, int at, int gap) {
    boolean left = heads(rows, at, gap, true);
    if (!left && !heads(rows, at, gap, false)) return null;
    for (int other : new int[] {at, at - 1, at + 1, at + LOWER}) {
      if (other < 0 || other + 1 >= rows.size() || isFilled(rows.get(other), gap)) continue;
      if (heads(rows, other, gap, !left)) return new Seam(gap, Math.min(at, other));
    }
    return null;
  }

  /** True when one side of the row heads a table of its own. */
  private boolean heads(List<Table.Row> rows, int at, int gap, boolean left) {
    Table.Row row = side(rows.get(at), gap, left);
    if (row.cells().stream().anyMatch(c -> Tags.isMark(c.text()))) return false;
    List<Table.Row> beside =
        rows.subList(at, Math.min(rows.size(), at + SHOWN)).stream()
            .map(r -> side(r, gap, left))
            .toList();
    Header header = headingRows.at(beside, 0, true, "");
    return header != null && isOwn(header, rows, at + header.rows(), gap, left);
  }

  private static Table.Row side(Table.Row row, int gap, boolean left) {
    return row.withCells(left ? left(row, gap) : right(row, gap, false));
  }

  /** Marks of its own below it, or the surfaces of rooms, make a side a table. */
  private static boolean isOwn(
      Header header, List<Table.Row> rows, int from, int gap, boolean left) {
    if (header.all(Header.Role.SURFACE).size() >= 2) return true;
    boolean tagged = header.has(Header.Role.TAG);
    for (int i = from; i < Math.min(rows.size(), from + LOOKED_AT); i++) {
      if (isFilled(rows.get(i), gap)) break;
      List<Table.Cell> cells = side(rows.get(i), gap, left).cells();
      if (cells.stream().anyMatch(c -> Tags.isMark(c.text()))) return true;
      if (tagged && !cells.isEmpty()) return true;
    }
    return false;
  }

  /** A cell of the column itself; one that is merged over it stands over both sides. */
  private static boolean isFilled(Table.Row row, int column) {
    Table.Cell cell = row.at(column);
    boolean over = cell != null && cell.column() < column;
    return cell != null && !over && !cell.text().isBlank();
  }

  private static int end(List<Table.Row> rows, Seam seam) {
    int end = seam.start() + 1;
    while (end < rows.size() && !isFilled(rows.get(end), seam.column())) end++;
    return end;
  }

  /** Index of the first of the rows with few words that stand right above the headings. */
  private static int titles(List<Table.Row> rows, Seam seam) {
    int first = seam.start();
    while (first > 0
        && seam.start() - first < MOST_TITLES
        && rows.get(first - 1).cells().size() <= 2
        && !isFilled(rows.get(first - 1), seam.column())) {
      first--;
    }
    return first;
  }
}
