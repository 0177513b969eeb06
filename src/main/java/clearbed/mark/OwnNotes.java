package clearbed.mark;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** The notes that marked copies carry, told from what people wrote beside them. */
public final class OwnNotes {
  /** Stands over notes that were put into a comment of somebody else. */
  public static final String AUTHOR = "Clearbed";

  private static final String SIGNATURE = AUTHOR + ":";

  public static final String QUESTION = "Question: ";
  public static final String ELSEWHERE = "See also: ";

  /** Stands last in the first note of a document. */
  public static final String DEFERRAL =
      "Not a design. Codes, the makers' written instructions and the licensed professional decide;"
          + " check figures against the edition specified.";

  /** Level, check, tags and state, such as {@code ERROR mortar-class (GT-4), reopened}. */
  private static final Pattern HEADING =
      Pattern.compile("(?:ERROR|WARNING|NOTE) [a-z]+(?:-[a-z0-9]+)*(?: \\(.*\\))?(?:, [a-z]+)?");

  private OwnNotes() {}

  private static boolean isHeading(String line) {
    return HEADING.matcher(line.strip()).matches();
  }

  /**
   * A comment with its author over it where it holds notes of this program, as over notes that were
   * put into a comment of somebody else.
   *
   * @param author may be null
   */
  public static String signed(String comment, String author) {
    boolean ours = AUTHOR.equals(author) && comment.lines().anyMatch(OwnNotes::isHeading);
    return ours ? SIGNATURE + "\n" + comment : comment;
  }

  /** The signed comment without our notes: what others wrote before, between and behind them. */
  public static String without(String comment) {
    List<String> lines = comment.lines().toList();
    if (lines.stream().noneMatch(OwnNotes::isHeading)) return comment;
    List<String> kept = new ArrayList<>();
    boolean signed = false;
    int at = 0;
    while (at < lines.size()) {
      boolean signature = isSignature(lines, at);
      signed |= signature;
      if (isNote(lines, at, signed)) at = end(lines, at);
      else if (signature) at++;
      else kept.add(lines.get(at++));
    }
    return String.join("\n", kept).strip();
  }

  /**
   * A heading under our signature, or one that goes on as ours do: some programs drop the authors
   * of comments.
   */
  private static boolean isNote(List<String> lines, int at, boolean signed) {
    if (!isHeading(lines.get(at))) return false;
    String third = at + 2 < lines.size() ? lines.get(at + 2) : "";
    return signed
        || third.startsWith(QUESTION)
        || third.startsWith(ELSEWHERE)
        || third.strip().equals(DEFERRAL);
  }

  /** Over a note, that is; anybody may write that word. */
  private static boolean isSignature(List<String> lines, int at) {
    return lines.get(at).strip().equals(SIGNATURE)
        && at + 1 < lines.size()
        && isHeading(lines.get(at + 1));
  }

  /** Behind a note: its heading, what is wrong, and perhaps the question and other places. */
  private static int end(List<String> lines, int heading) {
    int at = heading + 1;
    if (at < lines.size() && !lines.get(at).isBlank() && !isHeading(lines.get(at))) at++;
    if (at < lines.size() && lines.get(at).startsWith(QUESTION)) at++;
    if (at < lines.size() && lines.get(at).startsWith(ELSEWHERE)) at++;
    if (at < lines.size() && lines.get(at).strip().equals(DEFERRAL)) at++;
    return at;
  }
}
