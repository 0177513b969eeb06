package clearbed.report;

import clearbed.mark.OwnOutput;
import clearbed.model.Document.Fate;
import clearbed.model.Document.Status;
import clearbed.model.OneLine;
import clearbed.model.Report.DocumentSummary;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/** What a batch held that was not read, or not read to its end: one line for each kind. */
public final class LeftOut {
  /** Of the width: names beyond it are counted. */
  private static final int MOST_LINES = 2;

  private LeftOut() {}

  /**
   * The lines, each of at most two widths; none where everything was read. Unreadable documents are
   * not among them, as each has a line of its own.
   *
   * @param more where the rest can be looked up, in words
   * @param width of the terminal in characters
   */
  public static List<String> lines(List<DocumentSummary> documents, String more, int width) {
    List<String> lines = new ArrayList<>();
    List<DocumentSummary> ignored = where(documents, d -> d.status() == Status.IGNORED);
    files(lines, "Not read (ignored): ", where(ignored, d -> !isOwn(d)), width);
    List<DocumentSummary> own = where(ignored, LeftOut::isOwn);
    String outputs = "Not read, " + Words.count(own.size(), "own output") + ": ";
    if (!own.isEmpty()) lines.add(named(outputs, own, "", width));
    List<DocumentSummary> partly = where(documents, d -> d.status() == Status.PARTLY);
    String head = "Partly read: " + Words.count(partly.size(), "document") + ": ";
    if (!partly.isEmpty()) lines.add(named(head, partly, "; " + more, width));
    List<DocumentSummary> struck = where(documents, d -> voided(d) > 0);
    int places = struck.stream().mapToInt(LeftOut::voided).sum();
    head = "Struck through or deleted, not in force: " + Words.count(places, "place") + " in ";
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
    return (int) document.skipped().stream().filter(gap -> gap.fate() == Fate.NOT_IN_FORCE).count();
  }

  private static void files(
      List<String> lines, String head, List<DocumentSummary> files, int width) {
    String counted = head + Words.count(files.size(), "file") + ": ";
    if (!files.isEmpty()) lines.add(named(counted, files, "", width));
  }

  /** As many names as there is room for, at least one, and how many there are besides. */
  private static String named(
      String head, List<DocumentSummary> documents, String tail, int width) {
    StringBuilder line = new StringBuilder(head);
    for (int i = 0; i < documents.size(); i++) {
      String name = OneLine.path(documents.get(i).path());
      String rest = " and " + (documents.size() - i) + " more";
      int room = MOST_LINES * width - tail.length() - rest.length();
      if (i > 0 && line.length() + 2 + name.length() > room) return line + rest + tail;
      line.append(i > 0 ? ", " : "").append(name);
    }
    return line + tail;
  }
}
