package clearbed.model.report;

import clearbed.model.value.Value;
import java.util.Locale;
import java.util.regex.Pattern;

/**
 * A word that a layer of the office teaches.
 *
 * @param kind {@code column}, {@code term}, {@code place}, {@code glass} or {@code tag}
 * @param as what it was taught as
 * @param attribute that it states or names; empty for none
 * @param source file and line that teach it
 */
public record TaughtWord(String kind, String words, String as, String attribute, String source) {
  private static final String LETTER = "[\\p{L}\\p{N}]";

  /** True when a value was read by it: it stands in the words of the value. */
  public boolean marks(Value value) {
    if (attribute.isEmpty() || !attribute.equals(value.attribute())) return false;
    return isIn(value.asWritten()) || value.origin().text() != null && isIn(value.origin().text());
  }

  private boolean isIn(String text) {
    String own = words.strip();
    // A heading stands over its cells, not in them.
    if (kind.equals("column") || text == null) return false;
    if (own.length() > 2 && own.startsWith("/") && own.endsWith("/"))
      return expression(own.substring(1, own.length() - 1)).matcher(text).find();
    boolean begins = own.endsWith("*");
    String plain = begins ? own.substring(0, own.length() - 1) : own;
    String written = String.join("[\\s-]+", parts(plain));
    String end = begins ? "" : "(?:s|es)?(?!" + LETTER + ")";
    return expression("(?<!" + LETTER + ")" + written + end).matcher(text).find();
  }

  private static Iterable<String> parts(String plain) {
    return Pattern.compile("[\\s-]+")
        .splitAsStream(plain.toLowerCase(Locale.ROOT))
        .map(Pattern::quote)
        .toList();
  }

  private static Pattern expression(String written) {
    return Pattern.compile(written, Pattern.CASE_INSENSITIVE | Pattern.UNICODE_CASE);
  }
}
