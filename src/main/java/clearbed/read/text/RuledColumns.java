package clearbed.read.text;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.regex.Pattern;

/**
 * Tables of plain text with a line across below their headings, whose columns stand at the same
 * places in every line and may be two blanks apart. They are drawn with bars between, as tables
 * under {@link DashedColumns} are.
 */
final class RuledColumns {
  private static final Pattern RULE = Pattern.compile("\\s*[-=_\u2500\u2501]{20,}\\s*");

  /** Fewer may stand beside one another by chance. */
  private static final int FEWEST_COLUMNS = 4;

  private static final int FEWEST_ROWS = 3;
  private static final int MOST_HEADINGS = 3;

  /** Blanks between two columns. */
  private static final int APART = 2;

  private RuledColumns() {}

  /** The same number of lines. */
  static List<String> drawn(List<String> lines) {
    if (lines.stream().noneMatch(l -> RULE.matcher(l).matches())) return lines;
    List<String> out = new ArrayList<>(lines);
    for (int i = 1; i < lines.size(); i++) {
      if (!RULE.matcher(lines.get(i)).matches()) continue;
      int from = i;
      while (from > 0 && i - from < MOST_HEADINGS && isRow(lines.get(from - 1))) from--;
      int to = i + 1;
      while (to < lines.size() && isRow(lines.get(to))) to++;
      if (from == i || to - i - 1 < FEWEST_ROWS) continue;
      List<String> rows = new ArrayList<>(lines.subList(from, i));
      rows.addAll(lines.subList(i + 1, to));
      List<Integer> starts = starts(rows);
      if (starts.size() < FEWEST_COLUMNS || !areWhole(lines.subList(i + 1, to), starts)) continue;
      for (int k = from; k < to; k++)
        out.set(
            k,
            k == i ? "|" + "---|".repeat(starts.size()) : DashedColumns.cut(lines.get(k), starts));
      i = to - 1;
    }
    return out;
  }

  private static boolean isRow(String line) {
    return !line.isBlank() && line.indexOf('|') < 0 && !RULE.matcher(line).matches();
  }

  /** Places behind blanks that run down through all lines. */
  private static List<Integer> starts(List<String> rows) {
    BitSet filled = new BitSet();
    for (String row : rows)
      for (int k = 0; k < row.length(); k++) if (row.charAt(k) != ' ') filled.set(k);
    List<Integer> out = new ArrayList<>();
    int blank = APART;
    for (int k = 0; k < filled.length(); k++) {
      if (filled.get(k) && blank >= APART) out.add(k);
      blank = filled.get(k) ? 0 : blank + 1;
    }
    return out;
  }

  /** No row is the rest of another: each has words in its first column and in most others. */
  private static boolean areWhole(List<String> rows, List<Integer> starts) {
    for (String row : rows) {
      int words = 0;
      for (int c = 0; c < starts.size(); c++) {
        boolean filled = !DashedColumns.part(row, starts, c).isEmpty();
        if (c == 0 && !filled) return false;
        if (filled) words++;
      }
      if (words * 2 < starts.size()) return false;
    }
    return true;
  }
}
