package clearbed.report.survey;

import clearbed.base.DisplayText;
import clearbed.report.survey.PlainPage.LinkedCount;
import clearbed.report.wording.Cautions;
import clearbed.report.wording.Deferral;
import clearbed.report.wording.Phrasing;
import clearbed.survey.Groups;
import clearbed.survey.Overview;
import clearbed.survey.Overview.CheckLine;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.Surveyed;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The sheet that is read first: which projects are at risk, what fails again and again. */
final class SurveySummary {
  private static final int MOST_PROJECTS = 10;
  private static final int MOST_CHECKS = 15;

  private final Overview overview;
  private final RowsOf rows;

  SurveySummary(Overview overview, RowsOf rows) {
    this.overview = overview;
    this.rows = rows;
  }

  void fill(PlainPage page, Groups groups, SurveyWorkbook.About about) {
    page.title(
        SurveyWorkbook.TITLE,
        DisplayText.path(about.archive())
            + ": "
            + Phrasing.count(overview.projects().size(), "project")
            + ". Click a number, or a name, to see the rows behind it. Clearbed "
            + about.version()
            + ".");
    counts(page);
    risk(page);
    checks(page);
    page.section("How it was told");
    page.pair("Projects", about.found());
    page.pair("Groups", groups.told() + " The sheet Groups has them.");
    page.pair(
        "Sections",
        "By the section number that stands in a document, where there is one and no other;"
            + " findings count for the section of the document that they point to.");
    page.pair(
        "Shares",
        "Of all projects that were checked; and of the projects with a tile that the check applies to, those with a finding that is more"
            + " than words not understood. A project that was not checked is in no share.");
    for (String set : overview.ruleSets()) page.pair("Rules", set);
    page.section("Please mind");
    page.pair("Who decides", Deferral.LINE);
    page.pair(
        "Right elsewhere",
        "The sheet of that name has words that satisfied a check in their own project. They are"
            + " suggestions to read, not clauses to copy: another tile, backing or climate may need"
            + " others.");
    for (Cautions.Caution caution : Cautions.of(overview.ruleSets()))
      page.pair(caution.subject(), caution.text());
  }

  private void counts(PlainPage page) {
    page.section("How many");
    page.header("Projects", "", "number");
    int all = overview.projects().size();
    int checked = rows.checked();
    int withErrors = count(line -> line.errors() > 0);
    page.line("found", null, "", new LinkedCount(all, rows.projects(0, all)));
    page.line("checked", null, "", new LinkedCount(checked, rows.projects(0, checked)));
    page.line(
        "with open errors",
        null,
        "settle before tile is ordered or set",
        new LinkedCount(withErrors, rows.projects(0, withErrors)));
    int without = checked - withErrors;
    page.line(
        "without open errors",
        null,
        "which is no proof: see the places not understood",
        new LinkedCount(without, rows.projects(withErrors, without)));
    int empty = rows.count(Surveyed.SurveyStatus.NOTHING_TO_READ);
    int broken = rows.count(Surveyed.SurveyStatus.NOT_CHECKED);
    LinkedCount others = new LinkedCount(empty + broken, rows.projects(checked, empty + broken));
    page.line("not checked", null, notChecked(empty, broken), others);
    int unread = count(line -> line.notRead() > 0);
    page.line(
        "with files that could not be read",
        null,
        "see the column Files not read of the sheet Projects",
        new LinkedCount(unread, null));
  }

  private static String notChecked(int empty, int broken) {
    if (empty + broken == 0) return "";
    return empty + " with nothing to read, " + broken + " that could not be checked";
  }

  private int count(Predicate<ProjectLine> test) {
    return (int)
        overview.projects().stream()
            .filter(line -> line.status() == Surveyed.SurveyStatus.CHECKED)
            .filter(test)
            .count();
  }

  private void risk(PlainPage page) {
    page.section("At risk now: the most open errors");
    page.header("Project", "Errors in", "errors", "warnings", "notes", "not understood");
    List<ProjectLine> worst =
        overview.projects().stream()
            .filter(line -> line.status() == Surveyed.SurveyStatus.CHECKED && line.open() > 0)
            .limit(MOST_PROJECTS)
            .toList();
    for (ProjectLine line : worst)
      page.line(
          DisplayText.path(line.name()),
          rows.of(line),
          failing(line),
          new LinkedCount(line.errors(), rows.errors(line)),
          new LinkedCount(line.warnings(), rows.warnings(line)),
          new LinkedCount(line.notes(), rows.notes(line)),
          new LinkedCount(line.unread(), rows.unread(line)));
    if (worst.isEmpty()) page.pair("", "No project has an open finding.");
  }

  private static String failing(ProjectLine line) {
    return line.checks().entrySet().stream()
        .filter(e -> e.getValue().level() == clearbed.model.report.Level.ERROR)
        .map(Map.Entry::getKey)
        .collect(Collectors.joining(", "));
  }

  private void checks(PlainPage page) {
    page.section("What fails most: projects by check, errors and warnings");
    page.header(
        "Check",
        "What it looks at",
        "fail it",
        "not understood",
        "satisfy it",
        "it applies to",
        "share of all",
        "share of those");
    int first = -1;
    int last = -1;
    StringBuilder alt = new StringBuilder("Bar chart of projects by check. ");
    for (CheckLine line : overview.worth().stream().limit(MOST_CHECKS).toList()) {
      last =
          page.line(
              line.check(),
              rows.of(line),
              line.title(),
              new LinkedCount(line.fails().size(), rows.fails(line)),
              new LinkedCount(line.unread().size(), rows.unread(line)),
              new LinkedCount(line.satisfied(), null),
              new LinkedCount(line.applies(), null));
      page.share(6, (double) line.fails().size() / rows.checked());
      page.share(7, line.share());
      if (first < 0) first = last;
      alt.append(
          "%s: %d fail it, %d not understood, %d satisfy it. "
              .formatted(
                  line.check(), line.fails().size(), line.unread().size(), line.satisfied()));
    }
    if (first < 0) {
      page.pair("", "No check for an error or a warning fails in any project.");
      return;
    }
    page.pair(
        "All checks", "are on the sheet Checks, notes too; who fails each, on Projects by check.");
    page.section("The same, drawn");
    page.draw(first, last, "Projects by check", alt.toString().strip());
  }
}
