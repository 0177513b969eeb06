package clearbed.report.view;

import clearbed.base.DisplayText;

/** Texts of others as they stand on the page: what is not seen, or turns the reading, is named. */
final class Shown {
  private Shown() {}

  /** With its line ends. */
  static String text(String text) {
    if (text.codePoints().noneMatch(DisplayText::isUnsafe)) return text;
    StringBuilder out = new StringBuilder(text.length() + 16);
    text.codePoints()
        .forEach(
            c -> {
              if (DisplayText.isUnsafe(c)) out.append("[U+%04X]".formatted(c));
              else out.appendCodePoint(c);
            });
    return out.toString();
  }

  /** On one line. */
  static String line(String text) {
    return text(text).strip().replaceAll("\\s+", " ");
  }
}
