package clearbed.report.survey;

import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Finding;
import clearbed.model.report.ReadingAccount;
import clearbed.model.value.Value;
import clearbed.survey.Groups;
import clearbed.survey.Overview;
import clearbed.survey.Surveyed;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The tables for other programs, a row for each thing; texts alone, as a program types them. */
enum SurveyTable {
  PROJECTS(
      "projects.csv",
      "a project",
      new TableColumn("project", "path below the archive; the key of the other tables"),
      new TableColumn("status", "checked, nothing to read, or not checked"),
      new TableColumn("reason", "why it was not checked"),
      new TableColumn("groups", "folders above it, as level=name, joined by |"),
      new TableColumn("rule_set", "rules that it was held to"),
      new TableColumn("rule_set_digest", "SHA-256 over the rule files"),
      new TableColumn("documents", "number of files"),
      new TableColumn("documents_unreadable", "number of files that could not be read"),
      new TableColumn("glass_entries", "number of glass tile entries"),
      new TableColumn("open_errors", "number of findings; settle before tile is ordered or set"),
      new TableColumn("open_warnings", "number of findings"),
      new TableColumn("open_notes", "number of findings"),
      new TableColumn("places_not_understood", "number of rows in readings.csv that say so")) {
    @Override
    void rows(Surveyed of, Groups groups, Sink sink) {
      Overview.ProjectLine line = Overview.line(0, of);
      sink.row(
          of.name(),
          of.status().words(),
          of.reason(),
          groups(groups.of(of.name())),
          of.ruleSet(),
          of.digest(),
          "" + line.documents(),
          "" + line.notRead(),
          "" + line.glass(),
          "" + line.errors(),
          "" + line.warnings(),
          "" + line.notes(),
          "" + line.unread());
    }
  },
  FINDINGS(
      "findings.csv",
      "a finding",
      new TableColumn("project", "see projects.csv"),
      new TableColumn("id", "of the finding, the same from run to run"),
      new TableColumn("check", "id of the check"),
      new TableColumn(
          "kind", "missing, inadequate, incompatible, conflicting, unresolved, unread, ..."),
      new TableColumn("level", "error, warning or note"),
      new TableColumn("open", "yes, or no where a rule file suppresses it"),
      new TableColumn(
          "tags", "of the tiles that it holds for, joined by |; none: of the whole set"),
      new TableColumn("attribute", "that it speaks of"),
      new TableColumn("what_is_wrong", "in a sentence"),
      new TableColumn("found", "what the documents say"),
      new TableColumn("expected", "what would satisfy the check"),
      new TableColumn("document", "path below the project"),
      new TableColumn("place", "where to look, in words"),
      new TableColumn("section", "the one section number that stands in that document"),
      new TableColumn("suppressed_because", "the reason in the rule file")) {
    @Override
    void rows(Surveyed of, Groups groups, Sink sink) {
      for (Surveyed.FindingRow row : of.findings()) {
        Finding f = row.finding();
        sink.row(
            of.name(),
            f.id(),
            f.check(),
            word(f.kind()),
            f.level().word(),
            f.isOpen() ? "yes" : "no",
            String.join("|", f.tags()),
            f.attribute(),
            f.message(),
            f.found(),
            f.expected(),
            f.origin().document(),
            place(f.origin()),
            row.section(),
            f.suppressed());
      }
    }
  },
  ENTRIES(
      "entries.csv",
      "a value of a glass tile entry; an entry without values has one row with an empty attribute",
      new TableColumn("project", "see projects.csv"),
      new TableColumn("tag", "of the tile"),
      new TableColumn("entry_place", "where it is scheduled"),
      new TableColumn("attribute", "name from the vocabulary, such as mortar.standard"),
      new TableColumn("value", "as understood; with 'not ' before what is forbidden"),
      new TableColumn("scope", "entry, article, general, project or assumed; the nearest governs"),
      new TableColumn("as_written", "the words"),
      new TableColumn("document", "path below the project"),
      new TableColumn("place", "where the words stand")) {
    @Override
    void rows(Surveyed of, Groups groups, Sink sink) {
      for (Surveyed.EntryRow entry : of.entries()) {
        String at = place(entry.origin());
        if (entry.values().isEmpty())
          sink.row(of.name(), entry.tag(), at, "", "", "", "", entry.origin().document(), at);
        for (Value v : entry.values())
          sink.row(
              of.name(),
              entry.tag(),
              at,
              v.attribute(),
              (v.excluded() ? "not " : "") + v.content().text(),
              word(v.scope()),
              v.asWritten(),
              v.origin().document(),
              place(v.origin()));
      }
    }
  },
  READINGS(
      "readings.csv",
      "a place that was not understood, or what was set aside for one reason",
      new TableColumn("project", "see projects.csv"),
      new TableColumn("outcome", "not understood, or set aside"),
      new TableColumn("document", "path below the project"),
      new TableColumn("place", "where the words stand, of several the first"),
      new TableColumn("words", "the words, or the heading of the column"),
      new TableColumn("samples", "two cells of a column, joined by |"),
      new TableColumn("could_answer", "ids of the checks that the words might answer, joined by |"),
      new TableColumn("tags", "of the tiles that they are about, joined by |; none: of all"),
      new TableColumn("why", "they were set aside"),
      new TableColumn("count", "number of places")) {
    @Override
    void rows(Surveyed of, Groups groups, Sink sink) {
      for (ReadingAccount.WordsNotUnderstood row : of.unread()) {
        Account.Unread words = row.words();
        sink.row(
            of.name(),
            "not understood",
            words.origin().document(),
            place(words.origin()),
            words.text(),
            String.join("|", words.samples()),
            String.join("|", row.couldAnswer()),
            String.join("|", row.tags()),
            "",
            "1");
      }
      for (Account.SetAside row : of.setAside())
        sink.row(
            of.name(),
            "set aside",
            row.origin().document(),
            place(row.origin()),
            row.origin().text() == null ? "" : row.origin().text(),
            "",
            "",
            "",
            row.why(),
            "" + row.count());
    }
  };

  /** Takes rows, a text for each column. */
  interface Sink {
    void row(String... cells);
  }

  /**
   * @param meaning for the notes beside the tables
   */
  record TableColumn(String name, String meaning) {}

  private final String file;
  private final String row;
  private final List<TableColumn> columns;

  /**
   * @param row what a row is
   */
  SurveyTable(String file, String row, TableColumn... columns) {
    this.file = file;
    this.row = row;
    this.columns = List.of(columns);
  }

  abstract void rows(Surveyed of, Groups groups, Sink sink);

  String file() {
    return file;
  }

  String row() {
    return row;
  }

  List<TableColumn> columns() {
    return columns;
  }

  List<String> header() {
    List<String> out = new ArrayList<>();
    for (TableColumn column : columns) out.add(column.name());
    return out;
  }

  private static String word(Enum<?> of) {
    return of.name().toLowerCase(Locale.ROOT);
  }

  /** What no document states stands nowhere. */
  private static String place(Origin origin) {
    return origin.document().isEmpty() ? "" : origin.place();
  }

  private static String groups(Map<String, String> groups) {
    return groups.entrySet().stream()
        .map(e -> e.getKey() + "=" + e.getValue())
        .collect(Collectors.joining("|"));
  }
}
