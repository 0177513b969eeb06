package clearbed.model.report;

import java.util.Locale;

/** Where a finding stands from issue to issue. */
public enum State {
  NEW,
  OPEN,
  ANSWERED,
  RESOLVED,
  REOPENED;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** True while somebody still has to act. */
  public boolean isOpen() {
    return this == NEW || this == OPEN || this == REOPENED;
  }
}
