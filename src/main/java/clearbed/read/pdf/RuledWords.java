package clearbed.read.pdf;

import clearbed.read.layout.Hyphens;
import clearbed.read.layout.Line;
import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.PdfTable.PdfCell;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The words in the cells of a ruled grid. */
final class RuledWords {
  /** Rows drawn without lines between them are told apart when a column fills this many. */
  private static final int LINES_OF_UNRULED_ROWS = 2;

  private static final int MOST_LINES = 40;
  private static final int FEW_LINES = 6;

  /** Of the page. */
  private static final double LARGE = 0.25;

  private final RuledGrid grid;
  private final int page;
  private final Map<Long, List<PlacedWords>> byCell = new LinkedHashMap<>();

  private record PlacedWords(Segment segment, Line line) {}

  RuledWords(RuledGrid grid, int page) {
    this.grid = grid;
    this.page = page;
  }

  /** Takes the words if they stand within the grid. */
  void add(Segment segment, Line line) {
    int row = grid.row(line.middle());
    int column = grid.column(segment.middle());
    if (row < 0 || column < 0) return;
    int[] first = firstOfMerged(row, column);
    long key = first[0] * 1000L + first[1];
    byCell.computeIfAbsent(key, k -> new ArrayList<>()).add(new PlacedWords(segment, line));
  }

  /** The words that are in the cells, to be taken out of the running text. */
  List<Segment> segments() {
    return byCell.values().stream().flatMap(List::stream).map(PlacedWords::segment).toList();
  }

  /**
   * Leaves out cells so large or full that they are the page within its border, not a value.
   *
   * @param pageArea square points
   */
  void leaveOutPage(double pageArea) {
    byCell
        .entrySet()
        .removeIf(
            cell -> {
              int lines = cell.getValue().size();
              int row = (int) (cell.getKey() / 1000);
              int column = (int) (cell.getKey() % 1000);
              boolean large = grid.area(row, column) > LARGE * pageArea && lines > FEW_LINES;
              return large || lines > MOST_LINES;
            });
  }

  /** The lines in each cell. */
  List<List<Line>> boxes() {
    List<List<Line>> boxes = new ArrayList<>();
    for (List<PlacedWords> words : byCell.values()) {
      Map<Line, List<Segment>> byLine = new LinkedHashMap<>();
      for (PlacedWords p : words) {
        byLine.computeIfAbsent(p.line(), k -> new ArrayList<>()).add(p.segment());
      }
      List<Line> lines = new ArrayList<>();
      byLine.forEach((line, segments) -> lines.add(new Line(segments, line.baseline())));
      boxes.add(lines);
    }
    return boxes;
  }

  /** Row and column of the top left cell of the merged area that covers a cell. */
  private int[] firstOfMerged(int row, int column) {
    int r = row;
    int c = column;
    while (c > 0 && !grid.isSplitAfterColumn(r, c - 1)) c--;
    while (r > 0 && !grid.isSplitAfterRow(r - 1, c)) r--;
    while (c > 0 && !grid.isSplitAfterColumn(r, c - 1)) c--;
    return new int[] {r, c};
  }

  List<List<PdfCell>> rows() {
    List<List<PdfCell>> rows = new ArrayList<>();
    for (int r = 0; r < grid.rows(); r++) {
      if (isSeveralRows(r)) rows.addAll(unruledRows(r));
      else rows.add(ruledRow(r));
    }
    // Lines doubled for looks make bands that hold nothing.
    if (rows.stream().allMatch(List::isEmpty)) return List.of();
    while (rows.get(0).isEmpty()) rows.remove(0);
    while (rows.get(rows.size() - 1).isEmpty()) rows.remove(rows.size() - 1);
    return rows;
  }

  private List<PdfCell> ruledRow(int r) {
    List<PdfCell> pieces = new ArrayList<>();
    for (int c = 0; c < grid.columns(); c++) {
      List<PlacedWords> words = byCell.get(r * 1000L + c);
      if (words == null) continue;
      pieces.add(new PdfCell(c, grid.columnSpan(r, c), grid.rowSpan(r, c), text(words), page));
    }
    return pieces;
  }

  private static String text(List<PlacedWords> words) {
    StringBuilder text = new StringBuilder();
    Line last = null;
    for (PlacedWords p : words) {
      if (p.line() == last) text.append(' ').append(p.segment().text());
      else Hyphens.append(text, p.segment().text());
      last = p.line();
    }
    return text.toString();
  }

  /**
   * A table may be ruled around its head and its columns only. Its rows are then told by the first
   * column: several lines in it, each with words beside it.
   */
  private boolean isSeveralRows(int r) {
    if (grid.rows() > 3) return false;
    List<PlacedWords> first = byCell.get(r * 1000L);
    if (first == null || first.size() < LINES_OF_UNRULED_ROWS) return false;
    int beside = 0;
    for (PlacedWords p : first) {
      for (int c = 1; c < grid.columns(); c++) {
        List<PlacedWords> words = byCell.getOrDefault(r * 1000L + c, List.of());
        if (words.stream().anyMatch(w -> w.line() == p.line())) {
          beside++;
          break;
        }
      }
    }
    return beside == first.size() && opensLikeRows(first);
  }

  /** Values that go down a column are alike; the lines of a wrapped value are not. */
  private static boolean opensLikeRows(List<PlacedWords> first) {
    String pattern = null;
    for (PlacedWords p : first) {
      String shape = p.segment().text().replaceAll("\\d+", "#").replaceAll("[^#\\p{Lu}-]", "");
      if (pattern != null && !pattern.equals(shape)) return false;
      pattern = shape;
    }
    return pattern != null && !pattern.isEmpty();
  }

  private List<List<PdfCell>> unruledRows(int r) {
    List<PlacedWords> first = byCell.get(r * 1000L);
    List<List<PdfCell>> rows = new ArrayList<>();
    for (int i = 0; i < first.size(); i++) {
      double from = i == 0 ? -1 : first.get(i).line().baseline() - 1;
      double to = i + 1 < first.size() ? first.get(i + 1).line().baseline() - 1 : Double.MAX_VALUE;
      List<PdfCell> row = new ArrayList<>();
      for (int c = 0; c < grid.columns(); c++) {
        List<PlacedWords> words =
            byCell.getOrDefault(r * 1000L + c, List.of()).stream()
                .filter(w -> w.line().baseline() >= from && w.line().baseline() < to)
                .toList();
        if (!words.isEmpty()) row.add(new PdfCell(c, 1, 1, text(words), page));
      }
      rows.add(row);
    }
    return rows;
  }
}
