package clearbed.model;

/** What is wrong. */
public enum Kind {
  MISSING,
  INADEQUATE,
  INCOMPATIBLE,
  CONFLICTING,
  UNRESOLVED,
  /** Stated, it seems, but not understood. */
  UNREAD,
  UNREADABLE;

  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
