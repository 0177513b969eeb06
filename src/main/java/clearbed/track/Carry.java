package clearbed.track;

import clearbed.model.Document;
import clearbed.model.Finding;
import clearbed.model.QuestionLog;
import clearbed.model.Report;
import clearbed.model.State;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A run joined with the issue before it.
 *
 * @param report with the states of its findings, and those that are gone as resolved after them
 * @param log what the findings workbook needs to carry on the earlier one
 */
public record Carry(Report report, QuestionLog log) {

  static Carry of(QuestionLog earlier, Report report) {
    return new Join(earlier, report).carry();
  }

  private static final class Join {
    private final QuestionLog earlier;
    private final Report report;
    private final String today;
    private final Map<String, Finding> current = new HashMap<>();
    private final Map<String, QuestionLog.Line> lines = new LinkedHashMap<>();
    private int lastNumber;

    Join(QuestionLog earlier, Report report) {
      this.earlier = earlier;
      this.report = report;
      this.today = report.run().date();
      for (Finding finding : report.findings()) current.putIfAbsent(finding.id(), finding);
      for (QuestionLog.Line line : earlier.lines().values()) {
        lastNumber = Math.max(lastNumber, line.number());
      }
    }

    Carry carry() {
      for (QuestionLog.Line line : earlier.lines().values()) {
        Finding now = current.get(line.finding().id());
        put(now == null ? gone(line) : found(line, now));
      }
      for (Finding finding : report.findings()) {
        boolean fresh = !lines.containsKey(finding.id()) && finding.suppressed().isEmpty();
        if (fresh) put(fresh(finding));
      }
      List<String> remarks = new ArrayList<>(earlier.remarks());
      unmarkedAnswers(remarks);
      QuestionLog log =
          new QuestionLog(earlier.from(), earlier.since(), earlier.workbook(), lines, remarks);
      return new Carry(withFindings(), log);
    }

    private void put(QuestionLog.Line line) {
      lines.put(line.finding().id(), line);
    }

    private QuestionLog.Line fresh(Finding finding) {
      return new QuestionLog.Line(
          finding.withState(State.NEW),
          number(0, finding),
          today,
          today,
          "",
          "",
          "",
          QuestionLog.Reply.NONE);
    }

    /** A number is kept for life; a finding that asks for the first time gets the next one. */
    private int number(int own, Finding finding) {
      if (own > 0 || finding.question().isBlank()) return own;
      return ++lastNumber;
    }

    private QuestionLog.Line found(QuestionLog.Line line, Finding now) {
      boolean back = line.finding().state() == State.RESOLVED;
      QuestionLog.Reply reply = line.reply();
      boolean refuted = reply.answered() && reply.print().equals(line.refuted());
      State state =
          back ? State.REOPENED : reply.answered() && !refuted ? State.ANSWERED : State.OPEN;
      String remark =
          !now.suppressed().isEmpty()
              ? "not reported, by a rule file's wish: " + now.suppressed()
              : back ? "was gone on " + line.goneOn() + ", came back on " + today : "";
      return new QuestionLog.Line(
          now.withState(state),
          number(line.number(), now),
          line.firstSeen().isEmpty() ? today : line.firstSeen(),
          today,
          "",
          remark,
          back && reply.answered() ? reply.print() : line.refuted(),
          reply);
    }

    private QuestionLog.Line gone(QuestionLog.Line line) {
      Finding finding = line.finding();
      if (finding.state() == State.RESOLVED) return line;
      String unread = unreadable(finding.origin().document());
      if (!unread.isEmpty()) {
        State state = line.reply().answered() ? State.ANSWERED : State.OPEN;
        String remark = "not checked again on " + today + ": " + unread;
        return line(line, finding.withState(state), "", remark);
      }
      return line(line, finding.withState(State.RESOLVED), today, whyGone(finding));
    }

    private static QuestionLog.Line line(
        QuestionLog.Line line, Finding finding, String goneOn, String remark) {
      return new QuestionLog.Line(
          finding,
          line.number(),
          line.firstSeen(),
          line.lastSeen(),
          goneOn,
          remark,
          line.refuted(),
          line.reply());
    }

    /** A finding is not settled because its document could not be opened this time. */
    private String unreadable(String document) {
      return report.documents().stream()
          .filter(each -> each.path().equals(document))
          .filter(each -> each.status() == Document.Status.UNREADABLE)
          .map(each -> "the document could not be read: " + each.reason())
          .findFirst()
          .orElse("");
    }

    private String whyGone(Finding finding) {
      String document = finding.origin().document();
      boolean there =
          document.isEmpty()
              || report.documents().stream().anyMatch(each -> each.path().equals(document));
      if (!there) return "its document is not among those checked";
      boolean off =
          report.checks().stream().anyMatch(c -> c.id().equals(finding.check()) && !c.on());
      return off ? "the check is switched off" : "no longer found";
    }

    private void unmarkedAnswers(List<String> remarks) {
      long unmarked =
          lines.values().stream()
              .filter(line -> !line.reply().answer().isBlank() && !line.reply().answered())
              .count();
      if (unmarked > 0) {
        remarks.add(
            unmarked
                + " questions have an answer but not the status \"answered\"; they count as open.");
      }
    }

    private Report withFindings() {
      List<Finding> findings = new ArrayList<>();
      for (Finding finding : report.findings()) {
        QuestionLog.Line line = lines.get(finding.id());
        findings.add(line == null ? finding : finding.withState(line.finding().state()));
      }
      for (QuestionLog.Line line : lines.values()) {
        if (!current.containsKey(line.finding().id())) findings.add(line.finding());
      }
      return new Report(
          report.run(),
          report.documents(),
          report.entries(),
          findings,
          report.verdicts(),
          report.calculations(),
          report.checks());
    }
  }
}
