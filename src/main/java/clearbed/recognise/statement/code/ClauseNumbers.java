package clearbed.recognise.statement.code;

import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Numbers by which clauses are called from anywhere in a set: {@code M41/340}, {@code M40/2.05}.
 */
public final class ClauseNumbers {
  /** As the source of a pattern. */
  public static final String CODED =
      "(?:[A-Z]\\d{2}/\\d{3}[A-Z]?|[A-Z]{1,3}\\d{0,2}/\\d{1,2}(?:\\.\\d{1,3}){1,2})";

  private static final Pattern WHOLE = Pattern.compile(CODED);

  private static final Pattern ANYWHERE = Pattern.compile("(?<![\\w/])" + CODED + "(?![\\w/])");

  private ClauseNumbers() {}

  /** Those that a text names, as written. */
  public static Set<String> in(String text) {
    if (text.indexOf('/') < 0) return Set.of();
    Set<String> out = new TreeSet<>();
    Matcher m = ANYWHERE.matcher(text);
    while (m.find()) out.add(m.group());
    return out;
  }

  /** True where a text is such a number and nothing else. */
  public static boolean isOne(String text) {
    return WHOLE.matcher(text.strip()).matches();
  }

  /** The code of the work section that such a number stands below: {@code M41}. */
  public static String code(String number) {
    return number.substring(0, number.indexOf('/'));
  }
}
