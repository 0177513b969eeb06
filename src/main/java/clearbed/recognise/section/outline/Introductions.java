package clearbed.recognise.section.outline;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.stream.Collectors;

/** Short lines over lists, as one goes through a text: "Coverage:", "A. Bond in shear:". */
final class Introductions {
  private static final int LONGEST = 60;

  /** Articles and what is over them end every list. */
  private static final int ARTICLE = 1;

  private record RankedLine(int rank, String words) {}

  private final Deque<RankedLine> open = new ArrayDeque<>();

  /**
   * Goes on to a line.
   *
   * @return what stands over it, without its colon; empty where it is no item of a list
   */
  String next(Outline.Label label) {
    boolean item = !label.number().isEmpty() && label.rank() > ARTICLE;
    if (!item) open.clear();
    while (!open.isEmpty() && open.peekLast().rank() >= label.rank()) open.removeLast();
    String over = open.stream().map(RankedLine::words).collect(Collectors.joining(": "));
    String words = label.rest().strip();
    if (words.endsWith(":") && words.length() <= LONGEST)
      open.addLast(
          new RankedLine(item ? label.rank() : ARTICLE, words.substring(0, words.length() - 1)));
    return over;
  }
}
