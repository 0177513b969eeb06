package clearbed.read.pdf;

/**
 * A letter on a page; lengths in points, y from the top.
 *
 * @param size of the font
 * @param space width of the font's blank, or 0
 * @param struck true when a line is drawn through it
 */
record Glyph(
    String text,
    double x0,
    double x1,
    double baseline,
    double size,
    double space,
    boolean bold,
    boolean struck) {

  Glyph withStruck(boolean now) {
    return new Glyph(text, x0, x1, baseline, size, space, bold, now);
  }

  /** Height in which its middle lies, rather than the line that it stands on. */
  double middle() {
    return baseline - 0.3 * size;
  }

  boolean isBlank() {
    return text.isBlank();
  }
}
