package clearbed.read.sheet;

import clearbed.read.block.CleanText;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Text of an Excel part, where characters that XML lacks are written as {@code _x000D_}. */
final class ExcelText {
  private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

  private ExcelText() {}

  static String of(String raw) {
    return CleanText.of(unescaped(raw));
  }

  /** With blanks and all, as a part of a text. */
  static String unescaped(String raw) {
    if (!raw.contains("_x")) return raw;
    Matcher matcher = ESCAPE.matcher(raw);
    return matcher.replaceAll(
        m -> Matcher.quoteReplacement(String.valueOf((char) Integer.parseInt(m.group(1), 16))));
  }
}
