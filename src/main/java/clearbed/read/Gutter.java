package clearbed.read;

import clearbed.read.Line.Segment;
import clearbed.read.TextFlow.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * A blank that runs down between lines, and what speaks for its being the one between two columns
 * of text: paragraphs begin on one side of it in the middle of paragraphs of the other. The cells
 * of a row begin together.
 */
final class Gutter {
  /** Of the font's size: middles of cells this near to each other are level. */
  private static final double LEVEL = 0.25;

  /** Of the font's size: lines nearer than this stand in each other's way, were it one text. */
  private static final double OFF_LEVEL = 0.8;

  /** Lines above and below that may be so near. */
  private static final int NEAR = 3;

  private final List<Line> lines;
  private final TextFlow flow;
  private final double x;
  private final List<Segment> left = new ArrayList<>();
  private final List<Segment> right = new ArrayList<>();
  private int apart;
  private int together;
  private int shared;

  /**
   * @param lines none of which crosses x
   */
  Gutter(List<Line> lines, TextFlow flow, double x) {
    this.lines = lines;
    this.flow = flow;
    this.x = x;
    for (Line line : lines) {
      for (Segment s : line.segments()) (s.middle() < x ? left : right).add(s);
    }
    boolean first = true;
    for (int i = 0; i < lines.size(); i++) {
      List<Segment> l = outwards(i, true);
      List<Segment> r = outwards(i, false);
      if (l.isEmpty() || r.isEmpty()) {
        beside(i, decisive(l.isEmpty() ? r : l), l.isEmpty());
      } else {
        shared++;
        if (!first) compare(decisive(l), decisive(r));
        first = false;
      }
    }
  }

  /** The segments of a line on one side, from the gutter outwards. */
  private List<Segment> outwards(int line, boolean toLeft) {
    List<Segment> side = new ArrayList<>();
    for (Segment s : lines.get(line).segments()) {
      if (s.middle() < x != toLeft) continue;
      if (toLeft) side.add(0, s);
      else side.add(s);
    }
    return side;
  }

  /** The first that shows whether it begins something. */
  private Segment decisive(List<Segment> outwards) {
    for (Segment s : outwards) if (flow.turn(s) != Turn.UNKNOWN) return s;
    return outwards.get(0);
  }

  private void compare(Segment l, Segment r) {
    if (flow.opens(l) && flow.opens(r)) together++;
    if (flow.opens(l) && flow.runsOn(r) || flow.runsOn(l) && flow.opens(r)) apart++;
  }

  /** Lines of one row are level; so are their middles where cells are centred. */
  private void beside(int i, Segment s, boolean toLeft) {
    if (!flow.opens(s)) return;
    Segment near = null;
    for (int k = Math.max(0, i - NEAR); k < lines.size() && k <= i + NEAR; k++) {
      double away = Math.abs(lines.get(k).baseline() - lines.get(i).baseline());
      if (k == i || away > OFF_LEVEL * s.size()) continue;
      for (Segment other : outwards(k, toLeft)) {
        if (near == null || away(other, s) < away(near, s)) near = other;
      }
    }
    if (near == null) return;
    double[] item = extent(near);
    double[] own = extent(s);
    boolean centred = Math.abs(item[0] + item[1] - own[0] - own[1]) <= 2 * LEVEL * s.size();
    if (centred && opening(item, s, !toLeft) == 0) together++;
    else apart++;
  }

  /** How many lines other than that of a segment begin something between two heights. */
  private long opening(double[] item, Segment s, boolean toLeft) {
    return (toLeft ? left : right)
        .stream()
            .filter(o -> flow.opens(o) && away(o, s) > OFF_LEVEL * s.size())
            .filter(o -> o.baseline() > item[0] - LEVEL && o.baseline() < item[1] + LEVEL)
            .count();
  }

  private static double away(Segment a, Segment b) {
    return Math.abs(a.baseline() - b.baseline());
  }

  /** Heights of the first and the last line of the paragraph, or cell, that a segment is in. */
  private double[] extent(Segment s) {
    Segment first = s;
    while (flow.runsOn(first) && flow.above(first) != null) first = flow.above(first);
    Segment last = s;
    for (Segment t : s.middle() < x ? left : right) {
      if (flow.runsOn(t) && flow.above(t) == last) last = t;
    }
    return new double[] {first.baseline(), last.baseline()};
  }

  List<Line> side(boolean toLeft) {
    List<Line> side = new ArrayList<>();
    for (Line line : lines) {
      List<Segment> own = line.segments().stream().filter(s -> s.middle() < x == toLeft).toList();
      if (!own.isEmpty()) side.add(Line.apart(own));
    }
    return side;
  }

  double leftOfRight() {
    return right.stream().mapToDouble(Segment::x0).min().orElse(x);
  }

  double leftOfLeft() {
    return left.stream().mapToDouble(Segment::x0).min().orElse(x);
  }

  double width() {
    return leftOfRight() - left.stream().mapToDouble(Segment::x1).max().orElse(x);
  }

  boolean hasBothSides() {
    return !left.isEmpty() && !right.isEmpty();
  }

  /** Whether it lies between the marks of a list and their words. */
  boolean partsMarks() {
    for (Line line : lines) {
      for (int k = 0; k + 1 < line.segments().size(); k++) {
        boolean here =
            line.segments().get(k).middle() < x && line.segments().get(k + 1).middle() > x;
        if (here && HangingMarks.isMark(line, k) && !HangingMarks.isMark(line, k + 1)) return true;
      }
    }
    return false;
  }

  /** Rows of cells on both sides that begin together. */
  boolean partsCells() {
    return together >= 3 && apart * 4 <= together && !isContents();
  }

  /** A table of contents or an index: dots lead to the numbers of pages. */
  private boolean isContents() {
    return lines.stream().filter(l -> l.text().contains("....")).count() * 2 > lines.size();
  }

  boolean partsRows() {
    return partsCells() && apart == 0 && shared * 5 >= lines.size() * 3 && !partsLists();
  }

  /** Running text on one side at least, which pays no heed to what begins on the other. */
  boolean partsText() {
    boolean text = flow.isText(left) || flow.isText(right);
    return text && apart >= 2 && apart > together || partsLists();
  }

  /** Each side has a list of its own, or text is beside a list. */
  private boolean partsLists() {
    return isList(false) && (isList(true) || flow.isText(left));
  }

  private boolean isList(boolean toLeft) {
    double edge = toLeft ? leftOfLeft() : leftOfRight();
    List<ListMark> marks = new ArrayList<>();
    for (Line line : lines) {
      for (int k = 0; k < line.segments().size(); k++) {
        Segment s = line.segments().get(k);
        if (Math.abs(s.x0() - edge) > s.size() || !HangingMarks.isMark(line, k)) continue;
        ListMark mark = ListMark.of(s.text());
        if (mark != null) marks.add(mark);
      }
    }
    return ListMark.isSequence(marks);
  }

  /** Where a column is known to begin on this page or another, less is asked of it. */
  boolean mayPartColumns() {
    return apart >= together && letters(left) >= 18 && letters(right) >= 18;
  }

  private static double letters(List<Segment> segments) {
    return segments.stream().mapToInt(s -> s.text().length()).average().orElse(0);
  }
}
