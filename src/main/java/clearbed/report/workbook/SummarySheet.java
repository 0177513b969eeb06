package clearbed.report.workbook;

import clearbed.base.DisplayText;
import clearbed.mark.FindingsSheets;
import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.model.report.TaughtWord;
import clearbed.report.wording.Cautions;
import clearbed.report.wording.Phrasing;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.PageRows;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.typed.RenewedSheet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** The sheet that is read first, and often alone. */
final class SummarySheet {
  /** Columns A to H; figures stand in C to H. */
  private static final int[] WIDTHS = {24, 50, 9, 9, 11, 11, 11, 9};

  private static final int MOST_LISTED = 100;
  private static final List<State> STATES =
      List.of(State.NEW, State.OPEN, State.REOPENED, State.ANSWERED, State.RESOLVED);

  private final XSSFSheet sheet;
  private final RenewedSheet own;
  private final Pen pen;
  private final Set<Integer> sections = new HashSet<>();
  private final PageRows rows;

  SummarySheet(XSSFSheet sheet, RenewedSheet own) {
    this.sheet = sheet;
    this.own = own;
    this.pen = own.pen();
    this.rows = new PageRows(sheet, pen, WIDTHS);
  }

  /**
   * @param remarks on what people typed in the earlier workbook, besides those of the log
   */
  void fill(Report report, QuestionLog log, List<String> remarks) {
    pen.turnTo(sheet);
    List<Finding> findings =
        report.findings().stream().filter(f -> f.suppressed().isEmpty()).toList();
    title(report);
    byLevel(findings);
    if (log.carries()) new ChangeTable(this).fill(findings, log, report.run().date(), remarks);
    CheckTable checks = new CheckTable(sheet, pen);
    sections.add(checks.fill(rows, findings, report.checks()));
    documents(report.documents());
    rules(report.run(), report.reading().taught());
    suppressed(report.findings());
    section("Cautions");
    for (Cautions.Caution caution : Cautions.of(List.of(report.run().ruleSet())))
      pair(caution.subject(), caution.text());
    section("By check, as a chart");
    checks.draw(rows.next());
    for (Row row : sheet) own.done(row, sections.contains(row.getRowNum()));
  }

  private void title(Report report) {
    Row title = rows.add();
    Heights.points(title, 26);
    pen.text(title, 0, FindingsSheets.TITLE, Styles.Look.TITLE);
    Report.RunDetails run = report.run();
    long glass = report.entries().stream().filter(entry -> entry.glass()).count();
    String line =
        "Issue of %s. %s, %s. Rule set %s. %s %s."
            .formatted(
                run.date(),
                Phrasing.count(report.documents().size(), "document"),
                Phrasing.count((int) glass, "glass tile", "glass tiles"),
                run.ruleSet(),
                run.tool(),
                run.version());
    Row subtitle = rows.add();
    Heights.set(subtitle, 1);
    pen.text(subtitle, 0, line, Styles.Look.SUBTITLE);
    ProjectNames names = run.names();
    if (!names.project().isEmpty()) pair("Project", names.project());
    if (!names.from().isEmpty()) pair("From", names.from());
    if (!names.to().isEmpty()) pair("To", names.to());
  }

  private void byLevel(List<Finding> findings) {
    section("By level and state");
    Row header = rows.add();
    pen.text(header, 0, "Level", Styles.Look.HEADER);
    pen.text(header, 1, "What it means", Styles.Look.HEADER);
    for (int i = 0; i < STATES.size(); i++) {
      pen.text(header, 2 + i, STATES.get(i).word(), Styles.Look.HEADER_COUNT);
    }
    pen.text(header, 7, "all", Styles.Look.HEADER_COUNT);
    int first = rows.next();
    for (Level level : Level.values()) {
      List<Finding> these = findings.stream().filter(f -> f.level() == level).toList();
      countRow(level.word(), meaning(level), these);
    }
    countRow("all", "", findings);
    SheetSetup.tint(sheet, first, 0, 0, SheetSetup.LEVELS);
  }

  private void countRow(String word, String meaning, List<Finding> these) {
    Row row = rows.add();
    pen.text(row, 0, word, Styles.Look.STRONG);
    pen.text(row, 1, meaning, Styles.Look.TEXT);
    for (int i = 0; i < STATES.size(); i++) {
      State state = STATES.get(i);
      pen.count(row, 2 + i, (int) these.stream().filter(f -> f.state() == state).count());
    }
    pen.count(row, 7, these.size());
    Heights.fit(row, sheet);
  }

  private static String meaning(Level level) {
    return switch (level) {
      case ERROR -> "settle before tile is ordered or set";
      case WARNING -> "a risk to weigh, or a gap that somebody will have to guess at";
      case NOTE -> "worth knowing; nothing need change";
    };
  }

  private void documents(List<Report.DocumentSummary> documents) {
    section("Documents");
    for (Document.Status status : Document.Status.values()) {
      long count = documents.stream().filter(d -> d.status() == status).count();
      if (count > 0) pair(Phrasing.of(status), Phrasing.count((int) count, "file"));
    }
    List<Report.DocumentSummary> failed =
        documents.stream()
            .filter(
                d ->
                    d.status() == Document.Status.UNREADABLE
                        || d.status() == Document.Status.PARTLY)
            .toList();
    failed.stream().limit(MOST_LISTED).forEach(this::document);
    if (failed.size() > MOST_LISTED) {
      pair("", failed.size() - MOST_LISTED + " more are listed on the sheet Documents");
    }
  }

  private void document(Report.DocumentSummary document) {
    Row row = rows.add();
    int gaps = (int) document.skipped().stream().filter(Document.Gap::isUnread).count();
    String passed = gaps == 0 ? "" : Phrasing.count(gaps, "place") + " not read, see Documents";
    String why = document.reason().isEmpty() ? passed : document.reason();
    pen.text(row, 0, Phrasing.of(document.status()), Styles.Look.STRONG);
    pen.text(row, 1, DisplayText.path(document.path()), Styles.Look.TEXT);
    rows.wide(row, 2, why);
  }

  private void rules(Report.RunDetails run, List<TaughtWord> taught) {
    section("Rules");
    pair("Rule set", run.ruleSetWithReason());
    pair("Fingerprint of the rules", run.ruleSetDigest());
    for (String layer : run.layers()) pair("Office rules", layer);
    for (String change : run.changes()) pair("Check changed", change);
    for (TaughtWord word : taught) {
      String words = "%s \"%s\" is %s (%s)";
      pair(
          "Word taught by the office",
          words.formatted(word.kind(), word.words(), word.as(), word.source()));
    }
    for (String fact : run.facts()) pair("Project fact", fact);
    for (String idle : run.idle()) {
      pair(
          "Suppression without effect",
          idle + ": no finding is hidden by it; take it out or mend it");
    }
  }

  private void suppressed(List<Finding> findings) {
    List<Finding> silent = findings.stream().filter(f -> !f.suppressed().isEmpty()).toList();
    if (silent.isEmpty()) return;
    section("Found and not reported, by the rule files' wish");
    for (Finding finding : silent.subList(0, Math.min(silent.size(), MOST_LISTED))) {
      String tags = String.join(", ", finding.tags());
      pair(finding.check(), (tags.isEmpty() ? "" : tags + ": ") + finding.message());
      pair("    because", finding.suppressed());
    }
    if (silent.size() > MOST_LISTED) {
      pair("", silent.size() - MOST_LISTED + " more are in the JSON file");
    }
  }

  void section(String words) {
    sections.add(rows.section(words).getRowNum());
  }

  void pair(String label, String words) {
    rows.pair(label, words);
  }
}
