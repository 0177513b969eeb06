package clearbed.report.wording;

import clearbed.base.DisplayText;
import java.util.regex.Pattern;

/** Text made fit for a spreadsheet cell, nothing lost without a word. */
public final class SafeText {
  /** Excel's limit for the text of a cell (Excel specifications and limits). */
  static final int LONGEST = 32_767;

  /** ECMA-376 part 1, 22.9.2.19: {@code _x0041_} in a string stands for a character. */
  private static final Pattern ESCAPE = Pattern.compile("_(?=x[0-9A-Fa-f]{4}_)");

  private SafeText() {}

  /** The text with XML's forbidden characters replaced, at most {@link #LONGEST} characters. */
  public static String of(String text) {
    if (text == null) return "";
    String clean = xml(text);
    if (clean.indexOf("_x") >= 0) clean = ESCAPE.matcher(clean).replaceAll("_x005F_");
    return clean.length() <= LONGEST ? clean : cut(clean);
  }

  /** True when a spreadsheet program that takes the text for typed input would compute it. */
  public static boolean looksLikeFormula(String text) {
    return !text.isEmpty() && "=+-@\t\r\n".indexOf(text.charAt(0)) >= 0;
  }

  private static String cut(String text) {
    String remark = " [cut here: " + (text.length() - LONGEST) + " or more characters left out]";
    int end = LONGEST - remark.length();
    if (Character.isHighSurrogate(text.charAt(end - 1))) end--;
    return text.substring(0, end) + remark;
  }

  /**
   * Line ends become one character; what XML 1.0 section 2.2 forbids, a program would obey or turns
   * the reading direction becomes U+FFFD.
   */
  public static String xml(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.replace("\r\n", "\n")
        .codePoints()
        .forEach(c -> out.appendCodePoint(c == '\r' ? '\n' : isPlain(c) ? c : 0xFFFD));
    return out.toString();
  }

  private static boolean isPlain(int c) {
    return isXml(c) && !DisplayText.isUnsafe(c);
  }

  static boolean isXml(int c) {
    if (c < 0x20) return c == '\t' || c == '\n' || c == '\r';
    return c < 0xD800 || (c >= 0xE000 && c != 0xFFFE && c != 0xFFFF);
  }
}
