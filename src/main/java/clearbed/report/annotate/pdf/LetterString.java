package clearbed.report.annotate.pdf;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** Letters as a string without blanks and marks, so that line breaks and hyphens do not matter. */
final class LetterString {
  /** A shorter piece of a text may stand there by chance. */
  private static final int SHORTEST_PIECE = 5;

  private final List<PageLetter> letters;
  private final StringBuilder text = new StringBuilder();
  private final List<Integer> letterAt = new ArrayList<>();

  LetterString(List<PageLetter> letters) {
    this.letters = letters;
    for (int i = 0; i < letters.size(); i++) {
      String plain = plain(letters.get(i).text());
      text.append(plain);
      for (int k = 0; k < plain.length(); k++) letterAt.add(i);
    }
  }

  /** Small letters and digits alone; the text itself when it has none. */
  static String plain(String words) {
    String folded = Normalizer.normalize(words, Normalizer.Form.NFKC).toLowerCase(Locale.ROOT);
    String plain = folded.replaceAll("[^\\p{L}\\p{N}\\p{M}$%°/<>=+.,]+", "");
    return plain;
  }

  /** Every place where the plain words stand as whole words. */
  List<List<PageLetter>> find(String plain) {
    List<List<PageLetter>> found = new ArrayList<>();
    if (plain.isEmpty()) return found;
    for (int at = text.indexOf(plain); at >= 0; at = text.indexOf(plain, at + 1)) {
      int end = at + plain.length();
      if (opens(at) && opens(end)) found.add(letters(at, end));
    }
    return found;
  }

  /** True when no word runs on over the position. */
  private boolean opens(int position) {
    if (position == 0 || position >= text.length()) return true;
    int before = letterAt.get(position - 1);
    int after = letterAt.get(position);
    if (before == after) return false;
    // A mark that is not in the text, such as a bracket, parts words too, but a hyphen does not.
    if (after - before > 1) return !isHyphened(before + 1, after);
    return letters.get(after).opens()
        || !Character.isLetterOrDigit(text.charAt(position - 1))
        || !Character.isLetterOrDigit(text.charAt(position));
  }

  private boolean isHyphened(int from, int to) {
    for (int i = from; i <= to; i++) if (letters.get(i).opens()) return false;
    return letters.get(from).text().equals("-");
  }

  /**
   * The pieces of a text that is broken up on the page, such as the lines of a table cell.
   *
   * @return no letters when less than three fifths of it are there
   */
  List<PageLetter> pieces(String plain) {
    List<PageLetter> found = new ArrayList<>();
    int matched = 0;
    int from = 0;
    for (int i = 0; i < plain.length(); ) {
      int[] best = longest(plain, i, from);
      if (best[1] < Math.min(SHORTEST_PIECE, plain.length())) {
        i++;
        continue;
      }
      found.addAll(letters(best[0], best[0] + best[1]));
      matched += best[1];
      from = best[0] + best[1];
      i += best[1];
    }
    return matched * 5 >= plain.length() * 3 ? found : List.of();
  }

  /** Start and length of the longest match, the first behind a position among equals. */
  private int[] longest(String plain, int i, int from) {
    int[] best = {0, 0};
    for (int n = 0; n < text.length(); n++) {
      int start = (from + n) % text.length();
      int length = 0;
      while (i + length < plain.length()
          && start + length < text.length()
          && plain.charAt(i + length) == text.charAt(start + length)) {
        length++;
      }
      if (length > best[1] && opens(start)) best = new int[] {start, length};
    }
    return best;
  }

  private List<PageLetter> letters(int from, int to) {
    List<PageLetter> found = new ArrayList<>();
    for (int i = letterAt.get(from); i <= letterAt.get(to - 1); i++) found.add(letters.get(i));
    return found;
  }
}
