package clearbed.survey;

import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.survey.Overview.GroupLine;
import clearbed.survey.Overview.Member;
import clearbed.survey.Overview.ProjectLine;
import clearbed.survey.Surveyed.CheckResult;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/** Adds projects up by the groups that they stand in. */
final class GroupSums {
  private static final Comparator<List<String>> ORDER =
      Comparator.comparing((List<String> key) -> key.get(0)).thenComparing(key -> key.get(1));

  private final Map<List<String>, GroupTally> tallies = new TreeMap<>(ORDER);

  private static final class GroupTally {
    private final Map<String, Integer> failing = new TreeMap<>();
    private final List<Member> members = new ArrayList<>();

    void add(ProjectLine line) {
      members.add(new Member(line, line.errors()));
      line.checks()
          .forEach(
              (check, of) -> {
                if (of.result() == CheckResult.FAILS && of.level().atLeast(Level.WARNING))
                  failing.merge(check, 1, Integer::sum);
              });
    }

    GroupLine line(List<String> key) {
      return new GroupLine(key.get(0), key.get(1), members, words());
    }

    /** The five most frequent. */
    private String words() {
      return String.join(
          ", ",
          failing.entrySet().stream()
              .sorted(Map.Entry.<String, Integer>comparingByValue().reversed())
              .limit(5)
              .map(e -> e.getKey() + " (" + e.getValue() + ")")
              .toList());
    }
  }

  /** Adds a project to the group of each level. */
  void add(Map<String, String> groups, ProjectLine line) {
    groups.forEach((level, name) -> of(level, name).add(line));
  }

  private GroupTally of(String level, String name) {
    return tallies.computeIfAbsent(List.of(level, name), key -> new GroupTally());
  }

  /** Findings count for the section of the document that they point to. */
  void addSections(Surveyed project, ProjectLine line) {
    Map<String, Integer> errors = new TreeMap<>();
    Map<String, Set<String>> failing = new TreeMap<>();
    for (Surveyed.DocumentRow d : project.documents())
      if (!d.section().isEmpty()) errors.putIfAbsent(d.section(), 0);
    for (Surveyed.FindingRow row : project.findings()) {
      if (row.section().isEmpty() || !row.finding().isOpen()) continue;
      if (row.finding().level() == Level.ERROR) errors.merge(row.section(), 1, Integer::sum);
      boolean fails = row.finding().kind() != FindingKind.UNREAD;
      if (fails && row.finding().level().atLeast(Level.WARNING))
        failing.computeIfAbsent(row.section(), s -> new TreeSet<>()).add(row.finding().check());
    }
    errors.forEach(
        (section, open) -> {
          GroupTally tally = of("Section", section);
          tally.members.add(new Member(line, open));
          failing
              .getOrDefault(section, Set.of())
              .forEach(check -> tally.failing.merge(check, 1, Integer::sum));
        });
  }

  /** By level, then by the share of projects with open errors. */
  List<GroupLine> lines() {
    List<GroupLine> out = new ArrayList<>();
    Comparator<Member> worst = Comparator.comparing(member -> -member.errors());
    for (GroupTally tally : tallies.values())
      tally.members.sort(worst.thenComparing(member -> member.project().name()));
    tallies.forEach((key, tally) -> out.add(tally.line(key)));
    out.sort(
        Comparator.comparing(GroupLine::level)
            .thenComparing(group -> -(double) group.withErrors() / group.members().size())
            .thenComparing(group -> -group.members().size())
            .thenComparing(GroupLine::name));
    return out;
  }
}
