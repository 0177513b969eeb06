package clearbed.recognise.schedule.cell;

import clearbed.model.value.Unit;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * "Joint, in. (mm)" over "1/8 (3)": a heading with two units, whose cells have a figure in either.
 *
 * @param first of the figure that stands alone, or before the brackets
 * @param second of the figure in brackets
 */
public record TwoUnits(Unit first, Unit second) {
  private static final Pattern HEADING =
      Pattern.compile(
          "(?:^|[\\s,;])("
              + UnitWords.PATTERN
              + ")\\.?\\s*[(\\[/]\\s*("
              + UnitWords.PATTERN
              + ")\\.?\\s*[)\\]]?$",
          Pattern.CASE_INSENSITIVE);

  private static final String FIGURE = "(\\d[\\d\\s.,/x-]*?)";

  private static final Pattern CELL =
      Pattern.compile("([<>=~+]{0,2}\\s*)" + FIGURE + "\\s*[(\\[]\\s*" + FIGURE + "\\s*[)\\]]");

  /** Those of a heading; null where it has no two of one kind. */
  public static TwoUnits of(String heading) {
    String text = PlainText.line(heading);
    char end = text.isEmpty() ? ' ' : text.charAt(text.length() - 1);
    if (text.indexOf('(') < 0 && text.indexOf('[') < 0 && text.indexOf('/') < 0) return null;
    if (end != ')' && end != ']' && !Character.isLetter(end) && end != '.') return null;
    Matcher m = HEADING.matcher(text);
    if (!m.find()) return null;
    Unit first = UnitCells.unit(m.group(1));
    Unit second = UnitCells.unit(m.group(2));
    boolean pair = first != null && second != null && first != second;
    return pair && first.dimension() == second.dimension() ? new TwoUnits(first, second) : null;
  }

  /** "1/8 in (3 mm)" of "1/8 (3)"; other cells as they are. */
  public String spelt(String cell) {
    Matcher m = CELL.matcher(PlainText.line(cell));
    return m.matches() ? m.group(1) + written(m.group(2), m.group(3)) : cell;
  }

  /** "1/8 in (3 mm)". */
  String written(String one, String other) {
    return one + " " + first.symbol() + " (" + other + " " + second.symbol() + ")";
  }
}
