package clearbed.recognise.vocabulary.phrase;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/** Reads the plain parts of expressions, one after the other. */
final class ExpressionReader {
  /** Said of what it does not understand. */
  static final class NotPlain extends Exception {
    private static final long serialVersionUID = 1L;
  }

  private static final char NONE = 0;

  /** Of more characters in brackets one is nearly always there. */
  private static final int FEW = 6;

  private final String regex;
  private final boolean coded;
  private int at;

  /**
   * @param coded false where names are looked for alone, which takes less time
   */
  ExpressionReader(String regex, boolean coded) {
    this.regex = regex;
    this.coded = coded;
  }

  ExpressionPart read() throws NotPlain {
    ExpressionPart whole = either();
    if (more()) throw new NotPlain();
    return whole;
  }

  private boolean more() {
    return at < regex.length();
  }

  private char here() {
    return regex.charAt(at);
  }

  /** Alternatives, up to the end or the bracket that closes them. */
  private ExpressionPart either() throws NotPlain {
    ExpressionPart first = sequence();
    if (!more() || here() != '|') return first;
    List<ExpressionPart> all = new ArrayList<>(List.of(first));
    while (more() && here() == '|') {
      at++;
      all.add(sequence());
    }
    List<String> named = new ArrayList<>();
    Set<String> codes = new TreeSet<>();
    Set<String> whole = new TreeSet<>();
    boolean none = false;
    boolean unnamed = false;
    for (ExpressionPart part : all) {
      named.addAll(part.named());
      unnamed |= part.named().isEmpty();
      List<String> needed = part.needed();
      none |= needed.isEmpty();
      if (coded && !none) codes.addAll(needed);
      if (part.whole() == null) whole = null;
      else if (whole != null) whole.addAll(part.whole());
    }
    if (unnamed) named = List.of();
    none |= codes.size() > ExpressionPart.MOST;
    if (whole != null && whole.size() > ExpressionPart.MOST) whole = null;
    return new ExpressionPart(named, none ? Set.of() : ExpressionPart.tellsMuch(codes), whole);
  }

  private ExpressionPart sequence() throws NotPlain {
    ExpressionPart.Sequence out = new ExpressionPart.Sequence(coded);
    while (more() && here() != '|' && here() != ')') {
      char letter = letter();
      ExpressionPart part = letter == NONE ? part() : of(letter);
      char times = more() ? here() : NONE;
      if ("?*+{".indexOf(times) < 0) {
        if (letter == NONE) out.part(part);
        else out.letter(letter);
        continue;
      }
      // The first of "bed+".
      if (letter != NONE && times == '+') out.letter(letter);
      out.part(quantified(part));
    }
    return out.all();
  }

  private ExpressionPart of(char letter) {
    return coded ? ExpressionPart.of(letter) : ExpressionPart.UNKNOWN;
  }

  /** The character that the next part stands for; none where it is no character. */
  private char letter() throws NotPlain {
    char c = here();
    if ("([.^$".indexOf(c) >= 0) return NONE;
    if (c == '\\') {
      if (at + 1 >= regex.length()) throw new NotPlain();
      char escaped = regex.charAt(at + 1);
      if (Character.isLetterOrDigit(escaped)) return NONE;
      at += 2;
      return escaped;
    }
    // Outside ASCII, lower and upper case are not as simple.
    boolean foreign = c > 126 && Character.isLetter(c);
    if (foreign || "{}?*+".indexOf(c) >= 0) throw new NotPlain();
    at++;
    return c;
  }

  private ExpressionPart part() throws NotPlain {
    char c = here();
    if (c == '(') return group();
    if (c == '[') return bracket();
    if (c == '\\') return escape();
    at++;
    return c == '.' ? ExpressionPart.UNKNOWN : ExpressionPart.EMPTY;
  }

  private ExpressionPart escape() throws NotPlain {
    char c = regex.charAt(at + 1);
    if ("wWdDsSbBpP".indexOf(c) < 0) throw new NotPlain();
    at += 2;
    if ((c == 'p' || c == 'P') && more() && here() == '{') at = regex.indexOf('}', at) + 1;
    return c == 'b' || c == 'B' ? ExpressionPart.EMPTY : ExpressionPart.UNKNOWN;
  }

  private ExpressionPart group() throws NotPlain {
    at++;
    boolean around = false;
    if (regex.startsWith("?", at)) {
      int behind = regex.startsWith("?<", at) ? at + 2 : at + 1;
      around = behind < regex.length() && "=!".indexOf(regex.charAt(behind)) >= 0;
      if (around) at = behind + 1;
      else if (regex.startsWith("?:", at)) at += 2;
      else if (regex.startsWith("?-i:", at)) at += 4;
      else if (regex.startsWith("?<", at)) at = regex.indexOf('>', at) + 1;
      else throw new NotPlain();
    }
    ExpressionPart inside = either();
    if (!more()) throw new NotPlain();
    at++;
    return around ? ExpressionPart.EMPTY : inside;
  }

  /** Its characters, where these are few and plain. */
  private ExpressionPart bracket() throws NotPlain {
    Set<String> members = new TreeSet<>();
    boolean plain = true;
    at++;
    if (more() && here() == '^') {
      plain = false;
      at++;
    }
    if (more() && here() == ']') throw new NotPlain();
    while (more() && here() != ']') {
      char c = here();
      if (c == '[' || c == '&' && regex.startsWith("&&", at)) throw new NotPlain();
      if (c == '\\') c = regex.charAt(++at);
      boolean kind = regex.charAt(at - 1) == '\\' && Character.isLetterOrDigit(c);
      at++;
      char last = c;
      if (regex.startsWith("-", at) && !regex.startsWith("-]", at)) {
        last = regex.charAt(at + 1);
        at += 2;
      }
      if (kind || last == '\\' || last - c > FEW || last > 126) plain = false;
      for (; coded && plain && c <= last; c++)
        members.add(String.valueOf(Character.toLowerCase(c)));
    }
    if (!more()) throw new NotPlain();
    at++;
    return coded && plain
        ? new ExpressionPart(List.of(), Set.of(), members)
        : ExpressionPart.UNKNOWN;
  }

  private ExpressionPart quantified(ExpressionPart part) throws NotPlain {
    char times = here();
    boolean named = times == '+';
    boolean always = named;
    at++;
    if (times == '{') {
      always = more() && here() != '0';
      int end = regex.indexOf('}', at);
      if (end < 0) throw new NotPlain();
      at = end + 1;
    }
    if (more() && (here() == '?' || here() == '+')) at++;
    if (times == '?') return part.optional();
    return always ? part.repeated(named) : ExpressionPart.UNKNOWN;
  }
}
