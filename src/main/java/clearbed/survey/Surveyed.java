package clearbed.survey;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.ReadingAccount;
import clearbed.model.value.Value;
import java.util.List;

/**
 * What a survey keeps of one project.
 *
 * @param name its path below the archive, {@code /} as separator; {@code .} for the archive itself
 * @param reason why it was not checked; empty where it was
 * @param ruleSet by which it was checked, and {@code digest} of it, SHA-256 in hexadecimal
 * @param findings worst first; suppressed ones included, marked
 * @param entries glass tile entries with all that was read of them
 * @param unread words that were not understood
 * @param setAside what was set aside, and why
 * @param right words that satisfied a check
 */
public record Surveyed(
    String name,
    SurveyStatus status,
    String reason,
    String ruleSet,
    String digest,
    List<DocumentRow> documents,
    List<FindingRow> findings,
    List<EntryRow> entries,
    List<ReadingAccount.WordsNotUnderstood> unread,
    List<Account.SetAside> setAside,
    List<CheckRow> checks,
    List<RightWords> right) {
  public Surveyed {
    documents = List.copyOf(documents);
    findings = List.copyOf(findings);
    entries = List.copyOf(entries);
    unread = List.copyOf(unread);
    setAside = List.copyOf(setAside);
    checks = List.copyOf(checks);
    right = List.copyOf(right);
  }

  /** Whether there is anything to say of a project. */
  public enum SurveyStatus {
    CHECKED("checked"),
    NOTHING_TO_READ("nothing to read"),
    NOT_CHECKED("not checked");

    private final String words;

    SurveyStatus(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  /**
   * @param section the one section number that stands in the document; empty for none or several
   */
  public record DocumentRow(
      String path, String format, Document.Status status, String reason, String section) {}

  /**
   * @param section the one section number that stands in the document it points to, or empty
   */
  public record FindingRow(Finding finding, String section) {}

  /**
   * @param values in the order of their attributes, the governing first
   */
  public record EntryRow(String tag, String evidence, Origin origin, List<Value> values) {
    public EntryRow {
      values = List.copyOf(values);
    }
  }

  /** How a check came out in a project; the worst of its tiles. */
  public enum CheckResult {
    /** A finding that is more than words not understood. */
    FAILS,
    /** Nothing but words that were not understood stands against it. */
    UNREAD,
    SATISFIED,
    /** Every finding of it was suppressed by a rule file. */
    SUPPRESSED,
    /** It waits for what another check asks. */
    UNDECIDED,
    NOT_APPLICABLE
  }

  public record CheckRow(String check, String title, Level level, CheckResult result) {}

  /**
   * @param tag of the tile that the words satisfied the check for
   */
  public record RightWords(String check, String tag, String words, Origin origin) {}

  /** A project of which there is nothing but why. */
  static Surveyed without(
      String name, SurveyStatus status, String reason, List<DocumentRow> documents) {
    return new Surveyed(
        name, status, reason, "", "", documents, List.of(), List.of(), List.of(), List.of(),
        List.of(), List.of());
  }

  /** A project that could not be checked. */
  public static Surveyed notChecked(String name, String why) {
    return without(name, SurveyStatus.NOT_CHECKED, why, List.of());
  }

  /** Findings that somebody has to act on, the worst first. */
  public List<Finding> open() {
    return findings.stream().map(FindingRow::finding).filter(Finding::isOpen).toList();
  }

  /** True when another run would come to the same: nothing was wanting but the documents. */
  public boolean isLasting() {
    return status == SurveyStatus.CHECKED
        && documents.stream().noneMatch(d -> d.status() == Document.Status.UNREADABLE);
  }
}
