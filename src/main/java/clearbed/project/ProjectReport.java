package clearbed.project;

import clearbed.check.Checker;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.Finding;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.Report;
import clearbed.recognise.Facts;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Works out what comes of a project. */
public final class ProjectReport {
  private ProjectReport() {}

  /**
   * What every rule finds, with what was read.
   *
   * @param names of the project and its people that the command line gives
   * @param version of the program
   * @param waited while the documents were read
   */
  public static Report of(
      Project project,
      Rulebook rulebook,
      LocalDate day,
      Instant started,
      ProjectNames names,
      String version,
      Report.Waited waited) {
    Checker.CheckedProject outcome =
        new Checker(rulebook.vocabulary(), rulebook.rules())
            .check(project, project.facts().stream().map(Facts::document).toList());
    return new Report(
        run(rulebook, day, started, names, version, outcome.findings(), waited),
        Summaries.of(project),
        project.entries(),
        outcome.findings(),
        outcome.verdicts(),
        outcome.calculations(),
        checks(rulebook.rules()),
        outcome.reading().withLabels(labels(rulebook.vocabulary())));
  }

  private static Map<String, String> labels(Vocabulary vocabulary) {
    return vocabulary.attributes().stream()
        .collect(Collectors.toMap(Attribute::id, Attribute::label));
  }

  private static Report.RunDetails run(
      Rulebook rulebook,
      LocalDate day,
      Instant started,
      ProjectNames names,
      String version,
      List<Finding> findings,
      Report.Waited waited) {
    RuleSet rules = rulebook.rules();
    return new Report.RunDetails(
        "clearbed",
        version,
        rules.name(),
        rules.digest(),
        started.toString(),
        day.toString(),
        rules.layers(),
        rules.facts().stream().map(f -> f.words()).toList(),
        rulebook.chosen(),
        names.or(rules.names()),
        rules.changes(),
        rules.suppressions().stream()
            .filter(s -> findings.stream().noneMatch(s::hits))
            .map(RuleSet.Suppression::aim)
            .toList(),
        waited);
  }

  private static List<Report.CheckInfo> checks(RuleSet rules) {
    List<Report.CheckInfo> checks = new ArrayList<>();
    rules
        .rules()
        .forEach(
            r ->
                checks.add(
                    new Report.CheckInfo(
                        r.id(),
                        r.title(),
                        r.attribute(),
                        r.level(),
                        r.sourceWithMark(),
                        !r.off())));
    return checks;
  }
}
