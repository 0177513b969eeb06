package clearbed.read.pdf;

import clearbed.read.layout.Line;
import clearbed.read.layout.LineKind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Joins the lines of running text into paragraphs. */
final class PdfParagraphs {
  private final List<Line> stream;
  private final double pitch;
  private final List<Line> open = new ArrayList<>();

  /** Takes the usual line pitch from the stream as a whole. */
  PdfParagraphs(List<Line> stream) {
    this.stream = stream;
    double[] gaps = new double[Math.max(0, stream.size() - 1)];
    int n = 0;
    for (int i = 1; i < stream.size(); i++) {
      double gap = stream.get(i).baseline() - stream.get(i - 1).baseline();
      double size = stream.get(i).size();
      if (gap > 0.8 * size && gap < 2.2 * size) gaps[n++] = gap / size;
    }
    Arrays.sort(gaps, 0, n);
    // The lower quarter: lines within paragraphs are closer than paragraphs are.
    pitch = n == 0 ? 1.2 : gaps[n / 4];
  }

  /** Whether the line is the next of a paragraph that is open. */
  boolean goesOnWith(Line line) {
    return !open.isEmpty() && !opens(line);
  }

  /** The paragraph that the line ends, or null while it goes on. */
  List<Line> next(Line line) {
    List<Line> ended = null;
    if (!open.isEmpty() && opens(line)) ended = end();
    open.add(line);
    return ended;
  }

  /** The lines of the last paragraph, and none is open. */
  List<Line> end() {
    List<Line> ended = open.isEmpty() ? null : List.copyOf(open);
    open.clear();
    return ended;
  }

  private boolean opens(Line line) {
    Line last = open.get(open.size() - 1);
    double gap = line.baseline() - last.baseline();
    if (line.hasMark() || LineKind.opensItem(line.text())) return true;
    if (gap <= 0
        || gap > Math.max(1.25 * pitch, pitch + 0.3) * Math.max(line.size(), last.size())) {
      return true;
    }
    if (Math.abs(line.size() - last.size()) > 0.15 * last.size()) return true;
    if (open.stream().allMatch(Line::isBold) != line.isBold() && open.size() == 1) return true;
    if (LineKind.isCapitals(last.text()) && hasSmallLetters(line)) return true;
    // A heading set in the middle, such as the last line of a section.
    if (LineKind.isCapitals(line.text()) && line.x0() > last.hang() + 5 * line.size()) return true;
    return isOutdented(line) || isIndented(line, last) || endedEarly(last, line);
  }

  /** A line of capitals goes on with capitals, or with figures. */
  private static boolean hasSmallLetters(Line line) {
    return line.text().chars().anyMatch(Character::isLowerCase);
  }

  private boolean isOutdented(Line line) {
    Line first = open.get(0);
    if (line.x0() >= first.x0() - 2) return false;
    boolean firstLineIndent = open.size() == 1 && first.x0() - line.x0() < 4 * line.size();
    return !firstLineIndent || endedEarly(first, line);
  }

  private boolean isIndented(Line line, Line last) {
    return open.size() >= 2 && line.x0() > last.x0() + 2;
  }

  /** The next word would have had room: the line was ended on purpose. */
  private boolean endedEarly(Line last, Line line) {
    String text = line.text();
    if (!Character.isUpperCase(text.charAt(0)) && !Character.isDigit(text.charAt(0))) return false;
    int blank = text.indexOf(' ');
    double share = blank < 0 ? 1 : blank / (double) text.length();
    double word = share * (line.x1() - line.x0());
    return rightOf(last) - last.x1() > word + 1.5 * line.size();
  }

  /** The right edge of the lines above and below; those beside it are another column or a box. */
  private double rightOf(Line line) {
    double[] ends =
        stream.stream()
            .filter(other -> other.x0() < line.x1() && other.x1() > line.x0())
            .mapToDouble(Line::x1)
            .sorted()
            .toArray();
    return ends.length == 0 ? line.x1() : ends[(int) (0.9 * (ends.length - 1))];
  }
}
