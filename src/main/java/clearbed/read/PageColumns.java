package clearbed.read;

import clearbed.read.Line.Segment;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Puts the lines of a page set in columns into reading order. Columns of prose are full from edge
 * to edge line after line; a table's are not, and stay together.
 */
final class PageColumns {
  private static final int FEWEST_LINES = 6;
  private static final double STEP = 2;
  private static final double GUTTER = 4;

  /** Mean letters in a line of prose; table columns are narrower or less full. */
  private static final int LETTERS = 18;

  private PageColumns() {}

  /** Streams of lines to be read one after the other. */
  static List<List<Line>> of(List<Line> lines) {
    if (lines.size() < FEWEST_LINES) return List.of(lines);
    double x0 = lines.stream().mapToDouble(Line::x0).min().orElse(0);
    double x1 = lines.stream().mapToDouble(Line::x1).max().orElse(0);
    int[] best = {0, 0};
    double gutter = 0;
    for (double x = x0 + 0.25 * (x1 - x0); x < x0 + 0.75 * (x1 - x0); x += STEP) {
      int[] run = longestRun(lines, x);
      if (run[1] - run[0] > best[1] - best[0] && isProse(lines.subList(run[0], run[1]), x)) {
        best = run;
        gutter = x;
      }
    }
    return best[1] == 0 ? List.of(lines) : split(lines, best, gutter);
  }

  private static int[] longestRun(List<Line> lines, double x) {
    int[] best = {0, 0};
    int start = 0;
    for (int i = 0; i <= lines.size(); i++) {
      if (i < lines.size() && isClear(lines.get(i), x)) continue;
      if (i - start > best[1] - best[0]) best = new int[] {start, i};
      start = i + 1;
    }
    return best;
  }

  private static boolean isClear(Line line, double x) {
    for (Segment s : line.segments()) if (s.x0() < x + GUTTER && s.x1() > x - GUTTER) return false;
    return true;
  }

  private static boolean isProse(List<Line> run, double x) {
    List<Line> left = side(run, x, true);
    List<Line> right = side(run, x, false);
    return isProse(left) && isProse(right) && alike(left, right);
  }

  private static boolean isProse(List<Line> side) {
    if (side.size() < FEWEST_LINES) return false;
    double x0 = side.stream().mapToDouble(Line::x0).min().orElse(0);
    double x1 = side.stream().mapToDouble(Line::x1).max().orElse(0);
    double[] widths = side.stream().mapToDouble(l -> (l.x1() - x0) / (x1 - x0)).sorted().toArray();
    double letters = side.stream().mapToInt(l -> l.text().length()).average().orElse(0);
    long single = side.stream().filter(l -> isOneRun(l)).count();
    return widths[widths.length / 2] > 0.72 && letters > LETTERS && single >= 0.8 * side.size();
  }

  private static boolean isOneRun(Line line) {
    List<Segment> s = line.segments();
    return s.size() == 1 || s.size() == 2 && LineKind.isLabel(s.get(0).text());
  }

  private static boolean alike(List<Line> left, List<Line> right) {
    double a = width(left);
    double b = width(right);
    return Math.min(a, b) > 0.5 * Math.max(a, b);
  }

  private static double width(List<Line> lines) {
    double[] x = lines.stream().mapToDouble(l -> l.x1() - l.x0()).sorted().toArray();
    return Arrays.stream(x).max().orElse(0);
  }

  private static List<Line> side(List<Line> run, double x, boolean left) {
    List<Line> side = new ArrayList<>();
    for (Line line : run) {
      List<Segment> s =
          line.segments().stream().filter(segment -> segment.middle() < x == left).toList();
      if (!s.isEmpty()) side.add(Line.apart(s));
    }
    return side;
  }

  private static List<List<Line>> split(List<Line> lines, int[] run, double x) {
    List<List<Line>> streams = new ArrayList<>();
    List<Line> between = lines.subList(run[0], run[1]);
    if (run[0] > 0) streams.addAll(of(lines.subList(0, run[0])));
    streams.addAll(of(side(between, x, true)));
    streams.addAll(of(side(between, x, false)));
    if (run[1] < lines.size()) streams.addAll(of(lines.subList(run[1], lines.size())));
    return streams;
  }
}
