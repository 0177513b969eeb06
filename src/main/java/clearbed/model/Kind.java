package clearbed.model;

import java.util.Locale;

/** What is wrong. */
public enum Kind {
  MISSING,
  INADEQUATE,
  INCOMPATIBLE,
  CONFLICTING,
  UNRESOLVED,
  UNREADABLE;

  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }
}
