package clearbed.read.layout;

import clearbed.read.layout.Line.Segment;
import java.util.ArrayList;
import java.util.List;

/**
 * Joins the mark that hangs before a note ({@code 1}, {@code A}) to its words. Bare marks are told
 * from the first column of a table by counting up before words that all begin at one place, with no
 * heading over them.
 */
public final class HangingMarks {
  /** Of the font's size, from the mark to the words. */
  static final double REACH = 6;

  private static final double ALIGNED = 4;

  /** Of the font's size, from the headings of a table to its first row. */
  private static final double BELOW_HEADING = 3;

  private HangingMarks() {}

  /** Whether a segment is the mark of the words after it on its line. */
  public static boolean isMark(Line line, int segment) {
    List<Segment> s = line.segments();
    if (segment + 1 >= s.size()) return false;
    Segment mark = s.get(segment);
    Segment words = s.get(segment + 1);
    if (words.x0() - mark.x1() > REACH * words.size()) return false;
    return isMark(mark.text()) && !isMark(words.text());
  }

  private static boolean isMark(String text) {
    return ListMark.of(text) != null || LineKind.isLabel(text);
  }

  /** Lines of one column, with the marks of lists joined to their words. */
  public static List<Line> joined(List<Line> column) {
    List<Line> joined = new ArrayList<>(column);
    boolean[] seen = new boolean[column.size()];
    for (int i = 0; i < column.size(); i++) {
      if (seen[i] || bareMark(column.get(i)) == null) continue;
      List<Integer> list = like(column, i);
      for (int k : list) seen[k] = true;
      if (!isList(column, list)) continue;
      for (int k : list) joined.set(k, join(column.get(k)));
    }
    return TightMarks.known(joined);
  }

  private static ListMark bareMark(Line line) {
    return isMark(line, 0) ? ListMark.of(line.segments().get(0).text()) : null;
  }

  /** The lines with a mark whose words begin where those of a line do. */
  private static List<Integer> like(List<Line> column, int first) {
    double x = column.get(first).segments().get(1).x0();
    List<Integer> like = new ArrayList<>();
    for (int i = first; i < column.size(); i++) {
      Line line = column.get(i);
      if (bareMark(line) != null && Math.abs(line.segments().get(1).x0() - x) <= ALIGNED) {
        like.add(i);
      }
    }
    return like;
  }

  private static boolean isList(List<Line> column, List<Integer> list) {
    List<ListMark> marks = list.stream().map(i -> bareMark(column.get(i))).toList();
    long plain = list.stream().filter(i -> column.get(i).segments().size() == 2).count();
    return ListMark.isSequence(marks) && plain * 2 > list.size() && !isHeaded(column, list.get(0));
  }

  /** A heading over the marks and one over the words make it a table. */
  private static boolean isHeaded(List<Line> column, int first) {
    if (first == 0) return false;
    Line heading = column.get(first - 1);
    Line line = column.get(first);
    double gap = line.baseline() - heading.baseline();
    if (heading.segments().size() < 2 || gap > BELOW_HEADING * line.size()) return false;
    Segment mark = line.segments().get(0);
    Segment words = line.segments().get(1);
    Segment over = heading.segments().get(0);
    boolean overMark = over.x0() < mark.x1() && over.x1() > mark.x0();
    return overMark
        && heading.segments().stream()
            .skip(1)
            .anyMatch(s -> Math.abs(s.x0() - words.x0()) <= ALIGNED || s.x0() > words.x0());
  }

  /** The line with its first two segments as one. */
  static Line join(Line line) {
    List<Segment> s = new ArrayList<>(line.segments());
    Segment mark = s.remove(0);
    s.set(0, s.get(0).after(mark));
    return new Line(s, line.baseline());
  }
}
