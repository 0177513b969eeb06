package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.model.document.Document;
import clearbed.model.report.Account;
import clearbed.model.report.Report;
import clearbed.model.report.TaughtWord;
import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.report.wording.Phrasing;
import clearbed.resolve.Project;
import java.io.PrintWriter;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** What was read, in one screen: documents, tables, entries, and what was not understood. */
final class WhatWasRead {
  private final Project project;
  private final List<Report.DocumentSummary> documents;

  WhatWasRead(Project project, List<Report.DocumentSummary> documents) {
    this.project = project;
    this.documents = documents;
  }

  /** One line for each kind of thing. */
  void printCounts(PrintWriter out) {
    Account.Tally sentences = Account.Tally.NONE;
    Account.Tally cells = Account.Tally.NONE;
    int tables = 0;
    int schedules = 0;
    int columns = 0;
    for (Facts facts : project.facts()) {
      Account account = facts.account();
      sentences = sentences.plus(account.sentences());
      cells = cells.plus(account.cells());
      tables += account.tables().size();
      for (Account.TableAccount table : account.tables())
        if (!table.takenFor().equals("none")) schedules++;
      for (Account.Unread words : account.unread()) if (isColumn(words)) columns++;
    }
    out.println("Read");
    line(out, "documents", documents());
    line(out, "tables", tables + ", " + schedules + " taken for schedules");
    line(out, "entries", entries());
    line(out, "sentences", Phrasing.of(sentences));
    line(
        out,
        "cells",
        Phrasing.of(cells) + (columns == 0 ? "" : " in " + Phrasing.count(columns, "column")));
  }

  /** Each word that the office teaches, and the columns that were read by it. */
  void printTaught(PrintWriter out, List<TaughtWord> taught) {
    if (taught.isEmpty()) return;
    out.println();
    out.println("Taught");
    for (TaughtWord word : taught) {
      out.println(
          "  "
              + word.kind()
              + " "
              + quoted(word.words())
              + ": "
              + word.as()
              + "  ["
              + DisplayText.of(word.source())
              + columnsBy(word)
              + "]");
    }
  }

  private String columnsBy(TaughtWord word) {
    if (!word.kind().equals("column")) return "";
    long columns =
        project.facts().stream()
            .flatMap(f -> f.account().tables().stream())
            .flatMap(t -> t.columns().stream())
            .filter(c -> c.evidence().startsWith("taught: " + word.source()))
            .count();
    return columns == 0 ? "; no such column here" : "; " + Phrasing.count((int) columns, "column");
  }

  /** Each sentence and column that was not understood, with its place. */
  void printNotUnderstood(PrintWriter out, String tag) {
    List<Account.Unread> unread =
        project.facts().stream()
            .flatMap(facts -> facts.account().unread().stream())
            .filter(words -> tag == null || words.reaches(tag))
            .toList();
    if (unread.isEmpty()) return;
    out.println();
    out.println("Not understood");
    for (Account.Unread words : unread)
      out.println("  " + DisplayText.of(words.origin().place()) + ": " + said(words));
  }

  private static String said(Account.Unread words) {
    if (!isColumn(words)) return quoted(words.text());
    String samples = String.join(", ", words.samples().stream().map(WhatWasRead::quoted).toList());
    return words.text().isBlank() ? samples : "under " + quoted(words.text()) + ": " + samples;
  }

  private static String quoted(String text) {
    return "\"" + DisplayText.of(text) + "\"";
  }

  private static boolean isColumn(Account.Unread words) {
    return !words.samples().isEmpty();
  }

  private String documents() {
    List<Report.DocumentSummary> all = documents;
    long read = all.stream().filter(d -> d.status() == Document.Status.READ).count();
    long partly = all.stream().filter(d -> d.status() == Document.Status.PARTLY).count();
    String rest = partly == 0 ? "" : ", " + partly + " of them in part";
    return (read + partly) + " of " + all.size() + rest;
  }

  private String entries() {
    Set<String> open = new HashSet<>();
    for (Facts facts : project.facts()) {
      for (ScheduleRow row : facts.rows()) if (!row.decided()) open.add(Tags.key(row.tag()));
    }
    int glass = project.glass().size();
    int undecided = 0;
    for (Entry entry : project.entries())
      if (!entry.glass() && open.contains(Tags.key(entry.tag()))) undecided++;
    int other = project.entries().size() - glass - undecided;
    return glass + " glass, " + other + " other, " + undecided + " undecided";
  }

  private static void line(PrintWriter out, String what, String words) {
    out.println("  " + what + ": " + words);
  }
}
