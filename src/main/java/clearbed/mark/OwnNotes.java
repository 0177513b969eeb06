package clearbed.mark;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** The notes that marked copies carry, told from what people wrote beside them. */
public final class OwnNotes {
  /** Stands over notes that were put into a comment of somebody else. */
  public static final String AUTHOR = "Clearbed";

  public static final String QUESTION = "Question: ";
  public static final String ELSEWHERE = "See also: ";

  /** Level, check, tags and state, such as {@code ERROR mortar-class (GT-4), reopened}. */
  private static final Pattern HEADING =
      Pattern.compile("(?:ERROR|WARNING|NOTE) [a-z]+(?:-[a-z0-9]+)*(?: \\(.*\\))?(?:, [a-z]+)?");

  private OwnNotes() {}

  /** True for the first line of a note. */
  public static boolean isHeading(String line) {
    return HEADING.matcher(line.strip()).matches();
  }

  /** The comment without our notes: what others wrote, before, between and behind them. */
  public static String without(String comment) {
    if (comment.lines().noneMatch(OwnNotes::isHeading)) return comment;
    List<String> lines = comment.lines().toList();
    List<String> kept = new ArrayList<>();
    int at = 0;
    while (at < lines.size()) {
      if (isHeading(lines.get(at))) {
        at = end(lines, at);
      } else {
        kept.add(lines.get(at++));
      }
    }
    kept.removeIf(line -> line.strip().equals(AUTHOR + ":"));
    return String.join("\n", kept).strip();
  }

  /** Behind a note: its heading, what is wrong, and perhaps the question and other places. */
  private static int end(List<String> lines, int heading) {
    int at = heading + 1;
    if (at < lines.size() && !lines.get(at).isBlank() && !isHeading(lines.get(at))) at++;
    if (at < lines.size() && lines.get(at).startsWith(QUESTION)) at++;
    if (at < lines.size() && lines.get(at).startsWith(ELSEWHERE)) at++;
    return at;
  }
}
