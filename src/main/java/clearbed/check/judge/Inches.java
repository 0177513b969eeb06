package clearbed.check.judge;

import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Inches as the trade writes them: {@code 1/8 in}, {@code 1 1/2 in}. */
final class Inches {
  private static final Pattern DECIMAL =
      Pattern.compile("(?<![\\d.,/])(\\d{1,4})\\.(\\d{1,6}) in(?![\\p{L}\\d])");

  /** Tape measures go no finer than this. */
  private static final int FINEST = 64;

  private Inches() {}

  /** The text with decimals of an inch that are a fraction of the tape measure written as one. */
  static String written(String text) {
    if (text.indexOf('.') < 0) return text;
    return DECIMAL.matcher(text).replaceAll(Inches::fraction);
  }

  private static String fraction(MatchResult decimal) {
    double parts = Double.parseDouble("0." + decimal.group(2)) * FINEST;
    // Four digits of a sixty-fourth are cut: 0.0156 for 1/64.
    if (Math.abs(parts - Math.rint(parts)) > 0.005) return decimal.group();
    int over = (int) Math.rint(parts);
    int under = FINEST;
    while (over > 0 && over % 2 == 0) {
      over /= 2;
      under /= 2;
    }
    int whole = Integer.parseInt(decimal.group(1));
    if (over == 0) return whole + " in";
    return (whole == 0 ? "" : whole + " ") + over + "/" + under + " in";
  }
}
