package clearbed.recognise.section.clause;

import clearbed.recognise.statement.limit.Exclusions;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.UnitWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Follows references within a section: where tiles are sent each to a clause of their own for one
 * part of the work ({@code Grout: As clause 650}), the other clauses of that kind are not theirs.
 */
public final class ClauseReferences {
  private static final Pattern REFERENCE =
      Pattern.compile(
          "\\b(?:as|see|per|to|under|by|in|with|of)\\s+(?:(?:clauses?|articles?|paragraphs?|items?|paras?\\.?|cl\\.)\\s*)?"
              + "(\\d{3}|\\d{1,2}\\.\\d{1,2})(?:\\s*\\.?([A-Z])\\b)?(?![\\d.]*\\d)",
          Pattern.CASE_INSENSITIVE);
  private static final Pattern UNIT =
      Pattern.compile("\\s*(?:" + UnitWords.PATTERN + ")(?![a-z])", Pattern.CASE_INSENSITIVE);
  private static final Pattern NUMBER = Pattern.compile("^(\\d{3}|\\d{1,2}\\.\\d{1,2})\\b");

  /**
   * @param family part of the work that the reference is for
   * @param to number of the clause referred to
   */
  private record Reference(String family, String to) {}

  private final Vocabulary vocabulary;

  public ClauseReferences(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  public List<Clause> followed(List<Clause> clauses) {
    Set<String> numbers =
        clauses.stream()
            .map(ClauseReferences::number)
            .filter(n -> !n.isEmpty())
            .collect(Collectors.toSet());
    Map<Reference, Set<String>> tags = new LinkedHashMap<>();
    for (Clause clause : clauses) references(clause, numbers, tags);
    if (tags.size() < 2) return clauses;
    Map<String, Set<String>> sent = new HashMap<>();
    tags.forEach(
        (reference, all) ->
            sent.computeIfAbsent(reference.family(), family -> new TreeSet<>()).addAll(all));
    List<Clause> out = new ArrayList<>();
    for (Clause clause : clauses) out.add(limited(clause, tags, sent));
    return out;
  }

  /** The number that people refer to a clause by: that of its article. */
  private static String number(Clause clause) {
    Matcher m = NUMBER.matcher(clause.number().isEmpty() ? clause.heading() : clause.number());
    return m.find() ? m.group(1) : "";
  }

  private void references(Clause clause, Set<String> numbers, Map<Reference, Set<String>> out) {
    Set<String> own = clause.limits().tags();
    if (own.isEmpty() || clause.listsReferences()) return;
    String text = PlainText.of(clause.text());
    Matcher m = REFERENCE.matcher(text);
    while (m.find()) {
      boolean figure = UNIT.matcher(text).region(m.end(), text.length()).lookingAt();
      if (figure || !numbers.contains(m.group(1)) || m.group(1).equals(number(clause))) continue;
      String family = vocabulary.family(text.substring(0, m.start()));
      if (family.isEmpty()) continue;
      out.computeIfAbsent(new Reference(family, m.group(1)), any -> new TreeSet<>()).addAll(own);
    }
  }

  private Clause limited(
      Clause clause, Map<Reference, Set<String>> tags, Map<String, Set<String>> sent) {
    String number = number(clause);
    if (number.isEmpty() || !clause.limits().tags().isEmpty()) return clause;
    List<Statement> statements = new ArrayList<>();
    for (Statement s : clause.statements()) {
      Set<String> here = tags.get(new Reference(s.family(), number));
      if (here == null || !s.limits().tags().isEmpty()) {
        statements.add(s);
        continue;
      }
      Set<String> others = new TreeSet<>(sent.get(s.family()));
      others.removeAll(here);
      Exclusions except = s.limits().except().andTags(others);
      statements.add(s.withLimits(s.limits().withExcept(except)));
    }
    return clause.withStatements(statements);
  }
}
