package clearbed.read.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Words on one level of a page.
 *
 * @param segments stretches of words set apart by more than a word's space, from the left
 * @param baseline points from the top of the page
 */
public record Line(List<Segment> segments, double baseline) {

  /**
   * A stretch of words; points.
   *
   * @param baseline its own: words beside each other in two columns need not stand quite level
   * @param hang where the words begin after the mark of a list; x0 without one
   */
  public record Segment(
      String text, double x0, double x1, double baseline, double size, boolean bold, double hang) {
    public Segment(String text, double x0, double x1, double baseline, double size, boolean bold) {
      this(text, x0, x1, baseline, size, bold, x0);
    }

    /** These words with the mark of a list before them. */
    Segment after(Segment mark) {
      return new Segment(
          mark.text() + " " + text,
          mark.x0(),
          x1,
          baseline,
          Math.max(mark.size(), size),
          mark.bold() && bold,
          x0);
    }

    public double middle() {
      return (x0 + x1) / 2;
    }
  }

  public Line {
    segments = List.copyOf(segments);
  }

  /** A line of these words alone, taken out of a line across the page. */
  public static Line apart(List<Segment> segments) {
    Segment largest = segments.get(0);
    for (Segment s : segments) if (s.size() > largest.size()) largest = s;
    return new Line(segments, largest.baseline());
  }

  public double x0() {
    return segments.get(0).x0();
  }

  public double x1() {
    return segments.get(segments.size() - 1).x1();
  }

  /** The line with the mark that its first words hold set apart from them. */
  Line withHang(double x) {
    Segment first = segments.get(0);
    List<Segment> known = new ArrayList<>(segments);
    known.set(
        0,
        new Segment(
            first.text(), first.x0(), first.x1(), first.baseline(), first.size(), first.bold(), x));
    return new Line(known, baseline);
  }

  /** Where its words begin, after the mark of a list. */
  public double hang() {
    return segments.get(0).hang();
  }

  public boolean hasMark() {
    return hang() > x0();
  }

  public double size() {
    double size = 0;
    for (Segment s : segments) size = Math.max(size, s.size());
    return size;
  }

  public boolean isBold() {
    return segments.stream().allMatch(Segment::bold);
  }

  /** Height at which the letters stand, rather than the line under them. */
  public double middle() {
    return baseline - size() * 0.3;
  }

  public String text() {
    if (segments.size() == 1) return segments.get(0).text();
    StringBuilder text = new StringBuilder();
    for (Segment s : segments) {
      if (text.length() > 0) text.append(' ');
      text.append(s.text());
    }
    return text.toString();
  }
}
