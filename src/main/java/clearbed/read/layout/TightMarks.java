package clearbed.read.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Marks of lists that stand so near to their words that they look like the first of them. Such a
 * list counts up down one edge, and its other lines are set in from there.
 */
final class TightMarks {
  /** Points by which figures of one and of two places may begin apart. */
  private static final double EDGE = 7;

  private static final int FEWEST = 3;

  private TightMarks() {}

  /** The lines, with the words of such marks known to hang. */
  static List<Line> known(List<Line> column) {
    List<Line> known = new ArrayList<>(column);
    boolean[] seen = new boolean[column.size()];
    for (int i = 0; i < column.size(); i++) {
      if (seen[i] || mark(column.get(i)) == null) continue;
      List<Integer> list = countingUp(column, i);
      for (int k : list) seen[k] = true;
      if (list.size() < FEWEST || !isSetIn(column, list)) continue;
      for (int k : list) {
        Line line = column.get(k);
        if (!line.hasMark()) known.set(k, line.withHang(hang(line)));
      }
    }
    return known;
  }

  private static ListMark mark(Line line) {
    String text = line.segments().get(0).text();
    int blank = text.indexOf(' ');
    return blank < 0 ? null : ListMark.of(text.substring(0, blank));
  }

  /** The lines down one edge whose marks follow each other. */
  private static List<Integer> countingUp(List<Line> column, int first) {
    List<Integer> list = new ArrayList<>();
    list.add(first);
    ListMark last = mark(column.get(first));
    for (int i = first + 1; i < column.size(); i++) {
      Line line = column.get(i);
      ListMark mark = mark(line);
      boolean follows = mark != null && mark.follows(last);
      if (!follows || Math.abs(line.x0() - column.get(first).x0()) > EDGE) continue;
      list.add(i);
      last = mark;
    }
    return list;
  }

  /** The lines between the marks begin farther right, and no sentence runs on into a mark. */
  private static boolean isSetIn(List<Line> column, List<Integer> list) {
    if (list.stream().anyMatch(i -> column.get(i).hasMark())) return true;
    TextFlow flow = new TextFlow(column);
    long runOn = list.stream().filter(i -> flow.runsOn(column.get(i).segments().get(0))).count();
    if (runOn * 2 >= list.size()) return false;
    double edge = list.stream().mapToDouble(i -> column.get(i).x0()).max().orElse(0);
    int set = 0;
    int not = 0;
    for (int i = list.get(0); i < list.get(list.size() - 1); i++) {
      if (list.contains(i)) continue;
      if (column.get(i).x0() > edge + 2) set++;
      else not++;
    }
    return not * 4 <= set + list.size();
  }

  private static double hang(Line line) {
    String text = line.segments().get(0).text();
    double width = line.segments().get(0).x1() - line.x0();
    return line.x0() + width * (text.indexOf(' ') + 1) / text.length();
  }
}
