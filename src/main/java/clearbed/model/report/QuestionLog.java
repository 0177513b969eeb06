package clearbed.model.report;

import java.util.Collection;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What has become of every finding from issue to issue, and the earlier workbook that people wrote
 * in.
 *
 * @param from file name of the earlier workbook; empty for a first issue
 * @param since date of the earlier issue, ISO 8601; empty for a first issue
 * @param workbook bytes of the earlier workbook as they were read, or null for a first issue
 * @param documents paths of documents that earlier issues had; of a log that is joined with a run,
 *     of those that are missing from it
 * @param lines by finding id, in the order of the earlier workbook and then of the new findings
 * @param remarks what was odd in the earlier workbook and what was done about it, a sentence each
 * @param names of the project and its people, as the earlier workbook has them
 */
public record QuestionLog(
    String from,
    String since,
    byte[] workbook,
    List<String> documents,
    Map<String, LogLine> lines,
    List<String> remarks,
    ProjectNames names) {

  /** Ends every remark on a reply that counts no more. */
  public static final String SETTLES_NOTHING =
      "settles nothing until its status or answer is changed";

  /** Remark on a finding that came back, or spread to more entries, after a reply. */
  public static final String OUTDATED = "the reply from before that " + SETTLES_NOTHING;

  /** Remark on an open finding whose question was withdrawn. */
  public static final String DROPPED = "its question was dropped; the finding stays open";

  public QuestionLog {
    documents = List.copyOf(documents);
    lines = Collections.unmodifiableMap(new LinkedHashMap<>(lines));
    remarks = List.copyOf(remarks);
  }

  public QuestionLog(
      String from,
      String since,
      byte[] workbook,
      List<String> documents,
      Map<String, LogLine> lines,
      List<String> remarks) {
    this(from, since, workbook, documents, lines, remarks, ProjectNames.NONE);
  }

  /**
   * One finding through the issues. Dates are ISO 8601, empty when there is none.
   *
   * @param finding as last issued, with its state then
   * @param number of its question, from 1, kept for life and shared by findings of one cause alone;
   *     0 when it asks nothing
   * @param firstSeen date of the issue that first had it
   * @param lastSeen date of the last issue that had it
   * @param goneOn date of the issue in which it went
   * @param remark why it went or stayed, in words; empty when there is nothing to say
   * @param refuted the reply that stood when the finding came back or spread to more entries, as
   *     {@code status|answer}; empty where it did neither after a reply, or once that was changed
   * @param reply what people wrote of its question
   * @param answers of the issues so far, each {@code date: words}, a line or more; may be empty
   */
  public record LogLine(
      Finding finding,
      int number,
      String firstSeen,
      String lastSeen,
      String goneOn,
      String remark,
      String refuted,
      Reply reply,
      String answers) {

    public LogLine(
        Finding finding,
        int number,
        String firstSeen,
        String lastSeen,
        String goneOn,
        String remark,
        String refuted,
        Reply reply) {
      this(finding, number, firstSeen, lastSeen, goneOn, remark, refuted, reply, "");
    }

    /**
     * Where the finding stands, by the one definition (src/site/question-log.md): what the
     * documents say goes first, then what people replied since.
     */
    public State state() {
      State found = finding.state();
      if (found == State.RESOLVED) return found;
      if (isAnswered()) return State.ANSWERED;
      return found == State.ANSWERED ? State.OPEN : found;
    }

    /** True while somebody still has to act. */
    public boolean isOpen() {
      return finding.suppressed().isEmpty() && state().isOpen();
    }

    /** True when the question is open and nobody has withdrawn it. */
    public boolean isAsked() {
      return isOpen() && !isDropped();
    }

    public boolean isAnswered() {
      return reply.answered() && !isOutdated();
    }

    /** True when the question was withdrawn; its finding stays as open as it is. */
    public boolean isDropped() {
      return reply.dropped() && !isOutdated();
    }

    /**
     * True when the reply settles nothing: it stood before the finding came back or spread to more
     * entries, and neither status nor answer was changed since.
     */
    public boolean isOutdated() {
      return !refuted.isEmpty() && reply.print().equals(refuted);
    }

    /** The same with the state that its reply gives it. */
    public LogLine settled() {
      return withFinding(finding.withState(state()));
    }

    public LogLine withFinding(Finding now) {
      return new LogLine(now, number, firstSeen, lastSeen, goneOn, remark, refuted, reply, answers);
    }

    public LogLine withRemark(String words, String gone) {
      return new LogLine(
          finding, number, firstSeen, lastSeen, gone, words, refuted, reply, answers);
    }

    public LogLine withReply(Reply now) {
      return new LogLine(
          finding, number, firstSeen, lastSeen, goneOn, remark, refuted, now, answers);
    }

    public LogLine withAnswers(String now) {
      return new LogLine(finding, number, firstSeen, lastSeen, goneOn, remark, refuted, reply, now);
    }

    /**
     * The same with its answer among those of the issues so far, unless it is the last of them.
     *
     * @param issue date of the issue in whose workbook it was written; may be empty
     */
    public LogLine answeredIn(String issue) {
      String answer = reply.answer().strip();
      String said = issue.isEmpty() ? answer : issue + ": " + answer;
      boolean known = answer.isEmpty() || answers.equals(answer) || answers.endsWith(": " + answer);
      return known ? this : withAnswers(answers.isEmpty() ? said : answers + "\n" + said);
    }
  }

  /** What people wrote beside a question, as they wrote it; asked and due are dates. */
  public record Reply(String status, String askedOf, String asked, String due, String answer) {
    public static final Reply NONE = new Reply("", "", "", "", "");

    /** Words that people may set in the column Status; any other leaves the question open. */
    public static final List<String> STATUS = List.of("to ask", "asked", "answered", "dropped");

    public boolean answered() {
      return is("answered");
    }

    public boolean dropped() {
      return is("dropped");
    }

    /** True for a status that is none of the words that mean something. */
    public boolean isStrange() {
      return !status.isBlank() && STATUS.stream().noneMatch(this::is);
    }

    private boolean is(String word) {
      return status.strip().equalsIgnoreCase(word);
    }

    /** True while nothing says that the question was put to anybody or settled. */
    boolean isUntouched() {
      return (status.isBlank() || is("to ask")) && asked.isBlank() && answer.isBlank();
    }

    /** Status and answer in one, to see whether either was touched since. */
    public String print() {
      return status.strip() + "|" + answer.strip();
    }
  }

  /** The log of a first issue: everything was first seen today, questions numbered in order. */
  public static QuestionLog first(Report report) {
    Map<String, LogLine> lines = new LinkedHashMap<>();
    String today = report.run().date();
    QuestionNumbers numbers = new QuestionNumbers(List.of());
    for (Finding finding : report.findings()) {
      if (!finding.suppressed().isEmpty()) continue;
      int own = numbers.of(finding);
      lines.put(finding.id(), new LogLine(finding, own, today, today, "", "", "", Reply.NONE));
    }
    return new QuestionLog("", "", null, List.of(), lines, List.of());
  }

  /** Gives questions their numbers: one to all findings of one cause. */
  public static final class QuestionNumbers {
    private final Map<String, Integer> ofCauses = new HashMap<>();
    private int last;

    /**
     * @param before lines of earlier issues, whose numbers are never given again
     */
    public QuestionNumbers(Collection<LogLine> before) {
      for (LogLine line : before) last = Math.max(last, line.number());
    }

    /**
     * Lets new findings of the same cause share the number of a line that is open and that nobody
     * was asked about: who was asked or answered spoke of the entries it had then.
     */
    public void share(LogLine line) {
      boolean free = line.isOpen() && line.reply().isUntouched() && line.answers().isEmpty();
      if (line.number() > 0 && free) put(line.finding(), line.number());
    }

    /** The number of a finding's question; 0 when it asks nothing. */
    public int of(Finding finding) {
      if (finding.question().isBlank()) return 0;
      Integer shared = ofCauses.get(finding.cause());
      if (shared != null) return shared;
      put(finding, ++last);
      return last;
    }

    private void put(Finding finding, int number) {
      if (!finding.cause().isEmpty()) ofCauses.putIfAbsent(finding.cause(), number);
    }
  }

  /** True when an earlier workbook is carried on. */
  public boolean carries() {
    return workbook != null;
  }
}
