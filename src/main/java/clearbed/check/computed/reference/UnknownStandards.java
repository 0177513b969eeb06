package clearbed.check.computed.reference;

import clearbed.base.Memo;
import clearbed.model.report.Account;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Designations that are written as those of standards and that nobody here knows the status of. */
public final class UnknownStandards {
  /** Capitals and figures behind a word of conformity: {@code FED SPEC TT-S-00230C}. */
  private static final Pattern DESIGNATION =
      Pattern.compile(
          "\\.?,?\\s+((?:[A-Z]{2,6}[ /-]){0,2}(?:[A-Z]{1,4}-){0,2}[A-Z]{0,4}[ -]?\\d{3,6}[A-Z]?(?:[-.]\\d{1,3})?(?::\\d{4})?)(?![\\w/])");

  private static final Pattern LETTERS = Pattern.compile("[A-Z]{2}|[A-Z]-");

  private UnknownStandards() {}

  public static List<Account.Unread> in(Project project, Vocabulary vocabulary) {
    if (project.glass().isEmpty()) return List.of();
    Map<String, Account.Unread> out = new LinkedHashMap<>();
    // Issue after issue says the same words.
    Memo<String, List<String>> read = Memo.ofTexts();
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        if (clause.listsReferences() || !DanglingReferenceCheck.bears(section, clause)) continue;
        String text = clause.text();
        for (String words : read.get(text, () -> unknown(text, vocabulary))) {
          if (!project.tags().contains(Tags.key(words)))
            out.putIfAbsent(section.name() + words, OpenReferences.unread(section, clause, words));
        }
      }
    }
    return new ArrayList<>(out.values());
  }

  private static List<String> unknown(String text, Vocabulary vocabulary) {
    List<String> out = new ArrayList<>();
    List<Citations.Found> cited = Citations.find(text);
    for (Citations.Found f : cited) {
      if (vocabulary.standards().of(f.standard().designation()).isEmpty()) out.add(f.asWritten());
    }
    Matcher m = DESIGNATION.matcher(text);
    int from = 0;
    for (Phrases.Hit word : vocabulary.list("checks.conforming").all(text)) {
      if (word.start() < from || !m.region(word.end(), text.length()).lookingAt()) continue;
      from = m.end();
      boolean known = cited.stream().anyMatch(c -> c.start() < m.end(1) && m.start(1) < c.end());
      if (!known && LETTERS.matcher(m.group(1)).find()) out.add(m.group(1).trim());
    }
    return out;
  }
}
