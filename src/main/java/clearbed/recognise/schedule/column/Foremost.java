package clearbed.recognise.schedule.column;

import java.util.HashMap;
import java.util.Map;

/** The highest score that any column has for each meaning, and the highest of all others. */
final class Foremost {
  private static final class Two {
    int column = -1;
    double first = Double.NEGATIVE_INFINITY;
    double second = Double.NEGATIVE_INFINITY;

    void add(int of, double score) {
      if (of == column) {
        first = Math.max(first, score);
      } else if (score > first) {
        second = first;
        first = score;
        column = of;
      } else {
        second = Math.max(second, score);
      }
    }
  }

  private final Map<String, Two> byMeaning = new HashMap<>();

  void add(String meaning, int column, double score) {
    byMeaning.computeIfAbsent(meaning, any -> new Two()).add(column, score);
  }

  /** Of the columns but for one; negative infinity where there is none. */
  double beside(String meaning, int column) {
    Two two = byMeaning.get(meaning);
    if (two == null) return Double.NEGATIVE_INFINITY;
    return two.column == column ? two.second : two.first;
  }
}
