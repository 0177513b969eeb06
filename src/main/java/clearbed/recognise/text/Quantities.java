package clearbed.recognise.text;

import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.List;
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
   * @param content an {@link Content.Amount} or {@link Content.Size}, or {@link
   *     Content.NotUnderstood} where the figure is not plain
   * @param unit as written; of a size that of its first side
   * @param restates true when it stands in parentheses right behind a figure of the same dimension
   *     in another unit
   */
  public record Found(int start, int end, Content content, Unit unit, boolean restates) {}

  private static final Pattern NUMBER = Pattern.compile(Numbers.PATTERN);

  private Quantities() {}

  /**
   * All figures of a text, in order, none inside another. The text is searched in its plain form.
   */
  public static List<Found> find(String text) {
    return find(text, DecimalMark.UNKNOWN);
  }

  /**
   * The same where the figures around show how numbers are written.
   *
   * @param mark of these figures
   */
  public static List<Found> find(String text, DecimalMark mark) {
    if (!mayHaveDigits(text) && !SpelledNumbers.mayHave(text)) return List.of();
    return new FigureSearch(PlainText.of(text), mark).all();
  }

  /** True with a digit, or with a character whose plain form may have one. */
  private static boolean mayHaveDigits(String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c >= '0' && c <= '9' || c > 126) return true;
    }
    return false;
  }

  /**
   * A text that is one figure, as typed on a command line or in a rule file ({@code 40ft}, {@code
   * 3/8 in}, {@code 70K}).
   *
   * @param dimension what the figure measures; tells a temperature difference from a temperature
   * @return empty when the text is not one figure of that dimension
   */
  public static Optional<Content.Amount> parse(String text, Dimension dimension) {
    return parse(text, dimension, DecimalMark.TYPED);
  }

  /**
   * A text that is one figure, in a document.
   *
   * @param mark of the figures around it
   */
  public static Optional<Content.Amount> parse(String text, Dimension dimension, DecimalMark mark) {
    String s = PlainText.of(text).trim();
    if (dimension == Dimension.RATIO && NUMBER.matcher(s).matches()) {
      double number = Numbers.read(s, mark, false);
      return Double.isFinite(number)
          ? Optional.of(Content.Amount.exact(Quantity.of(number, Unit.ONE)))
          : Optional.empty();
    }
    List<Found> found = find(s, mark);
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
    return size(text, assumed, DecimalMark.UNKNOWN);
  }

  /**
   * The same where the figures around show how numbers are written.
   *
   * @param mark of these figures
   */
  public static Optional<Content.Size> size(String text, Unit assumed, DecimalMark mark) {
    String s = PlainText.of(text);
    Matcher m = Sizes.PATTERN.matcher(s);
    while (m.find()) {
      if (isOfSheet(s, m.start(), m.end())) continue;
      if (Sizes.of(m, assumed, mark) instanceof Content.Size size) return Optional.of(size);
    }
    for (Found found : find(s, mark)) {
      if (found.content() instanceof Content.Amount a
          && a.low().unit().dimension() == Dimension.LENGTH) {
        return Optional.of(new Content.Size(List.of(a.low())));
      }
    }
    if (assumed == null || !NUMBER.matcher(s.trim()).matches()) return Optional.empty();
    double number = FigureSearch.number(s.trim(), assumed, mark);
    return Double.isFinite(number)
        ? Optional.of(new Content.Size(List.of(Quantity.of(number, assumed))))
        : Optional.empty();
  }

  private static final Pattern SHEET_BEHIND =
      Pattern.compile("[\\s.]{0,3}(?:nominal |mosaic |mesh )?sheets?\\b", Pattern.CASE_INSENSITIVE);
  private static final Pattern SHEET_BEFORE =
      Pattern.compile("\\bsheets?(?: size)?(?: of)?\\s?[:,(]?\\s?$", Pattern.CASE_INSENSITIVE);

  /** True for the size of the sheets that small tile is mounted on. */
  public static boolean isOfSheet(String text, int start, int end) {
    return SHEET_BEHIND.matcher(text).region(end, text.length()).lookingAt()
        || SHEET_BEFORE.matcher(text.substring(Math.max(0, start - 20), start)).find();
  }

  /** A heading with a unit amid its words is no longer, in characters. */
  private static final int LONGEST_HEADER = 80;

  private static final Pattern HEADER_UNIT =
      Pattern.compile(
          "[\\[(,/]\\s*("
              + UnitWords.PATTERN
              + ")\\s*[\\])]?\\s*$|\\s(mm|cm|m|ft|psi|MPa|°\\s?[CF]|sq\\.? ?ft|sqft|sf|m2|sq\\.? ?m|sqm)\\.?$",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern REMARK = Pattern.compile("\\s*[\\[(][^\\[\\]()]*[\\])]$");

  /**
   * The unit a column header names: {@code Size (mm)}, {@code Bond, psi}, {@code Joint mm}; or
   * null.
   */
  public static Unit unitOfHeader(String header) {
    String text = PlainText.of(header).trim();
    Unit unit = unitAtEnd(text);
    if (unit != null || text.length() > LONGEST_HEADER) return unit;
    // "Size, mm (face x face x thick)", "Size variation, in., not over".
    String bare = REMARK.matcher(text).replaceFirst("");
    if (!bare.equals(text)) return unitAtEnd(bare);
    int last = text.lastIndexOf(", ");
    return last < 0 ? null : unitAtEnd(text.substring(0, last));
  }

  private static Unit unitAtEnd(String header) {
    Matcher m = HEADER_UNIT.matcher(header);
    if (!m.find()) return null;
    return FigureSearch.unit(m.group(1) != null ? m.group(1) : m.group(2));
  }
}
