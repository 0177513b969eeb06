package clearbed.recognise;

/**
 * Reads one number as documents write it: {@code 1 1/2}, {@code 1-1/2}, {@code 3/8}, {@code 0.25},
 * {@code 1,000}.
 */
final class Numbers {
  /**
   * A number; a hyphen or space may join the whole and the fraction. Repetitions end somewhere, so
   * that a run of thousands of digits takes time by its length and no more.
   */
  static final String PATTERN =
      "(?:\\d{1,3}(?:,\\d{3}){1,5}(?:\\.\\d{1,15})?|\\d{1,15}(?:[ -]{1,9}\\d{1,2}/\\d{1,3})|\\d{1,3}/\\d{1,3}(?![\\d/])|\\d{1,15}(?:[.,]\\d{1,15})?|\\.\\d{1,15})";

  private Numbers() {}

  /**
   * @return the value, or NaN when the text is no number (a zero denominator, say)
   */
  static double parse(String text) {
    String s = text.trim();
    int slash = s.indexOf('/');
    if (slash > 0) return fraction(s, slash);
    if (s.matches("\\d{1,3}(,\\d{3})+(\\.\\d+)?")) s = s.replace(",", "");
    try {
      return Double.parseDouble(s.replace(',', '.'));
    } catch (NumberFormatException e) {
      return Double.NaN;
    }
  }

  private static double fraction(String s, int slash) {
    String[] parts = s.substring(0, slash).split("[ -]+");
    double whole = parts.length > 1 ? Double.parseDouble(parts[0]) : 0;
    double denominator = Double.parseDouble(s.substring(slash + 1));
    return denominator == 0
        ? Double.NaN
        : whole + Double.parseDouble(parts[parts.length - 1]) / denominator;
  }
}
