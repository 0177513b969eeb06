package clearbed.read.layout;

import clearbed.read.layout.Line.Segment;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Tells of each segment whether it begins something or runs on from the segment above it. Running
 * text is wrapped where the next word has no room; a cell ends where its words end.
 */
public final class TextFlow {
  /** What a segment is to the one above it. */
  public enum Turn {
    /** There is a mark, a blank or another kind of letters before it. */
    OPENS,
    /** The one above ended although the first word here had room there. */
    AFTER_SHORT,
    RUNS_ON,
    UNKNOWN
  }

  /** Of the font's size; wrapped lines are closer. */
  private static final double FARTHEST = 2.5;

  /** Letters; lines that are shorter do not show where they were wrapped. */
  private static final int SHORTEST = 12;

  /** Of the font's size; lines of one column begin within this of each other. */
  private static final double SAME_COLUMN = 6;

  /** Lines of running text that were wrapped, at the least, and as a share of those with words. */
  private static final int FEWEST_WRAPS = 3;

  private static final double SHARE = 0.25;

  /** Mean letters in a line of running text; cells of a table are narrower. */
  private static final int LETTERS = 24;

  /** Lines above and below that show how wide a column is. */
  private static final int AROUND = 60;

  private final List<Line> lines;
  private final Map<Segment, Segment> above = new IdentityHashMap<>();
  private final Set<Segment> marks = Collections.newSetFromMap(new IdentityHashMap<>());
  private final Map<Segment, Segment> below = new IdentityHashMap<>();
  private final Map<Segment, Turn> turns = new IdentityHashMap<>();
  private final double pitch;

  public TextFlow(List<Line> lines) {
    this.lines = lines;
    for (int i = 0; i < lines.size(); i++) {
      for (int k = 0; k < lines.get(i).segments().size(); k++) {
        Segment s = lines.get(i).segments().get(k);
        if (HangingMarks.isMark(lines.get(i), k)) marks.add(s);
        Segment over = nearestAbove(i, s);
        if (over != null) above.put(s, over);
      }
    }
    pitch = usualPitch();
    for (int i = 0; i < lines.size(); i++) {
      for (int k = 0; k < lines.get(i).segments().size(); k++) {
        Segment s = lines.get(i).segments().get(k);
        Turn turn = turn(i, k);
        turns.put(s, turn);
        if (turn == Turn.RUNS_ON) below.putIfAbsent(above.get(s), s);
      }
    }
  }

  public Turn turn(Segment s) {
    return turns.get(s);
  }

  /** Whether it is the mark of the words after it. */
  public boolean isMark(Segment s) {
    return marks.contains(s);
  }

  public boolean opens(Segment s) {
    return turn(s) == Turn.OPENS || turn(s) == Turn.AFTER_SHORT;
  }

  public boolean runsOn(Segment s) {
    return turn(s) == Turn.RUNS_ON;
  }

  /** Heights of the first and the last line of the paragraph, or cell, that a segment is in. */
  public double[] extent(Segment s) {
    Segment first = s;
    while (runsOn(first)) first = above.get(first);
    Segment last = s;
    while (below.containsKey(last)) last = below.get(last);
    return new double[] {first.baseline(), last.baseline()};
  }

  Segment above(Segment s) {
    return above.get(s);
  }

  private Segment nearestAbove(int i, Segment s) {
    for (int k = i - 1; k >= 0; k--) {
      if (lines.get(i).baseline() - lines.get(k).baseline() > FARTHEST * s.size()) return null;
      Segment best = null;
      for (Segment t : lines.get(k).segments()) {
        double least = Math.min(s.x1() - s.x0(), t.x1() - t.x0());
        if (common(s, t) >= 0.5 * least && (best == null || common(s, t) > common(s, best))) {
          best = t;
        }
      }
      if (best != null) return best;
    }
    return null;
  }

  private static double common(Segment a, Segment b) {
    return Math.min(a.x1(), b.x1()) - Math.max(a.x0(), b.x0());
  }

  /** Of the font's size; the lower quarter, as lines within paragraphs are closest. */
  private double usualPitch() {
    double[] gaps =
        above.entrySet().stream()
            .mapToDouble(e -> gap(e.getKey(), e.getValue()))
            .filter(gap -> gap > 0.8)
            .sorted()
            .toArray();
    return gaps.length == 0 ? 1.2 : Math.min(1.8, gaps[gaps.length / 4]);
  }

  private static double gap(Segment s, Segment over) {
    return (s.baseline() - over.baseline()) / Math.max(s.size(), over.size());
  }

  /** Whether lines so far apart may belong to one paragraph. */
  boolean isClose(double gap, double size) {
    return gap <= Math.max(1.25 * pitch, pitch + 0.25) * size;
  }

  private Turn turn(int i, int at) {
    Line line = lines.get(i);
    Segment s = line.segments().get(at);
    boolean marked = isMark(s) || at > 0 && isMark(line.segments().get(at - 1));
    Segment over = above.get(s);
    if (marked || over == null || LineKind.opensItem(s.text())) return Turn.OPENS;
    if (!isClose(s.baseline() - over.baseline(), Math.max(s.size(), over.size()))) {
      return Turn.OPENS;
    }
    if (Math.abs(s.size() - over.size()) > 0.15 * over.size() || s.bold() != over.bold()) {
      return Turn.OPENS;
    }
    return afterWords(i, s, over);
  }

  private Turn afterWords(int i, Segment s, Segment over) {
    String text = s.text();
    if (over.text().length() < SHORTEST) {
      return shape(text).equals(shape(over.text())) ? Turn.AFTER_SHORT : Turn.UNKNOWN;
    }
    double right = rightOf(i, over);
    double room = right - over.x1();
    int blank = text.indexOf(' ');
    String first = blank < 0 ? text : text.substring(0, blank);
    double word = (s.x1() - s.x0()) * first.length() / text.length();
    if (room > word + 1.5 * s.size()) {
      boolean sentence = Character.isLowerCase(text.charAt(0));
      return sentence && room < 0.3 * (right - over.x0()) ? Turn.UNKNOWN : Turn.AFTER_SHORT;
    }
    boolean wrapped = room < word + 0.3 * s.size() && isWords(over.text());
    // Values of one kind go down a column of a table: equally long, and beginning alike.
    return wrapped && !over.text().startsWith(first) ? Turn.RUNS_ON : Turn.UNKNOWN;
  }

  private static boolean isWords(String text) {
    long blanks = text.chars().filter(c -> c == ' ').count();
    long letters = text.chars().filter(Character::isLetter).count();
    return blanks > 0 && letters * 2 > text.length() - blanks;
  }

  private static String shape(String text) {
    return text.replaceAll("\\d+", "#").replaceAll("\\p{Ll}+", "a");
  }

  /** Where the lines of a segment's column end; few reach further, such as headings. */
  private double rightOf(int i, Segment s) {
    List<Line> around =
        lines.subList(Math.max(0, i - AROUND), Math.min(lines.size(), i + AROUND + 1));
    double[] ends =
        around.stream()
            .flatMap(line -> line.segments().stream())
            .filter(o -> Math.abs(o.x0() - s.x0()) <= SAME_COLUMN * s.size())
            .filter(o -> common(o, s) > 0)
            .mapToDouble(Segment::x1)
            .sorted()
            .toArray();
    return ends.length == 0 ? s.x1() : ends[(int) (0.9 * (ends.length - 1))];
  }

  /** Lines that run on from line to line, rather than short ones below each other. */
  public boolean isText(List<Segment> segments) {
    int wraps = 0;
    int breaks = 0;
    double letters = 0;
    for (Segment s : segments) {
      Turn turn = turn(s);
      if (turn == Turn.AFTER_SHORT) breaks++;
      if (turn != Turn.RUNS_ON) continue;
      wraps++;
      letters += above(s).text().length();
    }
    long words = segments.stream().filter(s -> s.text().length() >= SHORTEST).count();
    return wraps >= FEWEST_WRAPS
        && wraps >= 0.7 * (wraps + breaks)
        && wraps >= SHARE * words
        && letters >= LETTERS * wraps;
  }
}
