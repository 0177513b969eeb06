package clearbed.report;

import clearbed.base.DisplayText;
import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.report.wording.Phrasing;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** One screen: how it stands, entry by entry, worst first, and what to do next. */
public final class ConsoleSummary {
  private static final int NARROWEST = 40;
  private static final String RESET = "\u001b[0m";
  private static final String WHOLE_SET = "whole set";
  private static final String NO_ENTRY = "no-entry";

  private final int width;
  private final int height;
  private final boolean colour;
  private final List<String> lines = new ArrayList<>();

  private ConsoleSummary(int width, int height, boolean colour) {
    this.width = Math.max(NARROWEST, width);
    this.height = height;
    this.colour = colour;
  }

  /**
   * The summary as text, each line ended by {@code \n}.
   *
   * @param width of the terminal in characters; taken as 40 when less
   * @param height lines that may be used, at least; what does not fit is counted
   * @param colour whether the words may be coloured
   * @param next what to do next, such as the name of the workbook that was written; may be empty
   */
  public static String text(Report report, int width, int height, boolean colour, String next) {
    ConsoleSummary summary = new ConsoleSummary(width, height, colour);
    summary.reading(report.reading());
    summary.chosen(report.run());
    summary.totals(report);
    summary.unread(report.documents());
    summary.entries(report);
    if (!next.isEmpty()) {
      summary.lines.add("");
      summary.wrap("", next);
    }
    return String.join("\n", summary.lines) + "\n";
  }

  /** First what was read, and what was not. */
  private void reading(ReadingAccount reading) {
    int units = reading.sentences().all() + reading.cells().all();
    if (units == 0) return;
    long schedules =
        reading.tables().stream().filter(table -> !table.takenFor().equals("none")).count();
    StringBuilder line = new StringBuilder("Read: ");
    line.append(Phrasing.count(reading.tables().size(), "table"));
    if (!reading.tables().isEmpty())
      line.append(", ").append(schedules).append(" taken for schedules");
    line.append(", ").append(Phrasing.count(reading.sentences().all(), "sentence"));
    line.append(". Not understood: ");
    line.append(Phrasing.count(reading.cells().notUnderstood(), "cell"));
    line.append(" in ").append(Phrasing.count(reading.columnsNotUnderstood(), "column"));
    line.append(", ").append(Phrasing.count(reading.sentences().notUnderstood(), "sentence"));
    line.append("; see the sheet Reading.");
    wrap("", line.toString());
  }

  private void chosen(Report.RunDetails run) {
    if (!run.chosen().isEmpty()) wrap("", "Rules: " + run.ruleSet() + ", " + run.chosen() + ".");
  }

  private void totals(Report report) {
    List<Finding> open = open(report);
    int glass = (int) report.entries().stream().filter(entry -> entry.glass()).count();
    wrap(
        "",
        Phrasing.count(report.documents().size(), "document")
            + ", "
            + Phrasing.count(glass, "glass tile", "glass tiles")
            + ".");
    if (!open.isEmpty()) lines.add("Open: " + counts(open, true) + ".");
    else if (glass > 0) lines.add("Nothing open.");
    if (glass == 0) noGlass(report);
    settled(report);
  }

  /** Nothing was checked: whether there was nothing to check is what the reader has to know. */
  private void noGlass(Report report) {
    List<Finding> named =
        report.findings().stream().filter(finding -> finding.check().equals(NO_ENTRY)).toList();
    if (named.stream().anyMatch(finding -> finding.state() != State.RESOLVED)) {
      if (open(report).isEmpty()) wrap("", "Nothing was checked.");
      return;
    }
    boolean on =
        report.checks().stream().anyMatch(check -> check.id().equals(NO_ENTRY) && check.on());
    int read =
        (int)
            report.documents().stream()
                .filter(
                    d -> d.status() == Document.Status.READ || d.status() == Document.Status.PARTLY)
                .count();
    String where = read == 1 ? "this document" : "these " + read + " documents";
    if (read == 0) wrap("", "No document could be read; nothing was checked.");
    else if (on) wrap("", "No glass tile is named in " + where + ".");
    else wrap("", "No glass tile was found; nothing was checked.");
  }

  private void settled(Report report) {
    List<String> parts = new ArrayList<>();
    for (State state : List.of(State.ANSWERED, State.RESOLVED)) {
      long count =
          report.findings().stream()
              .filter(finding -> finding.suppressed().isEmpty() && finding.state() == state)
              .count();
      if (count > 0) parts.add(count + " " + state.word());
    }
    long silent = report.findings().stream().filter(f -> !f.suppressed().isEmpty()).count();
    if (silent > 0) parts.add(silent + " not reported by a rule file's wish");
    if (!parts.isEmpty()) wrap("", "Besides: " + String.join(", ", parts) + ".");
  }

  private void unread(List<Report.DocumentSummary> documents) {
    List<Report.DocumentSummary> failed =
        documents.stream().filter(d -> d.status() == Document.Status.UNREADABLE).toList();
    int most = Math.max(1, height / 6);
    for (Report.DocumentSummary document : failed.subList(0, Math.min(most, failed.size()))) {
      lines.add(
          cut(
              paint(Level.ERROR, "not read") + "  ",
              DisplayText.path(document.path()) + ": " + document.reason(),
              10));
    }
    if (failed.size() > most) lines.add("          and " + (failed.size() - most) + " more files");
    lines.addAll(LeftOut.lines(documents, "see the sheet Documents", width));
  }

  private void entries(Report report) {
    Map<String, List<Finding>> groups = new LinkedHashMap<>();
    for (Finding finding : open(report)) {
      String group = finding.tags().size() == 1 ? plain(finding.tags().get(0)) : WHOLE_SET;
      groups.computeIfAbsent(group, tag -> new ArrayList<>()).add(finding);
    }
    List<Map.Entry<String, List<Finding>>> sorted =
        groups.entrySet().stream()
            .sorted(Comparator.comparing(Map.Entry::getValue, WORST))
            .toList();
    if (sorted.isEmpty()) return;
    lines.add("");
    int room = Math.max(3, height - lines.size() - 3);
    int indent =
        Math.min(16, sorted.stream().mapToInt(group -> group.getKey().length()).max().orElse(0))
            + 2;
    int shown = sorted.size() <= room ? sorted.size() : room - 1;
    for (Map.Entry<String, List<Finding>> group : sorted.subList(0, shown)) group(group, indent);
    if (shown < sorted.size()) {
      lines.add("and " + Phrasing.count(sorted.size() - shown, "tile") + " more with findings");
    }
  }

  private static final Comparator<List<Finding>> WORST =
      Comparator.comparingInt((List<Finding> findings) -> -count(findings, Level.ERROR))
          .thenComparingInt(findings -> -count(findings, Level.WARNING))
          .thenComparingInt(findings -> -findings.size());

  private void group(Map.Entry<String, List<Finding>> group, int indent) {
    List<Finding> findings = group.getValue();
    String tag = group.getKey();
    String label = tag.length() > indent - 2 ? tag.substring(0, indent - 3) + "…" : tag;
    String head = label + " ".repeat(indent - label.length());
    String checks = String.join(", ", findings.stream().map(Finding::check).distinct().toList());
    String counted = counts(findings, false);
    String line = head + counts(findings, true) + ": ";
    lines.add(cut(line, checks, head.length() + counted.length() + 2));
  }

  /** {@code 3 errors, 1 warning}. */
  private String counts(List<Finding> findings, boolean painted) {
    List<String> parts = new ArrayList<>();
    for (Level level : Level.values()) {
      int count = count(findings, level);
      if (count == 0) continue;
      String words = Phrasing.count(count, level.word());
      parts.add(painted ? paint(level, words) : words);
    }
    return String.join(", ", parts);
  }

  private static int count(List<Finding> findings, Level level) {
    return (int) findings.stream().filter(finding -> finding.level() == level).count();
  }

  private static List<Finding> open(Report report) {
    return report.findings().stream().filter(Finding::isOpen).toList();
  }

  /** Head and as much of the rest as the width allows. */
  private String cut(String head, String rest, int headWidth) {
    String plain = plain(rest);
    int room = width - headWidth;
    if (plain.length() <= room) return head + plain;
    return head + plain.substring(0, Math.max(0, room - 1)) + "…";
  }

  /** One line, and nothing in it that a terminal would obey. */
  private static String plain(String text) {
    return DisplayText.of(text);
  }

  private void wrap(String indent, String text) {
    StringBuilder line = new StringBuilder(indent);
    for (String word : text.split(" ")) {
      if (line.length() > indent.length() && line.length() + 1 + word.length() > width) {
        lines.add(line.toString());
        line = new StringBuilder(indent);
      }
      if (line.length() > indent.length()) line.append(' ');
      line.append(word);
    }
    lines.add(line.toString());
  }

  private String paint(Level level, String words) {
    if (!colour) return words;
    String code =
        switch (level) {
          case ERROR -> "\u001b[1;31m";
          case WARNING -> "\u001b[33m";
          case NOTE -> "\u001b[36m";
        };
    return code + words + RESET;
  }
}
