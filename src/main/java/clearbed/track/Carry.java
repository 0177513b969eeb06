package clearbed.track;

import clearbed.model.report.Finding;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.recognise.statement.code.Tags;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

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
    private final LookedAt looked;
    private final Map<String, Finding> current = new HashMap<>();
    private final Map<String, QuestionLog.LogLine> lines = new LinkedHashMap<>();
    private final QuestionLog.QuestionNumbers numbers;
    private final Map<Integer, QuestionLog.Reply> replies = new HashMap<>();

    Join(QuestionLog earlier, Report report) {
      this.earlier = earlier;
      this.report = report;
      this.today = report.run().date();
      this.looked = new LookedAt(earlier, report);
      for (Finding finding : report.findings()) current.putIfAbsent(finding.id(), finding);
      this.numbers = new QuestionLog.QuestionNumbers(earlier.lines().values());
    }

    Carry carry() {
      for (QuestionLog.LogLine before : earlier.lines().values()) {
        QuestionLog.LogLine line = before.answeredIn(earlier.since());
        Finding now = current.get(line.finding().id());
        put(now == null ? gone(line) : found(line, now));
      }
      lines.values().forEach(this::share);
      for (Finding finding : report.findings()) {
        boolean fresh = !lines.containsKey(finding.id()) && finding.suppressed().isEmpty();
        if (fresh) put(fresh(finding));
      }
      List<String> remarks = new ArrayList<>(earlier.remarks());
      remarks.addAll(ReplyRemarks.of(lines.values()));
      QuestionLog log =
          new QuestionLog(
              earlier.from(),
              earlier.since(),
              earlier.workbook(),
              looked.leftOut(),
              lines,
              remarks,
              earlier.names());
      return new Carry(withFindings(), log);
    }

    private void share(QuestionLog.LogLine line) {
      numbers.share(line);
      replies.putIfAbsent(line.number(), line.reply());
    }

    private void put(QuestionLog.LogLine line) {
      lines.put(line.finding().id(), line);
    }

    private QuestionLog.LogLine fresh(Finding finding) {
      int number = numbers.of(finding);
      QuestionLog.Reply reply = replies.getOrDefault(number, QuestionLog.Reply.NONE);
      return new QuestionLog.LogLine(
          finding.withState(State.NEW), number, today, today, "", "", "", reply);
    }

    private QuestionLog.LogLine found(QuestionLog.LogLine line, Finding now) {
      boolean back = line.finding().state() == State.RESOLVED;
      List<String> added = added(line, now);
      QuestionLog.LogLine joined =
          new QuestionLog.LogLine(
              now.withState(back ? State.REOPENED : State.OPEN),
              line.number() > 0 ? line.number() : numbers.of(now),
              line.firstSeen().isEmpty() ? today : line.firstSeen(),
              today,
              "",
              "",
              refuted(line, back || !added.isEmpty()),
              line.reply(),
              line.answers());
      return remarked(joined.settled(), back ? line.goneOn() : "", added);
    }

    /** Entries that a finding has spread to since its question was answered or dropped. */
    private static List<String> added(QuestionLog.LogLine line, Finding now) {
      if (!line.isAnswered() && !line.isDropped()) return List.of();
      Set<String> before =
          line.finding().tags().stream().map(Tags::key).collect(Collectors.toSet());
      return now.tags().stream().filter(tag -> !before.contains(Tags.key(tag))).toList();
    }

    /** What a person replied before that settles nothing until it is changed. */
    private static String refuted(QuestionLog.LogLine line, boolean more) {
      QuestionLog.Reply reply = line.reply();
      if (more && (reply.answered() || reply.dropped())) return reply.print();
      return line.isOutdated() ? line.refuted() : "";
    }

    private QuestionLog.LogLine remarked(
        QuestionLog.LogLine line, String goneOn, List<String> added) {
      List<String> words = new ArrayList<>();
      String suppressed = line.finding().suppressed();
      if (!suppressed.isEmpty()) words.add("not reported, by a rule file's wish: " + suppressed);
      if (!goneOn.isEmpty()) words.add("was gone on " + goneOn + ", came back on " + today);
      if (!added.isEmpty())
        words.add("holds for more tiles since " + today + ": " + String.join(", ", added));
      if (line.isOutdated()) words.add(QuestionLog.OUTDATED);
      if (line.isOpen() && line.isDropped()) words.add(QuestionLog.DROPPED);
      return line.withRemark(String.join("; ", words), line.goneOn());
    }

    private QuestionLog.LogLine gone(QuestionLog.LogLine line) {
      Finding finding = line.finding();
      if (finding.state() == State.RESOLVED) return line;
      String unseen = looked.whyNot(finding);
      if (!unseen.isEmpty()) {
        QuestionLog.LogLine open = line.withFinding(finding.withState(State.OPEN)).settled();
        String old = open.isOutdated() ? "; " + QuestionLog.OUTDATED : "";
        return open.withRemark("not checked again on " + today + ": " + unseen + old, "");
      }
      return line.withFinding(finding.withState(State.RESOLVED))
          .withRemark(looked.whyGone(finding), today);
    }

    private Report withFindings() {
      List<Finding> findings = new ArrayList<>();
      for (Finding finding : report.findings()) {
        QuestionLog.LogLine line = lines.get(finding.id());
        findings.add(line == null ? finding : finding.withState(line.finding().state()));
      }
      for (QuestionLog.LogLine line : lines.values()) {
        if (!current.containsKey(line.finding().id())) findings.add(line.finding());
      }
      return new Report(
          report.run().withNames(report.run().names().or(earlier.names())),
          report.documents(),
          report.entries(),
          findings,
          report.verdicts(),
          report.calculations(),
          report.checks(),
          report.reading());
    }
  }
}
