package clearbed.report.workbook;

import clearbed.model.report.Verdict;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Of the verdicts on a tile by one check, the one that a table has room for. */
final class WorstVerdicts {
  private WorstVerdicts() {}

  /**
   * By tag, for each check the ordinal of its verdict from 1, of several the worst; 0 for none. Of
   * a long schedule the verdicts together are too many to hold.
   */
  static Map<String, int[]> of(List<Verdict> verdicts, List<String> checks) {
    Map<String, Integer> columns = new HashMap<>();
    for (String check : checks) columns.put(check, columns.size());
    Map<String, int[]> table = new HashMap<>();
    for (int i = 0; i < verdicts.size(); i++) {
      Verdict verdict = verdicts.get(i);
      Integer column = columns.get(verdict.check());
      if (column == null) continue;
      int[] own = table.computeIfAbsent(verdict.tag(), tag -> new int[checks.size()]);
      boolean worst = own[column] == 0 || rank(verdict) < rank(verdicts.get(own[column] - 1));
      if (worst) own[column] = i + 1;
    }
    return table;
  }

  private static int rank(Verdict verdict) {
    return switch (verdict.outcome()) {
      case FINDING -> 0;
      case UNREAD -> 1;
      case UNDECIDED -> 2;
      case SUPPRESSED -> 3;
      case SATISFIED -> 4;
      case NOT_APPLICABLE -> 5;
    };
  }
}
