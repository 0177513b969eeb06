package clearbed.recognise.text;

import clearbed.model.value.Unit;
import java.util.regex.Pattern;

/**
 * Reads one number as documents write it: {@code 1 1/2}, {@code 1-1/2}, {@code 3/8}, {@code 0.25},
 * {@code 1,000}, {@code 1.250,50}, {@code 1 250}, {@code 1'250}. What can be read in two ways is no
 * number.
 */
public final class Numbers {
  /** Words whose number is a name. */
  public static final String NAMING =
      "annex|appendix|class|clause|detail|drawing|dwg|figure|grade|group|item|level|method|note|notes|nos?\\.?|nr"
          + "|option|page|paragraph|part|phase|room|schedule|section|sheet|stage|table|type|zone";

  /** Words and marks before a number that are not parted from it by the blank behind them. */
  private static final String MARKED_BEFORE = "(?<!(?-i:\\b[A-Z]{1,4})[-.])";

  private static final String NAMED =
      MARKED_BEFORE
          + "(?<!(?-i:\\b(?!AT |BY |IN |IS |OF |ON |OR |TO |AND |EA |FOR |MAX |MIN )[A-Z]{1,3}) )"
          + "(?<!\\b(?:"
          + NAMING
          + ") )";

  /** Whole with thousands parted by blanks or apostrophes: {@code 1 250}, {@code 1'250}. */
  private static final String SPACED =
      "(?=[1-9]\\d{0,2}[ ']\\d{3})"
          + NAMED
          + "[1-9]\\d{0,2}(?:(?:'\\d{3})+|(?: \\d{3}){1,4})(?!\\d)(?:[.,]\\d{1,15})?";

  /** Digits with any points and commas between them. */
  private static final String MARKED = "(?:\\d{1,15}(?:[.,]\\d{1,15}){0,5}|\\.\\d{1,15})";

  /** Of "GT-15 1/64 in" the 15 is part of the mark. */
  private static final String FRACTION =
      "(?:" + MARKED_BEFORE + "\\d{1,15}[ -]{1,9}\\d{1,2}/\\d{1,3}|\\d{1,3}/\\d{1,3}(?![\\d/]))";

  /**
   * A number with all marks in it; a hyphen or space may join the whole and the fraction. It takes
   * all or nothing, and repetitions end somewhere, so that a run of thousands of digits takes time
   * by its length and no more.
   */
  public static final String PATTERN = "(?>" + FRACTION + "|" + SPACED + "|" + MARKED + ")";

  private static final Pattern GROUPED_BY_COMMA = Pattern.compile("\\d{1,3}(?:,\\d{3})+");
  private static final Pattern GROUPED_BY_POINT = Pattern.compile("\\d{1,3}(?:\\.\\d{3})+");
  private static final Pattern PARTED = Pattern.compile("[ '](?=\\d{3}(?:[ '.,]|$))");

  /** What a number shows of the mark before decimals. */
  public enum Shows {
    NOTHING,
    POINT,
    COMMA,
    /** Thousands parted by commas, unmistakably. */
    COMMA_BETWEEN_THOUSANDS,
    /** Thousands parted by points, unmistakably. */
    POINT_BETWEEN_THOUSANDS
  }

  private Numbers() {}

  /**
   * The value of a number typed for this program.
   *
   * @return NaN when the text is no number (a zero denominator, say)
   */
  static double parse(String text) {
    return read(text, DecimalMark.TYPED, false);
  }

  /**
   * The value of a number in a document.
   *
   * @param customary true when its unit is a US customary one
   * @return NaN when the text is no number, or may be two different ones
   */
  public static double read(String text, DecimalMark mark, boolean customary) {
    String s = text.trim();
    int slash = s.indexOf('/');
    if (slash > 0) return fraction(s, slash);
    String joined = PARTED.matcher(s).replaceAll("");
    boolean parted = joined.length() < s.length();
    int comma = joined.indexOf(',');
    int point = joined.indexOf('.');
    if (comma < 0 && point < 0) return decimal(joined);
    if (comma >= 0 && point >= 0) return inBothMarks(joined);
    char only = comma >= 0 ? ',' : '.';
    int at = Math.max(comma, point);
    if (joined.indexOf(only, at + 1) >= 0) return parted ? Double.NaN : inGroups(joined, only);
    if (parted) return decimal(joined.replace(',', '.'));
    if (isThree(joined, at)) {
      return switch (mark.behind(only, customary)) {
        case THOUSANDS -> decimal(joined.substring(0, at) + joined.substring(at + 1));
        case DECIMALS -> decimal(joined.replace(',', '.'));
        case UNCLEAR -> Double.NaN;
      };
    }
    if (only == ',' && !mark.hasDecimalComma(customary)) return Double.NaN;
    return decimal(joined.replace(',', '.'));
  }

  /** True for {@code 1.250} and {@code 1,250}, which those around them decide. */
  public static boolean mayBeTwo(String text) {
    int at = Math.max(text.indexOf(','), text.indexOf('.'));
    return at >= 0 && isThree(text, at) && Character.isDigit(text.charAt(at + 1));
  }

  /** True for {@code 2.3.1}, which numbers a clause and measures nothing. */
  static boolean isLabel(String text) {
    return text.indexOf(',') < 0
        && text.indexOf('.') != text.lastIndexOf('.')
        && !GROUPED_BY_POINT.matcher(text).matches();
  }

  /**
   * True for a number without a fraction, and for fractions that are written of such a unit: of
   * inches in halves down to 64ths, of other units seldom more than halves and quarters. {@code 6/8
   * mm} is no fraction but a choice.
   */
  static boolean isFractionOf(String text, Unit unit) {
    int slash = text.indexOf('/');
    if (slash < 0) return true;
    String[] before = text.substring(0, slash).trim().split("[ +-]+");
    int above = Integer.parseInt(before[before.length - 1]);
    int below = Integer.parseInt(text.substring(slash + 1));
    if (above <= 0 || above >= below) return false;
    if (unit == Unit.INCH)
      return Integer.bitCount(below) == 1 && below <= 64 || below == 3 || above == 1;
    boolean simple = below == 2 || below == 4 && above != 2 || below == 3;
    return simple && (before.length > 1 || UnitWords.isCustomary(unit) || unit == Unit.PERCENT);
  }

  /** What a number shows of the habit of the one who wrote it. */
  public static Shows shows(String text) {
    String s = PARTED.matcher(text.trim()).replaceAll("");
    int comma = s.indexOf(',');
    int point = s.indexOf('.');
    if (comma < 0 && point < 0 || s.indexOf('/') >= 0) return Shows.NOTHING;
    if (comma >= 0 && point >= 0) {
      if (Double.isNaN(inBothMarks(s))) return Shows.NOTHING;
      return comma < point ? Shows.COMMA_BETWEEN_THOUSANDS : Shows.POINT_BETWEEN_THOUSANDS;
    }
    char only = comma >= 0 ? ',' : '.';
    int at = Math.max(comma, point);
    if (s.indexOf(only, at + 1) >= 0) {
      if (Double.isNaN(inGroups(s, only))) return Shows.NOTHING;
      return only == ',' ? Shows.COMMA_BETWEEN_THOUSANDS : Shows.POINT_BETWEEN_THOUSANDS;
    }
    if (s.length() == text.trim().length() && isThree(s, at)) return Shows.NOTHING;
    return only == ',' ? Shows.COMMA : Shows.POINT;
  }

  /**
   * One to three digits, no zero before them, and three behind the mark: a thousand or decimals.
   */
  private static boolean isThree(String s, int at) {
    return at >= 1 && at <= 3 && s.charAt(0) != '0' && s.length() - at == 4;
  }

  /** {@code 1,250.50} and {@code 1.250,50}: the last mark is the one before the decimals. */
  private static double inBothMarks(String s) {
    int last = Math.max(s.lastIndexOf(','), s.lastIndexOf('.'));
    String whole = s.substring(0, last);
    char between = s.charAt(last) == '.' ? ',' : '.';
    double value = inGroups(whole, between);
    if (Double.isNaN(value)) return value;
    return decimal(whole.replace(String.valueOf(between), "") + "." + s.substring(last + 1));
  }

  private static double inGroups(String s, char between) {
    Pattern grouped = between == ',' ? GROUPED_BY_COMMA : GROUPED_BY_POINT;
    if (!grouped.matcher(s).matches() || s.charAt(0) == '0') return Double.NaN;
    return decimal(s.replace(String.valueOf(between), ""));
  }

  private static double decimal(String s) {
    try {
      return Double.parseDouble(s);
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
