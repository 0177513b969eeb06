package clearbed.report.view;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** The tables of the documents as grids, a long one in parts. */
final class TableGrids {
  /**
   * More rows of one table are of no use to a reader; those with findings are shown all the same.
   */
  private static final int MOST_ROWS = 2_000;

  /** Rows that are laid out together. */
  private static final int ROWS_TOGETHER = 40;

  private final Anchors anchors;
  private final FindingPlaces findings;
  private final TextLimit limit;

  TableGrids(Anchors anchors, FindingPlaces findings, TextLimit limit) {
    this.anchors = anchors;
    this.findings = findings;
    this.limit = limit;
  }

  /** True for a part that was cut off for its length. */
  static boolean isFull(Page.ShownPiece part) {
    return part.grid().lines().size() >= ROWS_TOGETHER;
  }

  List<Page.ShownPiece> of(Table table, Endings endings) {
    TreeSet<Integer> columns = new TreeSet<>();
    for (Table.Row row : table.rows())
      for (Table.Cell cell : row.cells()) if (!cell.text().isBlank()) columns.add(cell.column());
    List<String> letters = columns.stream().map(c -> letters(table, c)).toList();
    List<Page.ShownPiece> out = new ArrayList<>();
    List<Page.ShownRow> lines = new ArrayList<>();
    List<Integer> onTable = findings.taken(table.origin());
    int shown = 0;
    int left = 0;
    for (Table.Row row : table.rows()) {
      if (row.cells().stream().allMatch(c -> c.text().isBlank())) continue;
      Page.ShownRow line = line(table, row, List.copyOf(columns), endings);
      if (++shown > MOST_ROWS && line.findings().isEmpty() || limit.isReached()) {
        left++;
        continue;
      }
      lines.add(line);
      if (lines.size() < ROWS_TOGETHER) continue;
      out.add(grid(table, letters, lines, 0, out.isEmpty() ? onTable : List.of(), out.isEmpty()));
      lines = new ArrayList<>();
    }
    if (!lines.isEmpty() || left > 0 || out.isEmpty())
      out.add(
          grid(table, letters, lines, left, out.isEmpty() ? onTable : List.of(), out.isEmpty()));
    return out;
  }

  private static String letters(Table table, int column) {
    if (table.turned()) return String.valueOf(column + 1);
    String address = Table.address(1, column);
    return address.substring(0, address.length() - 1);
  }

  private Page.ShownPiece grid(
      Table table,
      List<String> letters,
      List<Page.ShownRow> lines,
      int left,
      List<Integer> findings,
      boolean first) {
    String sheet = table.origin().sheet();
    String name = sheet == null ? "Table" : "Sheet " + Shown.line(sheet);
    String id = first ? anchors.at(table.origin()) : "";
    Page.ShownGrid grid =
        new Page.ShownGrid(first ? name : name + ", continued", letters, lines, left);
    return new Page.ShownPiece(id, 0, "", "", List.of(), grid, findings);
  }

  private Page.ShownRow line(Table table, Table.Row row, List<Integer> columns, Endings endings) {
    Page.ShownRun whole = endings.ofRow(table, row);
    List<Page.Box> boxes = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      int column = columns.get(i);
      Table.Cell there = row.at(column);
      // A finding may stand at an empty cell.
      Table.Cell cell = there == null ? Table.Cell.of(row.number(), column, "") : there;
      int span = 1;
      while (i + 1 < columns.size() && columns.get(i + 1) < cell.column() + cell.columnSpan()) {
        span++;
        i++;
      }
      boxes.add(box(table, cell, span, whole, endings));
    }
    List<Integer> findings = boxes.stream().flatMap(box -> box.findings().stream()).toList();
    return new Page.ShownRow(row.number(), boxes, findings);
  }

  private Page.Box box(
      Table table, Table.Cell cell, int span, Page.ShownRun whole, Endings endings) {
    if (cell.continued())
      return new Page.Box("", span, new Page.ShownRun("above", "\u2033", ""), List.of());
    Origin origin = table.origin(cell);
    List<Integer> own = findings.taken(origin);
    limit.count(cell.text().length() + 40);
    Page.ShownRun words = endings.ofCell(cell, origin, whole);
    return new Page.Box(anchors.at(origin), span, words, own);
  }
}
