package clearbed.report.wording;

import clearbed.mark.OwnNotes;

/** Who decides; stands in everything that leaves the program. */
public final class Deferral {
  public static final String LINE = OwnNotes.DEFERRAL;

  private Deferral() {}
}
