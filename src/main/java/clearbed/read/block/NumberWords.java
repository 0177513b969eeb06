package clearbed.read.block;

import java.util.Locale;

/** A number in the formats that word processors count in. */
public final class NumberWords {
  private static final int[] VALUES = {1000, 900, 500, 400, 100, 90, 50, 40, 10, 9, 5, 4, 1};
  private static final String[] SIGNS = {
    "M", "CM", "D", "CD", "C", "XC", "L", "XL", "X", "IX", "V", "IV", "I"
  };

  private NumberWords() {}

  /**
   * @param format name in the Office Open XML standard; unknown ones count in decimals
   */
  public static String of(int value, String format) {
    return switch (format) {
      case "none" -> "";
      case "decimalZero" -> value < 10 ? "0" + value : String.valueOf(value);
      case "upperLetter" -> letters(value);
      case "lowerLetter" -> letters(value).toLowerCase(Locale.ROOT);
      case "upperRoman" -> roman(value);
      case "lowerRoman" -> roman(value).toLowerCase(Locale.ROOT);
      case "ordinal" -> value + ordinalEnd(value);
      default -> String.valueOf(value);
    };
  }

  /** After Z comes AA, then BB: the letter is repeated. */
  private static String letters(int value) {
    if (value < 1 || value > 26 * 30) return String.valueOf(value);
    return String.valueOf((char) ('A' + (value - 1) % 26)).repeat((value - 1) / 26 + 1);
  }

  private static String roman(int value) {
    if (value < 1 || value > 9999) return String.valueOf(value);
    StringBuilder out = new StringBuilder();
    int rest = value;
    for (int i = 0; i < VALUES.length; i++) {
      for (; rest >= VALUES[i]; rest -= VALUES[i]) out.append(SIGNS[i]);
    }
    return out.toString();
  }

  private static String ordinalEnd(int value) {
    if (value % 100 >= 11 && value % 100 <= 13) return "th";
    return switch (value % 10) {
      case 1 -> "st";
      case 2 -> "nd";
      case 3 -> "rd";
      default -> "th";
    };
  }
}
