package clearbed.cli.survey;

import clearbed.base.DisplayText;
import clearbed.report.wording.Phrasing;
import clearbed.survey.Overview;
import clearbed.survey.Overview.CheckLine;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.ProjectFinder;
import clearbed.survey.Surveyed;
import java.util.ArrayList;
import java.util.List;

/** What a survey says on the terminal. */
final class SurveyText {
  private static final int MOST = 5;
  private static final int MOST_NAMED = 20;

  private SurveyText() {}

  /** How the projects were found. */
  static String found(ProjectFinder.FoundProjects found, int asked) {
    if (found.depth() == 0) return "the archive itself is the one project";
    boolean zips = found.projects().stream().allMatch(ProjectFinder.FoundProject::zip);
    if (zips && asked == 0) return "each a zip file; --depth says otherwise";
    String where =
        "each folder or zip file " + Phrasing.count(found.depth(), "folder") + " below the archive";
    return asked > 0
        ? where + ", as --depth says"
        : where + ", the least depth at which documents stand; --depth says otherwise";
  }

  /** What the way of finding them leaves in doubt, a line each. */
  static List<String> doubts(ProjectFinder.FoundProjects found, int asked) {
    List<String> out = new ArrayList<>();
    if (!found.aside().isEmpty())
      out.add(
          Phrasing.count(found.aside().size(), "file")
              + " beside or above the projects, not checked: "
              + some(found.aside()));
    if (!found.alike().isEmpty() && asked == 0 && found.depth() > 1)
      out.add(
          "most projects are called alike ("
              + some(found.alike())
              + "); if these are parts of projects, give --depth "
              + (found.depth() - 1));
    return out;
  }

  /** What is missing from the numbers, a line each; empty when nothing is. */
  static List<String> missing(Overview overview) {
    List<String> out = new ArrayList<>();
    List<ProjectLine> broken = of(overview, Surveyed.SurveyStatus.NOT_CHECKED);
    for (ProjectLine line : broken.subList(0, Math.min(MOST_NAMED, broken.size())))
      out.add(DisplayText.path(line.name()) + ": " + DisplayText.of(line.reason()));
    if (broken.size() > MOST_NAMED)
      out.add(broken.size() - MOST_NAMED + " more; see the sheet Projects");
    List<ProjectLine> partly =
        overview.projects().stream().filter(line -> line.notRead() > 0).toList();
    int files = partly.stream().mapToInt(ProjectLine::notRead).sum();
    if (files > 0)
      out.add(
          Phrasing.count(files, "file")
              + " could not be read, in "
              + some(partly.stream().map(ProjectLine::name).toList())
              + "; check that project by itself to see why");
    return out;
  }

  private static String some(List<String> names) {
    List<String> shown = names.stream().limit(MOST).map(DisplayText::path).toList();
    String more = names.size() > MOST ? " and " + (names.size() - MOST) + " more" : "";
    return String.join(", ", shown) + more;
  }

  /** The sums, the projects at risk and what fails most. */
  static String summary(Overview overview, String found) {
    StringBuilder out = new StringBuilder();
    List<ProjectLine> checked = of(overview, Surveyed.SurveyStatus.CHECKED);
    out.append(Phrasing.count(overview.projects().size(), "project"));
    out.append(": ").append(found).append(".\n");
    out.append(checked.size()).append(" checked");
    int empty = of(overview, Surveyed.SurveyStatus.NOTHING_TO_READ).size();
    int broken = of(overview, Surveyed.SurveyStatus.NOT_CHECKED).size();
    if (empty > 0) out.append(", ").append(empty).append(" with nothing to read");
    if (broken > 0) out.append(", ").append(broken).append(" that could not be checked");
    long withErrors = checked.stream().filter(line -> line.errors() > 0).count();
    int errors = checked.stream().mapToInt(ProjectLine::errors).sum();
    int unread = checked.stream().mapToInt(ProjectLine::unread).sum();
    out.append(".\nOpen: ").append(Phrasing.count(errors, "error")).append(" in ");
    out.append(Phrasing.count((int) withErrors, "project")).append(". Not understood: ");
    out.append(Phrasing.count(unread, "place")).append(".\n");
    risk(out, checked);
    failing(out, overview.worth());
    return out.toString();
  }

  private static List<ProjectLine> of(Overview overview, Surveyed.SurveyStatus status) {
    return overview.projects().stream().filter(line -> line.status() == status).toList();
  }

  private static void risk(StringBuilder out, List<ProjectLine> checked) {
    List<ProjectLine> worst =
        checked.stream().filter(line -> line.errors() > 0).limit(MOST).toList();
    if (worst.isEmpty()) return;
    out.append("\nMost open errors\n");
    for (ProjectLine line : worst)
      out.append("  %4d  %s%n".formatted(line.errors(), DisplayText.path(line.name())));
  }

  private static void failing(StringBuilder out, List<CheckLine> checks) {
    List<CheckLine> most = checks.stream().filter(c -> !c.fails().isEmpty()).limit(MOST).toList();
    if (most.isEmpty()) return;
    out.append("\nErrors and warnings that most projects have, of those that each applies to\n");
    for (CheckLine line : most)
      out.append(
          "  %4d of %-4d  %s (%s): %s%n"
              .formatted(
                  line.fails().size(),
                  line.applies(),
                  line.check(),
                  line.level().word(),
                  line.title()));
  }
}
