package clearbed.check.computed;

import clearbed.base.Memo;
import clearbed.model.Account;
import clearbed.model.Document;
import clearbed.recognise.section.Clause;
import clearbed.recognise.section.Section;
import clearbed.recognise.statement.Tags;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * References in a form of their office's own ("see detail D-14", "acc. to 3.4") that lead to
 * nothing of that name in the set: whether it lacks the place or only calls it otherwise is not
 * known.
 */
public final class OpenReferences {
  private static final int LONGEST_TITLE = 60;

  private final Set<String> known = new HashSet<>();

  private OpenReferences(Project project, List<Document> documents) {
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
      known.add(References.key(number));
      known.add(References.key(number.split(" ")[0]));
    }
    titled(clause.heading());
    titled(clause.text());
  }

  /** A title, or the number that a note opens with. */
  private void titled(String text) {
    String opening = text.strip().split("\\s", 2)[0];
    known.addAll(References.numbersIn(opening.replaceAll("[.:)]+$", "")));
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
          if (!open.known.contains(reference.getValue()))
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
