package clearbed.report;

import clearbed.model.Finding;
import clearbed.model.QuestionLog;
import clearbed.model.State;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What changed since the earlier issue, and in whose hands the open ones are. */
final class ChangeTable {
  private final SummarySheet summary;

  ChangeTable(SummarySheet summary) {
    this.summary = summary;
  }

  void fill(List<Finding> findings, QuestionLog log) {
    String since = log.since().isEmpty() ? "" : " of " + log.since();
    summary.section("What changed since the issue" + since);
    summary.pair("Carried on from", log.from());
    count(findings, State.NEW, "new", "not found before");
    long today =
        log.lines().values().stream()
            .filter(line -> line.finding().state() == State.RESOLVED)
            .filter(line -> line.lastSeen().equals(log.since()) || log.since().isEmpty())
            .count();
    summary.pair("resolved", today + " (were in that issue, and are gone)");
    count(findings, State.REOPENED, "reopened", "came back after they had gone");
    count(findings, State.ANSWERED, "answered", "still in the documents, with an answer");
    count(findings, State.OPEN, "still open", "");
    held(log).forEach((who, number) -> summary.pair("    " + who, number + " open"));
    for (String remark : log.remarks()) summary.pair("Remark", remark);
  }

  private void count(List<Finding> findings, State state, String label, String meaning) {
    long number = findings.stream().filter(finding -> finding.state() == state).count();
    summary.pair(label, number + (meaning.isEmpty() ? "" : " (" + meaning + ")"));
  }

  /** Open findings by whom their question was put to. */
  private static Map<String, Integer> held(QuestionLog log) {
    Map<String, Integer> held = new TreeMap<>();
    for (QuestionLog.Line line : log.lines().values()) {
      if (!line.finding().state().isOpen() || !line.finding().suppressed().isEmpty()) continue;
      String who = line.reply().askedOf().strip();
      held.merge(who.isEmpty() ? "asked of nobody yet" : "with " + who, 1, Integer::sum);
    }
    return held;
  }
}
