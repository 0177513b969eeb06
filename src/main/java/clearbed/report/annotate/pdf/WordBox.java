package clearbed.report.annotate.pdf;

import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** The stretch of a line that words take up. */
record WordBox(PageLetter first, PageLetter last) {
  /** Of the font's size: room below the baseline and above it. */
  private static final double BELOW = 0.24;

  private static final double ABOVE = 0.82;

  /** Of the font's size: a wider gap in a line ends the box. */
  private static final double GAP = 3;

  static List<WordBox> of(List<PageLetter> letters) {
    List<WordBox> boxes = new ArrayList<>();
    PageLetter first = letters.get(0);
    PageLetter last = first;
    for (PageLetter letter : letters.subList(1, letters.size())) {
      if (!last.runsOnTo(letter, GAP)) {
        boxes.add(new WordBox(first, last));
        first = letter;
      }
      last = letter;
    }
    boxes.add(new WordBox(first, last));
    return boxes;
  }

  /** Upper left, upper right, lower left, lower right: the order that viewers go by. */
  void fill(float[] quads, int at) {
    double ux = first.upX();
    double uy = first.upY();
    double[] points = {
      first.x() + ABOVE * ux,
      first.y() + ABOVE * uy,
      last.endX() + ABOVE * ux,
      last.endY() + ABOVE * uy,
      first.x() - BELOW * ux,
      first.y() - BELOW * uy,
      last.endX() - BELOW * ux,
      last.endY() - BELOW * uy
    };
    for (int i = 0; i < points.length; i++) quads[at + i] = (float) points[i];
  }

  static PDRectangle around(float[] quads) {
    float left = Float.MAX_VALUE;
    float low = Float.MAX_VALUE;
    float right = -Float.MAX_VALUE;
    float high = -Float.MAX_VALUE;
    for (int i = 0; i < quads.length; i += 2) {
      left = Math.min(left, quads[i]);
      right = Math.max(right, quads[i]);
      low = Math.min(low, quads[i + 1]);
      high = Math.max(high, quads[i + 1]);
    }
    return new PDRectangle(left, low, right - left, high - low);
  }
}
