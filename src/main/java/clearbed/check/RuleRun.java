package clearbed.check;

import clearbed.base.Parallel;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Origin;
import clearbed.model.report.Calculation;
import clearbed.model.report.Calculations;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.Verdict;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One rule over all glass entries; one cause gives one finding, however many entries it touches.
 */
final class RuleRun {
  private static final int FEW = 500;

  private final Rule rule;
  private final Project project;
  private final Vocabulary vocabulary;
  private final FindingWriter writer;
  private final Subjects subjects;
  private final OtherTile others;
  private final EntryJudge judge;
  private final NamedAlone alone;

  RuleRun(
      Rule rule,
      Project project,
      Vocabulary vocabulary,
      RuleSet rules,
      FindingWriter writer,
      UnreadWords unread,
      NamedAlone alone) {
    this.rule = rule;
    this.alone = alone;
    this.project = project;
    this.vocabulary = vocabulary;
    this.writer = writer;
    this.subjects = new Subjects(project);
    this.others = OtherTile.of(rule, project.glass());
    this.judge = new EntryJudge(rule, project, vocabulary, rules, unread, others);
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
    Iterator<Judgement> judgements = Parallel.mapAhead(project.glass(), this::of).iterator();
    for (Entry entry : project.glass()) {
      Judgement judgement = judgements.next();
      verdicts.add(judgement.verdict(rule.id(), entry.tag()));
      if (judgement instanceof Judgement.Missing) {
        missing.add(entry);
      } else if (judgement instanceof Judgement.NotRead u) {
        unanswered.add(rule, entry, u.words());
      } else if (judgement instanceof Judgement.Failed f) {
        String key =
            f.words().steps().isEmpty()
                ? f.kind()
                    + f.at().origin().place()
                    + f.at().origin().text()
                    + f.words().found()
                    + f.words().message()
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

  /**
   * Of a tile that one place alone names, what is missing is that it is not where others are. What
   * is asked of all tile work is asked of it, too.
   */
  private Judgement of(Entry entry) {
    Judgement judgement = judge.of(entry);
    boolean blank = entry.blanks().containsKey(rule.attribute());
    boolean own = !rule.attribute().startsWith("process.") && !blank;
    return own && judgement instanceof Judgement.Missing && alone.has(entry)
        ? new Judgement.Undecided("depends on what and where the tile is: one place names it", null)
        : judgement;
  }

  /** Of a long schedule, what was worked out once is worked out again if it is to be shown. */
  private void keep(Calculations calculations, Entry entry, List<Calculation> made) {
    boolean few = project.glass().size() <= FEW;
    calculations.add(
        entry.tag(), made.size(), few ? () -> made : () -> judge.of(entry).calculations());
  }

  private boolean statedOnRow(Entry entry) {
    return !rule.attribute().isEmpty()
        && entry.governing(rule.attribute()).stream()
            .anyMatch(v -> v.scope() == Scope.ENTRY && v.origin().cell() != null);
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
        entries,
        subject,
        FindingKind.MISSING,
        level,
        FoundAt.at(origin),
        FindingWords.of(message, "", ""));
  }

  private Finding failed(Judgement.Failed f, List<Entry> entries) {
    String own = f.words().message().isEmpty() ? rule.wording().inadequate() : f.words().message();
    String message =
        own.isEmpty()
            ? vocabulary.label(rule.attribute()) + " of {tag}: {found}; wanted: {expected}."
            : own;
    // A verdict that waits for a figure is a question, not an accusation.
    Level level = f.kind() == FindingKind.UNRESOLVED ? Level.NOTE : rule.level();
    if (f.kind() == FindingKind.UNREAD) level = noMoreThanWarning(rule.missingLevel());
    return write(
        entries,
        subjects.of(f, entries),
        f.kind(),
        level,
        f.at(),
        new FindingWords(
            message,
            f.words().found(),
            f.words().expected(),
            f.words().steps(),
            f.words().question()));
  }

  private static Level noMoreThanWarning(Level level) {
    return level == Level.ERROR ? Level.WARNING : level;
  }

  private Finding write(
      List<Entry> entries,
      String subject,
      FindingKind kind,
      Level level,
      FoundAt at,
      FindingWords words) {
    List<String> tags = entries.stream().map(Entry::tag).toList();
    return writer.write(
        rule, new FindingWriter.Case(subject, rule.attribute(), kind, level, tags, at, words));
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
