package clearbed.model.report;

import java.util.Locale;

/** How bad a finding is (the words of SARIF 2.1.0, section 3.27.10), worst first. */
public enum Level {
  ERROR,
  WARNING,
  NOTE;

  /** As written in files: lower case. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  public boolean atLeast(Level other) {
    return compareTo(other) <= 0;
  }
}
