package clearbed.report.survey;

import clearbed.base.DisplayText;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.ReadingAccount;
import clearbed.report.survey.PlainTable.Head;
import clearbed.survey.Overview;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.Surveyed;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;

/** Every open finding, and every place that was not understood, project by project. */
final class PlaceSheets {
  private static final List<Head> FINDINGS =
      List.of(
          Head.text("Project", 34),
          Head.text("Level", 10),
          Head.text("Check", 22),
          Head.text("Tags", 16),
          Head.text("What is wrong", 56),
          Head.text("Found", 34),
          Head.text("Expected", 34),
          Head.text("Place", 40),
          Head.text("Link", 6),
          Head.text("Section", 10),
          Head.text("Kind", 13));

  private static final List<Head> UNREAD =
      List.of(
          Head.text("Project", 34),
          Head.text("Place", 40),
          Head.text("Link", 6),
          Head.text("Heading or words", 70),
          Head.text("Could answer", 50),
          Head.text("Tiles", 24));

  private final PlainBook book;
  private final Overview overview;
  private final UnaryOperator<String> paths;

  PlaceSheets(PlainBook book, Overview overview, UnaryOperator<String> paths) {
    this.book = book;
    this.overview = overview;
    this.paths = paths;
  }

  void fill(Surveys surveys) throws IOException {
    try (PlainTable table = book.table(SurveyWorkbook.FINDINGS, FINDINGS)) {
      for (ProjectLine line : overview.projects()) {
        if (table.isFull()) break;
        Surveyed project = surveys.get(line.index());
        for (Surveyed.FindingRow row : project.findings())
          if (row.finding().isOpen() && !table.isFull()) finding(table, project.name(), row);
      }
    }
    try (PlainTable table = book.table(SurveyWorkbook.UNREAD, UNREAD)) {
      for (ProjectLine line : overview.projects()) {
        if (table.isFull()) break;
        Surveyed project = surveys.get(line.index());
        for (ReadingAccount.WordsNotUnderstood row : project.unread())
          if (!table.isFull()) unread(table, project.name(), row);
      }
    }
  }

  private void finding(PlainTable table, String project, Surveyed.FindingRow row) {
    Finding f = row.finding();
    table.row();
    table
        .text(DisplayText.path(project))
        .strong(f.level().word())
        .text(f.check())
        .text(String.join(", ", f.tags()))
        .text(f.message())
        .text(f.found())
        .text(f.expected())
        .text(f.origin().document().isEmpty() ? "" : f.origin().place())
        .file(path(project, f.origin()), cell(f.origin()))
        .text(row.section())
        .text(f.kind().name().toLowerCase(Locale.ROOT));
  }

  private void unread(PlainTable table, String project, ReadingAccount.WordsNotUnderstood row) {
    Origin origin = row.words().origin();
    String samples = String.join("; ", row.words().samples());
    table.row();
    table
        .text(DisplayText.path(project))
        .text(origin.place())
        .file(path(project, origin), cell(origin))
        .text(row.words().text() + (samples.isEmpty() ? "" : " (cells: " + samples + ")"))
        .text(String.join(", ", row.couldAnswer()))
        .text(row.tags().isEmpty() ? "all" : String.join(", ", row.tags()));
  }

  private String path(String project, Origin origin) {
    return origin.document().isEmpty() ? null : paths.apply(project + "/" + origin.document());
  }

  /** The cell of a workbook that a link may lead to, or null. */
  static String cell(Origin origin) {
    boolean archived = origin.document().contains("!/");
    if (origin.sheet() == null || origin.cell() == null || archived) return null;
    return "'" + origin.sheet().replace("'", "''") + "'!" + origin.cell();
  }
}
