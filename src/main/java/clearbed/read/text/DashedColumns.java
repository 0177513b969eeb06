package clearbed.read.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Columns of plain text that a line of dashes shows: {@code ----- ---------- ----}. The lines
 * around it are cut where its dashes begin and drawn with bars between.
 */
final class DashedColumns {
  private static final Pattern DASHES = Pattern.compile("-{2,}");
  private static final Pattern RULER = Pattern.compile("\\s*-{2,}(?:\\s+-{2,}){2,}\\s*");

  private DashedColumns() {}

  /** The same number of lines. */
  static List<String> drawn(List<String> lines) {
    if (lines.stream().noneMatch(l -> RULER.matcher(l).matches())) return lines;
    List<String> out = new ArrayList<>(lines);
    for (int i = 0; i < lines.size(); i++) {
      if (!RULER.matcher(lines.get(i)).matches()) continue;
      int from = i;
      while (from > 0 && !lines.get(from - 1).isBlank()) from--;
      int to = i + 1;
      while (to < lines.size() && !lines.get(to).isBlank()) to++;
      List<Integer> starts = starts(lines.get(i));
      List<String> block = lines.subList(from, to);
      if (block.stream().allMatch(l -> isCut(l, starts)))
        for (int j = from; j < to; j++) out.set(j, cut(lines.get(j), starts));
      i = to - 1;
    }
    return out;
  }

  private static List<Integer> starts(String ruler) {
    List<Integer> out = new ArrayList<>();
    Matcher m = DASHES.matcher(ruler);
    while (m.find()) out.add(m.start());
    return out;
  }

  /** No word of the line reaches over the beginning of a column. */
  private static boolean isCut(String line, List<Integer> starts) {
    return line.indexOf('|') < 0
        && starts.stream()
            .skip(1)
            .allMatch(s -> s > line.length() || Character.isWhitespace(line.charAt(s - 1)));
  }

  /** The line with bars between its columns. */
  static String cut(String line, List<Integer> starts) {
    StringBuilder out = new StringBuilder("|");
    for (int c = 0; c < starts.size(); c++)
      out.append(' ').append(part(line, starts, c)).append(" |");
    return out.toString();
  }

  /** What a line has in a column; the first takes what stands before it, too. */
  static String part(String line, List<Integer> starts, int column) {
    int from = Math.min(line.length(), column == 0 ? 0 : starts.get(column));
    int next = column + 1;
    int to = next < starts.size() ? Math.min(line.length(), starts.get(next)) : line.length();
    return line.substring(from, to).strip();
  }
}
