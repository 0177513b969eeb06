package clearbed.read.text;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Notes that count up by bare numbers, as drawings have them: {@code 4 GT-1 wraps the lip}. The
 * numbers go up by one, their words begin in one column, and what is between begins no farther
 * left.
 */
final class HangingNumbers {
  private static final Pattern COUNTED = Pattern.compile("(\\s{0,8})(\\d{1,3})(\\s{1,6})\\S.*");

  /** Fewer numbers might be figures that a line was wrapped before. */
  private static final int FEWEST = 3;

  private record NumberedLine(int line, int number, int words) {}

  private HangingNumbers() {}

  /** Of each line, whether such a note begins with it. */
  static boolean[] in(List<String> lines) {
    boolean[] out = new boolean[lines.size()];
    List<NumberedLine> list = new ArrayList<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      if (line.isBlank()) continue;
      NumberedLine mark = mark(line, i);
      NumberedLine last = list.isEmpty() ? null : list.get(list.size() - 1);
      if (mark != null && last != null && follows(mark, last)) {
        list.add(mark);
        continue;
      }
      boolean within = last != null && TextBlocks.indent(line) >= last.words() - 1;
      if (within) continue;
      note(list, out);
      list.clear();
      if (mark != null && mark.number() == 1) list.add(mark);
    }
    note(list, out);
    return out;
  }

  private static void note(List<NumberedLine> list, boolean[] out) {
    if (list.size() >= FEWEST) for (NumberedLine mark : list) out[mark.line()] = true;
  }

  private static boolean follows(NumberedLine mark, NumberedLine last) {
    return mark.number() == last.number() + 1 && Math.abs(mark.words() - last.words()) <= 1;
  }

  private static NumberedLine mark(String line, int at) {
    Matcher m = COUNTED.matcher(line);
    return m.matches()
        ? new NumberedLine(at, Integer.parseInt(m.group(2)), m.start(3) + m.group(3).length())
        : null;
  }
}
