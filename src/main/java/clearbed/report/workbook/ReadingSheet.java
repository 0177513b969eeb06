package clearbed.report.workbook;

import clearbed.base.DisplayText;
import clearbed.model.document.Origin;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Report;
import clearbed.model.report.TaughtWord;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.typed.RenewedSheet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** What each column was taken for, what was not understood, and what was set aside and why. */
final class ReadingSheet {
  private static final List<String> HEADERS =
      List.of(
          "Place",
          "Link",
          "What came of it",
          "Heading or words",
          "Taken for",
          "Why",
          "Open checks it may answer",
          "Tiles");
  private static final int[] WIDTHS = {34, 6, 16, 48, 26, 32, 34, 16};

  private final XSSFSheet sheet;
  private final RenewedSheet own;
  private final Pen pen;
  private final DocumentLinks links;
  private Sheet rows;
  private Set<String> open = Set.of();
  private ReadingAccount reading = ReadingAccount.NOTHING;
  private int at = 1;

  ReadingSheet(XSSFSheet sheet, RenewedSheet own, DocumentLinks links) {
    this.sheet = sheet;
    this.own = own;
    this.pen = own.pen();
    this.links = links;
  }

  /**
   * Writes header and rows.
   *
   * @param target where rows are made: the sheet's streaming twin
   */
  void fill(Sheet target, Report report) {
    reading = report.reading();
    open = Set.copyOf(CoverageSheet.checks(report));
    rows = target;
    pen.turnTo(sheet);
    Row header = rows.createRow(0);
    for (int column = 0; column < HEADERS.size(); column++) {
      pen.text(header, column, HEADERS.get(column), Styles.Look.HEADER);
      sheet.setColumnWidth(column, WIDTHS[column] * 256);
    }
    Heights.points(header, 30);
    own.done(header);
    tally("Sentences", reading.sentences());
    tally("Cells of schedules", reading.cells());
    for (TaughtWord word : reading.taught()) taught(word);
    for (ReadingAccount.WordsNotUnderstood each : reading.notUnderstood()) notUnderstood(each);
    for (ReadingAccount.UndecidedTile each : reading.undecided()) undecided(each);
    for (Account.TableAccount table : reading.tables()) table(table);
    for (Account.SetAside aside : reading.setAside()) setAside(aside);
    SheetSetup.header(sheet, 1, Math.max(at - 1, 1), HEADERS.size());
  }

  private void tally(String what, Account.Tally tally) {
    String words =
        tally.read()
            + " read, "
            + tally.context()
            + " as context, "
            + tally.setAside()
            + " set aside, "
            + tally.notUnderstood()
            + " not understood";
    row(null, "all documents", what + ": " + tally.all(), words, "", "", "");
  }

  private void taught(TaughtWord word) {
    String as = reading.label(word.as());
    row(null, "taught " + word.kind(), word.words(), as, word.source(), "", "");
  }

  private void notUnderstood(ReadingAccount.WordsNotUnderstood each) {
    row(
        each.words().origin(),
        Fate.NOT_UNDERSTOOD.words(),
        withSamples(each.words()),
        "",
        "",
        each.couldAnswer().stream().filter(open::contains).collect(Collectors.joining(", ")),
        String.join(", ", each.tags()));
  }

  private static String withSamples(Account.Unread words) {
    return words.samples().isEmpty()
        ? words.text()
        : words.text() + ": \"" + String.join("\", \"", words.samples()) + "\"";
  }

  private void undecided(ReadingAccount.UndecidedTile each) {
    String why =
        each.speaksFor().isEmpty()
            ? "nothing says what it is"
            : "below '" + String.join("', '", each.speaksFor()) + "'";
    row(
        each.origin(),
        "undecided: glass or not",
        String.join("; ", each.speaksAgainst()),
        "",
        why,
        "",
        each.tag());
  }

  private void table(Account.TableAccount table) {
    row(table.origin(), "table", "", takenFor(table), "", "", "");
    for (Account.Column column : table.columns()) {
      String unit = column.unit().isEmpty() ? "" : " (" + column.unit() + ")";
      boolean taken = !column.as().isEmpty();
      String as = taken ? reading.label(column.as()) + unit : Fate.NOT_UNDERSTOOD.words();
      row(table.origin(), "column", column.heading(), as, column.evidence(), "", "");
    }
  }

  private static String takenFor(Account.TableAccount table) {
    return switch (table.takenFor()) {
      case "rooms" -> "schedule of rooms";
      case "none" -> "no schedule";
      default -> table.takenFor();
    };
  }

  private void setAside(Account.SetAside aside) {
    row(
        aside.origin(),
        Fate.SET_ASIDE.words(),
        aside.count() == 1 ? "" : aside.count() + " of them, the first here",
        "",
        aside.why(),
        "",
        "");
  }

  private void row(Origin origin, String... cells) {
    if (at > SheetSetup.LAST_ROW) return;
    Row row = rows.createRow(at++);
    boolean full = at > SheetSetup.LAST_ROW;
    String place = origin == null ? "" : DisplayText.of(origin.place());
    if (full) place = SheetSetup.FULL;
    pen.text(row, 0, place, Styles.Look.TEXT);
    if (origin == null || full) pen.text(row, 1, "", Styles.Look.TEXT);
    else pen.put(row, 1, links.link(origin), Styles.Look.LINK);
    for (int i = 0; i < cells.length; i++)
      pen.text(row, i + 2, full ? "" : cells[i], Styles.Look.TEXT);
    Heights.fit(row, WIDTHS);
    own.done(row);
  }
}
