package clearbed.recognise.text;

/** What stands right beside a figure and makes it a part of a sum, a product or a tolerance. */
final class FigureNeighbours {
  private static final int LONGEST_UNIT = 8;

  private final String s;

  /**
   * @param text in plain form
   */
  FigureNeighbours(String text) {
    this.s = text;
  }

  /**
   * Where the sum begins that the figure ends ({@code 120 + 80 sf}); {@code start} if it is none.
   */
  int sumBefore(int start) {
    int sign = blanksBack(start) - 1;
    if (sign < 0) return start;
    char c = s.charAt(sign);
    if (c == '+' || c == '*') return numberBack(sign, LONGEST_UNIT, start);
    // "23 ± 2 °C" has its unit behind the tolerance; "8 ft ± 1/4 in" has not.
    if (c == '±') return numberBack(sign, 0, start);
    if (isPlusMinus(sign)) return numberBack(sign - 2, 0, start);
    boolean times = c == 'x' || c == 'X' || c == '/';
    return times ? numberBack(sign, 0, start) : start;
  }

  /** Where the sum ends that the figure begins ({@code 40 sf x 2}); {@code end} if it is none. */
  int sumBehind(int end) {
    int sign = blanks(end);
    if (sign >= s.length()) return end;
    char c = s.charAt(sign);
    if (c != '+' && c != '*' && c != 'x' && c != 'X') return end;
    int next = blanks(sign + 1);
    if (next >= s.length() || !Character.isDigit(s.charAt(next))) return end;
    while (next < s.length() && isOfNumber(s.charAt(next))) next++;
    return next;
  }

  /** True when a sign of a tolerance is all that stands between two figures. */
  boolean isTolerance(int end, int start) {
    String between = s.substring(end, start).replace(" ", "");
    return between.equals("±") || between.equals("+/-");
  }

  private boolean isPlusMinus(int sign) {
    return sign >= 2 && s.charAt(sign) == '-' && s.startsWith("+/", sign - 2);
  }

  /** Where the number begins that ends before a sign, but for so many letters of its unit. */
  private int numberBack(int sign, int unit, int otherwise) {
    int at = blanksBack(sign);
    int least = Math.max(0, at - unit);
    while (at > least && isOfUnit(s.charAt(at - 1))) at--;
    at = blanksBack(at);
    int end = at;
    while (at > 0 && isOfNumber(s.charAt(at - 1))) at--;
    if (at == end) return otherwise;
    return isOfName(at) ? otherwise : at;
  }

  /** "GT-1 + 3 mm" adds nothing up, nor does "EN 12004-1 / 3 mm" divide. */
  private boolean isOfName(int at) {
    if (at == 0) return false;
    if (s.charAt(at - 1) != '-') return Character.isLetter(s.charAt(at - 1));
    int from = at - 1;
    while (from > 0 && Character.isDigit(s.charAt(from - 1))) from--;
    int digits = at - 1 - from;
    return digits > 3 || digits == 0 && from > 0 && Character.isLetter(s.charAt(from - 1));
  }

  private static boolean isOfNumber(char c) {
    return c >= '0' && c <= '9' || c == '.' || c == ',' || c == '/' || c == '\'';
  }

  private static boolean isOfUnit(char c) {
    return Character.isLetter(c) || c == '"' || c == '\'' || c == '%' || c == '°' || c == '.';
  }

  private int blanks(int from) {
    int at = from;
    while (at < s.length() && at < from + 9 && isBlank(s.charAt(at))) at++;
    return at;
  }

  private int blanksBack(int from) {
    int at = from;
    while (at > 0 && at > from - 9 && isBlank(s.charAt(at - 1))) at--;
    return at;
  }

  private static boolean isBlank(char c) {
    return c == ' ' || c == '\n';
  }
}
