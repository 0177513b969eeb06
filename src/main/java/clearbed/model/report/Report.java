package clearbed.model.report;

import clearbed.model.document.Document;
import clearbed.model.document.ThinList;
import clearbed.model.value.Entry;
import java.util.List;

/**
 * All that one run came to, ready to be written in any form.
 *
 * @param findings worst first, then by check, tag and place; suppressed ones included, marked
 */
public record Report(
    RunDetails run,
    List<DocumentSummary> documents,
    List<Entry> entries,
    List<Finding> findings,
    List<Verdict> verdicts,
    List<Calculation> calculations,
    List<CheckInfo> checks,
    ReadingAccount reading) {
  public Report {
    documents = List.copyOf(documents);
    entries = List.copyOf(entries);
    findings = List.copyOf(findings);
    verdicts = ThinList.copyOf(verdicts);
    calculations = ThinList.copyOf(calculations);
    checks = List.copyOf(checks);
  }

  public Report(
      RunDetails run,
      List<DocumentSummary> documents,
      List<Entry> entries,
      List<Finding> findings,
      List<Verdict> verdicts,
      List<Calculation> calculations,
      List<CheckInfo> checks) {
    this(run, documents, entries, findings, verdicts, calculations, checks, ReadingAccount.NOTHING);
  }

  /**
   * @param startedAt ISO 8601 instant
   * @param date of the issue under review, ISO 8601; what the workbook shows and dates by
   * @param layers rule files laid over the set, in order
   * @param facts project facts given by those layers, in words
   * @param chosen why this rule set, where the documents decided; empty where the user did
   * @param names of the project and of who writes to whom
   * @param changes what those layers change of the checks, in words
   * @param idle suppressions that hit no finding, in words
   * @param waited for documents that met their limit of time
   */
  public record RunDetails(
      String tool,
      String version,
      String ruleSet,
      String ruleSetDigest,
      String startedAt,
      String date,
      List<String> layers,
      List<String> facts,
      String chosen,
      ProjectNames names,
      List<String> changes,
      List<String> idle,
      Waited waited) {
    public RunDetails {
      layers = List.copyOf(layers);
      facts = List.copyOf(facts);
      changes = List.copyOf(changes);
      idle = List.copyOf(idle);
    }

    /** The rule set, and why it where the documents decided. */
    public String ruleSetWithReason() {
      return chosen.isEmpty() ? ruleSet : ruleSet + " (" + chosen + ")";
    }

    public RunDetails withNames(ProjectNames now) {
      return new RunDetails(
          tool,
          version,
          ruleSet,
          ruleSetDigest,
          startedAt,
          date,
          layers,
          facts,
          chosen,
          now,
          changes,
          idle,
          waited);
    }
  }

  /**
   * @param times that the limit was met
   * @param seconds on the clock, of all jobs together
   */
  public record Waited(int times, long seconds) {
    public static final Waited NEVER = new Waited(0, 0);
  }

  /**
   * @param skipped rows and cells passed over, with the reason
   */
  public record DocumentSummary(
      String path,
      String format,
      Document.Status status,
      String reason,
      int glassEntries,
      int otherEntries,
      List<Document.Gap> skipped) {}

  /** A check as a reader needs it beside the findings. */
  public record CheckInfo(
      String id, String title, String attribute, Level level, String source, boolean on) {}
}
