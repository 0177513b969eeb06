package clearbed.report;

import clearbed.base.DisplayText;
import clearbed.mark.OwnOutput;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Document.Status;
import clearbed.model.report.Report.DocumentSummary;
import clearbed.report.wording.Phrasing;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** What a batch held that was not read, or not read to its end: one line for each kind. */
public final class LeftOut {
  /** With less room for names, where to look further is not said. */
  private static final int LEAST = 16;

  private LeftOut() {}

  /**
   * The lines, none wider than the terminal; none where everything was read. Unreadable documents
   * are not among them, as each has a line of its own.
   *
   * @param more where the rest can be looked up, in words
   * @param width of the terminal in characters
   */
  public static List<String> lines(List<DocumentSummary> documents, String more, int width) {
    List<String> lines = new ArrayList<>();
    List<DocumentSummary> ignored = where(documents, d -> d.status() == Status.IGNORED);
    files(lines, "Not read (ignored): ", where(ignored, d -> !isOwn(d)), width);
    List<DocumentSummary> own = where(ignored, LeftOut::isOwn);
    String outputs = "Not read, " + Phrasing.count(own.size(), "own output") + ": ";
    if (!own.isEmpty()) lines.add(named(outputs, own, "", width));
    List<DocumentSummary> partly = where(documents, d -> d.status() == Status.PARTLY);
    String head = "Partly read: " + Phrasing.count(partly.size(), "document") + ": ";
    if (!partly.isEmpty()) lines.add(named(head, partly, "; " + more, width));
    List<DocumentSummary> struck = where(documents, d -> voided(d) > 0);
    int places = struck.stream().mapToInt(LeftOut::voided).sum();
    head = "Struck through or deleted, not in force: " + Phrasing.count(places, "place") + " in ";
    if (!struck.isEmpty()) lines.add(named(head, struck, "; " + more, width));
    return lines;
  }

  private static List<DocumentSummary> where(
      List<DocumentSummary> documents, Predicate<DocumentSummary> test) {
    return documents.stream().filter(test).toList();
  }

  private static boolean isOwn(DocumentSummary document) {
    return document.reason().startsWith(OwnOutput.NOT_READ)
        || document.reason().startsWith("written by this run");
  }

  private static int voided(DocumentSummary document) {
    return (int)
        document.skipped().stream().filter(gap -> gap.fate() == GapFate.NOT_IN_FORCE).count();
  }

  private static void files(
      List<String> lines, String head, List<DocumentSummary> files, int width) {
    String counted = head + Phrasing.count(files.size(), "file") + ": ";
    if (!files.isEmpty()) lines.add(named(counted, files, "", width));
  }

  /** As many names as there is room for, at least a part of one, and how many there are besides. */
  private static String named(
      String head, List<DocumentSummary> documents, String tail, int width) {
    boolean tight = width - head.length() - tail.length() < LEAST;
    int room = width - head.length() - (tight ? 0 : tail.length());
    StringBuilder names = new StringBuilder();
    for (int i = 0; i < documents.size(); i++) {
      String name = DisplayText.path(documents.get(i).path());
      int left = documents.size() - i;
      String rest = " and " + left + " more";
      int needed = names.length() + 2 + name.length() + (left > 1 ? rest.length() : 0);
      if (i > 0 && needed > room) {
        names.append(rest);
        break;
      }
      names.append(i > 0 ? ", " : "").append(cut(name, left > 1 ? room - rest.length() : room));
    }
    return cut(head + names + (tight ? "" : tail), width);
  }

  private static String cut(String text, int room) {
    if (text.length() <= room) return text;
    int end = Math.max(0, room - 1);
    if (end > 0 && Character.isHighSurrogate(text.charAt(end - 1))) end--;
    return text.substring(0, end) + "\u2026";
  }
}
