package clearbed.recognise.text;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Numbers in words before a unit, as legal clauses write them: "twenty-five feet", "one-sixteenth
 * inch", "three quarters of an inch"; where a figure in brackets repeats the words, "seventy-two
 * (72) hours", the figure is taken.
 */
public final class SpelledNumbers {
  private static final List<String> ONES =
      List.of(
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen");
  private static final List<String> TENS =
      List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");
  private static final Map<String, Integer> PARTS =
      Map.of(
          "half", 2, "quarter", 4, "fourth", 4, "eighth", 8, "sixteenth", 16, "thirty-second", 32);

  private static final String ONE = String.join("|", ONES);
  private static final String BELOW_HUNDRED =
      "(?:(?:" + String.join("|", TENS) + ")(?:[- ](?:" + ONE + "))?|" + ONE + ")";
  private static final String WHOLE =
      BELOW_HUNDRED + "(?: hundred(?: (?:and )?" + BELOW_HUNDRED + ")?)?";
  private static final String FRACTION =
      "(?:(?:"
          + ONE
          + ")[- ](?:thirty-seconds?|sixteenths?|eighths?|quarters?|fourths?|half)|half)";

  /** Written out as the numbers are: "one in four" is no inch. */
  private static final String UNITS =
      "inch|foot|feet|ft\\b|yard|mils?\\b|mm\\b|millimet|met(?:er|re)s?\\b|sq(?:\\b|uare )|psi\\b|pounds? per|hours?\\b|days?\\b|degrees?\\b|per ?cent\\b";

  private static final Pattern NUMBER =
      Pattern.compile(
          "(?<![\\w-])(?:(?:("
              + WHOLE
              + ") and (?:a )?)?("
              + FRACTION
              + ")(?: (?:of )?an?)?|("
              + WHOLE
              + "))(?: ?\\((\\d{1,3}(?:/\\d{1,2})?)\\))?(?=[ -](?:"
              + UNITS
              + "))",
          Pattern.CASE_INSENSITIVE);

  /** Words that such a number begins with, to pass over the many texts without one. */
  private static final List<String> FIRST =
      Stream.of(ONES, TENS, List.of("half")).flatMap(List::stream).toList();

  private SpelledNumbers() {}

  /**
   * The text with such numbers in digits, of the same length: they stand right before the unit.
   *
   * @param text in plain form
   */
  public static String inDigits(String text) {
    if (!mayHave(text)) return text;
    return NUMBER.matcher(text).replaceAll(SpelledNumbers::padded);
  }

  /** True where a text may hold such a number. */
  static boolean mayHave(String text) {
    for (int i = 0; i < text.length(); i++) {
      boolean start = i == 0 || !Character.isLetterOrDigit(text.charAt(i - 1));
      if (!start || "otfsenh".indexOf(Character.toLowerCase(text.charAt(i))) < 0) continue;
      for (String word : FIRST)
        if (text.regionMatches(true, i, word, 0, word.length())) return true;
    }
    return false;
  }

  private static String padded(MatchResult m) {
    String digits = digits(m);
    int blanks = m.group().length() - digits.length();
    return blanks < 0 ? m.group() : " ".repeat(blanks) + digits;
  }

  private static String digits(MatchResult m) {
    if (m.group(4) != null) return m.group(4);
    if (m.group(3) != null) return String.valueOf(whole(m.group(3)));
    String fraction = fraction(m.group(2).toLowerCase(Locale.ROOT));
    return m.group(1) == null ? fraction : whole(m.group(1)) + " " + fraction;
  }

  private static int whole(String words) {
    int value = 0;
    for (String word : words.toLowerCase(Locale.ROOT).split("[- ]")) {
      int ten = TENS.indexOf(word);
      if (word.equals("and")) continue;
      if (word.equals("hundred")) value *= 100;
      else value += ten >= 0 ? (ten + 2) * 10 : ONES.indexOf(word) + 1;
    }
    return value;
  }

  private static String fraction(String words) {
    if (words.equals("half")) return "1/2";
    String[] halves = words.split("[- ]", 2);
    return ONES.indexOf(halves[0]) + 1 + "/" + PARTS.get(halves[1].replaceFirst("s$", ""));
  }
}
