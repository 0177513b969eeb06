package clearbed.corpus;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;

/** Counts by check: defects that were due, found, found in part, and alarms that were false. */
final class Tally {
  /**
   * @param due defects that the check must report
   * @param found of them, reported for every entry they touch
   * @param partly of them, reported for some of the entries only
   * @param falseAlarms findings at warning or above that nothing in the documents warrants
   */
  record Line(int due, int found, int partly, int falseAlarms) {
    static final Line NONE = new Line(0, 0, 0, 0);

    Line plus(Line other) {
      return new Line(
          due + other.due,
          found + other.found,
          partly + other.partly,
          falseAlarms + other.falseAlarms);
    }

    /** Share of the defects due that were found whole; 1 when none was due. */
    double recall() {
      return due == 0 ? 1 : (double) found / due;
    }

    /** Share of true findings among true ones and false alarms; 1 when there were none. */
    double precision() {
      int said = found + partly + falseAlarms;
      return said == 0 ? 1 : (double) (found + partly) / said;
    }
  }

  private final Map<String, Line> lines = new TreeMap<>();

  /** Scores the findings on one mutant against what was due and what the clean set gave. */
  void score(Mutant mutant, List<Reported> reported, Set<String> onCleanSet) {
    for (Expected due : mutant.expected()) add(due.check(), scored(due, reported, onCleanSet));
    reported.stream()
        .filter(Reported::loud)
        .filter(finding -> !warranted(finding, mutant, onCleanSet))
        .forEach(finding -> add(finding.check(), new Line(0, 0, 0, 1)));
  }

  /** Every loud finding on a clean set is a false alarm. */
  void scoreClean(List<Reported> reported) {
    reported.stream()
        .filter(Reported::loud)
        .forEach(finding -> add(finding.check(), new Line(0, 0, 0, 1)));
  }

  /** What the clean set already gave is no sign that the defect was seen. */
  private static Line scored(Expected due, List<Reported> reported, Set<String> onCleanSet) {
    List<Reported> fresh =
        reported.stream()
            .filter(finding -> finding.check().equals(due.check()))
            .filter(finding -> !onCleanSet.containsAll(finding.keys()))
            .toList();
    if (due.tags().isEmpty()) return new Line(1, fresh.isEmpty() ? 0 : 1, 0, 0);
    long named =
        due.tags().stream()
            .filter(tag -> !onCleanSet.contains(due.check() + " " + tag))
            .filter(tag -> fresh.stream().anyMatch(finding -> finding.tags().contains(tag)))
            .count();
    if (named == due.tags().size()) return new Line(1, 1, 0, 0);
    return new Line(1, 0, named > 0 ? 1 : 0, 0);
  }

  static boolean warranted(Reported finding, Mutant mutant, Set<String> onCleanSet) {
    if (onCleanSet.containsAll(finding.keys())) return true;
    if (mutant.aside().contains(finding.check())) return true;
    if (!finding.tags().isEmpty() && mutant.strangers().containsAll(finding.tags())) return true;
    return mutant.expected().stream()
        .filter(due -> due.check().equals(finding.check()))
        .anyMatch(due -> due.tags().isEmpty() || covers(due, finding, mutant, onCleanSet));
  }

  /** True when every entry the finding names is due, known from the clean set, or added. */
  private static boolean covers(
      Expected due, Reported finding, Mutant mutant, Set<String> onCleanSet) {
    return finding.tags().stream()
        .filter(Objects::nonNull)
        .allMatch(
            tag ->
                due.tags().contains(tag)
                    || mutant.strangers().contains(tag)
                    || onCleanSet.contains(finding.check() + " " + tag));
  }

  private void add(String check, Line line) {
    lines.merge(check, line, Line::plus);
  }

  Map<String, Line> lines() {
    return Map.copyOf(lines);
  }

  Line line(String check) {
    return lines.getOrDefault(check, Line.NONE);
  }

  Line total() {
    return lines.values().stream().reduce(Line.NONE, Line::plus);
  }
}
