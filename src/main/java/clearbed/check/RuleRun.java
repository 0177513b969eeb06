package clearbed.check;

import clearbed.base.Parallel;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.Judge;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.Applicability;
import clearbed.check.rules.Expectation;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.Account;
import clearbed.model.Calculation;
import clearbed.model.Calculations;
import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.model.Level;
import clearbed.model.Origin;
import clearbed.model.Scope;
import clearbed.model.Value;
import clearbed.model.Verdict;
import clearbed.recognise.section.Clause;
import clearbed.recognise.section.Section;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * One rule over all glass entries; one cause gives one finding, however many entries it touches.
 */
final class RuleRun {
  private static final int FEW = 500;

  private final Rule rule;
  private final Project project;
  private final Vocabulary vocabulary;
  private final RuleSet rules;
  private final FindingWriter writer;
  private final Applicability applicability;
  private final Judge judge;
  private final Subjects subjects;
  private final UnreadWords unread;
  private final OtherTile others;

  RuleRun(
      Rule rule,
      Project project,
      Vocabulary vocabulary,
      RuleSet rules,
      FindingWriter writer,
      UnreadWords unread) {
    this.unread = unread;
    this.rule = rule;
    this.project = project;
    this.vocabulary = vocabulary;
    this.rules = rules;
    this.writer = writer;
    this.applicability = new Applicability(vocabulary);
    this.judge = new Judge(vocabulary);
    this.subjects = new Subjects(project);
    this.others = OtherTile.of(rule, project.glass());
  }

  /**
   * @param unanswered takes the words that might answer the rule for an entry
   */
  void run(
      List<Finding> findings,
      List<Verdict> verdicts,
      Calculations calculations,
      UnreadFindings unanswered) {
    List<Entry> missing = new ArrayList<>();
    Map<String, List<Entry>> failed = new LinkedHashMap<>();
    Map<String, Judgement.Failed> failures = new LinkedHashMap<>();
    boolean perRow = false;
    Iterator<Judgement> judgements = Parallel.mapAhead(project.glass(), this::judgement).iterator();
    for (Entry entry : project.glass()) {
      Judgement judgement = judgements.next();
      verdicts.add(judgement.verdict(rule.id(), entry.tag()));
      if (judgement instanceof Judgement.Missing) {
        missing.add(entry);
      } else if (judgement instanceof Judgement.Unread u) {
        unanswered.add(rule, entry, u.words());
      } else if (judgement instanceof Judgement.Failed f) {
        String key =
            f.steps().isEmpty()
                ? f.kind() + f.origin().place() + f.origin().text() + f.found() + f.message()
                : entry.tag();
        failures.putIfAbsent(key, f);
        failed.computeIfAbsent(key, k -> new ArrayList<>()).add(entry);
        keep(calculations, entry, f.calculations());
      } else if (judgement instanceof Judgement.Satisfied s) {
        keep(calculations, entry, s.calculations());
        perRow |= statedOnRow(entry);
      }
    }
    missing(findings, missing, perRow);
    failures.forEach((key, f) -> findings.add(failed(f, failed.get(key))));
  }

  /** Of a long schedule, what was worked out once is worked out again if it is to be shown. */
  private void keep(Calculations calculations, Entry entry, List<Calculation> made) {
    boolean few = project.glass().size() <= FEW;
    calculations.add(
        entry.tag(), made.size(), few ? () -> made : () -> judgement(entry).calculations());
  }

  private boolean statedOnRow(Entry entry) {
    return !rule.attribute().isEmpty()
        && entry.governing(rule.attribute()).stream()
            .anyMatch(v -> v.scope() == Scope.ENTRY && v.origin().cell() != null);
  }

  /** "Not stated" is said only where nothing that was not understood could state it. */
  private Judgement judgement(Entry entry) {
    Judgement judgement = ofWhatWasRead(entry);
    if (!(judgement instanceof Judgement.Missing) && !statedInWordsAlone(judgement, entry))
      return judgement;
    if (rule.emptyCellIsMissing() && entry.blanks().containsKey(rule.attribute())) return judgement;
    List<Account.Unread> words = unread.thatMightAnswer(rule, entry);
    return words.isEmpty() ? judgement : new Judgement.Unread(words);
  }

  /** Satisfied by a cell whose words mean nothing that is known: they were kept, not read. */
  private boolean statedInWordsAlone(Judgement judgement, Entry entry) {
    if (!(judgement instanceof Judgement.Satisfied) || rule.attribute().isEmpty()) return false;
    Attribute attribute = vocabulary.attribute(rule.attribute()).orElse(null);
    if (attribute == null || attribute.kind() == Attribute.Kind.WORDS) return false;
    List<Value> values = entry.governing(rule.attribute());
    return !values.isEmpty() && values.stream().allMatch(v -> v.content() instanceof Content.Words);
  }

  private Judgement ofWhatWasRead(Entry entry) {
    Applicability.Answer answer = applicability.of(rule, entry);
    if (answer.applies() == null) return new Judgement.Undecided(answer.why(), null);
    if (!answer.applies()) return new Judgement.NotApplicable(answer.why());
    if (!others.concerns(rule, entry))
      return new Judgement.NotApplicable("of no other glass tile is it asked");
    Judgement judgement = known(entry);
    List<Value> unread = rule.attribute().isEmpty() ? List.of() : entry.unread(rule.attribute());
    // What is wrong is wrong, whatever else stands there; nothing else can be said for sure.
    return unread.isEmpty() || judgement instanceof Judgement.Failed
        ? judgement
        : Judgement.Failed.unread(vocabulary.label(rule.attribute()), unread.get(0));
  }

  /** By what was understood. */
  private Judgement known(Entry entry) {
    if (rule.expectation() instanceof Expectation.Computed c)
      return Computations.ofAnEntry(c.name()).judge(rule, entry, project, rules);
    Judgement judgement = judge.judge(rule, entry);
    if (judgement instanceof Judgement.Failed f && f.kind() == Kind.INCOMPATIBLE) {
      return withOtherSide(f, entry);
    }
    if (judgement instanceof Judgement.Missing && rule.silentWhenMissing()) {
      return new Judgement.Undecided(
          "depends on "
              + vocabulary.label(rule.attribute()).toLowerCase(Locale.ROOT)
              + ", which is not stated",
          null);
    }
    return judgement;
  }

  /** What does not go together stands in two places: the value, and what makes the rule apply. */
  private Judgement withOtherSide(Judgement.Failed f, Entry entry) {
    Set<Origin> places = new LinkedHashSet<>(f.places());
    for (Map<String, List<String>> way : rule.when()) {
      for (String attribute : way.keySet()) {
        entry.governing(attribute).stream()
            .map(v -> v.origin())
            .filter(o -> !o.equals(f.origin()))
            .forEach(places::add);
      }
    }
    return new Judgement.Failed(
        f.kind(),
        f.message(),
        f.found(),
        f.expected(),
        f.origin(),
        new ArrayList<>(places),
        f.steps(),
        f.calculations());
  }

  private void missing(List<Finding> findings, List<Entry> entries, boolean perRow) {
    if (entries.isEmpty()) return;
    boolean together = rule.bySection() && !perRow;
    if (!together) {
      for (Entry entry : entries) {
        Origin blank = entry.blanks().get(rule.attribute());
        Origin place = blank == null ? entry.origin() : blank;
        Level level = blank == null ? others.missing(rule) : rule.emptyCellLevel();
        findings.add(missing(List.of(entry), subjects.of(entry), place, level));
      }
      return;
    }
    Section section = project.tileSection();
    String subject = subjects.ofTileWork();
    Origin origin = section == null ? entries.get(0).origin() : placeIn(section);
    findings.add(missing(entries, subject, origin, others.missing(rule)));
  }

  private Finding missing(List<Entry> entries, String subject, Origin origin, Level level) {
    String message =
        rule.wording().missing().isEmpty()
            ? vocabulary.label(rule.attribute()) + " is not stated for {tag}."
            : rule.wording().missing();
    return write(
        entries, subject, Kind.MISSING, level, origin, List.of(), message, "", "", List.of(), "");
  }

  private Finding failed(Judgement.Failed f, List<Entry> entries) {
    String own = f.message().isEmpty() ? rule.wording().inadequate() : f.message();
    String message =
        own.isEmpty()
            ? vocabulary.label(rule.attribute()) + " of {tag}: {found}; wanted: {expected}."
            : own;
    // A verdict that waits for a figure is a question, not an accusation.
    Level level = f.kind() == Kind.UNRESOLVED ? Level.NOTE : rule.level();
    if (f.kind() == Kind.UNREAD) level = noMoreThanWarning(rule.missingLevel());
    return write(
        entries,
        subjects.of(f, entries),
        f.kind(),
        level,
        f.origin(),
        f.places(),
        message,
        f.found(),
        f.expected(),
        f.steps(),
        f.question());
  }

  private static Level noMoreThanWarning(Level level) {
    return level == Level.ERROR ? Level.WARNING : level;
  }

  private Finding write(
      List<Entry> entries,
      String subject,
      Kind kind,
      Level level,
      Origin origin,
      List<Origin> places,
      String message,
      String found,
      String expected,
      List<String> steps,
      String question) {
    List<String> tags = entries.stream().map(Entry::tag).toList();
    return writer.write(
        rule,
        new FindingWriter.Case(
            subject,
            rule.attribute(),
            kind,
            level,
            tags,
            origin,
            places,
            message,
            found,
            expected,
            steps,
            question));
  }

  /** The place in the section where the missing words would stand, else its beginning. */
  private Origin placeIn(Section section) {
    Attribute attribute = vocabulary.attribute(rule.attribute()).orElse(null);
    if (attribute == null) return section.origin();
    for (Clause clause : section.clauses()) {
      if (attribute.namedIn(clause.heading())) return atArticle(clause);
    }
    boolean byWords = attribute.kind() == Attribute.Kind.REQUIRED;
    for (Clause clause : section.clauses()) {
      if (byWords && attribute.namedIn(clause.text())) return clause.origin();
    }
    for (Clause clause : section.clauses()) {
      boolean same = clause.statements().stream().anyMatch(s -> kin(s.attribute(), attribute));
      if (same && !clause.limits().otherTileOnly()) return atArticle(clause);
    }
    return section.origin();
  }

  private boolean kin(String id, Attribute attribute) {
    return vocabulary.attribute(id).map(a -> a.family().equals(attribute.family())).orElse(false);
  }

  private static Origin atArticle(Clause clause) {
    String heading = clause.origin().heading();
    return heading == null || clause.number().isEmpty()
        ? clause.origin()
        : clause.origin().withHeading(heading.split(" ")[0]);
  }
}
