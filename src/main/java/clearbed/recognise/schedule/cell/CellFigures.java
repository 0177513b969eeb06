package clearbed.recognise.schedule.cell;

import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Unit;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.Numbers;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.text.Quantities.Found;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Tells whether the figures of a cell can be taken at their word. Every number of the cell has to
 * be accounted for: a cell that holds one more than its reading explains says something else.
 */
public final class CellFigures {
  private static final Pattern NUMBER =
      Pattern.compile(
          "(?:(?<=\\dx)|(?<![\\w.]))(?<!\\d[,'/]|\\bL/|span/)(" + Numbers.PATTERN + ")",
          Pattern.CASE_INSENSITIVE);

  /** Numbers of sections, details, classes and notes measure nothing. */
  private static final Pattern NAMES =
      Pattern.compile(
          "(?<![\\d.])\\d\\d \\d\\d \\d\\d(?:\\.\\d\\d)?(?![\\d.])|\\b\\d{1,3}/[A-Z]{1,3}-?\\d[\\w.]*"
              + "|\\b(?:"
              + Numbers.NAMING
              + ")\\s?[#:]?\\s?\\d[\\w./-]*(?:(?:,| and| or|,? &) \\d{1,3}\\b(?!\\.\\d))*",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern TO =
      Pattern.compile("\\s*(?:to|-|through|thru|\\.\\.|and)\\s*", Pattern.CASE_INSENSITIVE);
  private static final Pattern TIMES =
      Pattern.compile("\\s*(?:x|by)\\s*", Pattern.CASE_INSENSITIVE);
  private static final Pattern TOLERANCE = Pattern.compile("\\s*(?:±|\\+/-)\\s*");
  private static final Pattern TOLERATED = Pattern.compile("(?:±|\\+/-)\\s{0,3}$");

  /** What parts a figure from words that are not about it. */
  private static final String ENDS = ",;:()[]\n";

  /** Nothing but separators, so that two figures stand for one. */
  private static final Pattern SEPARATORS =
      Pattern.compile(
          "[^\\p{L}]*(?:\\b(?:and|or|to|plus)\\b[^\\p{L}]*)?", Pattern.CASE_INSENSITIVE);

  private static final Pattern WORDS = Pattern.compile("[^\\p{L}]+");

  /**
   * What a cell holds.
   *
   * @param text with the unit that its heading gives; empty when its figures are not plain
   * @param figure true when it holds a figure of its attribute
   */
  public record FigureReading(String text, boolean figure) {
    static final FigureReading UNCLEAR = new FigureReading("", false);

    public boolean plain() {
      return !text.isEmpty();
    }
  }

  private final Phrases beside;

  /**
   * @param beside words that may stand right beside a figure without being its unit
   */
  public CellFigures(Phrases beside) {
    this.beside = beside;
  }

  /**
   * Reads a cell of an amount or a size.
   *
   * @param text in plain form
   * @param headed unit of the heading, or null
   */
  public FigureReading read(String text, Attribute attribute, Unit headed, DecimalMark mark) {
    List<Found> found = Quantities.find(text, mark);
    if (found.stream().anyMatch(f -> f.content() instanceof Content.NotUnderstood))
      return FigureReading.UNCLEAR;
    String rest = unnamed(text, found);
    List<int[]> numbers = numbers(rest);
    List<Found> own = found.stream().filter(f -> isOf(attribute, f.unit())).toList();
    if (!own.isEmpty()) {
      numbers.removeIf(n -> TOLERATED.matcher(rest.substring(0, n[0])).find());
      boolean plain = numbers.isEmpty() && isOne(text, attribute, own);
      return plain ? new FigureReading(text, true) : FigureReading.UNCLEAR;
    }
    // A coefficient has no unit.
    if (attribute.dimension() == Dimension.RATIO && headed == null)
      return areApart(rest, numbers) ? new FigureReading(text, false) : FigureReading.UNCLEAR;
    if (numbers.isEmpty())
      return found.isEmpty() ? new FigureReading(text, false) : FigureReading.UNCLEAR;
    if (headed == null || !isOf(attribute, headed)) return FigureReading.UNCLEAR;
    boolean one = isOneBare(rest, numbers, attribute);
    if (!one && !areBareAtPlaces(rest, numbers, attribute)) return FigureReading.UNCLEAR;
    boolean each = !one || TOLERANCE.matcher(between(rest, numbers, 1)).matches();
    String read = withUnit(text, each ? numbers : last(numbers), headed);
    List<Found> now = Quantities.find(read, mark);
    List<Found> stated = now.stream().filter(f -> isOf(attribute, f.unit())).toList();
    boolean plain =
        now.stream().noneMatch(f -> f.content() instanceof Content.NotUnderstood)
            && stated.size() == (one ? 1 : numbers.size())
            && stated.stream().noneMatch(CellFigures::isNegative);
    return plain ? new FigureReading(read, true) : FigureReading.UNCLEAR;
  }

  private static boolean isNegative(Found f) {
    boolean temperature =
        f.unit().dimension() == Dimension.TEMPERATURE
            || f.unit().dimension() == Dimension.TEMPERATURE_DIFFERENCE;
    return !temperature && f.content() instanceof Content.Amount a && a.low().number() < 0;
  }

  /** True when a number of the text is decided by the figures around it alone. */
  public static boolean mayBeTwo(String text) {
    return numbers(text).stream().anyMatch(n -> Numbers.mayBeTwo(text.substring(n[0], n[1])));
  }

  private static boolean isOf(Attribute attribute, Unit unit) {
    Dimension dimension =
        attribute.kind() == Attribute.Kind.SIZE ? Dimension.LENGTH : attribute.dimension();
    return UnitWords.as(unit, dimension).dimension() == dimension;
  }

  /** The text without figures that have a unit, citations and other names. */
  private static String unnamed(String text, List<Found> found) {
    StringBuilder out = new StringBuilder(text);
    for (Found f : found) blank(out, f.start(), f.end());
    for (Citations.Found c : Citations.find(text)) blank(out, c.start(), c.end());
    Matcher m = NAMES.matcher(text);
    while (m.find()) blank(out, m.start(), m.end());
    return out.toString();
  }

  private static void blank(StringBuilder text, int from, int to) {
    for (int i = from; i < to; i++) text.setCharAt(i, ' ');
  }

  private static List<int[]> numbers(String text) {
    List<int[]> out = new ArrayList<>();
    Matcher m = NUMBER.matcher(text);
    while (m.find()) {
      boolean tag =
          m.start() > 1
              && text.charAt(m.start() - 1) == '-'
              && Character.isLetter(text.charAt(m.start() - 2));
      if (!tag) out.add(new int[] {m.start(), m.end()});
    }
    return out;
  }

  /** One figure, or several that words tell apart; an area is one figure only. */
  private static boolean isOne(String text, Attribute attribute, List<Found> own) {
    List<Found> stated = own.stream().filter(f -> !f.restates()).toList();
    boolean size = attribute.kind() == Attribute.Kind.SIZE;
    List<Found> sizes = stated.stream().filter(f -> f.content() instanceof Content.Size).toList();
    if (size) {
      List<Found> tiles =
          sizes.stream().filter(f -> !Quantities.isOfSheet(text, f.start(), f.end())).toList();
      if (!tiles.isEmpty()) return tiles.size() == 1;
      stated = stated.stream().filter(f -> !sizes.contains(f)).toList();
      if (stated.isEmpty()) return false;
    } else if (!sizes.isEmpty() || stated.stream().anyMatch(CellFigures::isNegative)) {
      return false;
    }
    if (attribute.dimension() == Dimension.AREA) return stated.size() == 1;
    for (int i = 1; i < stated.size(); i++) {
      String between = text.substring(stated.get(i - 1).end(), stated.get(i).start());
      if (SEPARATORS.matcher(between).matches()) return false;
    }
    return true;
  }

  /** Numbers without a unit that words, or the mark of a range, tell apart. */
  private static boolean areApart(String text, List<int[]> numbers) {
    for (int i = 1; i < numbers.size(); i++) {
      String between = between(text, numbers, i);
      if (SEPARATORS.matcher(between).matches() && !TO.matcher(between).matches()) return false;
    }
    return true;
  }

  /** One number, a range, the sides of a size or a number with its tolerance, and no odd words. */
  private boolean isOneBare(String text, List<int[]> numbers, Attribute attribute) {
    boolean size = attribute.kind() == Attribute.Kind.SIZE;
    for (int i = 1; i < numbers.size(); i++) {
      String between = between(text, numbers, i);
      boolean joined =
          size
              ? numbers.size() <= 3 && TIMES.matcher(between).matches()
              : numbers.size() == 2
                  && (TO.matcher(between).matches() || TOLERANCE.matcher(between).matches());
      if (!joined) return false;
    }
    return areBare(text, numbers, attribute);
  }

  /** Several numbers that are told apart by known words: {@code 1/8 (walls), 1/4 (floors)}. */
  private boolean areBareAtPlaces(String text, List<int[]> numbers, Attribute attribute) {
    if (attribute.kind() == Attribute.Kind.SIZE || attribute.dimension() == Dimension.AREA)
      return false;
    for (int i = 1; i < numbers.size(); i++) {
      String between = between(text, numbers, i);
      if (SEPARATORS.matcher(between).matches() || !areBeside(between)) return false;
    }
    return areBare(text, numbers, attribute);
  }

  private static String between(String text, List<int[]> numbers, int second) {
    return numbers.size() <= second
        ? ""
        : text.substring(numbers.get(second - 1)[1], numbers.get(second)[0]);
  }

  private static List<int[]> last(List<int[]> numbers) {
    return numbers.subList(numbers.size() - 1, numbers.size());
  }

  private boolean areBare(String text, List<int[]> numbers, Attribute attribute) {
    String before = text.substring(0, numbers.get(0)[0]);
    String behind = text.substring(numbers.get(numbers.size() - 1)[1]);
    if (attribute.dimension() != Dimension.AREA) {
      before = before.substring(lastEnd(before) + 1);
      behind = behind.substring(0, firstEnd(behind));
    }
    return areBeside(before) && areBeside(behind);
  }

  private static int lastEnd(String text) {
    int at = text.length() - 1;
    while (at >= 0 && ENDS.indexOf(text.charAt(at)) < 0) at--;
    return at;
  }

  private static int firstEnd(String text) {
    int at = 0;
    while (at < text.length() && ENDS.indexOf(text.charAt(at)) < 0) at++;
    return at;
  }

  private boolean areBeside(String words) {
    String rest = beside.without(words);
    boolean money = rest.chars().anyMatch(c -> Character.getType(c) == Character.CURRENCY_SYMBOL);
    return !money && WORDS.splitAsStream(rest).allMatch(String::isEmpty);
  }

  private static String withUnit(String text, List<int[]> numbers, Unit unit) {
    String spelling = " " + unit.symbol().replace("²", "2");
    StringBuilder out = new StringBuilder(text);
    for (int i = numbers.size() - 1; i >= 0; i--) {
      int end = numbers.get(i)[1];
      // "400+" is four hundred and more.
      boolean more = end < text.length() && text.charAt(end) == '+' && !text.startsWith("+/", end);
      out.insert(more ? end + 1 : end, spelling);
    }
    return out.toString();
  }
}
