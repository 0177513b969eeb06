package clearbed.report.workbook;

import clearbed.model.report.Finding;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What changed since the earlier issue, and in whose hands the open ones are. */
final class ChangeTable {
  private final SummarySheet summary;

  ChangeTable(SummarySheet summary) {
    this.summary = summary;
  }

  /**
   * @param remarks on what people typed, besides those of the log
   */
  void fill(List<Finding> findings, QuestionLog log, String today, List<String> remarks) {
    String since = log.since().isEmpty() ? "" : " of " + log.since();
    summary.section("What changed since the issue" + since);
    summary.pair("Carried on from", log.from());
    count(findings, State.NEW, "new", "not found before");
    long gone =
        log.lines().values().stream()
            .filter(line -> line.finding().state() == State.RESOLVED)
            .filter(line -> line.lastSeen().equals(log.since()) || log.since().isEmpty())
            .count();
    summary.pair("resolved", gone + " (were in that issue, and are gone)");
    count(findings, State.REOPENED, "reopened", "came back after they had gone");
    count(findings, State.ANSWERED, "answered", "still in the documents, with the status answered");
    count(findings, State.OPEN, "still open", "found before, and not settled");
    List<QuestionLog.LogLine> open = open(log);
    summary.pair("open in all", open.size() + " (new, reopened and still open)");
    held(open).forEach((who, number) -> summary.pair("    " + who, number + " open"));
    long dropped = open.stream().filter(QuestionLog.LogLine::isDropped).count();
    if (dropped > 0) summary.pair("    question dropped", dropped + " open (not asked any more)");
    long late = open.stream().filter(line -> isPast(line.reply().due(), today)).count();
    if (late > 0) summary.pair("    past due", late + " open (due before " + today + ")");
    for (String remark : log.remarks()) summary.pair("Remark", remark);
    for (String remark : remarks) summary.pair("Remark", remark);
  }

  private void count(List<Finding> findings, State state, String label, String meaning) {
    long number = findings.stream().filter(finding -> finding.state() == state).count();
    summary.pair(label, number + (meaning.isEmpty() ? "" : " (" + meaning + ")"));
  }

  private static List<QuestionLog.LogLine> open(QuestionLog log) {
    return log.lines().values().stream().filter(QuestionLog.LogLine::isOpen).toList();
  }

  /** By whom their question was put to. */
  private static Map<String, Integer> held(List<QuestionLog.LogLine> open) {
    Map<String, Integer> held = new TreeMap<>();
    for (QuestionLog.LogLine line : open) {
      String who = line.reply().askedOf().strip();
      held.merge(who.isEmpty() ? "asked of nobody yet" : "with " + who, 1, Integer::sum);
    }
    return held;
  }

  /** Of two dates, ISO 8601; what people typed otherwise is no date. */
  private static boolean isPast(String due, String today) {
    return due.strip().matches("\\d{4}-\\d{2}-\\d{2}") && due.strip().compareTo(today) < 0;
  }
}
