package clearbed.read.layout;

import clearbed.read.layout.Line.Segment;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds tables without drawn cells: lines one after the other whose words stand in columns. A
 * number before a paragraph is no column.
 */
public final class AlignedTables {
  /** Points, or character widths; an edge this near to another is in line with it. */
  private static final double ALIGNED = 4;

  private static final int LOOK_AHEAD = 3;

  private final List<Line> lines;
  private final List<Ruling> levels;
  private final int page;

  public AlignedTables(List<Line> lines, List<Ruling> rulings, int page) {
    this.lines = lines.stream().map(AlignedTables::withLabelJoined).toList();
    this.levels = rulings.stream().filter(Ruling::isLevel).toList();
    this.page = page;
  }

  /** The lines with any number joined to the words it stands before. */
  public List<Line> lines() {
    return lines;
  }

  /**
   * A table and the lines it takes.
   *
   * @param end index after its last line
   */
  public record FoundTable(PdfTable table, int end) {}

  /** The table that begins at a line, or null. */
  public FoundTable at(int start) {
    if (!isSeveral(start) || !hasLikeNeighbour(start)) return null;
    int end = start + 1;
    List<Segment> known = new ArrayList<>(lines.get(start).segments());
    while (end < lines.size() && belongs(end, known)) {
      if (isSeveral(end)) known.addAll(lines.get(end).segments());
      end++;
    }
    while (end > start + 1 && !isSeveral(end - 1) && !isContinuation(end - 1, known)) end--;
    List<Line> block = lines.subList(start, end);
    AlignedColumns columns = AlignedColumns.of(block);
    if (columns == null || !isTable(block, columns)) return null;
    return new FoundTable(new AlignedRows(block, columns, levels, page).table(), end);
  }

  private static Line withLabelJoined(Line line) {
    List<Segment> s = line.segments();
    boolean labelled = s.size() == 2 && LineKind.isLabel(s.get(0).text());
    return labelled ? HangingMarks.join(line) : line;
  }

  private boolean isSeveral(int i) {
    return lines.get(i).segments().size() >= 2;
  }

  private boolean hasLikeNeighbour(int start) {
    for (int i = start + 1; i < lines.size() && i <= start + LOOK_AHEAD; i++) {
      if (isSeveral(i) && shared(lines.get(i), lines.get(start).segments()) >= 2) return true;
    }
    return false;
  }

  private boolean belongs(int i, List<Segment> known) {
    Line line = lines.get(i);
    double gap = line.baseline() - lines.get(i - 1).baseline();
    if (gap > 4.5 * line.size()) return false;
    if (isSeveral(i)) return shared(line, known) >= (line.segments().size() > 2 ? 2 : 1);
    return isContinuation(i, known) || isBetweenRows(i, known);
  }

  /** One value alone: the rest of a value above it, or the only value of its row. */
  private boolean isContinuation(int i, List<Segment> known) {
    Segment s = lines.get(i).segments().get(0);
    double gap = lines.get(i).baseline() - lines.get(i - 1).baseline();
    if (gap > 1.8 * s.size() || LineKind.opensItem(s.text())) return false;
    boolean inLine = known.stream().anyMatch(k -> Math.abs(k.x0() - s.x0()) <= ALIGNED);
    boolean crosses = known.stream().anyMatch(k -> k.x0() > s.x0() + ALIGNED && k.x0() < s.x1());
    return inLine && !crosses;
  }

  /** A heading within a table: more rows in the same columns follow it. */
  private boolean isBetweenRows(int i, List<Segment> known) {
    for (int k = i + 1; k < lines.size() && k <= i + 2; k++) {
      double gap = lines.get(k).baseline() - lines.get(k - 1).baseline();
      if (gap > 2.5 * lines.get(k).size()) return false;
      if (isSeveral(k)) return shared(lines.get(k), known) >= 2;
    }
    return false;
  }

  private static int shared(Line line, List<Segment> known) {
    int shared = 0;
    for (Segment s : line.segments()) {
      boolean inLine =
          known.stream()
              .anyMatch(
                  k ->
                      Math.abs(k.x0() - s.x0()) <= ALIGNED
                          || Math.abs(k.x1() - s.x1()) <= ALIGNED / 2
                          || Math.abs(k.middle() - s.middle()) <= ALIGNED / 2);
      if (inLine) shared++;
    }
    return shared;
  }

  private static boolean isTable(List<Line> block, AlignedColumns columns) {
    long several = block.stream().filter(l -> l.segments().size() >= 2).count();
    long leaders = block.stream().filter(l -> l.text().contains("....")).count();
    if (leaders * 2 > block.size()) return false;
    // Two numbered notes beside something else are no table; a numbered schedule is longer.
    boolean notes = block.stream().allMatch(l -> LineKind.isLabel(l.segments().get(0).text()));
    if (notes && several < 4) return false;
    return several >= (columns.count() > 2 ? 2 : 3);
  }
}
