package clearbed.read.block;

/** Characters that readers of a document do not see, taken out the same way for every format. */
public final class CleanText {
  private static final String[] LIGATURES = {"ff", "fi", "fl", "ffi", "ffl", "st", "st"};

  private CleanText() {}

  /**
   * Plain spaces for fixed ones, no soft hyphens or zero-width characters, ligatures spelled out,
   * line breaks as {@code \n}, no blanks at either end; half of a character is U+FFFD.
   */
  public static String of(String raw) {
    if (raw == null) return "";
    if (isClean(raw)) return raw.strip();
    StringBuilder out = new StringBuilder(raw.length());
    for (int i = 0; i < raw.length(); i++) {
      char c = raw.charAt(i);
      if (c == '\r') {
        if (i + 1 >= raw.length() || raw.charAt(i + 1) != '\n') out.append('\n');
      } else if (Character.isSurrogate(c)) {
        int whole = raw.codePointAt(i);
        out.appendCodePoint(Character.isSupplementaryCodePoint(whole) ? whole : '\uFFFD');
        if (Character.isSupplementaryCodePoint(whole)) i++;
      } else {
        append(out, c);
      }
    }
    return out.toString().strip();
  }

  /** As {@link #of}, on one line: every run of blanks is one space. */
  public static String line(String raw) {
    return of(raw).replaceAll("\\s+", " ");
  }

  private static boolean isClean(String raw) {
    for (int i = 0; i < raw.length(); i++) {
      char c = raw.charAt(i);
      if (c < ' ' ? c != '\n' && c != '\t' : c > '~' && needsCare(c)) return false;
    }
    return true;
  }

  private static boolean needsCare(char c) {
    return c <= '\u00A0'
        || c == '\u00AD'
        || c >= '\u2000' && c <= '\u206F'
        || c >= '\uFB00'
        || Character.isSurrogate(c);
  }

  private static void append(StringBuilder out, char c) {
    switch (c) {
      case '\n', '\t' -> out.append(c);
      case '\u000B', '\u000C', '\u0085', '\u2028', '\u2029' -> out.append('\n');
      case '\u00A0', '\u2007', '\u202F' -> out.append(' ');
      case '\u00AD', '\u200B', '\u200C', '\u200D', '\u200E', '\u200F', '\u2060', '\uFEFF' -> {}
      case '\u2010', '\u2011' -> out.append('-');
      default -> {
        if (c >= '\uFB00' && c <= '\uFB06') out.append(LIGATURES[c - '\uFB00']);
        else if (c >= ' ' && !(c >= '\u007F' && c < '\u00A0')) out.append(c);
      }
    }
  }
}
