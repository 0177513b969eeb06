package clearbed.model.report;

import java.util.Locale;

/** What is wrong. */
public enum FindingKind {
  MISSING,
  INADEQUATE,
  INCOMPATIBLE,
  CONFLICTING,
  UNRESOLVED,
  /** Stated perhaps, and not understood. */
  UNREAD,
  UNREADABLE;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
