package clearbed.read.pdf;

import clearbed.read.layout.Line;
import clearbed.read.layout.Line.Segment;
import clearbed.read.layout.TextFlow;
import clearbed.read.layout.TextFlow.Turn;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether what stands on the two sides of a blank begins together, as the cells of a row do, or
 * each without heed to the other, as paragraphs of two columns do.
 */
final class Agreement {
  /** Of the font's size: middles of cells this near to each other are level. */
  private static final double LEVEL = 0.25;

  /** Of the font's size: lines nearer than this stand in each other's way, were it one text. */
  private static final double OFF_LEVEL = 0.8;

  /** Lines above and below that may be so near. */
  private static final int NEAR = 3;

  private final List<Line> lines;
  private final TextFlow flow;
  private final double x;
  private int apart;
  private int together;
  private int shared;

  /**
   * @param lines none of which crosses x
   */
  Agreement(List<Line> lines, TextFlow flow, double x) {
    this.lines = lines;
    this.flow = flow;
    this.x = x;
    for (int i = 0; i < lines.size(); i++) {
      List<Segment> left = outwards(i, true);
      List<Segment> right = outwards(i, false);
      if (left.isEmpty() || right.isEmpty()) {
        beside(i, decisive(left.isEmpty() ? right : left), left.isEmpty());
      } else {
        // The tops of columns are level whatever is in them.
        if (shared > 0) compare(decisive(left), decisive(right));
        shared++;
      }
    }
  }

  /** Times that something begins on one side in the middle of something on the other. */
  int apart() {
    return apart;
  }

  /** Times that something begins on both sides. */
  int together() {
    return together;
  }

  /** Lines with words on both sides. */
  int shared() {
    return shared;
  }

  /** The segments of a line on one side, from the blank outwards. */
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

  private void compare(Segment left, Segment right) {
    if (flow.opens(left) && flow.opens(right)) together++;
    if (flow.opens(left) && flow.runsOn(right) || flow.runsOn(left) && flow.opens(right)) apart++;
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
    double[] item = flow.extent(near);
    double[] own = flow.extent(s);
    boolean centred = Math.abs(item[0] + item[1] - own[0] - own[1]) <= 2 * LEVEL * s.size();
    if (centred && !isAnotherBeside(i, s, item, !toLeft)) together++;
    else apart++;
  }

  private static double away(Segment a, Segment b) {
    return Math.abs(a.baseline() - b.baseline());
  }

  /** Whether another row than that of a segment begins between two heights. */
  private boolean isAnotherBeside(int line, Segment s, double[] heights, boolean toLeft) {
    int k = line;
    while (k > 0 && lines.get(k - 1).baseline() > heights[0] - LEVEL) k--;
    for (; k < lines.size() && lines.get(k).baseline() < heights[1] + LEVEL; k++) {
      double away = Math.abs(lines.get(k).baseline() - lines.get(line).baseline());
      if (away <= OFF_LEVEL * s.size()) continue;
      if (outwards(k, toLeft).stream().anyMatch(flow::opens)) return true;
    }
    return false;
  }
}
