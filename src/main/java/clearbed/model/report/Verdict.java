package clearbed.model.report;

import clearbed.model.document.Origin;

/**
 * How one check came out for one glass entry; the cell of the coverage matrix.
 *
 * @param found the value that satisfied or failed the check, or why it does not apply
 * @param origin of that value, or null
 */
public record Verdict(String check, String tag, Outcome outcome, String found, Origin origin) {

  /** The ways a check can come out. */
  public enum Outcome {
    SATISFIED,
    FINDING,
    SUPPRESSED,
    NOT_APPLICABLE,
    /**
     * Cannot be judged until another attribute is known; that attribute has a finding of its own.
     */
    UNDECIDED,
    /** Not stated in what was read; words that were not understood might state it. */
    UNREAD
  }
}
