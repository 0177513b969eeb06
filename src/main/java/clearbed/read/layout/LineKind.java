package clearbed.read.layout;

import java.util.regex.Pattern;

/** What the beginning of a line of running text says about it. */
public final class LineKind {
  private static final Pattern BULLET =
      Pattern.compile("^\\s*[-*+\u2022\u25AA\u25E6\u2013\u2014\u00B7\uF0B7]\\s+\\S.*");
  private static final Pattern PART =
      Pattern.compile("^\\s*(PART|SECTION|ARTICLE|DIVISION|Part|Section|Article)\\s+[\\dIVX].*");

  /** {@code A.}, {@code 1)}, {@code (a)}, {@code iv.}, {@code 12.}, {@code C2.} before a word. */
  private static final Pattern LETTERED =
      Pattern.compile(
          "^\\s*(\\(?(?:[A-Za-z]|\\d{1,3}|[ivxIVX]{1,5}|[A-Z]\\d{1,2})[.)]|\\((?:[A-Za-z]|\\d{1,2})\\))\\s+\\S.*");

  /**
   * {@code 2.1}, {@code 1.02.3} before a word that a figure's unit would not be: capital letters, a
   * capitalised word of four letters or more, a short one before a small letter ({@code 2.76 MPa}
   * is no article); any capital letter after three numbers or more.
   */
  private static final Pattern DECIMAL =
      Pattern.compile(
          "^\\s*(?:\\d{1,2}(\\.\\d{1,3}){1,4}\\.?\\s+(\\p{Lu}{3,}|\\p{Lu}\\p{Ll}{3,}|\\[|\\p{Lu}\\p{Ll}{0,2} \\p{Ll}{2,})"
              + "|\\d{1,2}(\\.\\d{1,3}){2,4}\\.?\\s+\\p{Lu}).*");

  private static final Pattern KEYED =
      Pattern.compile("^\\s*\\p{Lu}[\\p{L}\\d /&(),-]{1,40}:(\\s.*)?$");

  /**
   * {@code Substrate ........ cement board}; dots that lead to the number of a page do not count.
   */
  private static final Pattern LED =
      Pattern.compile(
          "^\\s*\\p{L}[^.\u2026_]{1,48}?\\s?(?:\\.{3,}|\u2026{2,}|_{3,}|(?:\\. ){3,}\\.?)\\s?:?\\s*(?!(?:\\d{1,4}|[ivxlc]{1,6})\\s*$)[^\\s.\u2026_].*");

  private static final Pattern LABEL_ALONE =
      Pattern.compile(
          "^(\\(?([A-Za-z]|\\d{1,3}|[ivxIVX]{1,5})[.)]|\\d{1,2}(\\.\\d{1,3}){1,4}\\.?|[-*\u2022\u25AA\u25E6\u2013\u2014\u00B7\uF0B7])$");

  private LineKind() {}

  /** A number, letter or bullet that opens a paragraph, or a name with dots behind it. */
  public static boolean opensItem(String line) {
    return BULLET.matcher(line).matches() || opensNumbered(line) || isLed(line);
  }

  /** A name from which dots lead to what it is. */
  public static boolean isLed(String line) {
    return (line.contains("..")
            || line.contains(". . ")
            || line.contains("__")
            || line.contains("\u2026"))
        && LED.matcher(line).matches();
  }

  static boolean opensNumbered(String line) {
    return LETTERED.matcher(line).matches()
        || DECIMAL.matcher(line).matches()
        || PART.matcher(line).matches();
  }

  /** {@code Colour: white}. */
  public static boolean isKeyed(String line) {
    return KEYED.matcher(line).matches();
  }

  /** A number, letter or bullet with no words after it. */
  static boolean isLabel(String words) {
    return LABEL_ALONE.matcher(words).matches();
  }

  /** A heading typed in capitals. */
  public static boolean isCapitals(String line) {
    String words = line.strip();
    return words.length() <= 80
        && words.chars().filter(Character::isUpperCase).count() >= 3
        && words.chars().noneMatch(Character::isLowerCase);
  }
}
