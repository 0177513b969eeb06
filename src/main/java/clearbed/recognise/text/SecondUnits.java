package clearbed.recognise.text;

import clearbed.recognise.text.Quantities.Found;
import java.util.regex.Pattern;

/** Figures that give the one before them again in another unit: {@code 1/4 in. (6 mm)}. */
final class SecondUnits {
  private static final Pattern JOINED =
      Pattern.compile(
          "\\s*(?:[\\[(]\\s*|,?\\s*/\\s*)(?:approx\\.?\\s*|about\\s*)?"
              + "|(?:\\s*(?:minimum|min\\.?|maximum|max\\.?))?\\s*[\\[(]\\s*");

  /** "48 hours (7 days in the tank)" gives another figure for another case. */
  private static final Pattern OF_A_CASE =
      Pattern.compile(
          "\\s?(?i:in|at|for|under|behind|outside|inside|where|when|if|with)\\s(?:the |all )?\\p{L}");

  private SecondUnits() {}

  /**
   * @param text that both stand in
   */
  static boolean restates(String text, Found before, Found f) {
    return before.unit() != f.unit()
        && before.unit().dimension() == f.unit().dimension()
        && JOINED.matcher(text.substring(before.end(), f.start())).matches()
        && !OF_A_CASE.matcher(text).region(f.end(), text.length()).lookingAt();
  }
}
