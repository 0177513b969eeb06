package clearbed.report.survey;

import clearbed.base.io.AtomicFile;
import clearbed.mark.OutputKind;
import clearbed.survey.Groups;
import clearbed.survey.Overview;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.UnaryOperator;

/** The workbook of a survey: what fails again and again, which projects are at risk. */
public final class SurveyWorkbook {
  /** Title of the workbook, on its first sheet and over every page in print. */
  static final String TITLE = "Survey of glass tile projects";

  static final String SUMMARY = "Summary";
  static final String PROJECTS = "Projects";
  static final String CHECKS = "Checks";
  static final String BY_CHECK = "Projects by check";
  static final String FINDINGS = "Findings";
  static final String UNREAD = "Not understood";
  static final String RIGHT = "Right elsewhere";
  static final String GROUPS = "Groups";
  static final String BY_GROUP = "Projects by group";

  private SurveyWorkbook() {}

  /**
   * What is said of a survey beside its projects.
   *
   * @param archive its name
   * @param found how the projects were found, in words
   * @param version of the program
   */
  public record About(String archive, String found, String version) {}

  /**
   * Writes the workbook whole or not at all.
   *
   * @param paths from the path of a project or document below the archive to its path from the
   *     folder of the workbook, or null where no link can be made
   * @throws IOException with one line that names the file and the reason
   */
  public static void write(
      Surveys surveys,
      Overview overview,
      Groups groups,
      About about,
      UnaryOperator<String> paths,
      Path file)
      throws IOException {
    boolean metric =
        !overview.ruleSets().isEmpty()
            && overview.ruleSets().stream().allMatch(set -> set.startsWith("iso"));
    PlainBook.BookTitle plain =
        new PlainBook.BookTitle(TITLE, about.version(), OutputKind.SURVEY, metric);
    RowsOf rows = new RowsOf(overview);
    List<String> sheets =
        List.of(SUMMARY, PROJECTS, CHECKS, BY_CHECK, FINDINGS, UNREAD, RIGHT, GROUPS, BY_GROUP);
    AtomicFile.write(
        file,
        out ->
            PlainBook.write(
                plain,
                sheets,
                book -> {
                  new SurveySummary(overview, rows).fill(book.page(SUMMARY), groups, about);
                  new ProjectSheets(book, overview, rows, paths).fill(groups);
                  new CheckSheets(book, overview, rows, paths).fill(surveys);
                  new PlaceSheets(book, overview, paths).fill(surveys);
                },
                out));
  }
}
