package clearbed.check.computed.reference;

import clearbed.base.Memo;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * References in a form of their office's own ("see detail D-14", "acc. to 3.4") that lead to
 * nothing of that name in the set: whether it lacks the place or only calls it otherwise is not
 * known.
 */
public final class OpenReferences {
  private static final int LONGEST_TITLE = 60;

  /** So many of one kind of number are a count that a missing one is missed in. */
  private static final int COUNTED = 3;

  private static final Pattern LAST_FIGURES = Pattern.compile("^(.*?)(\\d{1,5})$");

  /** In parts, behind letters, or as 5/01: no figure is written so. */
  private static final Pattern COUNTING =
      Pattern.compile(
          "[A-Z]{1,4}[-.]?\\d{1,4}(?:[-.]\\d{1,4})*|\\d{1,4}(?:[-.]\\d{1,4}){2,3}|\\d{1,3}/0\\d");

  private static final Pattern ENDING = Pattern.compile("[.:)]+$");

  private final Vocabulary vocabulary;
  private final Set<String> known = new HashSet<>();

  /** How many numbers the set counts alike, by what they have in common: "G-3-", "D", "###". */
  private final Map<String, Integer> counted = new HashMap<>();

  /** Issue after issue says the same words. */
  private final Set<String> looked = new HashSet<>();

  OpenReferences(Project project, List<Document> documents, Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    documents.forEach(d -> known.addAll(References.numbersIn(d.path().replace('_', ' '))));
    project.facts().forEach(f -> f.numbered().forEach(this::named));
    project.tags().forEach(tag -> known.add(References.key(tag)));
    project.entries().forEach(e -> known.add(References.key(Tags.key(e.tag()))));
    for (Section section : project.sections()) {
      known.add(References.key(section.number()));
      known.addAll(References.numbersIn(section.title()));
      for (Clause clause : section.clauses()) clause(clause);
    }
  }

  private void named(String words) {
    String key = References.key(words);
    if (COUNTING.matcher(words).matches()) number(key);
    else known.add(key);
  }

  private void clause(Clause clause) {
    String number = clause.number().trim();
    if (!number.isEmpty()) {
      number(References.key(number.split(" ")[0]));
      known.add(References.key(number));
    }
    titled(clause.heading());
    titled(clause.text());
  }

  /** With it goes what it stands below: where there is 24.01.10 there is 24.01. */
  private void number(String key) {
    if (!known.add(key)) return;
    counted.merge(kind(key), 1, Integer::sum);
    counted.merge(form(key), 1, Integer::sum);
    int last = key.lastIndexOf('-');
    if (last > 0 && key.indexOf('-') < last) number(key.substring(0, last));
  }

  /** What numbers that are counted alike have in common. */
  private static String kind(String key) {
    Matcher m = LAST_FIGURES.matcher(key);
    if (!m.matches()) return "";
    return m.group(1).isEmpty() ? "#".repeat(m.group(2).length()) : m.group(1);
  }

  /**
   * True where the set counts such numbers and this is none of them, clause 460 of 110 to 720, or
   * none of those that it would stand below: 11.19.4 of 11.1 to 11.12.
   */
  boolean isMissed(String key) {
    if (known.contains(key)) return false;
    String kind = kind(key);
    boolean tells = kind.length() > 2 || !kind.startsWith("#");
    if (!kind.isEmpty() && tells && counted.getOrDefault(kind, 0) >= COUNTED) return true;
    int last = key.lastIndexOf('-');
    if (last < 0 || key.indexOf('-') == last) return false;
    String above = key.substring(0, last);
    return isMissed(above)
        || !known.contains(above) && counted.getOrDefault(form(key), 0) >= COUNTED;
  }

  /** What it begins with and how many parts it has: "24###" for 24.01.10. */
  private static String form(String key) {
    String[] parts = key.split("-");
    return parts[0] + "#".repeat(parts.length);
  }

  /** A title, or the number that a note opens with. */
  private void titled(String text) {
    if (!looked.add(text)) return;
    References.numbersIn(opening(text)).forEach(this::number);
    if (text.length() < LONGEST_TITLE && !References.refers(text, vocabulary))
      known.addAll(References.numbersIn(text));
  }

  private static String opening(String text) {
    return ENDING.matcher(text.strip().split("\\s", 2)[0]).replaceAll("");
  }

  public static List<Account.Unread> in(
      Project project, List<Document> documents, Vocabulary vocabulary) {
    if (project.glass().isEmpty()) return List.of();
    Map<String, Account.Unread> out = new LinkedHashMap<>();
    // Issue after issue says the same words.
    Memo<String, References> read = Memo.ofTexts();
    OpenReferences open = null;
    Set<String> glass = project.glassKeys();
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        if (!DanglingReferenceCheck.bears(section, clause, glass, vocabulary)) continue;
        String text = clause.text();
        Map<String, String> others = read.get(text, () -> References.in(text, vocabulary)).others();
        if (others.isEmpty()) continue;
        if (open == null) open = new OpenReferences(project, documents, vocabulary);
        for (Map.Entry<String, String> reference : others.entrySet()) {
          String key = reference.getValue();
          if (!open.known.contains(key) && !open.isMissed(key))
            out.putIfAbsent(
                section.name() + reference.getValue(), unread(section, clause, reference.getKey()));
        }
      }
    }
    return new ArrayList<>(out.values());
  }

  /** Words of a clause that name something, of which nobody can say whether it is there. */
  static Account.Unread unread(Section section, Clause clause, String words) {
    return new Account.Unread(
        clause.origin(),
        section.name(),
        words,
        List.of(),
        List.of(),
        List.copyOf(clause.limits().tags()),
        List.of());
  }
}
