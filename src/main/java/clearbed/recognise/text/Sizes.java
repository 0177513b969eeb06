package clearbed.recognise.text;

import clearbed.model.value.Content;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Two or three sides, one by the other: {@code 12 x 24 in}, {@code 300 by 600 by 8 mm}. */
public final class Sizes {
  private static final String N = Numbers.PATTERN;
  private static final String U = UnitWords.PATTERN;

  public static final Pattern PATTERN =
      Pattern.compile(
          FigureSearch.START
              + "(?<!\\d['\"]-)("
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
          Pattern.CASE_INSENSITIVE);

  private Sizes() {}

  static Unit unit(Matcher size) {
    for (int group = 2; group <= 6; group += 2) {
      if (size.group(group) != null) return FigureSearch.unit(size.group(group));
    }
    throw new IllegalStateException("a size without a unit");
  }

  /**
   * The sides that {@link #PATTERN} found.
   *
   * @param assumed unit of sides written without one, or null
   * @return null when they have no unit
   */
  static Content of(Matcher m, Unit assumed, DecimalMark mark) {
    List<Quantity> sides = new ArrayList<>();
    Unit following = assumed;
    boolean plain = true;
    for (int group = 5; group >= 1; group -= 2) {
      if (m.group(group) == null) continue;
      Unit own = m.group(group + 1) == null ? null : FigureSearch.unit(m.group(group + 1));
      Unit unit = own != null ? own : following;
      if (unit == null) return null;
      double number = FigureSearch.number(m.group(group), unit, mark);
      switch (unit.dimension()) {
        case LENGTH -> plain &= Double.isFinite(number);
        case AREA -> plain = false;
        default -> {
          return null;
        }
      }
      if (!plain && Numbers.isLabel(m.group(group))) return null;
      if (plain) sides.add(0, Quantity.of(number, unit));
      following = unit;
    }
    return plain ? new Content.Size(sides) : FigureSearch.written(m.group());
  }
}
