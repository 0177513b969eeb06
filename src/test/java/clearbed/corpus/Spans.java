package clearbed.corpus;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Marks in the text of a set: {@code <mortar.bond GT-1 GT-2>words</>} says what the words state,
 * and for which entries; without tags, for every glass entry.
 */
final class Spans {
  private static final Pattern SPAN =
      Pattern.compile("<([a-z][A-Za-z.]*)((?:\\s+[^<>\\s]+)*)>(.*?)</>");

  /** Stands where an edit took words out. */
  private static final String GONE = "\u0001";

  private Spans() {}

  /** The text with every marked statement passed through the edit, marks kept. */
  static String edit(String text, Set<String> all, UnaryOperator<Statement> edit) {
    Matcher matcher = SPAN.matcher(text);
    return matcher.replaceAll(match -> Matcher.quoteReplacement(edited(match, all, edit)));
  }

  private static String edited(MatchResult match, Set<String> all, UnaryOperator<Statement> edit) {
    Statement before = statement(match, all);
    String words = edit.apply(before).text();
    if (words.isEmpty()) return GONE;
    return "<" + match.group(1) + match.group(2) + ">" + words + "</>";
  }

  private static Statement statement(MatchResult match, Set<String> all) {
    String tags = match.group(2).strip();
    Set<String> named =
        tags.isEmpty() ? all : new LinkedHashSet<>(Arrays.asList(tags.split("\\s+")));
    return new Statement(match.group(1), named, match.group(3), false);
  }

  /** The label of a text that is one marked statement, or empty. */
  static String label(String text) {
    Matcher matcher = SPAN.matcher(text);
    return matcher.matches() ? matcher.group(1) : "";
  }

  /** The words alone, as they are rendered; what an edit left at the start is capitalised. */
  static String strip(String text) {
    String bare = text.replaceAll("<[^<>]*>", "");
    // Whoever takes the end of a sentence out puts a full stop before it.
    String ended =
        bare.replaceAll(",\\s*" + GONE + "(?=\\s+(?!Use|Type|Grade|Class)[A-Z][a-z]+ |\\s*$)", ".");
    String words = ended.replace(GONE, "").replaceAll(" {2,}", " ").replace(":,", ":");
    String line = words.strip();
    return line.isEmpty()
        ? line
        : line.substring(0, 1).toUpperCase(Locale.ROOT) + line.substring(1);
  }
}
