package clearbed.cli.joint;

import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.cli.terminal.UsageFailure;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.recognise.text.Quantities;
import java.util.Optional;

/** Reads the figures that are typed as options; what makes no sense is refused in one line. */
final class JointFigures {
  private static final Quantity LARGEST_RANGE = Quantity.of(500, Unit.KELVIN_DIFFERENCE);
  private static final Quantity LARGEST_LENGTH = Quantity.of(10_000, Unit.METRE);
  private static final Quantity LARGEST_MOVEMENT = Quantity.of(100, Unit.MILLIMETRE);
  private static final Quantity LARGEST_EXPANSION = Quantity.of(1e-3, Unit.PER_KELVIN);
  private static final Quantity COLDEST = Quantity.of(-100, Unit.CELSIUS);
  private static final Quantity HOTTEST = Quantity.of(200, Unit.CELSIUS);

  private static final String A_LENGTH = "12ft, 3/8in, 10mm";
  private static final String A_RANGE = "130F or 70K";
  static final String AN_EXPANSION = "9e-6/K";

  private JointFigures() {}

  static UsageFailure refusal(String option, String problem) {
    return new UsageFailure(option + ": " + problem);
  }

  static Optional<Given> length(String option, String text) {
    if (text == null) return Optional.empty();
    Given length = positive(option, text, Dimension.LENGTH, A_LENGTH);
    if (length.high().compareTo(LARGEST_LENGTH) > 0) {
      throw refusal(option, text + " is longer than any building; check its unit");
    }
    return Optional.of(length);
  }

  static Optional<Given> notNegative(String option, String text) {
    if (text == null) return Optional.empty();
    Given given = figure(option, text, Dimension.LENGTH, "1/16in or 2mm");
    if (given.low().number() < 0) {
      throw refusal(option, text + " is negative; give zero or more");
    }
    if (given.high().compareTo(LARGEST_MOVEMENT) > 0) {
      throw refusal(option, text + " is more than any tile joint has room for; check its unit");
    }
    return Optional.of(given);
  }

  static Optional<Given> range(String option, String text) {
    if (text == null) return Optional.empty();
    Given range = figure(option, text, Dimension.TEMPERATURE_DIFFERENCE, A_RANGE);
    if (range.low().number() <= 0 && range.high().number() > 0) {
      throw refusal(
          option,
          text
              + " reads as two temperatures; give their difference, e.g. "
              + A_RANGE
              + ", or --coldest and --hottest");
    }
    range = positive(option, text, Dimension.TEMPERATURE_DIFFERENCE, A_RANGE);
    if (range.high().compareTo(LARGEST_RANGE) > 0) {
      throw refusal(option, text + " is no weather; give hottest less coldest, e.g. " + A_RANGE);
    }
    return Optional.of(range);
  }

  static Optional<Given> temperature(String option, String text) {
    if (text == null) return Optional.empty();
    Given given = figure(option, text, Dimension.TEMPERATURE, "-10F, 65C or 40to80F");
    if (given.low().compareTo(COLDEST) < 0 || given.high().compareTo(HOTTEST) > 0) {
      throw refusal(option, text + " is no temperature of tile; give e.g. -10F or 65C");
    }
    return Optional.of(given);
  }

  static Given expansion(String option, String text) {
    Given given = positive(option, text, Dimension.EXPANSION, AN_EXPANSION);
    if (given.high().compareTo(LARGEST_EXPANSION) > 0) {
      throw refusal(option, text + " is no building material; give e.g. " + AN_EXPANSION);
    }
    return given;
  }

  private static Given positive(String option, String text, Dimension dimension, String like) {
    Given given = figure(option, text, dimension, like);
    if (given.low().number() <= 0) {
      throw refusal(option, text + " is not above zero; give e.g. " + like);
    }
    return given;
  }

  private static Given figure(String option, String text, Dimension dimension, String like) {
    try {
      Content.Amount amount =
          Quantities.parse(text, dimension)
              .orElseThrow(
                  () ->
                      refusal(
                          option,
                          "'"
                              + text
                              + "' is not understood; give a figure with its unit, e.g. "
                              + like));
      return Given.stated(Interval.of(amount), null, option + " " + text);
    } catch (IllegalArgumentException e) {
      throw refusal(option, "'" + text + "' is no usable figure; give e.g. " + like);
    }
  }
}
