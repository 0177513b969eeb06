package clearbed.report.survey;

import clearbed.base.DisplayText;
import clearbed.report.survey.PlainTable.Head;
import clearbed.survey.Groups;
import clearbed.survey.Overview;
import clearbed.survey.Overview.GroupLine;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.Surveyed;
import java.io.IOException;
import java.util.List;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Every project, and the groups that they stand in. */
final class ProjectSheets {
  private static final List<Head> PROJECTS =
      List.of(
          Head.text("Project", 44),
          Head.text("Link", 6),
          Head.number("Open errors", 9),
          Head.number("Places not understood", 13),
          Head.number("Open warnings", 11),
          Head.number("Open notes", 9),
          Head.number("Glass entries", 9),
          Head.number("Files", 8),
          Head.number("Files not read", 10),
          Head.text("Status", 13),
          Head.text("Why not", 40),
          Head.text("Stands in", 34),
          Head.text("Rules", 16));

  private static final List<Head> GROUPS =
      List.of(
          Head.text("Group", 16),
          Head.text("Name", 34),
          Head.number("Projects", 11),
          Head.number("With open errors", 11),
          Head.number("Share", 9),
          Head.number("Open errors", 11),
          Head.text("What most of them fail, errors and warnings (projects)", 80));

  private static final List<Head> BY_GROUP =
      List.of(
          Head.text("Group", 16),
          Head.text("Name", 34),
          Head.text("Project", 44),
          Head.text("Link", 6),
          Head.number("Open errors of the group", 14),
          Head.number("Open errors of the project", 14));

  private final PlainBook book;
  private final Overview overview;
  private final RowsOf rows;
  private final UnaryOperator<String> paths;

  ProjectSheets(PlainBook book, Overview overview, RowsOf rows, UnaryOperator<String> paths) {
    this.book = book;
    this.overview = overview;
    this.rows = rows;
    this.paths = paths;
  }

  void fill(Groups groups) throws IOException {
    try (PlainTable table = book.table(SurveyWorkbook.PROJECTS, PROJECTS)) {
      for (ProjectLine line : overview.projects()) {
        if (table.isFull()) break;
        project(table, line, groups);
      }
    }
    List<GroupLine> all =
        Stream.concat(overview.groups().stream(), overview.sections().stream()).toList();
    try (PlainTable table = book.table(SurveyWorkbook.GROUPS, GROUPS)) {
      for (GroupLine line : all) {
        if (table.isFull()) break;
        group(table, line);
      }
    }
    try (PlainTable table = book.table(SurveyWorkbook.BY_GROUP, BY_GROUP)) {
      for (GroupLine line : all)
        for (Overview.Member member : line.members()) {
          if (table.isFull()) break;
          member(table, line, member);
        }
    }
  }

  private void project(PlainTable table, ProjectLine line, Groups groups) {
    table.row();
    table.strong(DisplayText.path(line.name())).file(paths.apply(line.name()), null);
    if (line.status() == Surveyed.SurveyStatus.CHECKED)
      table
          .count(line.errors(), rows.errors(line))
          .count(line.unread(), rows.unread(line))
          .count(line.warnings(), rows.warnings(line))
          .count(line.notes(), rows.notes(line))
          .count(line.glass());
    // A project of which nothing is known has no zeros, which would read as good news.
    else table.text("").text("").text("").text("").text("");
    String groupsOf =
        groups.of(line.name()).entrySet().stream()
            .map(e -> e.getKey() + ": " + DisplayText.of(e.getValue()))
            .collect(Collectors.joining(", "));
    table
        .count(line.documents())
        .count(line.notRead())
        .text(line.status().words())
        .text(DisplayText.of(line.reason()))
        .text(groupsOf)
        .text(line.ruleSet());
  }

  private void group(PlainTable table, GroupLine line) {
    table.row();
    int size = line.members().size();
    table
        .text(line.level())
        .strong(DisplayText.of(line.name()))
        .count(size, rows.members(line))
        .count(line.withErrors(), rows.withErrors(line))
        .share((double) line.withErrors() / size)
        .count(line.errors(), rows.withErrors(line))
        .text(line.failing());
  }

  private void member(PlainTable table, GroupLine line, Overview.Member member) {
    table.row();
    ProjectLine project = member.project();
    table
        .text(line.level())
        .text(DisplayText.of(line.name()))
        .jump(DisplayText.path(project.name()), rows.of(project))
        .file(paths.apply(project.name()), null)
        .count(member.errors(), rows.errors(project))
        .count(project.errors(), rows.errors(project));
  }
}
