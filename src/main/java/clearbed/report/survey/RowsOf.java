package clearbed.report.survey;

import clearbed.survey.Overview;
import clearbed.survey.Overview.CheckLine;
import clearbed.survey.Overview.GroupLine;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.Surveyed;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;

/** Where the rows behind each number will stand, before any is written. */
final class RowsOf {
  /** Below the header; rows are counted from 1. */
  private static final int FIRST = 2;

  /** The last row that Excel has. */
  private static final int LAST = 1_048_576;

  private final Map<Integer, Integer> project = new HashMap<>();
  private final Map<Integer, Integer> findings = new HashMap<>();
  private final Map<Integer, Integer> unread = new HashMap<>();
  private final Map<String, Integer> checks = new HashMap<>();
  private final Map<String, Integer> byCheck = new HashMap<>();
  private final Map<List<String>, Integer> byGroup = new HashMap<>();
  private final Overview overview;

  RowsOf(Overview overview) {
    this.overview = overview;
    place(overview.projects(), ProjectLine::index, line -> 1, project);
    place(overview.projects(), ProjectLine::index, ProjectLine::open, findings);
    place(overview.projects(), ProjectLine::index, ProjectLine::unread, unread);
    int row = FIRST;
    int check = FIRST;
    for (CheckLine line : overview.checks()) {
      checks.put(line.check(), check++);
      byCheck.put(line.check(), row);
      row += line.fails().size() + line.unread().size();
    }
    row = FIRST;
    for (List<GroupLine> lines : List.of(overview.groups(), overview.sections()))
      for (GroupLine line : lines) {
        byGroup.put(List.of(line.level(), line.name()), row);
        row += line.members().size();
      }
  }

  private static void place(
      List<ProjectLine> lines,
      ToIntFunction<ProjectLine> key,
      ToIntFunction<ProjectLine> size,
      Map<Integer, Integer> places) {
    long row = FIRST;
    for (ProjectLine line : lines) {
      places.put(key.applyAsInt(line), (int) Math.min(Integer.MAX_VALUE / 2, row));
      row += size.applyAsInt(line);
    }
  }

  private static String rows(String sheet, int first, int count) {
    int last = first + count - 1;
    return count < 1 || last > LAST ? null : PlainBook.rows(sheet, first, last);
  }

  String of(ProjectLine line) {
    return rows(SurveyWorkbook.PROJECTS, project.get(line.index()), 1);
  }

  String errors(ProjectLine line) {
    return rows(SurveyWorkbook.FINDINGS, findings.get(line.index()), line.errors());
  }

  String warnings(ProjectLine line) {
    int first = findings.get(line.index()) + line.errors();
    return rows(SurveyWorkbook.FINDINGS, first, line.warnings());
  }

  String notes(ProjectLine line) {
    int first = findings.get(line.index()) + line.errors() + line.warnings();
    return rows(SurveyWorkbook.FINDINGS, first, line.notes());
  }

  String open(ProjectLine line, Overview.OfCheck of) {
    int first = findings.get(line.index()) + of.first();
    return rows(SurveyWorkbook.FINDINGS, first, of.together());
  }

  String unread(ProjectLine line) {
    return rows(SurveyWorkbook.UNREAD, unread.get(line.index()), line.unread());
  }

  String of(CheckLine line) {
    return rows(SurveyWorkbook.CHECKS, checks.get(line.check()), 1);
  }

  String fails(CheckLine line) {
    return rows(SurveyWorkbook.BY_CHECK, byCheck.get(line.check()), line.fails().size());
  }

  String unread(CheckLine line) {
    int first = byCheck.get(line.check()) + line.fails().size();
    return rows(SurveyWorkbook.BY_CHECK, first, line.unread().size());
  }

  String members(GroupLine line) {
    return rows(SurveyWorkbook.BY_GROUP, group(line), line.members().size());
  }

  /** Those with errors stand first. */
  String withErrors(GroupLine line) {
    return rows(SurveyWorkbook.BY_GROUP, group(line), line.withErrors());
  }

  private int group(GroupLine line) {
    return byGroup.get(List.of(line.level(), line.name()));
  }

  /** Of the projects from one place in their order on. */
  String projects(int from, int count) {
    return rows(SurveyWorkbook.PROJECTS, FIRST + from, count);
  }

  /** How many were checked; they stand before the others. */
  int checked() {
    return count(Surveyed.SurveyStatus.CHECKED);
  }

  int count(Surveyed.SurveyStatus status) {
    return (int) overview.projects().stream().filter(line -> line.status() == status).count();
  }
}
