package clearbed.recognise.schedule.cell;

import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.DecimalMark;
import clearbed.recognise.text.Numbers;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Lengths without units of which the one in brackets is the other in millimetres: {@code 1/16
 * (1.6)}, {@code 4 x 16 (102 x 406) / 3/8}. The figures tell their units themselves.
 */
public final class BothSystems {
  private static final String SIDES =
      Numbers.PATTERN + "(?:\\s*[x×X]\\s*" + Numbers.PATTERN + "){0,2}";

  private static final Pattern PAIR =
      Pattern.compile("\\s*(" + SIDES + ")\\s*\\((" + SIDES + ")\\)\\s*(?:/\\s+(.+))?");

  private static final Pattern FIGURE = Pattern.compile(Numbers.PATTERN);

  private static final TwoUnits UNITS = new TwoUnits(Unit.INCH, Unit.MILLIMETRE);

  /** Offices round to whole millimetres and to halves of small ones. */
  private static final double ROUNDED = 0.6;

  private static final double SHARE = 0.06;

  private BothSystems() {}

  /**
   * The text with the units that its figures tell; the text itself where they tell none. What
   * stands behind a stroke is the thickness.
   */
  public static String told(String text, DecimalMark mark) {
    Matcher m = PAIR.matcher(text);
    if (!m.matches() || !sameLengths(m.group(1), m.group(2), mark)) return text;
    boolean thick = m.group(3) != null && FIGURE.matcher(m.group(3).strip()).matches();
    if (m.group(3) != null && !thick) return text;
    return thick
        ? m.group(1) + " x " + m.group(3).strip() + " " + UNITS.first().symbol()
        : UNITS.written(m.group(1), m.group(2));
  }

  /** One that agrees is enough to tell the units: another may be a slip, which is to be found. */
  private static boolean sameLengths(String inches, String mm, DecimalMark mark) {
    Matcher one = FIGURE.matcher(inches);
    Matcher other = FIGURE.matcher(mm);
    boolean same = false;
    while (one.find()) {
      if (!other.find()) return false;
      double wanted =
          Quantity.of(Numbers.read(one.group(), mark, true), UNITS.first()).in(UNITS.second());
      double off = Math.abs(Numbers.read(other.group(), mark, false) - wanted);
      same |= off <= Math.max(ROUNDED, SHARE * wanted);
    }
    return same && !other.find();
  }
}
