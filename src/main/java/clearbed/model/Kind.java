package clearbed.model;

/** What is wrong. */
public enum Kind {
  MISSING,
  INADEQUATE,
  INCOMPATIBLE,
  CONFLICTING,
  UNRESOLVED,
  UNREADABLE;

  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT);
  }
}
