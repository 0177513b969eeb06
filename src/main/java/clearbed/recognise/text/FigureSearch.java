package clearbed.recognise.text;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.Quantities.Found;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One search of a text for figures with units. A figure that is not plain is found, too, as not
 * understood: were it passed over, a part of it would be taken for another.
 */
public final class FigureSearch {
  /**
   * A number begins here, and not in the middle of one, nor is it what a span is divided by. What
   * stands here is looked at first, as to look back at every character takes long.
   */
  public static final String START = "(?=[-+.\\d])(?<![\\w.])(?<!\\d[,'/]|\\bL/|span/)";

  private static final String N = Numbers.PATTERN;
  private static final String U = UnitWords.PATTERN;
  private static final int FLAGS = Pattern.CASE_INSENSITIVE;

  // Gaps are bounded, so that thousands of blanks take time by their length and no more.
  private static final Pattern FEET_INCHES =
      Pattern.compile(
          "(?=\\d)(?<![\\d./])(?<!\\d[,'])(\\d{1,3}(?:,\\d{3}){1,3}|\\d{1,15})\\s{0,9}(?:'|ft\\.?|feet|foot)[ -]{0,9}("
              + N
              + ")\\s{0,9}(?:\"|''|in\\b\\.?|inch(?:es)?)",
          FLAGS);
  private static final Pattern RANGE =
      Pattern.compile(
          START
              + "(?<!(?-i:\\b[A-Z]{1,4})-)([-+]?"
              + N
              + ")\\s{0,9}("
              + U
              + ")?\\s{0,9}(to|-|and|through|\\.\\.)\\s{0,9}([-+]?"
              + N
              + ")\\s{0,9}("
              + U
              + ")",
          FLAGS);
  private static final Pattern SINGLE =
      Pattern.compile(START + "([-+]?" + N + ")(\\+)?[ -]{0,9}(" + U + ")", FLAGS);
  private static final Pattern EXPONENT =
      Pattern.compile(
          "(?=\\d)(?<![\\d.,])(\\d{1,15}(?:[.,]\\d{1,15})?)\\s{0,9}(?:x|\\*)?\\s{0,9}(?:10\\s{0,9}\\^?\\s{0,9}\\(?-\\s{0,9}(\\d)\\)?|e-0?(\\d))\\s{0,9}(?:(?:in|mm|m)\\.?/(?:in|mm|m)\\.?\\s{0,9})?(?:/|per)?\\s{0,9}("
              + "°?\\s{0,9}[cfk]\\b|deg\\.? ?[cfk]\\b|k-1|k"
              + ")",
          FLAGS);
  private static final Pattern SIGN_IN_WORDS =
      Pattern.compile("(?=m)(?<!plus or )(?<!plus/)\\bminus\\s+(?=\\d)", FLAGS);
  private static final Pattern NUMBER = Pattern.compile(START + N, FLAGS);

  /** "1/4 wide, sealant 1/8 deep": fractions down to 64ths beside what they measure are inches. */
  private static final Pattern OF_INCHES =
      Pattern.compile(
          START
              + "((?:\\d{1,2}[ -])?\\d{1,2}/(?:2|4|8|16|32|64))(?=\\s{1,3}(?:wide|deep|thick|(?:grout |tile )?joints?|gaps?|at most|max|or less|short of)\\b)",
          FLAGS);

  private final String s;
  private final DecimalMark mark;
  private final FigureNeighbours neighbours;
  private final boolean[] taken;
  private final List<Found> found = new ArrayList<>();

  /**
   * @param text in plain form
   */
  FigureSearch(String text, DecimalMark mark) {
    String digits = SpelledNumbers.inDigits(text);
    this.s = signed(digits);
    this.mark = mark;
    this.neighbours = new FigureNeighbours(digits);
    this.taken = new boolean[text.length() + 1];
  }

  /** "Minus 20" as "-20", of the same length. */
  private static String signed(String text) {
    return SIGN_IN_WORDS.matcher(text).replaceAll(m -> " ".repeat(m.group().length() - 1) + "-");
  }

  /** All figures in order, none inside another. */
  List<Found> all() {
    exponents();
    sizes();
    feetInches();
    ranges();
    singles();
    inches();
    found.sort((a, b) -> Integer.compare(a.start(), b.start()));
    return joined();
  }

  private void exponents() {
    Matcher m = EXPONENT.matcher(s);
    while (m.find()) {
      String digit = m.group(2) != null ? m.group(2) : m.group(3);
      double number = Numbers.parse(m.group(1)) * Math.pow(10, -Integer.parseInt(digit));
      Unit unit =
          m.group(4).toLowerCase(Locale.ROOT).contains("f") ? Unit.PER_FAHRENHEIT : Unit.PER_KELVIN;
      take(m.start(), m.end(), exact(number, unit), unit);
    }
  }

  private void sizes() {
    Matcher m = Sizes.PATTERN.matcher(s);
    while (m.find()) {
      if (!free(m.start(), m.end())) continue;
      Content size = Sizes.of(m, null, mark);
      if (size != null) take(m.start(), m.end(), size, Sizes.unit(m));
    }
  }

  private void feetInches() {
    Matcher m = FEET_INCHES.matcher(s);
    while (m.find()) {
      double feet = Numbers.parse(m.group(1));
      double inches = number(m.group(2), Unit.INCH, mark);
      boolean plain = inches < 12;
      if (plain) take(m.start(), m.end(), exact(feet + inches / 12, Unit.FOOT), Unit.FOOT);
      else unclear(m.start(), m.end(), Unit.FOOT);
    }
  }

  private void ranges() {
    Matcher m = RANGE.matcher(s);
    int from = 0;
    while (m.find(from)) {
      from = m.start() + 1;
      Unit second = unit(m.group(5));
      Unit first = m.group(2) == null ? second : unit(m.group(2));
      if (first == null || second == null || first.dimension() != second.dimension()) continue;
      // "1/4 in. and 20 ft apart" are two figures.
      if (m.group(3).equalsIgnoreCase("and") && first != second) continue;
      double low = signed(m.group(1), first);
      double high = signed(m.group(4), second);
      boolean numbers = Double.isFinite(low) && Double.isFinite(high);
      boolean rising = numbers && Quantity.of(low, first).compareTo(Quantity.of(high, second)) <= 0;
      boolean took;
      if (rising) {
        Content range =
            new Content.Amount(Quantity.of(low, first), Quantity.of(high, second), Bound.EXACT);
        took = take(m.start(), m.end(), range, first);
      } else {
        // "Types 4 and 2 mm" names two things, "25 to 20 ft" is no range that can be read.
        boolean two = m.group(3).equalsIgnoreCase("and") || Numbers.isLabel(m.group(1));
        took = !two && unclear(m.start(), m.end(), first);
      }
      if (took) from = m.end();
    }
  }

  private void singles() {
    Matcher m = SINGLE.matcher(s);
    while (m.find()) {
      Unit unit = unit(m.group(3));
      if (unit == null || WordIn.isUnit(m.group(3), s, m.start(), m.end())) continue;
      double number = signed(m.group(1), unit);
      if (!Double.isFinite(number)) {
        if (!Numbers.isLabel(m.group(1))) unclear(m.start(), m.end(), unit);
      } else if (m.group(2) != null) {
        Quantity least = Quantity.of(number, unit);
        take(m.start(), m.end(), new Content.Amount(least, least, Bound.AT_LEAST), unit);
      } else {
        take(m.start(), m.end(), exact(number, unit), unit);
      }
    }
  }

  private void inches() {
    Matcher m = OF_INCHES.matcher(s);
    while (m.find()) {
      double number = number(m.group(1), Unit.INCH, mark);
      if (Double.isFinite(number)) take(m.start(), m.end(), exact(number, Unit.INCH), Unit.INCH);
    }
  }

  private double signed(String number, Unit unit) {
    if (number.startsWith("-")) return -number(number.substring(1), unit, mark);
    return number(number.startsWith("+") ? number.substring(1) : number, unit, mark);
  }

  /**
   * A number with its unit: {@code 80/95 %} and {@code 3/4 mm} are two figures, {@code 3/4 in} is
   * one.
   */
  static double number(String number, Unit unit, DecimalMark mark) {
    double value = Numbers.read(number, mark, UnitWords.isCustomary(unit));
    return Numbers.isFractionOf(number, unit) ? value : Double.NaN;
  }

  static Unit unit(String written) {
    return UnitWords.of(
        written.replaceAll("\\s*/\\s*", "/").replaceAll("\\.", "").replaceAll("\\s+", " ").trim());
  }

  private static Content.Amount exact(double number, Unit unit) {
    return Content.Amount.exact(Quantity.of(number, unit));
  }

  /** Without the full stop of its sentence. */
  static Content written(String words) {
    return new Content.NotUnderstood(words.trim().replaceFirst("\\.$", ""));
  }

  /** Every amount that a figure which is not plain may stand for. */
  public static List<Content.Amount> readings(Content.NotUnderstood figure, Unit unit) {
    List<Content.Amount> out = new ArrayList<>();
    Matcher m = NUMBER.matcher(figure.written());
    while (m.find()) {
      List<String> numbers = new ArrayList<>(List.of(m.group()));
      if (m.group().indexOf('/') > 0) numbers.addAll(List.of(m.group().split("/")));
      for (String one : numbers) {
        for (DecimalMark by : List.of(DecimalMark.POINT, DecimalMark.COMMA)) {
          double number = Numbers.read(one, by, false);
          if (Double.isFinite(number)) out.add(exact(number, unit));
        }
      }
    }
    return out;
  }

  private boolean unclear(int start, int end, Unit unit) {
    return take(start, end, written(s.substring(start, end)), unit);
  }

  private boolean take(int start, int end, Content content, Unit unit) {
    if (!free(start, end)) return false;
    for (int i = start; i < end; i++) taken[i] = true;
    int from = neighbours.sumBefore(start);
    int to = neighbours.sumBehind(end);
    Content read = content;
    if (from < start || to > end) read = written(s.substring(from, to));
    else if (content instanceof Content.Amount amount) read = bounded(start, end, amount);
    found.add(new Found(start, end, read, unit, false));
    return true;
  }

  private boolean free(int start, int end) {
    for (int i = start; i < end; i++) {
      if (taken[i]) return false;
    }
    return true;
  }

  private Content.Amount bounded(int start, int end, Content.Amount amount) {
    if (amount.bound() != Bound.EXACT) return amount;
    Bound bound =
        BoundWords.bound(
            s.substring(Math.max(0, start - BoundWords.REACH), start),
            s.substring(end, Math.min(s.length(), end + BoundWords.NEAR)));
    return new Content.Amount(amount.low(), amount.high(), bound);
  }

  /** With tolerances joined to what they are of, and second units marked. */
  private List<Found> joined() {
    List<Found> out = new ArrayList<>();
    for (Found f : found) {
      Found before = out.isEmpty() ? null : out.get(out.size() - 1);
      if (before != null && neighbours.isTolerance(before.end(), f.start())) {
        out.set(
            out.size() - 1,
            new Found(before.start(), f.end(), before.content(), before.unit(), before.restates()));
      } else {
        boolean restates = before != null && SecondUnits.restates(s, before, f);
        out.add(new Found(f.start(), f.end(), f.content(), f.unit(), restates));
      }
    }
    return out;
  }
}
