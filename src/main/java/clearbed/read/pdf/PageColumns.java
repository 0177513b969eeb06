package clearbed.read.pdf;

import clearbed.read.layout.HangingMarks;
import clearbed.read.layout.Line;
import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.PdfTable;
import clearbed.read.layout.TextFlow;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Puts the lines of a page set in columns into reading order: each column from top to bottom, and
 * what stands across the columns between them. The columns of a table stay together.
 */
final class PageColumns {
  private static final int FEWEST_LINES = 6;
  private static final double CLEAR = 3;

  /** Points by which the lines of a column may begin apart. */
  private static final double SAME_LEFT = 1;

  private static final double WIDER_MARK = 6;

  /** On a drawing full of short labels lines begin everywhere; those of columns begin together. */
  private static final int MOST_EDGES = 60;

  /** Points by which columns may begin farther left or right on another page. */
  private static final double SAME_EDGE = 6;

  /** Mean letters in a line of prose; table columns are narrower or less full. */
  private static final int LETTERS = 18;

  /** Of the font's size: a blank across the page that high parts what may be different. */
  private static final double BREAK = 2.5;

  private final List<PdfTable> tables;
  private final List<Double> known;

  /**
   * Lines to be read one after the other.
   *
   * @param goesOn true when it is the column to the right of the one before
   */
  record PageColumn(List<Line> lines, boolean goesOn) {
    /** Those of the tables that stand in this column rather than in a later one. */
    List<PdfTable> tables(List<PageColumn> later, List<PdfTable> tables) {
      List<PdfTable> own = new ArrayList<>();
      for (PdfTable table : tables) {
        boolean over = lines.get(lines.size() - 1).baseline() > table.top();
        boolean isAnywhere = spans(table) || later.stream().anyMatch(c -> c.spans(table));
        boolean isHere = spans(table) || !isAnywhere;
        if (isHere && (over || later.stream().noneMatch(c -> c.spans(table) || !isAnywhere))) {
          own.add(table);
        }
      }
      return own;
    }

    private boolean spans(PdfTable table) {
      return lines.stream().anyMatch(l -> l.x0() < table.right() && l.x1() > table.left());
    }
  }

  /** Lines that a gutter parts, by their places in the list. */
  private record Cut(int from, int to, Gutter gutter) {
    int length() {
      return to - from;
    }
  }

  /**
   * @param tables that are drawn on the page; their words are not in its lines
   * @param known left edges of columns found before, to which those found here are added
   */
  PageColumns(List<PdfTable> tables, List<Double> known) {
    this.tables = tables;
    this.known = known;
  }

  List<PageColumn> of(List<Line> lines) {
    List<PageColumn> columns = new ArrayList<>();
    add(lines, false, columns);
    return columns;
  }

  private void add(List<Line> lines, boolean goesOn, List<PageColumn> columns) {
    if (lines.isEmpty()) return;
    Cut cut = best(lines);
    if (cut == null) {
      columns.add(new PageColumn(lines, goesOn));
      return;
    }
    Gutter gutter = cut.gutter();
    learn(gutter);
    add(lines.subList(0, cut.from()), goesOn, columns);
    add(gutter.side(true), goesOn && cut.from() == 0, columns);
    add(gutter.side(false), true, columns);
    add(lines.subList(cut.to(), lines.size()), false, columns);
  }

  /** Columns are often as far from each other as the first two. */
  private void learn(Gutter gutter) {
    double right = gutter.leftOfRight();
    learn(right);
    learn(2 * right - gutter.leftOfLeft());
  }

  private void learn(double edge) {
    if (known.stream().noneMatch(k -> Math.abs(k - edge) <= SAME_LEFT)) known.add(edge);
  }

  private Cut best(List<Line> lines) {
    TextFlow flow = new TextFlow(lines);
    Cut best = null;
    List<int[]> lastRuns = List.of();
    int lastLeft = -1;
    for (double x : beforeEdges(lines)) {
      List<int[]> runs = runs(lines, x);
      int left = segmentsLeftOf(lines, x);
      boolean same = left == lastLeft && isSame(runs, lastRuns);
      lastRuns = runs;
      lastLeft = left;
      if (same) continue;
      for (int[] run : runs) {
        if (best != null && run[1] - run[0] < best.length()) continue;
        Cut cut = cut(lines, run, x, flow);
        if (cut != null && isBetter(cut, best)) best = cut;
      }
    }
    return best;
  }

  /** Places right before those where several lines begin, from the left. */
  private Set<Double> beforeEdges(List<Line> lines) {
    Set<Double> before = new TreeSet<>();
    for (double edge : known) before.add(edge - CLEAR);
    edges(lines).stream()
        .sorted(Comparator.comparingInt(Edge::lines).reversed())
        .limit(MOST_EDGES)
        .forEach(
            edge -> {
              before.add(edge.x() - CLEAR);
              // Marks of two figures may begin before those of one.
              before.add(edge.x() - CLEAR - WIDER_MARK);
            });
    return before;
  }

  /** A place where lines begin. */
  private record Edge(double x, int lines) {}

  private static List<Edge> edges(List<Line> lines) {
    double[] lefts =
        lines.stream().flatMap(l -> l.segments().stream()).mapToDouble(Segment::x0).toArray();
    Arrays.sort(lefts);
    List<Edge> edges = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= lefts.length; i++) {
      if (i < lefts.length && lefts[i] - lefts[from] <= SAME_LEFT) continue;
      if (i - from > 1) edges.add(new Edge(lefts[from], i - from));
      from = i;
    }
    return edges;
  }

  private static boolean isSame(List<int[]> a, List<int[]> b) {
    if (a.size() != b.size()) return false;
    for (int i = 0; i < a.size(); i++) if (!Arrays.equals(a.get(i), b.get(i))) return false;
    return true;
  }

  private static boolean isBetter(Cut cut, Cut best) {
    if (best == null || cut.length() > best.length()) return true;
    return cut.length() == best.length() && cut.gutter().width() > best.gutter().width();
  }

  private static int segmentsLeftOf(List<Line> lines, double x) {
    int n = 0;
    for (Line line : lines) for (Segment s : line.segments()) if (s.middle() < x) n++;
    return n;
  }

  /** Stretches of lines that leave a height of the page clear. */
  private List<int[]> runs(List<Line> lines, double x) {
    List<int[]> runs = new ArrayList<>();
    int start = 0;
    for (int i = 0; i <= lines.size(); i++) {
      boolean clear = i < lines.size() && isClear(lines.get(i), x);
      boolean barred = clear && i > start && isBarred(lines.get(i - 1), lines.get(i), x);
      if (clear && !barred) continue;
      if (i - start > 1) runs.add(new int[] {start, i});
      start = barred ? i : i + 1;
    }
    return runs;
  }

  private static boolean isClear(Line line, double x) {
    for (Segment s : line.segments()) if (s.x0() < x + CLEAR && s.x1() > x - CLEAR) return false;
    return true;
  }

  /** A drawn table across the columns. */
  private boolean isBarred(Line above, Line below, double x) {
    for (PdfTable table : tables) {
      boolean across = table.left() < x - CLEAR && table.right() > x + CLEAR;
      double middle = (table.top() + table.bottom()) / 2;
      if (across && middle > above.baseline() && middle < below.baseline()) return true;
    }
    return false;
  }

  private Cut cut(List<Line> lines, int[] run, double x, TextFlow flow) {
    Cut longest = null;
    for (int[] part : withoutTables(lines, run, x, flow)) {
      Gutter gutter = new Gutter(lines.subList(part[0], part[1]), flow, x);
      if (!gutter.hasBothSides() || gutter.partsMarks() || !isBetweenColumns(gutter)) continue;
      Cut cut = new Cut(part[0], part[1], gutter);
      if (longest == null || cut.length() > longest.length()) longest = cut;
    }
    return longest;
  }

  /** The stretches of a run between tables whose columns the same blank parts. */
  private static List<int[]> withoutTables(List<Line> lines, int[] run, double x, TextFlow flow) {
    List<int[]> parts = new ArrayList<>();
    int start = run[0];
    int from = run[0];
    for (int i = run[0] + 1; i <= run[1]; i++) {
      if (i < run[1] && !isBreak(lines, i)) continue;
      boolean table = i - from >= 3 && new Gutter(lines.subList(from, i), flow, x).partsRows();
      if (table) {
        if (from > start) parts.add(new int[] {start, from});
        start = i;
      }
      from = i;
    }
    if (run[1] > start) parts.add(new int[] {start, run[1]});
    return parts;
  }

  private static boolean isBreak(List<Line> lines, int i) {
    double gap = lines.get(i).baseline() - lines.get(i - 1).baseline();
    return gap > BREAK * lines.get(i).size();
  }

  private boolean isBetweenColumns(Gutter gutter) {
    if (gutter.partsText() || gutter.partsNotesFromShorter()) return true;
    double right = gutter.leftOfRight();
    boolean isKnown = known.stream().anyMatch(k -> Math.abs(k - right) <= SAME_EDGE);
    if (isKnown && gutter.mayPartColumns()) return true;
    if (gutter.length() < FEWEST_LINES) return false;
    List<Line> left = gutter.side(true);
    List<Line> other = gutter.side(false);
    return !gutter.partsCells() && isProse(left) && isProse(other) && alike(left, other);
  }

  /** Full from edge to edge, line after line. */
  private static boolean isProse(List<Line> side) {
    if (side.size() < FEWEST_LINES) return false;
    double x0 = side.stream().mapToDouble(Line::x0).min().orElse(0);
    double x1 = side.stream().mapToDouble(Line::x1).max().orElse(0);
    double[] widths = side.stream().mapToDouble(l -> (l.x1() - x0) / (x1 - x0)).sorted().toArray();
    double letters = side.stream().mapToInt(l -> l.text().length()).average().orElse(0);
    long single = side.stream().filter(PageColumns::isOneRun).count();
    return widths[widths.length / 2] > 0.72 && letters > LETTERS && single >= 0.8 * side.size();
  }

  private static boolean isOneRun(Line line) {
    List<Segment> s = line.segments();
    return s.size() == 1 || s.size() == 2 && HangingMarks.isMark(line, 0);
  }

  private static boolean alike(List<Line> left, List<Line> right) {
    double a = width(left);
    double b = width(right);
    return Math.min(a, b) > 0.5 * Math.max(a, b);
  }

  private static double width(List<Line> lines) {
    return lines.stream().mapToDouble(l -> l.x1() - l.x0()).max().orElse(0);
  }
}
