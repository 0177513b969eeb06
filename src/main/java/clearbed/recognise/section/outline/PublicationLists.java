package clearbed.recognise.section.outline;

import clearbed.base.Memo;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.part.Parts;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/**
 * Tells lines that list a publication by its title from such as require it, whatever heading they
 * stand under: that of a publisher, or none.
 */
public final class PublicationLists {
  /** So many lines of one form are a list. */
  private static final int LIST = 3;

  /** Between a designation and its title, as some set it: "ASTM C484, thermal shock". */
  private static final Pattern BEHIND_A_COMMA = Pattern.compile("[,.]\\s*\\p{L}");

  private static final Pattern TITLED = Pattern.compile("[-:\u2013\u2014]\\s*\\p{Lu}?");

  /** "ISO 11600 Jointing products, sealants": nothing stands between name and title. */
  private static final Pattern CAPITAL = Pattern.compile("\\p{Lu}\\p{Ll}[^\\d%]*");

  /** So many lines of that form are a list. */
  private static final int LIST_OF_BARE = 5;

  private static final Pattern ITEMS = Pattern.compile("\\s*;\\s*");

  private static final Pattern JOINTS = Pattern.compile("[\\s,;.&/:()]|\\band\\b|\\bParts?\\b");

  /** A word that is no article or preposition. */
  private static final Pattern WORD = Pattern.compile("\\p{L}{4,}");

  /** "Ceramic tile (CT-20 only)". */
  private static final Pattern USED_FOR = Pattern.compile("\\s*\\([^()]{1,60}\\)\\.?$");

  private static final Pattern BODY = Pattern.compile("\\p{Lu}{2,5}\\s");

  /** Of a standard that has no title among others that have one. */
  private static final String UNTITLED = "-";

  private static final int LONGEST_UNTITLED = 80;

  /** No title is longer, in characters. */
  private static final int LONGEST = 300;

  private final Vocabulary vocabulary;

  /** By whole lines, as issue after issue lists the same; empty for no title. */
  private final Memo<String, String> behind = Memo.ofTexts();

  private final Memo<String, Boolean> bareLists = Memo.ofTexts();

  public PublicationLists(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param lines in plain form, without their numbers
   * @return for each line whether it is a title in a list
   */
  public boolean[] in(List<String> lines) {
    boolean[] out = new boolean[lines.size()];
    List<String> titles = lines.stream().map(this::title).toList();
    for (int i = 0; i < out.length; i++) {
      boolean named = !titles.get(i).isEmpty() && isNamed(titles.get(i));
      out[i] = named || isBareList(lines.get(i));
    }
    List<String> all = new ArrayList<>(titles);
    for (int i = 0; i < out.length; i++)
      if (titles.get(i).isEmpty() && isUntitled(lines.get(i))) all.set(i, UNTITLED);
    runs(all, LIST, title -> isNamed(title) || TITLED.matcher(title).lookingAt(), out);
    runs(all, LIST_OF_BARE, title -> isNamed(title) || CAPITAL.matcher(title).matches(), out);
    // A list in columns may end with a line or two that are not full.
    for (int i = 1; i < out.length; i++)
      out[i] |= out[i - 1] && Citations.mayCite(lines.get(i)) && isBare(lines.get(i), 1);
    return out;
  }

  /** Marks the lines of each run that is long enough. */
  private static void runs(List<String> titles, int least, Predicate<String> isOne, boolean[] out) {
    int from = 0;
    for (int i = 0; i <= titles.size(); i++) {
      if (i < titles.size() && !titles.get(i).isEmpty() && isOne.test(titles.get(i))) continue;
      for (int k = from; k < i && i - from >= least; k++) out[k] = true;
      from = i + 1;
    }
  }

  /** Behind the name of a body of standards at most, as in "ÖNORM DIN 18202". */
  private static boolean opens(String line, Citations.Found first) {
    return first.start() == 0 || BODY.matcher(line.substring(0, first.start())).matches();
  }

  /** "BS 5385-4 (agreed for the sheets)" among titled ones. */
  private static boolean isUntitled(String line) {
    if (line.length() > LONGEST_UNTITLED || !Citations.mayCite(line)) return false;
    List<Citations.Found> found = Citations.find(line);
    return found.size() == 1
        && opens(line, found.get(0))
        && USED_FOR.matcher(line.substring(found.get(0).end())).replaceFirst("").isBlank();
  }

  private boolean isNamed(String title) {
    return title.equals(UNTITLED) || vocabulary.list("publication").in(title);
  }

  private String title(String line) {
    String rest = behindDesignation(line);
    return !rest.isEmpty() && isTitle(rest) ? rest : "";
  }

  /** "EN 12004-1; EN 13888-1; EN 14891; ISO 11600": designations and nothing else. */
  private boolean isBareList(String line) {
    return Citations.mayCite(line) && bareLists.get(line, () -> isList(line));
  }

  private boolean isList(String whole) {
    // "Standards referred to in this section, each in its current edition: ..."
    String lead = Parts.lead(whole);
    boolean led =
        vocabulary.list("ofStandards").in(lead) && !vocabulary.list("clause.imperative").in(lead);
    String line = led ? whole.substring(lead.length() + 1) : whole;
    return isBare(line, LIST) || led && isTitled(line);
  }

  /** "EN 12004: adhesives; EN 13888: grouts; EN 14891: membranes. The latest editions apply." */
  private boolean isTitled(String line) {
    int titled = 0;
    String[] items = ITEMS.split(line.strip());
    for (int i = 0; i < items.length; i++) {
      String item = items[i].strip();
      int stop = i + 1 < items.length ? -1 : item.indexOf(". ");
      if (stop > 0) item = item.substring(0, stop);
      if (lists(item) || isUntitled(item)) titled++;
      else return false;
    }
    return titled >= LIST;
  }

  private static boolean isBare(String line, int fewest) {
    List<Citations.Found> found = Citations.find(line);
    if (found.size() < fewest) return false;
    StringBuilder rest = new StringBuilder(line);
    for (Citations.Found f : found)
      rest.replace(f.start(), f.end(), " ".repeat(f.end() - f.start()));
    return JOINTS.matcher(rest.toString()).replaceAll("").isEmpty();
  }

  /** Whether a line below a heading on standards is one of them by its title. */
  public boolean lists(String line) {
    String rest = title(line);
    return !rest.isEmpty()
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
    if (found.isEmpty() || !opens(line, found.get(0))) return "";
    int end = found.get(0).end();
    for (Citations.Found f : found) {
      if (f.start() - end <= " and ".length()) end = Math.max(end, f.end());
    }
    String rest = USED_FOR.matcher(line.substring(end).strip()).replaceFirst("");
    return rest.length() > 3 && TagFinder.tags(rest).isEmpty() ? rest : "";
  }
}
