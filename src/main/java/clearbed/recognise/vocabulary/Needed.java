package clearbed.recognise.vocabulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Reads off a regular expression words of which one must be in every text that it finds, so that
 * most texts need not be searched. Knows only the plain parts of expressions: what it does not
 * understand it takes to need nothing.
 */
public final class Needed {
  private static final int SHORTEST = 3;

  /** Of more words one is nearly always there. */
  private static final int MOST = 24;

  private final String regex;
  private int at;

  private Needed(String regex) {
    this.regex = regex;
  }

  /** In lower case; empty when there are no such words. */
  public static List<String> by(String regex) {
    Needed reader = new Needed(regex);
    try {
      List<String> words = reader.either();
      boolean whole = reader.at == regex.length();
      return whole && words.size() <= MOST ? words : List.of();
    } catch (NotPlain e) {
      return List.of();
    }
  }

  private static final class NotPlain extends Exception {
    private static final long serialVersionUID = 1L;
  }

  private boolean more() {
    return at < regex.length();
  }

  private char here() {
    return regex.charAt(at);
  }

  /** Alternatives, up to the end or the bracket that closes them. */
  private List<String> either() throws NotPlain {
    List<String> words = new ArrayList<>(sequence());
    boolean none = words.isEmpty();
    while (more() && here() == '|') {
      at++;
      List<String> other = sequence();
      none |= other.isEmpty();
      words.addAll(other);
    }
    return none ? List.of() : words;
  }

  /** Parts one after the other: the best of what they need. */
  private List<String> sequence() throws NotPlain {
    List<String> best = List.of();
    StringBuilder word = new StringBuilder();
    while (more() && here() != '|' && here() != ')') {
      String plain = "";
      List<String> group = List.of();
      char c = here();
      if (c == '(') group = group();
      else if (c == '[') bracket();
      else if (c == '\\') plain = escape();
      else if (c == '.' || c == '^' || c == '$') at++;
      else plain = literal();
      boolean optional = more() && (here() == '?' || here() == '*' || here() == '{');
      boolean repeated = optional || more() && here() == '+';
      if (repeated) quantifier();
      if (!optional && !plain.isEmpty()) word.append(plain);
      if (repeated || plain.isEmpty()) {
        best = better(best, word);
        word.setLength(0);
      }
      if (!optional) best = better(best, group);
    }
    return better(best, word);
  }

  private static List<String> better(List<String> best, StringBuilder word) {
    return word.length() < SHORTEST
        ? best
        : better(best, List.of(word.toString().toLowerCase(Locale.ROOT)));
  }

  private static List<String> better(List<String> a, List<String> b) {
    if (a.isEmpty() || b.isEmpty()) return a.isEmpty() ? b : a;
    if (a.size() != b.size()) return a.size() < b.size() ? a : b;
    return shortest(a) >= shortest(b) ? a : b;
  }

  private static int shortest(List<String> words) {
    return words.stream().mapToInt(String::length).min().orElse(0);
  }

  private List<String> group() throws NotPlain {
    at++;
    boolean needs = true;
    if (regex.startsWith("?", at)) {
      boolean plain = regex.startsWith("?:", at);
      boolean around =
          regex.startsWith("?=", at)
              || regex.startsWith("?!", at)
              || regex.startsWith("?<=", at)
              || regex.startsWith("?<!", at);
      boolean named = regex.startsWith("?<", at) && !around;
      if (!plain && !around && !named) throw new NotPlain();
      needs = plain || named;
      if (named) at = regex.indexOf('>', at) + 1;
      else at += regex.startsWith("?<", at) ? 3 : 2;
    }
    List<String> words = either();
    if (!more()) throw new NotPlain();
    at++;
    return needs ? words : List.of();
  }

  private void bracket() throws NotPlain {
    at++;
    if (more() && here() == '^') at++;
    if (more() && here() == ']') throw new NotPlain();
    while (more() && here() != ']') {
      if (here() == '[' || here() == '&') throw new NotPlain();
      at += here() == '\\' ? 2 : 1;
    }
    if (!more()) throw new NotPlain();
    at++;
  }

  /** What an escape stands for when that is a character; empty for classes and bounds. */
  private String escape() throws NotPlain {
    if (at + 1 >= regex.length()) throw new NotPlain();
    char c = regex.charAt(at + 1);
    if ("wWdDsSbB".indexOf(c) >= 0) {
      at += 2;
      return "";
    }
    if (Character.isLetterOrDigit(c)) throw new NotPlain();
    at += 2;
    return String.valueOf(c);
  }

  private String literal() throws NotPlain {
    char c = here();
    // Outside ASCII, lower and upper case are not as simple.
    if (c > 126 || c == '{' || c == '}' || c == '?' || c == '*' || c == '+') throw new NotPlain();
    at++;
    return String.valueOf(c);
  }

  private void quantifier() throws NotPlain {
    if (here() == '{') {
      int end = regex.indexOf('}', at);
      if (end < 0) throw new NotPlain();
      at = end + 1;
    } else {
      at++;
    }
    if (more() && (here() == '?' || here() == '+')) at++;
  }
}
