package clearbed.survey;

import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.survey.Surveyed.CheckResult;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What the projects of a survey add up to.
 *
 * @param projects the most open errors first, then the most places not understood; those that were
 *     not checked last
 * @param checks by the share of all projects that fails them, then by level
 * @param groups of projects, by level and name
 * @param sections of documents, by number
 * @param ruleSets names and digests of the rules in use
 */
public record Overview(
    List<ProjectLine> projects,
    List<CheckLine> checks,
    List<GroupLine> groups,
    List<GroupLine> sections,
    Set<String> ruleSets) {

  /**
   * A project.
   *
   * @param index among the surveys
   * @param unread places that were not understood
   * @param checks open findings by check, in the order of the ids of the checks
   */
  public record ProjectLine(
      int index,
      String name,
      Surveyed.SurveyStatus status,
      String reason,
      String ruleSet,
      int documents,
      int notRead,
      int glass,
      int errors,
      int warnings,
      int notes,
      int unread,
      Map<String, OfCheck> checks) {
    public int open() {
      return errors + warnings + notes;
    }
  }

  /**
   * What is open of a check in a project.
   *
   * @param first where the first of them stands among the open findings of the project, from 0
   * @param together how many stand there one after the other
   */
  public record OfCheck(
      CheckResult result, Level level, int open, List<String> tags, int first, int together) {}

  /** How a check came out over all projects, and which fail it. */
  public record CheckLine(
      String check,
      String title,
      Level level,
      List<ProjectLine> fails,
      List<ProjectLine> unread,
      int satisfied,
      int other) {
    /** Projects that have a tile it applies to. */
    public int applies() {
      return fails.size() + unread.size() + satisfied + other;
    }

    /** Of the projects that it applies to, from 0 to 1. */
    public double share() {
      return applies() == 0 ? 0 : (double) fails.size() / applies();
    }
  }

  /**
   * @param level what kind of group it is
   * @param members the worst first
   * @param failing the checks that most of its projects fail with an error or a warning, and how
   *     many do
   */
  public record GroupLine(String level, String name, List<Member> members, String failing) {
    public int withErrors() {
      return (int) members.stream().filter(member -> member.errors > 0).count();
    }

    public int errors() {
      return members.stream().mapToInt(Member::errors).sum();
    }
  }

  /**
   * @param errors open ones that belong to the group
   */
  public record Member(ProjectLine project, int errors) {}

  /**
   * @throws IOException when the projects cannot be had
   */
  public static Overview of(Surveys surveys, Groups groups) throws IOException {
    List<ProjectLine> lines = new ArrayList<>();
    Map<String, CheckTally> checks = new TreeMap<>();
    GroupSums grouped = new GroupSums();
    GroupSums sections = new GroupSums();
    Set<String> ruleSets = new TreeSet<>();
    for (int i = 0; i < surveys.size(); i++) {
      Surveyed project = surveys.get(i);
      ProjectLine line = line(i, project);
      lines.add(line);
      if (project.status() != Surveyed.SurveyStatus.CHECKED) continue;
      ruleSets.add(project.ruleSet() + " (" + project.digest() + ")");
      for (Surveyed.CheckRow row : project.checks())
        checks.computeIfAbsent(row.check(), check -> new CheckTally(row)).add(row.result(), line);
      sections.addSections(project, line);
    }
    lines.sort(
        Comparator.comparing((ProjectLine line) -> line.status() != Surveyed.SurveyStatus.CHECKED)
            .thenComparing(line -> -line.errors())
            .thenComparing(line -> -line.unread())
            .thenComparing(ProjectLine::name));
    for (ProjectLine line : lines)
      if (line.status() == Surveyed.SurveyStatus.CHECKED) grouped.add(groups.of(line.name()), line);
    return new Overview(lines, checks(checks, lines), grouped.lines(), sections.lines(), ruleSets);
  }

  /** Checks for errors and warnings that some project does not satisfy. */
  public List<CheckLine> worth() {
    return checks.stream()
        .filter(check -> check.level().atLeast(Level.WARNING))
        .filter(check -> !check.fails().isEmpty() || !check.unread().isEmpty())
        .toList();
  }

  /** What one project comes to. */
  public static ProjectLine line(int index, Surveyed project) {
    Map<Level, Integer> open = new HashMap<>();
    Map<String, List<Integer>> byCheck = new TreeMap<>();
    List<Finding> findings = project.open();
    for (int i = 0; i < findings.size(); i++) {
      open.merge(findings.get(i).level(), 1, Integer::sum);
      byCheck.computeIfAbsent(findings.get(i).check(), check -> new ArrayList<>()).add(i);
    }
    Map<String, OfCheck> checks = new LinkedHashMap<>();
    Map<String, CheckResult> results = new HashMap<>();
    project.checks().forEach(row -> results.put(row.check(), row.result()));
    byCheck.forEach((check, at) -> checks.put(check, ofCheck(results.get(check), findings, at)));
    int notRead =
        (int)
            project.documents().stream()
                .filter(d -> d.status() == Document.Status.UNREADABLE)
                .count();
    return new ProjectLine(
        index,
        project.name(),
        project.status(),
        project.reason(),
        project.ruleSet(),
        project.documents().size(),
        notRead,
        project.entries().size(),
        open.getOrDefault(Level.ERROR, 0),
        open.getOrDefault(Level.WARNING, 0),
        open.getOrDefault(Level.NOTE, 0),
        project.unread().size(),
        checks);
  }

  private static OfCheck ofCheck(CheckResult result, List<Finding> findings, List<Integer> at) {
    Set<String> tags = new LinkedHashSet<>();
    Level worst = Level.NOTE;
    int together = 0;
    for (int i : at) {
      Finding finding = findings.get(i);
      tags.addAll(finding.tags());
      if (finding.level().atLeast(worst)) worst = finding.level();
      if (i == at.get(0) + together) together++;
    }
    return new OfCheck(result, worst, at.size(), List.copyOf(tags), at.get(0), together);
  }

  private static final class CheckTally {
    private final Surveyed.CheckRow row;
    private final Set<Integer> fails = new LinkedHashSet<>();
    private final Set<Integer> unread = new LinkedHashSet<>();
    private int satisfied;
    private int other;

    CheckTally(Surveyed.CheckRow row) {
      this.row = row;
    }

    void add(CheckResult result, ProjectLine line) {
      switch (result) {
        case FAILS -> fails.add(line.index());
        case UNREAD -> unread.add(line.index());
        case SATISFIED -> satisfied++;
        case SUPPRESSED, UNDECIDED -> other++;
        case NOT_APPLICABLE -> {}
      }
    }
  }

  private static List<CheckLine> checks(Map<String, CheckTally> tallies, List<ProjectLine> lines) {
    List<CheckLine> out = new ArrayList<>();
    for (CheckTally tally : tallies.values())
      out.add(
          new CheckLine(
              tally.row.check(),
              tally.row.title(),
              tally.row.level(),
              lines.stream().filter(line -> tally.fails.contains(line.index())).toList(),
              lines.stream().filter(line -> tally.unread.contains(line.index())).toList(),
              tally.satisfied,
              tally.other));
    out.sort(
        Comparator.comparing((CheckLine check) -> -check.fails().size())
            .thenComparing(CheckLine::level)
            .thenComparing(check -> -check.unread().size())
            .thenComparing(CheckLine::check));
    return out;
  }
}
