package clearbed.recognise;

import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The one parser of figures with units. It never throws on text, however odd: what is no figure is
 * not found.
 */
public final class Quantities {

  /**
   * A figure found in a text.
   *
   * @param start offset in the text that was searched
   * @param end offset behind it
   * @param content an {@link Content.Amount} or {@link Content.Size}
   * @param restates true when it stands in parentheses right behind a figure of the same dimension
   */
  public record Found(int start, int end, Content content, boolean restates) {}

  private static final String N = Numbers.PATTERN;
  private static final String U = UnitWords.PATTERN;
  private static final int FLAGS = Pattern.CASE_INSENSITIVE;

  // Gaps are bounded, so that thousands of blanks take time by their length and no more.
  private static final Pattern FEET_INCHES =
      Pattern.compile(
          "(?<!\\d)(\\d{1,15})\\s{0,9}(?:'|ft\\.?|feet|foot)[ -]{0,9}("
              + N
              + ")\\s{0,9}(?:\"|''|in\\b\\.?|inch(?:es)?)",
          FLAGS);
  private static final Pattern SIZE =
      Pattern.compile(
          "(?<![\\w/.])("
              + N
              + ")\\s{0,9}("
              + U
              + ")?\\s{0,9}(?:x|by)\\s{0,9}("
              + N
              + ")\\s{0,9}("
              + U
              + ")?"
              + "(?:\\s{0,9}(?:x|by)\\s{0,9}("
              + N
              + ")\\s{0,9}("
              + U
              + ")?)?",
          FLAGS);
  private static final Pattern RANGE =
      Pattern.compile(
          "(?<![\\w/.])([-+]?"
              + N
              + ")\\s{0,9}("
              + U
              + ")?\\s{0,9}(?:to|-|and|through|\\.\\.)\\s{0,9}([-+]?"
              + N
              + ")\\s{0,9}("
              + U
              + ")",
          FLAGS);
  private static final Pattern SINGLE =
      Pattern.compile("(?<![\\w/.])([-+]?" + N + ")[ -]{0,9}(" + U + ")", FLAGS);
  private static final Pattern EXPONENT =
      Pattern.compile(
          "(?<!\\d)(\\d{1,15}(?:\\.\\d{1,15})?)\\s{0,9}(?:x|\\*)?\\s{0,9}(?:10\\s{0,9}\\^?\\s{0,9}\\(?-\\s{0,9}(\\d)\\)?|e-0?(\\d))\\s{0,9}(?:(?:in|mm|m)\\.?/(?:in|mm|m)\\.?\\s{0,9})?(?:/|per)?\\s{0,9}("
              + "°?\\s{0,9}[cfk]\\b|deg\\.? ?[cfk]\\b|k-1|k"
              + ")",
          FLAGS);

  private static final String LEAST_BEFORE =
      "(?:not less than|no less than|nowhere less than|never less than|nor less than|not under|never under|not below|no fewer than|at least|minimum(?: of)?|min\\.?(?: of)?|>=|no lower than)";
  private static final String ABOVE_BEFORE =
      "(?:in excess of|exceeding|exceeds?|greater than|more than|above|over|higher than|>)";
  private static final String MOST_BEFORE =
      "(?:not more than|nowhere more than|never more than|no more than|not greater than|not over|not to exceed|not exceeding|shall not exceed|maximum(?: of)?|max\\.?(?: of)?|at most|<=|up to|no greater than|no wider than)";
  private static final String BELOW_BEFORE = "(?:less than|below|under|lower than|<)";
  private static final Pattern BEFORE =
      Pattern.compile(
          "(?<![a-z])(?:("
              + LEAST_BEFORE
              + ")|("
              + MOST_BEFORE
              + ")|("
              + ABOVE_BEFORE
              + ")|("
              + BELOW_BEFORE
              + "))[\\s:]*$",
          FLAGS);
  private static final Pattern AFTER =
      Pattern.compile(
          "^[\\s,(]*(?:(minimum|min\\b|or (?:more|greater|better|higher|stiffer|above)|and above)|(maximum|max\\b|or (?:less|below|flatter|fewer)))",
          FLAGS);

  // "Neither may have a bond of less than 400 psi", "reset any tile with less than 95 percent".
  private static final Pattern DENIED =
      Pattern.compile(
          "\\b(?:not|no|never|neither|nor|none|cannot|reject\\w*|reset|redo|replace|remove|refuse)\\b"
              + "(?:(?!\\b(?:until|unless|before|when|if|after|because)\\b)[^.;:]){0,70}$",
          FLAGS);

  /** Letters before and behind a figure among which the words that bound it are looked for. */
  private static final int NEAR = 30;

  /** The same before a figure for words that turn a bound round. */
  private static final int REACH = 100;

  private Quantities() {}

  /**
   * All figures of a text, in order, none inside another. The text is searched in its plain form.
   */
  public static List<Found> find(String text) {
    if (text.chars().noneMatch(c -> Character.isDigit(c) || c > 126)) return List.of();
    String s = PlainText.of(text);
    List<Found> found = new ArrayList<>();
    boolean[] taken = new boolean[s.length() + 1];
    exponents(s, found, taken);
    sizes(s, found, taken);
    feetInches(s, found, taken);
    ranges(s, found, taken);
    singles(s, found, taken);
    found.sort((a, b) -> Integer.compare(a.start(), b.start()));
    return markRestated(s, found);
  }

  /**
   * A text that is one figure, as typed on a command line or in a rule file ({@code 40ft}, {@code
   * 3/8 in}, {@code 70K}).
   *
   * @param dimension what the figure measures; tells a temperature difference from a temperature
   * @return empty when the text is not one figure of that dimension
   */
  public static Optional<Content.Amount> parse(String text, Dimension dimension) {
    String s = PlainText.of(text).trim();
    if (dimension == Dimension.RATIO && s.matches(N)) {
      double number = Numbers.parse(s);
      return Double.isFinite(number) ? Optional.of(exact(number, Unit.ONE)) : Optional.empty();
    }
    List<Found> found = find(s);
    if (found.size() != 1 || !(found.get(0).content() instanceof Content.Amount amount))
      return Optional.empty();
    String rest = s.substring(0, found.get(0).start()) + s.substring(found.get(0).end());
    if (amount.bound() == Bound.EXACT && !rest.isBlank()) return Optional.empty();
    return as(amount, dimension);
  }

  /** The amount as the wanted dimension, or empty when its unit does not allow it. */
  public static Optional<Content.Amount> as(Content.Amount amount, Dimension dimension) {
    Unit low = UnitWords.as(amount.low().unit(), dimension);
    Unit high = UnitWords.as(amount.high().unit(), dimension);
    if (low.dimension() != dimension || high.dimension() != dimension) return Optional.empty();
    return Optional.of(
        new Content.Amount(
            Quantity.of(amount.low().number(), low),
            Quantity.of(amount.high().number(), high),
            amount.bound()));
  }

  /**
   * A size whose unit may stand elsewhere ({@code 12 x 24} under a header {@code Size (mm)}).
   *
   * @param assumed unit of sides written without one, or null
   */
  public static Optional<Content.Size> size(String text, Unit assumed) {
    String s = PlainText.of(text);
    Matcher m = SIZE.matcher(s);
    while (m.find()) {
      Optional<Content.Size> size = sides(m, assumed);
      if (size.isPresent()) return size;
    }
    for (Found found : find(s)) {
      if (found.content() instanceof Content.Amount a
          && a.low().unit().dimension() == Dimension.LENGTH) {
        return Optional.of(new Content.Size(List.of(a.low())));
      }
    }
    if (assumed != null && s.trim().matches(N)) {
      return Optional.of(new Content.Size(List.of(Quantity.of(Numbers.parse(s), assumed))));
    }
    return Optional.empty();
  }

  private static final Pattern HEADER_UNIT =
      Pattern.compile(
          "[\\[(,/]\\s*(" + U + ")\\s*[\\])]?\\s*$|\\s(mm|cm|m|ft|psi|MPa|°\\s?[CF])$", FLAGS);

  /**
   * The unit a column header names: {@code Size (mm)}, {@code Bond, psi}, {@code Joint mm}; or
   * null.
   */
  public static Unit unitOfHeader(String header) {
    Matcher m = HEADER_UNIT.matcher(PlainText.of(header).trim());
    if (!m.find()) return null;
    String unit = m.group(1) != null ? m.group(1) : m.group(2);
    return UnitWords.of(unit.replaceAll("\\s*/\\s*", "/"));
  }

  private static void exponents(String s, List<Found> found, boolean[] taken) {
    Matcher m = EXPONENT.matcher(s);
    while (m.find()) {
      String digit = m.group(2) != null ? m.group(2) : m.group(3);
      double number = Double.parseDouble(m.group(1)) * Math.pow(10, -Integer.parseInt(digit));
      Unit unit =
          m.group(4).toLowerCase(Locale.ROOT).contains("f") ? Unit.PER_FAHRENHEIT : Unit.PER_KELVIN;
      take(s, m.start(), m.end(), exact(number, unit), found, taken);
    }
  }

  private static void sizes(String s, List<Found> found, boolean[] taken) {
    Matcher m = SIZE.matcher(s);
    while (m.find()) {
      if (free(taken, m.start(), m.end())) {
        int start = m.start();
        int end = m.end();
        sides(m, null).ifPresent(size -> take(s, start, end, size, found, taken));
      }
    }
  }

  private static Optional<Content.Size> sides(Matcher m, Unit assumed) {
    List<Quantity> sides = new ArrayList<>();
    Unit following = assumed;
    for (int group = 5; group >= 1; group -= 2) {
      if (m.group(group) == null) continue;
      Unit own = m.group(group + 1) == null ? null : UnitWords.of(squeeze(m.group(group + 1)));
      Unit unit = own != null ? own : following;
      double number = Numbers.parse(m.group(group));
      if (unit == null || unit.dimension() != Dimension.LENGTH || !Double.isFinite(number))
        return Optional.empty();
      sides.add(0, Quantity.of(number, unit));
      following = unit;
    }
    return Optional.of(new Content.Size(sides));
  }

  private static void feetInches(String s, List<Found> found, boolean[] taken) {
    Matcher m = FEET_INCHES.matcher(s);
    while (m.find()) {
      double inches = Numbers.parse(m.group(2));
      if (!Double.isFinite(inches)) continue;
      double feet = Double.parseDouble(m.group(1));
      take(s, m.start(), m.end(), exact(feet + inches / 12, Unit.FOOT), found, taken);
    }
  }

  private static void ranges(String s, List<Found> found, boolean[] taken) {
    Matcher m = RANGE.matcher(s);
    int from = 0;
    while (m.find(from)) {
      from = m.start() + 1;
      Unit second = UnitWords.of(squeeze(m.group(4)));
      Unit first = m.group(2) == null ? second : UnitWords.of(squeeze(m.group(2)));
      double low = signed(m.group(1));
      double high = signed(m.group(3));
      if (first == null || second == null || first.dimension() != second.dimension()) continue;
      if (!Double.isFinite(low) || !Double.isFinite(high)) continue;
      Quantity a = Quantity.of(low, first);
      Quantity b = Quantity.of(high, second);
      if (a.compareTo(b) > 0) continue;
      if (take(s, m.start(), m.end(), new Content.Amount(a, b, Bound.EXACT), found, taken))
        from = m.end();
    }
  }

  private static void singles(String s, List<Found> found, boolean[] taken) {
    Matcher m = SINGLE.matcher(s);
    while (m.find()) {
      Unit unit = UnitWords.of(squeeze(m.group(2)));
      double number = signed(m.group(1));
      if (unit != null && Double.isFinite(number))
        take(s, m.start(), m.end(), exact(number, unit), found, taken);
    }
  }

  private static double signed(String number) {
    if (number.startsWith("-")) return -Numbers.parse(number.substring(1));
    return Numbers.parse(number.startsWith("+") ? number.substring(1) : number);
  }

  private static String squeeze(String unit) {
    return unit.replaceAll("\\s*/\\s*", "/").replaceAll("\\.", "").replaceAll("\\s+", " ").trim();
  }

  private static Content.Amount exact(double number, Unit unit) {
    return Content.Amount.exact(Quantity.of(number, unit));
  }

  private static boolean take(
      String s, int start, int end, Content content, List<Found> found, boolean[] taken) {
    if (!free(taken, start, end)) return false;
    for (int i = start; i < end; i++) taken[i] = true;
    Content bounded =
        content instanceof Content.Amount amount ? bounded(s, start, end, amount) : content;
    found.add(new Found(start, end, bounded, false));
    return true;
  }

  private static boolean free(boolean[] taken, int start, int end) {
    for (int i = start; i < end; i++) {
      if (taken[i]) return false;
    }
    return true;
  }

  private static Content.Amount bounded(String s, int start, int end, Content.Amount amount) {
    Bound bound =
        bound(
            s.substring(Math.max(0, start - REACH), start),
            s.substring(end, Math.min(s.length(), end + NEAR)));
    return new Content.Amount(amount.low(), amount.high(), bound);
  }

  /** What the words around a figure make of it. */
  static Bound bound(String before, String after) {
    int near = Math.max(0, before.length() - NEAR);
    Matcher m = BEFORE.matcher(before.substring(near));
    if (m.find()) {
      if (m.group(1) != null) return Bound.AT_LEAST;
      if (m.group(2) != null) return Bound.AT_MOST;
      String earlier = before.substring(Math.max(0, before.length() - REACH), near + m.start());
      boolean denied = DENIED.matcher(earlier).find();
      if (m.group(3) != null) return denied ? Bound.AT_MOST : Bound.ABOVE;
      return denied ? Bound.AT_LEAST : Bound.BELOW;
    }
    m = AFTER.matcher(after);
    if (m.find()) return m.group(1) != null ? Bound.AT_LEAST : Bound.AT_MOST;
    return Bound.EXACT;
  }

  private static List<Found> markRestated(String s, List<Found> found) {
    List<Found> out = new ArrayList<>();
    Found previous = null;
    for (Found f : found) {
      boolean restates = previous != null && restates(s, previous, f);
      out.add(restates ? new Found(f.start(), f.end(), f.content(), true) : f);
      previous = f;
    }
    return out;
  }

  private static boolean restates(String s, Found before, Found f) {
    String between = s.substring(before.end(), f.start());
    boolean joined =
        between.matches("\\s*(?:[\\[(]\\s*|,?\\s*/\\s*)(?:approx\\.?\\s*|about\\s*)?")
            || between.matches("(?:\\s*(?:minimum|min\\.?|maximum|max\\.?))?\\s*[\\[(]\\s*");
    return joined && dimension(before.content()) == dimension(f.content());
  }

  private static Dimension dimension(Content content) {
    if (content instanceof Content.Amount amount) return amount.low().unit().dimension();
    return Dimension.LENGTH;
  }
}
