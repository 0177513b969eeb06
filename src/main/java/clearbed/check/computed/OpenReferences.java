package clearbed.check.computed;

import clearbed.base.Memo;
import clearbed.model.Account;
import clearbed.model.Document;
import clearbed.recognise.section.Clause;
import clearbed.recognise.section.Section;
import clearbed.recognise.statement.Tags;
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

  private static final Pattern ENDING = Pattern.compile("[.:)]+$");

  private final Set<String> known = new HashSet<>();

  /** How many numbers the set counts alike, by what they have in common: "G-3-", "D", "###". */
  private final Map<String, Integer> counted = new HashMap<>();

  /** Issue after issue says the same words. */
  private final Set<String> looked = new HashSet<>();

  OpenReferences(Project project, List<Document> documents) {
    documents.forEach(d -> known.addAll(References.numbersIn(d.path())));
    project.tags().forEach(tag -> known.add(References.key(tag)));
    project.entries().forEach(e -> known.add(References.key(Tags.key(e.tag()))));
    for (Section section : project.sections()) {
      known.add(References.key(section.number()));
      known.addAll(References.numbersIn(section.title()));
      for (Clause clause : section.clauses()) clause(clause);
    }
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

  private void number(String key) {
    if (known.add(key)) counted.merge(kind(key), 1, Integer::sum);
  }

  /** What numbers that are counted alike have in common. */
  private static String kind(String key) {
    Matcher m = LAST_FIGURES.matcher(key);
    if (!m.matches()) return "";
    return m.group(1).isEmpty() ? "#".repeat(m.group(2).length()) : m.group(1);
  }

  /** True where the set counts such numbers and this is none of them: clause 460 of 110 to 720. */
  boolean isMissed(String key) {
    String kind = kind(key);
    boolean tells = kind.length() > 2 || !kind.startsWith("#");
    return !known.contains(key)
        && !kind.isEmpty()
        && tells
        && counted.getOrDefault(kind, 0) >= COUNTED;
  }

  /** A title, or the number that a note opens with. */
  private void titled(String text) {
    if (!looked.add(text)) return;
    String opening = text.strip().split("\\s", 2)[0];
    References.numbersIn(ENDING.matcher(opening).replaceAll("")).forEach(this::number);
    if (text.length() < LONGEST_TITLE && !References.refers(text))
      known.addAll(References.numbersIn(text));
  }

  public static List<Account.Unread> in(Project project, List<Document> documents) {
    if (project.glass().isEmpty()) return List.of();
    Map<String, Account.Unread> out = new LinkedHashMap<>();
    // Issue after issue says the same words.
    Memo<String, References> read = Memo.ofTexts();
    OpenReferences open = null;
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        if (!DanglingReferenceCheck.bears(section, clause)) continue;
        String text = clause.text();
        Map<String, String> others = read.get(text, () -> References.in(text)).others();
        if (others.isEmpty()) continue;
        if (open == null) open = new OpenReferences(project, documents);
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

  private static Account.Unread unread(Section section, Clause clause, String words) {
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
