package clearbed.model;

import java.util.Collections;
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
 * @param lines by finding id, in the order of the earlier workbook and then of the new findings
 * @param remarks what was odd in the earlier workbook and what was done about it, a sentence each
 */
public record QuestionLog(
    String from, String since, byte[] workbook, Map<String, Line> lines, List<String> remarks) {

  public QuestionLog {
    lines = Collections.unmodifiableMap(new LinkedHashMap<>(lines));
    remarks = List.copyOf(remarks);
  }

  /**
   * One finding through the issues. Dates are ISO 8601, empty when there is none.
   *
   * @param finding as last issued, with its state now
   * @param number of its question, from 1 and never given twice; 0 when it asks nothing
   * @param firstSeen date of the issue that first had it
   * @param lastSeen date of the last issue that had it
   * @param goneOn date of the issue in which it went
   * @param remark why it went or stayed, in words; empty when there is nothing to say
   * @param refuted the answer that stood when the finding came back, as {@code status|answer};
   *     empty unless it came back
   * @param reply what people wrote of its question
   */
  public record Line(
      Finding finding,
      int number,
      String firstSeen,
      String lastSeen,
      String goneOn,
      String remark,
      String refuted,
      Reply reply) {}

  /** What people wrote beside a question, as they wrote it. */
  public record Reply(String status, String askedOf, String due, String answer) {
    public static final Reply NONE = new Reply("", "", "", "");

    public boolean answered() {
      return status.strip().equalsIgnoreCase("answered");
    }

    /** Status and answer in one, to see whether either was touched since. */
    public String print() {
      return status.strip() + "|" + answer.strip();
    }
  }

  /** The log of a first issue: everything was first seen today, questions numbered in order. */
  public static QuestionLog first(Report report) {
    Map<String, Line> lines = new LinkedHashMap<>();
    String today = report.run().date();
    int number = 0;
    for (Finding finding : report.findings()) {
      if (!finding.suppressed().isEmpty()) continue;
      int own = finding.question().isBlank() ? 0 : ++number;
      lines.put(finding.id(), new Line(finding, own, today, today, "", "", "", Reply.NONE));
    }
    return new QuestionLog("", "", null, lines, List.of());
  }

  /** True when an earlier workbook is carried on. */
  public boolean carries() {
    return workbook != null;
  }
}
