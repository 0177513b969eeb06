package clearbed.report.annotate.pdf;

/**
 * A letter on a page, in the page's own coordinates (points, before the page is turned).
 *
 * @param x start of its baseline
 * @param endX end of its baseline
 * @param upX with {@code upY}: from the baseline to the height of the font
 * @param opens true when a blank or the start of a line stands before it
 */
record PageLetter(
    String text,
    double x,
    double y,
    double endX,
    double endY,
    double upX,
    double upY,
    boolean opens) {

  double size() {
    return Math.max(1, Math.hypot(upX, upY));
  }

  /** How far a point stands above the letter's baseline. */
  double above(double px, double py) {
    return ((px - x) * upX + (py - y) * upY) / size();
  }

  /** How far a point stands along the baseline from the letter's start. */
  double along(double px, double py) {
    return ((px - x) * upY - (py - y) * upX) / size();
  }

  boolean isSameLine(PageLetter next) {
    return Math.abs(above(next.x, next.y)) < 0.4 * size();
  }

  /** True when the next letter stands right behind this one, as in one word or phrase. */
  boolean runsOnTo(PageLetter next, double gapInSizes) {
    double gap = along(next.x, next.y) - along(endX, endY);
    return isSameLine(next) && gap > -0.5 * size() && gap < gapInSizes * size();
  }
}
