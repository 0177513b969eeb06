package clearbed.check.computed.reference;

import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * What a set counts by plain figures under a word: tables 1 to 5, paragraphs 1 to 22. "Table 7" and
 * "paragraph 31" lead beyond the last of them.
 */
final class LabelledNumbers {
  private static final String PARAGRAPH = "paragraph";

  /** Fewer are hardly a count; numbered paragraphs come again in every document. */
  private static final int FEWEST = 3;

  private static final int FEWEST_PARAGRAPHS = 10;

  private static final Pattern LABEL = Pattern.compile("\\s*([A-Za-z]+) (\\d{1,2})\\b");

  private static final Pattern REFERENCE = Pattern.compile("([A-Za-z]+)\\.? (\\d{1,3})");

  private static final Pattern PLAIN = Pattern.compile("(\\d{1,3})[.)]?");

  private final Vocabulary vocabulary;
  private final Map<String, TreeSet<Integer>> counted = new HashMap<>();

  LabelledNumbers(Project project, Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        label(clause.heading());
        label(clause.text());
        Matcher number = PLAIN.matcher(clause.number().strip());
        if (number.matches()) add(PARAGRAPH, number.group(1));
      }
    }
  }

  private void label(String text) {
    Matcher m = LABEL.matcher(text);
    if (m.lookingAt() && isCounted(m.group(1)))
      add(m.group(1).toLowerCase(Locale.ROOT), m.group(2));
  }

  private boolean isCounted(String word) {
    return vocabulary.list("checks.counted").matches(word);
  }

  private void add(String word, String number) {
    counted.computeIfAbsent(word, any -> new TreeSet<>()).add(Integer.parseInt(number));
  }

  /**
   * True where the words name a number beyond the last of an unbroken count.
   *
   * @param words such as {@code table 7}
   */
  boolean isBeyond(String words) {
    Matcher m = REFERENCE.matcher(words);
    if (!m.matches()) return false;
    String word = m.group(1).toLowerCase(Locale.ROOT);
    boolean paragraph = vocabulary.list("checks.paragraph").matches(word);
    if (!paragraph && !isCounted(word)) return false;
    TreeSet<Integer> all = counted.getOrDefault(paragraph ? PARAGRAPH : word, new TreeSet<>());
    if (all.size() < (paragraph ? FEWEST_PARAGRAPHS : FEWEST)) return false;
    boolean unbroken = all.first() == 1 && all.last() == all.size();
    return unbroken && Integer.parseInt(m.group(2)) > all.last();
  }
}
