package clearbed.recognise.vocabulary.phrase;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * What a part of an expression says of the texts that it finds.
 *
 * @param named words of three letters and more one of which is there
 * @param codes the same of any length
 * @param whole all that the part may be; null where that is not known, or is too much
 */
record ExpressionPart(List<String> named, Set<String> codes, Set<String> whole) {
  static final int SHORTEST = 3;

  /** Of more words one is nearly always there. */
  static final int MOST = 24;

  static final ExpressionPart UNKNOWN = new ExpressionPart(List.of(), Set.of(), null);
  static final ExpressionPart EMPTY = new ExpressionPart(List.of(), Set.of(), Set.of(""));

  static ExpressionPart of(char letter) {
    String text = String.valueOf(Character.toLowerCase(letter));
    return new ExpressionPart(List.of(), Set.of(), Set.of(text));
  }

  List<String> needed() {
    if (!named.isEmpty() && named.size() <= MOST) return named;
    return List.copyOf(codes);
  }

  /** Itself or nothing. */
  ExpressionPart optional() {
    if (whole == null) return UNKNOWN;
    Set<String> with = new TreeSet<>(whole);
    with.add("");
    return new ExpressionPart(List.of(), Set.of(), with);
  }

  /** Itself again and again. */
  ExpressionPart repeated(boolean keepsNames) {
    Set<String> own = whole == null ? codes : better(codes, tellsMuch(whole));
    return new ExpressionPart(keepsNames ? named : List.of(), own, null);
  }

  /** Behind one another; null where these are too many. */
  static Set<String> joined(Set<String> first, Set<String> second) {
    if (second.equals(EMPTY.whole)) return first;
    if (first.equals(EMPTY.whole)) return second;
    if (first.size() * second.size() > MOST) return null;
    Set<String> out = new TreeSet<>();
    for (String a : first) for (String b : second) out.add(a + b);
    return out;
  }

  /** Those that hold none of the others; none where one of them is nearly always there. */
  static Set<String> tellsMuch(Set<String> words) {
    Set<String> out = new TreeSet<>();
    for (String word : words) {
      if (word.isBlank()) return Set.of();
      if (word.length() == 1 && Character.isLetterOrDigit(word.charAt(0))) return Set.of();
      if (!holdsAnother(word, words)) out.add(word);
    }
    return out;
  }

  private static boolean holdsAnother(String word, Set<String> words) {
    for (String other : words)
      if (other.length() < word.length() && word.contains(other)) return true;
    return false;
  }

  static Set<String> better(Set<String> a, Set<String> b) {
    if (a.isEmpty() || b.isEmpty()) return a.isEmpty() ? b : a;
    boolean longA = shortest(a) >= SHORTEST;
    boolean longB = shortest(b) >= SHORTEST;
    if (longA != longB) return longA ? a : b;
    return a.size() <= b.size() ? a : b;
  }

  static List<String> better(List<String> a, List<String> b) {
    if (a.isEmpty() || b.isEmpty()) return a.isEmpty() ? b : a;
    if (a.size() != b.size()) return a.size() < b.size() ? a : b;
    return shortest(a) >= shortest(b) ? a : b;
  }

  private static int shortest(Iterable<String> words) {
    int least = Integer.MAX_VALUE;
    for (String word : words) least = Math.min(least, word.length());
    return least;
  }

  /** Parts one after the other. */
  static final class Sequence {
    private List<String> named = List.of();
    private Set<String> codes = Set.of();
    private final StringBuilder word = new StringBuilder();

    /** All that the last parts may be. */
    private Set<String> run = Set.of("");

    private boolean wholly = true;
    private final boolean coded;

    /**
     * @param coded false where names are looked for alone, which takes less time
     */
    Sequence(boolean coded) {
      this.coded = coded;
    }

    void letter(char c) {
      word.append(Character.toLowerCase(c));
    }

    void part(ExpressionPart part) {
      endWord();
      join(part);
    }

    private void endWord() {
      if (word.length() == 0) return;
      String text = word.toString();
      word.setLength(0);
      List<String> name = text.length() < ExpressionPart.SHORTEST ? List.of() : List.of(text);
      join(new ExpressionPart(name, Set.of(), Set.of(text)));
    }

    private void join(ExpressionPart part) {
      named = ExpressionPart.better(named, part.named());
      if (!coded) {
        wholly = false;
        return;
      }
      codes = ExpressionPart.better(codes, part.codes());
      Set<String> both = part.whole() == null ? null : ExpressionPart.joined(run, part.whole());
      if (both == null) {
        codes = ExpressionPart.better(codes, ExpressionPart.tellsMuch(run));
        wholly = false;
      }
      run = both != null ? both : part.whole() != null ? part.whole() : Set.of("");
    }

    ExpressionPart all() {
      endWord();
      return new ExpressionPart(
          named, ExpressionPart.better(codes, ExpressionPart.tellsMuch(run)), wholly ? run : null);
    }
  }
}
