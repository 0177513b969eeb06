package clearbed.read.layout;

import clearbed.read.layout.Line.Segment;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The columns that the fullest lines of a table without drawn cells stand in. */
final class AlignedColumns {
  private static final double SAME_EDGE = 5;

  private final List<double[]> extents;

  private AlignedColumns(List<double[]> extents) {
    this.extents = extents;
  }

  /** Null when the words make no columns. */
  static AlignedColumns of(List<Line> lines) {
    int most = lines.stream().mapToInt(l -> l.segments().size()).max().orElse(0);
    List<Line> full = lines.stream().filter(l -> l.segments().size() >= 0.7 * most).toList();
    List<double[]> extents = overlapping(full);
    if (extents.size() < most - 1 || extents.size() < 2) extents = byLeftEdge(full);
    return extents.size() < 2 ? null : new AlignedColumns(extents);
  }

  private static List<double[]> overlapping(List<Line> lines) {
    List<Segment> all = new ArrayList<>();
    for (Line line : lines) all.addAll(line.segments());
    all.sort(Comparator.comparingDouble(Segment::x0));
    List<double[]> extents = new ArrayList<>();
    for (Segment s : all) {
      double[] last = extents.isEmpty() ? null : extents.get(extents.size() - 1);
      if (last != null && s.x0() < last[1]) last[1] = Math.max(last[1], s.x1());
      else extents.add(new double[] {s.x0(), s.x1()});
    }
    return extents;
  }

  /** For columns whose words reach into the next column's room here and there. */
  private static List<double[]> byLeftEdge(List<Line> lines) {
    List<Double> edges = new ArrayList<>();
    for (Line line : lines) for (Segment s : line.segments()) edges.add(s.x0());
    edges.sort(Comparator.naturalOrder());
    List<double[]> columns = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= edges.size(); i++) {
      if (i < edges.size() && edges.get(i) - edges.get(i - 1) <= SAME_EDGE) continue;
      if (i - from >= 0.4 * lines.size()) {
        columns.add(new double[] {edges.get(from), edges.get(i - 1)});
      }
      from = i;
    }
    for (int c = 0; c + 1 < columns.size(); c++) columns.get(c)[1] = columns.get(c + 1)[0] - 1;
    if (!columns.isEmpty()) columns.get(columns.size() - 1)[1] = Double.MAX_VALUE;
    return columns;
  }

  int count() {
    return extents.size();
  }

  List<Double> lefts() {
    return extents.stream().map(e -> e[0]).toList();
  }

  /** First and last column that the words stand in. */
  int[] covered(Segment s) {
    int first = -1;
    int last = -1;
    for (int c = 0; c < extents.size(); c++) {
      double[] e = extents.get(c);
      double common = Math.min(e[1], s.x1()) - Math.max(e[0], s.x0());
      if (common <= 0) continue;
      if (first < 0) first = c;
      last = c;
    }
    if (first >= 0) return new int[] {first, last};
    int nearest = nearest(s.middle());
    return new int[] {nearest, nearest};
  }

  private int nearest(double x) {
    int best = 0;
    double least = Double.MAX_VALUE;
    for (int c = 0; c < extents.size(); c++) {
      double[] e = extents.get(c);
      double distance = x < e[0] ? e[0] - x : Math.max(0, x - e[1]);
      if (distance < least) {
        least = distance;
        best = c;
      }
    }
    return best;
  }
}
