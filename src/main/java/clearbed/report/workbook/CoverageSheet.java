package clearbed.report.workbook;

import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.model.report.Verdict;
import clearbed.model.value.Entry;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.typed.RenewedSheet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/**
 * Every glass entry by every check that does not come out well for all: a table to print. Checks
 * that leave nothing open are named below it.
 */
final class CoverageSheet {
  private static final List<String> FIRST =
      List.of("Tag", "Taken for glass because of", "Place", "Link");
  private static final int[] WIDTHS = {11, 24, 26, 6};
  private static final int CHECK_WIDTH = 10;

  /** Characters across a page that stay legible, of a small sheet of paper and of a large one. */
  private static final int PAGE = 180;

  private static final int LARGE_PAGE = 380;

  private static final int NAMED_IN_A_LINE = 12;

  private static final List<String> LEGEND =
      List.of(
          "ok: nothing is open. n/a: the check does not apply to the tile. error, warning, note: a"
              + " finding, see the sheet Findings.",
          "unread: words that were not understood may answer it, see the sheet Reading. undecided:"
              + " it depends on something that is not stated.",
          "hidden: found, and not reported by a rule file's wish, see Summary.");

  /** Excel has 16,384 columns (Excel specifications and limits). */
  private static final int MOST_CHECKS = 16_000;

  private final XSSFSheet sheet;
  private final RenewedSheet own;
  private final Pen pen;
  private final DocumentLinks links;
  private int[] widths;
  private Map<String, Map<String, Level>> levels;

  CoverageSheet(XSSFSheet sheet, RenewedSheet own, DocumentLinks links) {
    this.sheet = sheet;
    this.own = own;
    this.pen = own.pen();
    this.links = links;
  }

  /**
   * Writes header and rows.
   *
   * @param rows where rows are made: the sheet's streaming twin
   */
  void fill(Sheet rows, Report report) {
    pen.turnTo(sheet);
    List<String> checks = checks(report);
    levels = levels(report.findings());
    widths = Arrays.copyOf(WIDTHS, FIRST.size() + checks.size());
    Arrays.fill(widths, FIRST.size(), widths.length, CHECK_WIDTH);
    header(rows, checks);
    Map<String, int[]> verdicts = WorstVerdicts.of(report.verdicts(), checks);
    int at = 1;
    if (!report.reading().wholeSet().isEmpty())
      wholeSet(rows.createRow(at++), report.reading(), checks);
    for (Entry entry : report.entries()) {
      if (!entry.glass()) continue;
      if (at >= SheetSetup.LAST_ROW) {
        Row note = rows.createRow(at);
        pen.text(note, 0, SheetSetup.FULL, Styles.Look.STRONG);
        own.done(note);
        break;
      }
      int[] ordinals = verdicts.getOrDefault(entry.tag(), new int[checks.size()]);
      entry(rows.createRow(at++), entry, ordinals, report.verdicts());
    }
    at = strangers(rows, at, report, checks);
    int last = Math.max(at - 1, 1);
    rest(rows, at + 1, report, checks);
    SheetSetup.header(sheet, 1, last, widths.length);
    sheet.setRepeatingColumns(new CellRangeAddress(-1, -1, 0, 0));
    if (widths.length > FIRST.size())
      SheetSetup.tint(sheet, 1, FIRST.size(), widths.length - 1, SheetSetup.OUTCOMES);
  }

  /** Tags that findings name and no schedule lists: they have no values, only findings. */
  private int strangers(Sheet rows, int from, Report report, List<String> checks) {
    Set<String> known = report.entries().stream().map(Entry::tag).collect(Collectors.toSet());
    Map<String, List<Finding>> strangers = new LinkedHashMap<>();
    for (Finding finding : report.findings()) {
      if (!finding.suppressed().isEmpty() || finding.state() == State.RESOLVED) continue;
      for (String tag : finding.tags()) {
        if (!known.contains(tag)) {
          strangers.computeIfAbsent(tag, any -> new ArrayList<>()).add(finding);
        }
      }
    }
    int at = from;
    for (Map.Entry<String, List<Finding>> stranger : strangers.entrySet()) {
      if (at >= SheetSetup.LAST_ROW) break;
      stranger(rows.createRow(at++), stranger.getKey(), stranger.getValue(), checks);
    }
    return at;
  }

  private void stranger(Row row, String tag, List<Finding> findings, List<String> checks) {
    pen.text(row, 0, tag, Styles.Look.STRONG);
    pen.text(row, 1, "in no schedule: named by findings alone", Styles.Look.TEXT);
    pen.text(row, 2, findings.get(0).origin().place(), Styles.Look.TEXT);
    pen.put(row, 3, links.link(findings.get(0).origin()), Styles.Look.LINK);
    for (int column = 0; column < checks.size(); column++) {
      String check = checks.get(column);
      String mark = mark(Verdict.Outcome.FINDING, check, tag);
      boolean found = findings.stream().anyMatch(f -> f.check().equals(check));
      pen.text(row, FIRST.size() + column, found ? mark : "", Styles.Look.TEXT);
    }
    Heights.fit(row, widths);
    own.done(row);
  }

  /** Pages side by side that keep the words legible. */
  static int pagesWide(Report report) {
    return Math.max(1, (characters(report) + LARGE_PAGE - 1) / LARGE_PAGE);
  }

  /** True where a small sheet of paper would leave the words too small. */
  static boolean isWide(Report report) {
    return characters(report) > PAGE;
  }

  private static int characters(Report report) {
    return Arrays.stream(WIDTHS).sum() + CHECK_WIDTH * checks(report).size();
  }

  private void header(Sheet rows, List<String> checks) {
    Row header = rows.createRow(0);
    Heights.points(header, 132);
    for (int column = 0; column < FIRST.size(); column++) {
      pen.text(header, column, FIRST.get(column), Styles.Look.HEADER);
    }
    for (int column = 0; column < checks.size(); column++) {
      pen.text(header, FIRST.size() + column, checks.get(column), Styles.Look.HEADER_TURNED);
    }
    own.done(header);
    for (int column = 0; column < widths.length; column++) {
      sheet.setColumnWidth(column, widths[column] * 256);
    }
  }

  /** What the checks of the whole set found, and in how much of the text they looked. */
  private void wholeSet(Row row, ReadingAccount reading, List<String> checks) {
    pen.text(row, 0, "whole set", Styles.Look.STRONG);
    pen.text(row, 1, "checks of all documents together", Styles.Look.TEXT);
    pen.text(row, 2, "all documents", Styles.Look.TEXT);
    pen.text(row, 3, "", Styles.Look.TEXT);
    Map<String, ReadingAccount.WholeSet> of = new HashMap<>();
    for (ReadingAccount.WholeSet set : reading.wholeSet()) of.put(set.check(), set);
    for (int column = 0; column < checks.size(); column++) {
      ReadingAccount.WholeSet set = of.get(checks.get(column));
      String words = set == null ? "" : mark(set.outcome(), checks.get(column), "");
      pen.text(row, FIRST.size() + column, words, Styles.Look.TEXT);
    }
    Heights.fit(row, widths);
    own.done(row);
  }

  private void entry(Row row, Entry entry, int[] ordinals, List<Verdict> verdicts) {
    pen.text(row, 0, entry.tag(), Styles.Look.STRONG);
    pen.text(row, 1, entry.evidence(), Styles.Look.TEXT);
    pen.text(row, 2, entry.origin().place(), Styles.Look.TEXT);
    pen.put(row, 3, links.link(entry.origin()), Styles.Look.LINK);
    for (int column = 0; column < ordinals.length; column++) {
      Verdict verdict = ordinals[column] == 0 ? null : verdicts.get(ordinals[column] - 1);
      String mark = verdict == null ? "" : mark(verdict.outcome(), verdict.check(), entry.tag());
      pen.text(row, FIRST.size() + column, mark, Styles.Look.TEXT);
    }
    Heights.fit(row, widths);
    own.done(row);
  }

  /** A word that tells the outcome, of a finding how bad it is. */
  private String mark(Verdict.Outcome outcome, String check, String tag) {
    return switch (outcome) {
      case FINDING -> level(check, tag).word();
      case UNREAD -> "unread";
      case UNDECIDED -> "undecided";
      case SUPPRESSED -> "hidden";
      case SATISFIED -> "ok";
      case NOT_APPLICABLE -> "n/a";
    };
  }

  private Level level(String check, String tag) {
    Map<String, Level> of = levels.getOrDefault(check, Map.of());
    Level own = of.get(tag);
    return own != null ? own : of.values().stream().min(Level::compareTo).orElse(Level.NOTE);
  }

  /** By check and tag, the worst that stands; what is of no tile stands under no tag. */
  private static Map<String, Map<String, Level>> levels(List<Finding> findings) {
    Map<String, Map<String, Level>> levels = new HashMap<>();
    for (Finding finding : findings) {
      if (!finding.suppressed().isEmpty() || finding.state() == State.RESOLVED) continue;
      Map<String, Level> of = levels.computeIfAbsent(finding.check(), check -> new HashMap<>());
      List<String> tags = finding.tags().isEmpty() ? List.of("") : finding.tags();
      for (String tag : tags) {
        of.merge(tag, finding.level(), (one, two) -> one.compareTo(two) <= 0 ? one : two);
      }
    }
    return levels;
  }

  /** Says what the words mean, and names the checks that have no column. */
  private void rest(Sheet rows, int at, Report report, List<String> shown) {
    if (at >= SheetSetup.LAST_ROW - LEGEND.size()) return;
    int line = at;
    for (String words : LEGEND) note(rows.createRow(line++), words);
    if (!report.reading().wholeSet().isEmpty())
      note(rows.createRow(line++), "whole set: " + report.reading().lookedIn());
    List<String> others = new ArrayList<>(on(report));
    others.removeAll(shown);
    if (others.isEmpty()) return;
    line++;
    String before = "Nothing open for any tile: ";
    for (int from = 0; from < others.size(); from += NAMED_IN_A_LINE) {
      int to = Math.min(others.size(), from + NAMED_IN_A_LINE);
      String names = String.join(", ", others.subList(from, to));
      note(rows.createRow(line++), before + names + (to < others.size() ? "," : ""));
      before = "    ";
    }
  }

  private void note(Row row, String words) {
    pen.text(row, 0, words, Styles.Look.SUBTITLE);
    own.done(row);
  }

  private static List<String> on(Report report) {
    return report.checks().stream()
        .filter(Report.CheckInfo::on)
        .map(Report.CheckInfo::id)
        .limit(MOST_CHECKS)
        .toList();
  }

  /** Those that leave something open for one tile or another, or for the whole set. */
  static List<String> checks(Report report) {
    Set<String> open = new HashSet<>();
    for (Verdict verdict : report.verdicts()) {
      boolean well =
          verdict.outcome() == Verdict.Outcome.SATISFIED
              || verdict.outcome() == Verdict.Outcome.NOT_APPLICABLE;
      if (!well) open.add(verdict.check());
    }
    for (ReadingAccount.WholeSet set : report.reading().wholeSet()) {
      if (set.outcome() != Verdict.Outcome.SATISFIED) open.add(set.check());
    }
    for (Finding finding : report.findings()) {
      if (finding.suppressed().isEmpty() && finding.state() != State.RESOLVED)
        open.add(finding.check());
    }
    return on(report).stream().filter(open::contains).toList();
  }
}
