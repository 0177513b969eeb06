package clearbed.base;

/** Text of others, such as names of files, made fit to be displayed to people. */
public final class DisplayText {
  /** A path longer than this is shown by its two ends. */
  private static final int LONGEST_PATH = 240;

  private static final char STAND_IN = '?';

  private DisplayText() {}

  /**
   * The text on one line: blanks and line ends as single spaces, and {@code ?} for whatever a
   * terminal would obey or what turns the reading direction (Unicode bidirectional formatting, UAX
   * 9, 2), for it can make a name read as another.
   */
  public static String of(String text) {
    if (isPlain(text)) return text;
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints().map(DisplayText::shown).forEach(c -> append(out, c));
    return out.toString();
  }

  /**
   * The text on one line of at most so many characters, what is left out shown by an ellipsis of
   * three points.
   */
  public static String shortened(String text, int most) {
    String line = text.strip().replaceAll("\\s+", " ");
    return line.length() <= most ? line : line.substring(0, most - 3).strip() + "...";
  }

  /** As {@link #of}, a very long path without its middle. */
  public static String path(String path) {
    String line = of(path);
    if (line.length() <= LONGEST_PATH) return line;
    int half = LONGEST_PATH / 2;
    int from = Character.isLowSurrogate(line.charAt(half)) ? half - 1 : half;
    int to = line.length() - half;
    if (Character.isLowSurrogate(line.charAt(to))) to++;
    return line.substring(0, from) + "\u2026" + line.substring(to);
  }

  /** True for what a reader does not see and a program may obey. */
  public static boolean isUnsafe(int c) {
    return Character.isISOControl(c) && c != '\t' && c != '\n' && c != '\r'
        || c == 0x061C
        || c == 0x200E
        || c == 0x200F
        || c >= 0x2028 && c <= 0x202E
        || c >= 0x2066 && c <= 0x2069
        || c >= Character.MIN_SURROGATE && c <= Character.MAX_SURROGATE;
  }

  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c < ' ' || c > '~' || c == ' ' && i > 0 && text.charAt(i - 1) == ' ') return false;
    }
    return true;
  }

  private static int shown(int c) {
    if (c == 0x2028 || c == 0x2029 || Character.isWhitespace(c)) return ' ';
    return isUnsafe(c) ? STAND_IN : c;
  }

  private static void append(StringBuilder out, int c) {
    boolean again = c == ' ' && out.length() > 0 && out.charAt(out.length() - 1) == ' ';
    if (!again) out.appendCodePoint(c);
  }
}
