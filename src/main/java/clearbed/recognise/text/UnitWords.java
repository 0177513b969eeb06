package clearbed.recognise.text;

import clearbed.model.value.Dimension;
import clearbed.model.value.Unit;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The spellings of units. */
public final class UnitWords {
  private static final Map<String, Unit> SPELLINGS = spellings();

  /** Any spelling, longest first, as a regular expression with word ends. */
  public static final String PATTERN =
      SPELLINGS.keySet().stream()
          .sorted((a, b) -> b.length() - a.length())
          .map(UnitWords::regex)
          .collect(Collectors.joining("|", "(?:", ")"));

  private UnitWords() {}

  /** The unit of a spelling, or null. */
  static Unit of(String spelling) {
    return SPELLINGS.get(key(spelling));
  }

  /** The same unit as a difference of temperatures. */
  static Unit asDifference(Unit unit) {
    return switch (unit) {
      case FAHRENHEIT -> Unit.FAHRENHEIT_DIFFERENCE;
      case CELSIUS -> Unit.CELSIUS_DIFFERENCE;
      case KELVIN -> Unit.KELVIN_DIFFERENCE;
      default -> unit;
    };
  }

  /** The same unit, read as the wanted dimension where the letters allow it. */
  public static Unit as(Unit unit, Dimension wanted) {
    return wanted == Dimension.TEMPERATURE_DIFFERENCE ? asDifference(unit) : unit;
  }

  /** True for a unit that goes with the decimal point wherever it is written. */
  public static boolean isCustomary(Unit unit) {
    return switch (unit) {
      case INCH, FOOT, YARD, MIL, PSI, SQUARE_FOOT, SQUARE_INCH, POUND -> true;
      case FAHRENHEIT, FAHRENHEIT_DIFFERENCE, PER_FAHRENHEIT -> true;
      case GALLON, CUBIC_FOOT -> true;
      default -> false;
    };
  }

  private static String key(String spelling) {
    String s = spelling.toLowerCase(Locale.ROOT).replaceAll("\\.?\\s+", " ").trim();
    return s.endsWith(".") ? s.substring(0, s.length() - 1) : s;
  }

  private static String regex(String spelling) {
    String body =
        spelling
            .replace(".", "\\.")
            .replace("/", " ?/ ?")
            .replace(" ", "\\.?\\s*")
            .replace("^", "\\^?");
    char last = spelling.charAt(spelling.length() - 1);
    return Character.isLetterOrDigit(last) ? body + "(?![A-Za-z0-9])\\.?" : body;
  }

  private static Map<String, Unit> spellings() {
    Map<String, Unit> map = new LinkedHashMap<>();
    put(map, Unit.INCH, "in", "inch", "inches", "ins", "\"", "''");
    put(map, Unit.FOOT, "ft", "foot", "feet", "'");
    put(
        map,
        Unit.FOOT,
        "lf",
        "lin ft",
        "linear feet",
        "linear foot",
        "lineal feet",
        "running feet");
    put(map, Unit.YARD, "yd", "yard", "yards");
    put(map, Unit.MILLIMETRE, "mm", "millimetre", "millimetres", "millimeter", "millimeters");
    put(map, Unit.CENTIMETRE, "cm", "centimetre", "centimetres", "centimeter", "centimeters");
    put(map, Unit.METRE, "m", "metre", "metres", "meter", "meters");
    put(map, Unit.METRE, "lm", "lin m", "linear metres", "linear meters");
    put(map, Unit.MIL, "mil", "mils");
    put(map, Unit.PSI, "psi", "lb/in2", "lbf/in2", "p.s.i", "pounds per square inch", "lbs/sq in");
    put(map, Unit.MEGAPASCAL, "mpa", "megapascal", "megapascals");
    put(map, Unit.KILOPASCAL, "kpa");
    put(
        map,
        Unit.NEWTON_PER_SQUARE_MILLIMETRE,
        "n/mm2",
        "n/sq mm",
        "n/sqmm",
        "n/mm^2",
        "newtons per square millimetre");
    put(map, Unit.PERCENT, "%", "percent", "per cent", "pct");
    put(
        map,
        Unit.FAHRENHEIT,
        "°f",
        "deg f",
        "degf",
        "degrees f",
        "degrees fahrenheit",
        "fahrenheit",
        "f");
    put(map, Unit.CELSIUS, "°c", "deg c", "degc", "degrees c", "degrees celsius", "celsius", "c");
    put(map, Unit.PERM, "perm", "perms", "us perm", "us perms");
    put(map, Unit.KELVIN, "k", "kelvin", "kelvins");
    put(map, Unit.SQUARE_FOOT, "sq ft", "sqft", "sf", "ft2", "ft^2", "square feet", "square foot");
    put(map, Unit.SQUARE_FOOT, "sq feet", "sq foot", "s.f.");
    put(map, Unit.SQUARE_METRE, "sq m", "sqm", "m2", "m^2", "square metres", "square meters");
    put(map, Unit.SQUARE_METRE, "square metre", "square meter", "sq metres", "sq meters");
    put(map, Unit.SQUARE_INCH, "sq in", "in2", "in^2", "square inches", "square inch");
    put(map, Unit.HOUR, "h", "hr", "hrs", "hour", "hours");
    put(map, Unit.DAY, "d", "day", "days");
    put(map, Unit.POUND, "lb", "lbs", "pound", "pounds");
    put(map, Unit.KILOGRAM, "kg", "kilogram", "kilograms");
    put(map, Unit.MILLILITRE, "ml", "millilitre", "millilitres", "milliliter", "milliliters");
    put(map, Unit.LITRE, "litre", "litres", "liter", "liters");
    put(
        map,
        Unit.PER_KELVIN,
        "/k",
        "/°c",
        "per k",
        "per °c",
        "1/k",
        "per kelvin",
        "/deg c",
        "m/m/k",
        "mm/mm/°c",
        "in/in/°c",
        "k-1");
    put(map, Unit.PER_FAHRENHEIT, "/°f", "per °f", "/deg f", "in/in/°f", "per degree f", "/f");
    return Map.copyOf(map);
  }

  private static void put(Map<String, Unit> map, Unit unit, String... spellings) {
    for (String spelling : spellings) map.put(spelling, unit);
  }
}
