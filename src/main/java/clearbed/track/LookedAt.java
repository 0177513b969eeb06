package clearbed.track;

import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.model.value.Entry;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Tells whether a run looked where a finding was. What was not looked at is not settled: part of a
 * set that is issued again must not close what the other part still says.
 */
final class LookedAt {
  private final Report report;
  private final Set<String> now;
  private final Set<String> tags;

  /** Documents of the earlier issue that are not there and that nothing can have replaced. */
  private final Set<String> leftOut;

  LookedAt(QuestionLog earlier, Report report) {
    this.report = report;
    this.now =
        report.documents().stream()
            .map(Report.DocumentSummary::path)
            .collect(Collectors.toCollection(TreeSet::new));
    this.tags = report.entries().stream().map(Entry::tag).collect(Collectors.toSet());
    this.leftOut = leftOut(before(earlier));
  }

  /** What the next issue has to know of, too. */
  List<String> leftOut() {
    return List.copyOf(leftOut);
  }

  private static Set<String> before(QuestionLog earlier) {
    Set<String> before = new TreeSet<>(earlier.documents());
    for (QuestionLog.LogLine line : earlier.lines().values())
      before.addAll(documents(line.finding()));
    return before;
  }

  /**
   * A revision often has another name, and a folder may be another: a new document of the same
   * format may have come in the place of one that is gone, and so may one of the same name in
   * another format.
   */
  private Set<String> leftOut(Set<String> before) {
    Set<String> formats = new TreeSet<>();
    Set<String> names = new TreeSet<>();
    for (String document : now) {
      if (before.contains(document)) continue;
      formats.add(format(document));
      names.add(name(document));
    }
    Set<String> leftOut = new TreeSet<>();
    for (String document : before) {
      boolean replaced = formats.contains(format(document)) || names.contains(name(document));
      if (!now.contains(document) && !replaced) leftOut.add(document);
    }
    return leftOut;
  }

  private static String format(String path) {
    int dot = path.lastIndexOf('.');
    return dot < path.lastIndexOf('/') + 1 ? "" : path.substring(dot).toLowerCase(Locale.ROOT);
  }

  /** Letters and digits alone: offices differ in how they join them. */
  private static String name(String path) {
    String file = path.substring(path.lastIndexOf('/') + 1);
    String name = file.substring(0, file.length() - format(file).length());
    return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
  }

  private static Set<String> documents(Finding finding) {
    return Stream.concat(Stream.ofNullable(finding.origin()), finding.places().stream())
        .map(Origin::document)
        .filter(document -> !document.isEmpty())
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** Why nothing can be said of a finding that was not found; empty when it was looked for. */
  String whyNot(Finding finding) {
    if (isOff(finding)) return "";
    for (String document : documents(finding)) {
      String unread = unreadable(document);
      if (!unread.isEmpty()) return unread;
      if (leftOut.contains(document)) {
        return "its document " + document + " is not among those checked";
      }
    }
    List<String> gone = finding.tags().stream().filter(tag -> !tags.contains(tag)).toList();
    boolean nowhere = !finding.tags().isEmpty() && gone.size() == finding.tags().size();
    Set<String> unseen = unseen();
    if (!nowhere || unseen.isEmpty()) return "";
    return "%s is in none of the documents that were read, and these were not read: %s"
        .formatted(String.join(", ", gone), String.join(", ", unseen));
  }

  /** What was left out or could not be read: a tag may be in there. */
  private Set<String> unseen() {
    Set<String> unseen = new TreeSet<>(leftOut);
    for (Report.DocumentSummary each : report.documents()) {
      if (each.status() == Document.Status.UNREADABLE) unseen.add(each.path());
    }
    return unseen;
  }

  private String unreadable(String document) {
    return report.documents().stream()
        .filter(each -> each.path().equals(document))
        .filter(each -> each.status() == Document.Status.UNREADABLE)
        .map(each -> "the document could not be read: " + each.reason())
        .findFirst()
        .orElse("");
  }

  /** Why a finding is gone that was looked for. */
  String whyGone(Finding finding) {
    if (isOff(finding)) return "the check is switched off";
    String document = finding.origin().document();
    boolean there = document.isEmpty() || now.contains(document);
    return there ? "no longer found" : "its document is not among those checked";
  }

  private boolean isOff(Finding finding) {
    return report.checks().stream().anyMatch(c -> c.id().equals(finding.check()) && !c.on());
  }
}
