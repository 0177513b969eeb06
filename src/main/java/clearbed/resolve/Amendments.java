package clearbed.resolve;

import clearbed.model.value.Content;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Amendment;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Applies what addenda and revisions change, in the order of issue. What they take out is kept as
 * superseded. Documents are known as such by their names; whatever such a document says of a tile
 * takes the place of what earlier ones say of it, and clauses that change others ("delete X and
 * substitute Y") do so wherever they stand.
 */
final class Amendments {
  private static final Pattern NUMBER = Pattern.compile("(?<![\\d.])(\\d{1,3})(?![\\d.]*\\d)");

  private static final Pattern DATE =
      Pattern.compile("(20\\d{2})[-_. ]?(0[1-9]|1[0-2])[-_. ]?(0[1-9]|[12]\\d|3[01])");

  /** The documents that nothing marks as later than others. */
  private static final int FIRST_ISSUE = 0;

  private record Change(Clause clause, int issue, Amendment amendment) {}

  /**
   * @param values those that hold
   * @param superseded those that were taken out
   */
  record Amended(List<Value> values, List<Value> superseded) {}

  private final Vocabulary vocabulary;
  private final Map<String, Integer> issues = new HashMap<>();
  private final List<Change> changes = new ArrayList<>();
  private final Set<Clause> taken = Collections.newSetFromMap(new IdentityHashMap<>());

  Amendments(Vocabulary vocabulary, List<Facts> facts) {
    this.vocabulary = vocabulary;
    for (Facts f : facts) {
      int issue = issue(f.document().path());
      for (Section section : f.sections()) {
        for (Clause clause : section.clauses()) {
          if (clause.amendment().changes())
            changes.add(new Change(clause, Math.max(issue, FIRST_ISSUE + 1), clause.amendment()));
        }
      }
    }
    for (Change change : changes) {
      if (change.amendment().tags().isEmpty() && isFound(change, facts)) taken.add(change.clause());
    }
  }

  /** Clauses that change what is said somewhere: what they put in goes where that was. */
  Set<Clause> taken() {
    return taken;
  }

  Amended applied(String key, List<Value> values) {
    Set<Value> superseded = new LinkedHashSet<>();
    List<Value> put = new ArrayList<>();
    for (Change change : changes) {
      Amendment amendment = change.amendment();
      if (!amendment.tags().isEmpty() && !isOf(amendment, key)) continue;
      Value out = null;
      for (Value v : values) {
        if (issue(v.origin().document()) >= change.issue() || !takesOut(change, v)) continue;
        superseded.add(v);
        out = v;
      }
      if (out != null && taken.contains(change.clause())) {
        for (Statement s : amendment.now()) put.add(Resolver.value(s, out.scope(), out.specific()));
      }
    }
    byDocument(values, superseded);
    if (superseded.isEmpty() && put.isEmpty()) return new Amended(values, List.of());
    List<Value> left = new ArrayList<>(values);
    left.removeIf(superseded::contains);
    left.addAll(put);
    return new Amended(left, List.copyOf(superseded));
  }

  private static boolean isOf(Amendment amendment, String key) {
    return amendment.tags().stream().anyMatch(tag -> Tags.key(tag).equals(key));
  }

  private static boolean takesOut(Change change, Value v) {
    Amendment amendment = change.amendment();
    if (v.origin().equals(change.clause().origin())) return false;
    boolean place = amendment.clause().isEmpty() || isIn(amendment.clause(), v.origin().heading());
    if (!place) return false;
    boolean told = !amendment.clause().isEmpty() || !amendment.tags().isEmpty();
    if (amendment.whole())
      return told && !v.attribute().startsWith("location.") && v.scope() != Scope.PROJECT;
    if (amendment.old().stream().anyMatch(s -> s.attribute().equals(v.attribute())))
      return amendment.old().stream().anyMatch(s -> isSame(s, v));
    boolean own = amendment.tags().isEmpty() || v.scope() == Scope.ENTRY;
    return told
        && own
        && amendment.now().stream().anyMatch(s -> s.attribute().equals(v.attribute()));
  }

  private static boolean isSame(Statement s, Value v) {
    return s.attribute().equals(v.attribute()) && s.content().equals(v.content());
  }

  /** Clause 2.3 is also what stands in 2.3 B. */
  private static boolean isIn(String clause, String heading) {
    if (heading == null || !heading.startsWith(clause)) return false;
    return heading.length() == clause.length()
        || !Character.isLetterOrDigit(heading.charAt(clause.length()));
  }

  private boolean isFound(Change change, List<Facts> facts) {
    for (Facts f : facts) {
      if (issue(f.document().path()) >= change.issue()) continue;
      for (Section section : f.sections()) {
        for (Clause clause : section.clauses()) {
          for (Statement s : clause.statements()) {
            if (s.attribute().equals("text")) continue;
            if (takesOut(change, Resolver.value(s, Scope.ENTRY, false))) return true;
          }
        }
      }
      for (ScheduleRow row : f.rows()) {
        if (!row.decided()) continue;
        for (Statement s : row.statements()) {
          if (takesOut(change, Resolver.value(s, Scope.ENTRY, false))) return true;
        }
      }
    }
    return false;
  }

  /** What a later document says of a tile takes the place of what earlier ones say of it. */
  private void byDocument(List<Value> values, Set<Value> superseded) {
    Map<String, Integer> latest = new HashMap<>();
    for (Value v : values) {
      int issue = issue(v.origin().document());
      boolean own = v.scope() == Scope.ENTRY && !v.attribute().startsWith("location.");
      if (!own || issue <= FIRST_ISSUE) continue;
      // An answer that says otherwise is a contradiction until it says that it changes something.
      if (vocabulary.list("resolves.answers").in(v.origin().document())) continue;
      // "TS-2, back-buttered" calls for what TS-2 stands for, wherever that is said.
      boolean calls = v.content() instanceof Content.Words words && names(words.text());
      if (!calls) latest.merge(v.attribute(), issue, Math::max);
    }
    if (latest.isEmpty()) return;
    for (Value v : values) {
      Integer last = latest.get(v.attribute());
      if (last != null && v.scope() == Scope.ENTRY && issue(v.origin().document()) < last)
        superseded.add(v);
    }
  }

  private static boolean names(String words) {
    TagFinder.TagsAt tags = TagFinder.firstTags(words);
    return tags != null && tags.start() == 0;
  }

  private int issue(String document) {
    return issues.computeIfAbsent(document, this::issueOf);
  }

  /** Of documents that change others the number, or the date, tells the order. */
  private int issueOf(String document) {
    String name = document.substring(document.lastIndexOf('/') + 1);
    if (!vocabulary.amends(name)) return FIRST_ISSUE;
    Matcher date = DATE.matcher(name);
    if (date.find()) return Integer.parseInt(date.group(1) + date.group(2) + date.group(3));
    Matcher number = NUMBER.matcher(name.replaceAll("\\.[A-Za-z0-9]+$", ""));
    return number.find() ? Integer.parseInt(number.group(1)) + 1 : FIRST_ISSUE + 1;
  }
}
