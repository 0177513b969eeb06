package clearbed.cli;

import clearbed.calc.QuantityReader;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * STAND-IN for the project's one quantity parser, so that the command can be built and tested
 * before the two meet; delete it then and hand the parser to {@link JointCommand}. Knows single
 * figures only.
 */
final class JointQuantities implements QuantityReader {

  private static final String NUMBER =
      "[-+]?(?:\\d+[ -]\\d+/\\d+|\\d+/\\d+|\\d*\\.?\\d+(?:[eE][-+]?\\d+)?)";
  private static final Pattern FEET_INCHES =
      Pattern.compile("(\\d+)\\s*(?:'|ft)[ -]*(" + NUMBER + ")\\s*(?:\"|in)");
  private static final Pattern SINGLE = Pattern.compile("(" + NUMBER + ")\\s*(.+)");

  private static final Map<Dimension, Map<String, Unit>> UNITS =
      Map.of(
          Dimension.LENGTH,
          Map.of(
              "ft",
              Unit.FOOT,
              "'",
              Unit.FOOT,
              "in",
              Unit.INCH,
              "\"",
              Unit.INCH,
              "mm",
              Unit.MILLIMETRE,
              "cm",
              Unit.CENTIMETRE,
              "m",
              Unit.METRE),
          Dimension.TEMPERATURE_DIFFERENCE,
          Map.of(
              "f",
              Unit.FAHRENHEIT_DIFFERENCE,
              "°f",
              Unit.FAHRENHEIT_DIFFERENCE,
              "k",
              Unit.KELVIN_DIFFERENCE,
              "c",
              Unit.CELSIUS_DIFFERENCE,
              "°c",
              Unit.CELSIUS_DIFFERENCE),
          Dimension.EXPANSION,
          Map.of(
              "/k",
              Unit.PER_KELVIN,
              "/c",
              Unit.PER_KELVIN,
              "/°c",
              Unit.PER_KELVIN,
              "/f",
              Unit.PER_FAHRENHEIT,
              "/°f",
              Unit.PER_FAHRENHEIT),
          Dimension.RATIO,
          Map.of("%", Unit.PERCENT));

  @Override
  public Optional<Content.Amount> read(String text, Dimension dimension) {
    String plain = text.strip().toLowerCase(Locale.ROOT);
    Matcher feet = FEET_INCHES.matcher(plain);
    if (dimension == Dimension.LENGTH && feet.matches()) {
      double inches = 12 * number(feet.group(1)) + number(feet.group(2));
      return Optional.of(Content.Amount.exact(Quantity.of(inches, Unit.INCH)));
    }
    Matcher single = SINGLE.matcher(plain);
    if (!single.matches()) return Optional.empty();
    Unit unit = UNITS.getOrDefault(dimension, Map.of()).get(single.group(2).strip());
    if (unit == null) return Optional.empty();
    return Optional.of(Content.Amount.exact(Quantity.of(number(single.group(1)), unit)));
  }

  private static double number(String text) {
    String[] parts = text.split("(?<=\\d)[ -](?=\\d)");
    if (parts.length == 2) return number(parts[0]) + number(parts[1]);
    String[] fraction = text.split("/");
    if (fraction.length == 1) return Double.parseDouble(text);
    return Double.parseDouble(fraction[0]) / Double.parseDouble(fraction[1]);
  }
}
