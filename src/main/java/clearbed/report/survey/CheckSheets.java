package clearbed.report.survey;

import clearbed.base.DisplayText;
import clearbed.report.survey.PlainTable.Head;
import clearbed.survey.Overview;
import clearbed.survey.Overview.CheckLine;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.util.List;
import java.util.function.UnaryOperator;

/** Every check, the projects that fail it, and words that satisfied it in others. */
final class CheckSheets {
  private static final List<Head> CHECKS =
      List.of(
          Head.text("Check", 24),
          Head.text("What it looks at", 56),
          Head.text("Level", 10),
          Head.number("Projects that fail it", 12),
          Head.number("Share of all projects", 11),
          Head.number("Share of those it applies to", 12),
          Head.number("Not understood in", 13),
          Head.number("Satisfied in", 11),
          Head.number("Suppressed or waiting in", 13),
          Head.number("Projects it applies to", 12));

  private static final List<Head> BY_CHECK =
      List.of(
          Head.text("Check", 24),
          Head.text("What it looks at", 50),
          Head.text("Project", 44),
          Head.text("Link", 6),
          Head.text("How it came out", 15),
          Head.text("Level", 10),
          Head.number("Open findings", 10),
          Head.text("Tiles", 40));

  private static final List<Head> RIGHT =
      List.of(
          Head.text("Check", 24),
          Head.text("What it looks at", 44),
          Head.number("Projects that fail it", 12),
          Head.text("Rules", 14),
          Head.text("Words that satisfied it", 80),
          Head.number("Projects with these words", 12),
          Head.text("One of them", 40),
          Head.text("Tile", 12),
          Head.text("Place", 40),
          Head.text("Link", 6));

  private static final int MOST_TAGS = 40;

  private final PlainBook book;
  private final Overview overview;
  private final RowsOf rows;
  private final UnaryOperator<String> paths;

  CheckSheets(PlainBook book, Overview overview, RowsOf rows, UnaryOperator<String> paths) {
    this.book = book;
    this.overview = overview;
    this.rows = rows;
    this.paths = paths;
  }

  void fill(Surveys surveys) throws IOException {
    try (PlainTable table = book.table(SurveyWorkbook.CHECKS, CHECKS)) {
      for (CheckLine line : overview.checks()) check(table, line);
    }
    try (PlainTable table = book.table(SurveyWorkbook.BY_CHECK, BY_CHECK)) {
      for (CheckLine line : overview.checks()) {
        for (ProjectLine project : line.fails()) byCheck(table, line, project, "fails");
        for (ProjectLine project : line.unread()) byCheck(table, line, project, "not understood");
      }
    }
    RightElsewhere right = RightElsewhere.of(surveys, overview);
    try (PlainTable table = book.table(SurveyWorkbook.RIGHT, RIGHT)) {
      for (CheckLine line : overview.checks())
        for (RightElsewhere.SatisfyingWords words : right.of(line.check()))
          right(table, line, words);
    }
  }

  private void check(PlainTable table, CheckLine line) {
    table.row();
    table.strong(line.check()).text(line.title()).text(line.level().word());
    table
        .count(line.fails().size(), rows.fails(line))
        .share((double) line.fails().size() / Math.max(1, rows.checked()));
    // No project shows anything of a check that applies to none.
    if (line.applies() == 0) table.text("");
    else table.share(line.share());
    table
        .count(line.unread().size(), rows.unread(line))
        .count(line.satisfied())
        .count(line.other())
        .count(line.applies());
  }

  private void byCheck(PlainTable table, CheckLine line, ProjectLine project, String outcome) {
    if (table.isFull()) return;
    table.row();
    Overview.OfCheck of = project.checks().get(line.check());
    table
        .strong(line.check())
        .text(line.title())
        .jump(DisplayText.path(project.name()), rows.of(project))
        .file(paths.apply(project.name()), null)
        .text(outcome)
        .text(of == null ? "" : of.level().word());
    if (of == null) table.count(0).text("");
    else table.count(of.open(), rows.open(project, of)).text(tags(of.tags()));
  }

  private static String tags(List<String> tags) {
    if (tags.isEmpty()) return "the whole set";
    String some = String.join(", ", tags.subList(0, Math.min(MOST_TAGS, tags.size())));
    int more = tags.size() - MOST_TAGS;
    return more > 0 ? some + " and " + more + " more" : some;
  }

  private void right(PlainTable table, CheckLine line, RightElsewhere.SatisfyingWords words) {
    table.row();
    String document = words.project() + "/" + words.origin().document();
    table
        .strong(line.check())
        .text(line.title())
        .count(line.fails().size(), rows.fails(line))
        .text(words.ruleSet())
        .text(words.text())
        .count(words.projects())
        .text(DisplayText.path(words.project()))
        .text(words.tag())
        .text(words.origin().place())
        .file(paths.apply(document), PlaceSheets.cell(words.origin()));
  }
}
