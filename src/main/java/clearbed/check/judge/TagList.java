package clearbed.check.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tags in a sentence: those that follow each other as a range, so that none goes unnamed. */
final class TagList {
  private static final Pattern NUMBERED = Pattern.compile("(.*?)(\\d{1,6})");

  /** Shorter ones are listed. */
  private static final int LEAST_RANGE = 3;

  /** More than this nobody reads in a sentence; the column of tags has them all. */
  private static final int MOST = 12;

  private TagList() {}

  /** {@code GT-1}, {@code GT-1 and GT-4}, {@code GT-1 to GT-8 and GT-10}. */
  static String words(List<String> tags) {
    List<String> parts = parts(tags);
    if (parts.size() == 1) return parts.get(0);
    if (parts.size() > MOST) {
      String named = String.join(", ", parts.subList(0, MOST - 1));
      return named + " and others, " + tags.size() + " in all";
    }
    String last = parts.get(parts.size() - 1);
    return String.join(", ", parts.subList(0, parts.size() - 1)) + " and " + last;
  }

  private static List<String> parts(List<String> tags) {
    List<String> parts = new ArrayList<>();
    int from = 0;
    while (from < tags.size()) {
      int to = from;
      while (to + 1 < tags.size() && follows(tags.get(to), tags.get(to + 1))) to++;
      boolean range = to - from + 1 >= LEAST_RANGE;
      if (range) parts.add(tags.get(from) + " to " + tags.get(to));
      else parts.addAll(tags.subList(from, to + 1));
      from = to + 1;
    }
    return parts;
  }

  private static boolean follows(String one, String next) {
    Matcher first = NUMBERED.matcher(one);
    Matcher second = NUMBERED.matcher(next);
    return first.matches()
        && second.matches()
        && first.group(1).equals(second.group(1))
        && first.group(2).length() <= second.group(2).length()
        && Integer.parseInt(first.group(2)) + 1 == Integer.parseInt(second.group(2));
  }
}
