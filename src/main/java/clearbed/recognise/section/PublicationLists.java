package clearbed.recognise.section;

import clearbed.base.Memo;
import clearbed.recognise.statement.Citations;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Tells lines that list a publication by its title from such as require it, whatever heading they
 * stand under: that of a publisher, or none.
 */
final class PublicationLists {
  /** So many lines of one form are a list. */
  private static final int LIST = 3;

  /** Between a designation and its title, as some set it: "ASTM C484, thermal shock". */
  private static final Pattern BEHIND_A_COMMA = Pattern.compile("[,.]\\s*\\p{L}");

  private static final Pattern TITLED = Pattern.compile("[-:\u2013\u2014]\\s*\\p{Lu}?");

  /** A word that is no article or preposition. */
  private static final Pattern WORD = Pattern.compile("\\p{L}{4,}");

  /** "Ceramic tile (CT-20 only)". */
  private static final Pattern USED_FOR = Pattern.compile("\\s*\\([^()]{1,60}\\)\\.?$");

  /** No title is longer, in characters. */
  private static final int LONGEST = 300;

  private final Vocabulary vocabulary;

  /** By whole lines, as issue after issue lists the same; empty for no title. */
  private final Memo<String, String> behind = Memo.ofTexts();

  PublicationLists(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param lines in plain form, without their numbers
   * @return for each line whether it is a title in a list
   */
  boolean[] in(List<String> lines) {
    boolean[] out = new boolean[lines.size()];
    int from = 0;
    for (int i = 0; i <= lines.size(); i++) {
      String rest = i < lines.size() ? behindDesignation(lines.get(i)) : "";
      boolean title = !rest.isEmpty() && isTitle(rest);
      if (title) out[i] = vocabulary.list("publication").in(rest);
      if (title && (out[i] || TITLED.matcher(rest).lookingAt())) continue;
      for (int k = from; k < i && i - from >= LIST; k++) out[k] = true;
      from = i + 1;
    }
    return out;
  }

  /** Whether a line below a heading on standards is one of them by its title. */
  boolean lists(String line) {
    String rest = behindDesignation(line);
    return !rest.isEmpty()
        && isTitle(rest)
        && (TITLED.matcher(rest).lookingAt() || BEHIND_A_COMMA.matcher(rest).lookingAt());
  }

  /** "Ceramic Tile Installed with Chemical Resistant Epoxy" asks for nothing: it is a name. */
  private boolean isTitle(String words) {
    if (!vocabulary.list("finite").in(words)) return true;
    List<String> all = WORD.matcher(words).results().map(MatchResult::group).toList();
    long capital = all.stream().filter(word -> Character.isUpperCase(word.charAt(0))).count();
    return capital * 3 >= all.size() * 2L;
  }

  /** The words behind the standard that a line opens with; empty where it is no title. */
  private String behindDesignation(String line) {
    boolean may = line.length() <= LONGEST && Citations.mayCite(line);
    return may ? behind.get(line, () -> searched(line)) : "";
  }

  private static String searched(String line) {
    List<Citations.Found> found = Citations.find(line);
    if (found.isEmpty() || found.get(0).start() > 0) return "";
    int end = found.get(0).end();
    for (Citations.Found f : found) {
      if (f.start() - end <= " and ".length()) end = Math.max(end, f.end());
    }
    String rest = USED_FOR.matcher(line.substring(end).strip()).replaceFirst("");
    return rest.length() > 3 && LimitFinder.tags(rest).isEmpty() ? rest : "";
  }
}
