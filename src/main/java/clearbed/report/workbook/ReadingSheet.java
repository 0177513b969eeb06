package clearbed.report.workbook;

import clearbed.base.DisplayText;
import clearbed.model.Account;
import clearbed.model.Fate;
import clearbed.model.Origin;
import clearbed.model.ReadingAccount;
import clearbed.model.TaughtWord;
import java.util.List;
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
          "Samples",
          "Could answer",
          "Tiles");
  private static final int[] WIDTHS = {36, 6, 15, 48, 24, 34, 34, 34, 22};

  private final XSSFSheet sheet;
  private final RenewedSheet own;
  private final Pen pen;
  private final Places places;
  private Sheet rows;
  private int at = 1;

  ReadingSheet(XSSFSheet sheet, RenewedSheet own, Places places) {
    this.sheet = sheet;
    this.own = own;
    this.pen = own.pen();
    this.places = places;
  }

  /**
   * Writes header and rows.
   *
   * @param target where rows are made: the sheet's streaming twin
   */
  void fill(Sheet target, ReadingAccount reading) {
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
    for (ReadingAccount.NotUnderstood each : reading.notUnderstood()) notUnderstood(each);
    for (ReadingAccount.Undecided each : reading.undecided()) undecided(each);
    for (Account.TableAccount table : reading.tables()) table(table);
    for (Account.SetAside aside : reading.setAside()) setAside(aside);
    SheetSetup.header(sheet, 1, Math.max(at - 1, 1), HEADERS.size());
  }

  private void tally(String what, Account.Tally tally) {
    String words =
        tally.read()
            + " read, "
            + tally.context()
            + " context, "
            + tally.setAside()
            + " set aside, "
            + tally.notUnderstood()
            + " not understood";
    row(null, "all documents", what + ": " + tally.all(), words, "", "", "", "");
  }

  private void taught(TaughtWord word) {
    row(null, "taught " + word.kind(), word.words(), word.as(), word.source(), "", "", "");
  }

  private void notUnderstood(ReadingAccount.NotUnderstood each) {
    row(
        each.words().origin(),
        Fate.NOT_UNDERSTOOD.words(),
        each.words().text(),
        "",
        "",
        String.join("; ", each.words().samples()),
        String.join(", ", each.couldAnswer()),
        String.join(", ", each.tags()));
  }

  private void undecided(ReadingAccount.Undecided each) {
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
        "",
        each.tag());
  }

  private void table(Account.TableAccount table) {
    row(table.origin(), "table", "", table.takenFor(), "", "", "", "");
    for (Account.Column column : table.columns()) {
      String unit = column.unit().isEmpty() ? "" : " in " + column.unit();
      String as = column.as().isEmpty() ? Fate.NOT_UNDERSTOOD.words() : column.as() + unit;
      row(table.origin(), "column", column.heading(), as, column.evidence(), "", "", "");
    }
  }

  private void setAside(Account.SetAside aside) {
    row(
        aside.origin(),
        Fate.SET_ASIDE.words(),
        aside.count() == 1 ? "" : aside.count() + " of them, the first here",
        "",
        aside.why(),
        "",
        "",
        "");
  }

  private void row(Origin origin, String... cells) {
    if (at > SheetSetup.LAST_ROW) return;
    Row row = rows.createRow(at++);
    boolean full = at > SheetSetup.LAST_ROW;
    String place = origin == null ? "" : DisplayText.of(origin.place());
    if (full) place = "The sheet is full; the rest is in the JSON file.";
    pen.text(row, 0, place, Styles.Look.TEXT);
    if (origin == null || full) pen.text(row, 1, "", Styles.Look.TEXT);
    else pen.put(row, 1, places.link(origin), Styles.Look.LINK);
    for (int i = 0; i < cells.length; i++)
      pen.text(row, i + 2, full ? "" : cells[i], Styles.Look.TEXT);
    Heights.fit(row, WIDTHS);
    own.done(row);
  }
}
