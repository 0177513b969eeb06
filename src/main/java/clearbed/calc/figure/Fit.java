package clearbed.calc.figure;

import java.util.List;
import java.util.function.Predicate;

/** How what is stated compares with what is needed. */
public enum Fit {
  MEETS("enough"),
  FALLS_SHORT("not enough"),
  /** Enough at one end of a range or for one value of an unknown, not at the other. */
  DEPENDS("enough only in part of the range"),
  /** The figure to be judged is not stated. */
  UNKNOWN("not stated");

  private final String words;

  Fit(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  public static <T> Fit of(List<T> cases, Predicate<T> meets) {
    long met = cases.stream().filter(meets).count();
    if (met == cases.size()) return MEETS;
    return met == 0 ? FALLS_SHORT : DEPENDS;
  }

  static Fit of(boolean meets) {
    return meets ? MEETS : FALLS_SHORT;
  }
}
