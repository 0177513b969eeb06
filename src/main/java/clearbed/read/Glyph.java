package clearbed.read;

/**
 * A letter on a page; lengths in points, y from the top.
 *
 * @param size of the font
 * @param space width of the font's blank, or 0
 */
record Glyph(
    String text, double x0, double x1, double baseline, double size, double space, boolean bold) {

  boolean isBlank() {
    return text.isBlank();
  }
}
