package clearbed.recognise.text;

import java.text.Normalizer;
import java.util.regex.Pattern;

/** Brings typographic variants to one form, so that patterns need to know one only. */
public final class PlainText {
  private static final Pattern BLANKS = Pattern.compile("\\s+");

  private PlainText() {}

  /**
   * Same words with plain quotes, dashes, spaces and letters; ligatures and soft hyphens resolved.
   */
  public static String of(String text) {
    if (isPlain(text)) return text;
    StringBuilder out = new StringBuilder(text.length() + 8);
    text.codePoints().forEach(c -> append(out, c));
    return out.toString();
  }

  /** The same in one line, with single blanks. */
  public static String line(String text) {
    String plain = of(text);
    boolean even = plain.isEmpty() || plain.charAt(0) > ' ';
    for (int i = 1; i < plain.length() && even; i++) {
      char c = plain.charAt(i);
      even = c > ' ' || c == ' ' && plain.charAt(i - 1) != ' ';
    }
    return even ? plain.trim() : BLANKS.matcher(plain).replaceAll(" ").trim();
  }

  private static boolean isPlain(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c > 126 || c == '\t' || c == '\r') return false;
    }
    return true;
  }

  private static void append(StringBuilder out, int c) {
    switch (c) {
      case 0x00AD, 0x200B, 0x200C, 0x200D, 0xFEFF -> {}
      case 0x00A0, 0x2002, 0x2003, 0x2007, 0x2008, 0x2009, 0x200A, 0x202F, 0x3000, '\t', '\r' ->
          out.append(' ');
      case 0x2010, 0x2011, 0x2012, 0x2013, 0x2014, 0x2212 -> out.append('-');
      case 0x2018, 0x2019, 0x2032, 0x02B9, 0x00B4 -> out.append('\'');
      case 0x201C, 0x201D, 0x2033, 0x02BA -> out.append('"');
      case 0x00D7, 0x2715 -> out.append('x');
      case 0x2044 -> out.append('/');
      case 0x00BA, 0x02DA -> out.append('°');
      case 0x2265 -> out.append(">=");
      case 0x2264 -> out.append("<=");
      case '°', '%', 0x0394, 0x2206 -> out.appendCodePoint(c);
      case '²' -> out.append('2');
      case '³' -> out.append('3');
      case 0x2022, 0x25CF, 0x25AA, 0x00B7 -> out.append('-');
      default -> appendOther(out, c);
    }
  }

  private static void appendOther(StringBuilder out, int c) {
    if (c <= 126) {
      out.appendCodePoint(c);
      return;
    }
    String form = Normalizer.normalize(new String(Character.toChars(c)), Normalizer.Form.NFKC);
    boolean fraction = form.indexOf('\u2044') > 0;
    // 1½ is one and a half, not eleven halves.
    if (fraction && out.length() > 0 && Character.isDigit(out.charAt(out.length() - 1)))
      out.append(' ');
    out.append(form.replace('\u2044', '/').replace('\u2212', '-'));
  }
}
