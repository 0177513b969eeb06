package clearbed.recognise.schedule.column;

import clearbed.model.value.Unit;
import clearbed.recognise.text.PlainText;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** "Dimensions in millimetres unless noted" gives the unit of columns that name none. */
public final class NotedUnits {
  private static final Pattern UNIT_NOTED =
      Pattern.compile(
          "\\b(?:dimensions|sizes|measurements|lengths|widths)\\b[^.;]{0,20}\\b(?:in|are)\\s+(millimetres|millimeters|mm|inches)\\b"
              + "|^(inches|millimet(?:re|er)s) (?:throughout|unless|except|but)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Pattern CENTRES_NOTED =
      Pattern.compile(
          "\\b(?:centres|centers|spacings?)\\b[^.;]{0,20}\\b(?:in|are)\\s+(metres|meters|feet|foot)\\b",
          Pattern.CASE_INSENSITIVE);

  /** One of them is in every note. */
  private static final List<String> MEASURES =
      List.of("mm", "metres", "meters", "inches", "feet", "foot");

  private Unit lengths;
  private Unit centres;

  /** False where no sentence of a text notes a unit: to look for one takes long. */
  static boolean mayNote(String text) {
    String lower = PlainText.of(text).toLowerCase(Locale.ROOT);
    for (String measure : MEASURES) if (lower.contains(measure)) return true;
    return false;
  }

  public void note(String words) {
    String text = PlainText.of(words);
    Matcher c = CENTRES_NOTED.matcher(text);
    if (c.find())
      centres = c.group(1).toLowerCase(Locale.ROOT).startsWith("m") ? Unit.METRE : Unit.FOOT;
    Matcher m = UNIT_NOTED.matcher(text);
    if (m.find())
      lengths = unit(m).toLowerCase(Locale.ROOT).startsWith("m") ? Unit.MILLIMETRE : Unit.INCH;
  }

  private static String unit(Matcher m) {
    return m.group(1) == null ? m.group(2) : m.group(1);
  }

  /** The same, to which a table may add. */
  NotedUnits copy() {
    NotedUnits copy = new NotedUnits();
    copy.lengths = lengths;
    copy.centres = centres;
    return copy;
  }

  /** The header with what was noted before it. */
  public Header of(Header header) {
    if (lengths == null) return header;
    return header.withDefault(lengths, centres == null ? lengths : centres);
  }
}
