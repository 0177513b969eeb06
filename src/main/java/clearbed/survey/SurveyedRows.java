package clearbed.survey;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Report;
import clearbed.model.report.Verdict;
import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.section.clause.Section;
import clearbed.survey.Surveyed.CheckResult;
import clearbed.survey.Surveyed.CheckRow;
import clearbed.survey.Surveyed.DocumentRow;
import clearbed.survey.Surveyed.FindingRow;
import clearbed.survey.Surveyed.RightWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a survey keeps of a report. */
final class SurveyedRows {
  /** Of one check and one project; more of the same only hide those of others. */
  private static final int MOST_RIGHT = 3;

  /** A clause is longer than the cell of a schedule, and no book. */
  private static final int LONGEST_RIGHT = 1_200;

  private SurveyedRows() {}

  static Surveyed of(String name, Report report, List<Facts> facts) {
    Map<String, String> sections = sections(facts);
    return new Surveyed(
        name,
        Surveyed.SurveyStatus.CHECKED,
        "",
        report.run().ruleSet(),
        report.run().ruleSetDigest(),
        documents(report.documents(), sections),
        findings(report.findings(), sections),
        entries(report.entries()),
        report.reading().notUnderstood(),
        report.reading().setAside(),
        checks(report),
        right(report.verdicts()));
  }

  /** The section number of each document that has one and no other. */
  static Map<String, String> sections(List<Facts> facts) {
    Map<String, String> out = new HashMap<>();
    for (Facts of : facts) {
      Set<String> numbers = new HashSet<>();
      for (Section section : of.sections())
        if (!section.notes() && !section.number().isBlank()) numbers.add(section.number().strip());
      if (numbers.size() == 1) out.put(of.document().path(), numbers.iterator().next());
    }
    return out;
  }

  static List<DocumentRow> documents(
      List<Report.DocumentSummary> documents, Map<String, String> sections) {
    return documents.stream()
        .map(
            d ->
                new DocumentRow(
                    d.path(),
                    d.format(),
                    d.status(),
                    d.reason(),
                    sections.getOrDefault(d.path(), "")))
        .toList();
  }

  private static List<FindingRow> findings(List<Finding> findings, Map<String, String> sections) {
    return findings.stream()
        .map(f -> new FindingRow(f, sections.getOrDefault(f.origin().document(), "")))
        .toList();
  }

  private static List<Surveyed.EntryRow> entries(List<Entry> entries) {
    return entries.stream()
        .filter(Entry::glass)
        .map(e -> new Surveyed.EntryRow(e.tag(), e.evidence(), e.origin(), e.values()))
        .toList();
  }

  private static List<CheckRow> checks(Report report) {
    Map<String, Set<CheckResult>> results = new HashMap<>();
    for (Verdict verdict : report.verdicts()) note(results, verdict.check(), of(verdict.outcome()));
    for (Finding finding : report.findings()) {
      if (finding.isOpen())
        note(
            results,
            finding.check(),
            finding.kind() == FindingKind.UNREAD ? CheckResult.UNREAD : CheckResult.FAILS);
      else note(results, finding.check(), CheckResult.SUPPRESSED);
    }
    List<CheckRow> out = new ArrayList<>();
    for (Report.CheckInfo check : report.checks()) {
      if (!check.on()) continue;
      Set<CheckResult> all =
          results.getOrDefault(check.id(), EnumSet.of(CheckResult.NOT_APPLICABLE));
      out.add(new CheckRow(check.id(), check.title(), check.level(), all.iterator().next()));
    }
    return out;
  }

  /** A set of the results, the worst first. */
  private static void note(
      Map<String, Set<CheckResult>> results, String check, CheckResult result) {
    if (result == null) return;
    results.computeIfAbsent(check, c -> EnumSet.noneOf(CheckResult.class)).add(result);
  }

  /** Null for findings, which say more by themselves. */
  private static CheckResult of(Verdict.Outcome outcome) {
    return switch (outcome) {
      case SATISFIED -> CheckResult.SATISFIED;
      case FINDING -> null;
      case SUPPRESSED -> CheckResult.SUPPRESSED;
      case NOT_APPLICABLE -> CheckResult.NOT_APPLICABLE;
      case UNDECIDED -> CheckResult.UNDECIDED;
      case UNREAD -> CheckResult.UNREAD;
    };
  }

  private static List<RightWords> right(List<Verdict> verdicts) {
    Map<String, Map<String, RightWords>> found = new LinkedHashMap<>();
    for (Verdict verdict : verdicts) {
      Origin origin = verdict.origin();
      if (verdict.outcome() != Verdict.Outcome.SATISFIED || origin == null) continue;
      String words = origin.text() == null ? "" : origin.text().strip();
      if (origin.document().isEmpty() || words.isEmpty() || words.length() > LONGEST_RIGHT)
        continue;
      found
          .computeIfAbsent(verdict.check(), check -> new LinkedHashMap<>())
          .putIfAbsent(words, new RightWords(verdict.check(), verdict.tag(), words, origin));
    }
    List<RightWords> out = new ArrayList<>();
    // A clause says more to copy from than a cell does.
    Comparator<RightWords> clausesFirst = Comparator.comparing(r -> r.origin().heading() == null);
    for (Map<String, RightWords> of : found.values())
      of.values().stream().sorted(clausesFirst).limit(MOST_RIGHT).forEach(out::add);
    return out;
  }
}
