package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.model.report.State;
import clearbed.report.DemoReport;
import clearbed.report.workbook.FindingsWorkbook;
import clearbed.report.workbook.OfficeProgram;
import clearbed.report.workbook.layout.Headers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CarryTest {
  private static final String ASKED = "bond-strength/GT-1";
  private static final String GONE = "bond-strength/GT-2";
  private static final String LATE = "joint-sealant/GT-5";
  private static final String MARCH = "2026-03-02";
  private static final String APRIL = "2026-04-06";
  private static final String MAY = "2026-05-04";
  private static final String JUNE = "2026-06-01";

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void a_first_issue() throws Exception {
    file = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(march(), file);
  }

  private static Report march() {
    return DemoReport.report(MARCH, without(LATE));
  }

  private static Predicate<Finding> without(String... ids) {
    return finding -> !List.of(ids).contains(finding.id());
  }

  private Carry issue(Report report) throws Exception {
    Carry carry = EarlierLog.read(file).into(report);
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), file);
    return carry;
  }

  private static State state(Carry carry, String id) {
    return finding(carry.report(), id).state();
  }

  private static Finding finding(Report report, String id) {
    return report.findings().stream().filter(f -> f.id().equals(id)).findFirst().orElseThrow();
  }

  private void people() throws Exception {
    Desk.edit(
        file,
        book -> {
          Desk.type(book, Headers.QUESTIONS, ASKED, Headers.STATUS, "answered");
          Desk.type(book, Headers.QUESTIONS, ASKED, Headers.ASKED_OF, "Tile supplier");
          Desk.type(
              book, Headers.QUESTIONS, ASKED, Headers.ANSWER, "  450 psi, see letter\nof May ");
          Desk.type(book, Headers.QUESTIONS, ASKED, Headers.QUESTION, "Our own words: how strong?");
          Desk.type(book, Headers.QUESTIONS, GONE, Headers.NOTE, "=ring them");
          Desk.addColumn(book, Headers.FINDINGS, "Trade");
          Desk.type(book, Headers.FINDINGS, GONE, "Trade", "tiling, lot 7");
          Desk.addColumn(book, Headers.QUESTIONS, "RFI");
          Desk.type(book, Headers.QUESTIONS, ASKED, "RFI", "RFI-0012");
          Sheet own = book.createSheet("Site notes");
          own.createRow(0).createCell(0).setCellValue("Met on site, 3 March");
          own.getRow(0).createCell(1).setCellFormula("COUNTA(Findings!A2:A40)");
          remark(book);
        });
  }

  private static void remark(XSSFWorkbook book) {
    XSSFSheet sheet = book.getSheet(Headers.FINDINGS);
    var drawing = sheet.createDrawingPatriarch();
    var comment = drawing.createCellComment(drawing.createAnchor(0, 0, 0, 0, 2, 3, 5, 6));
    comment.setString(book.getCreationHelper().createRichTextString("ask Wren about this"));
    comment.setAddress(Desk.row(book, Headers.FINDINGS, GONE).getCell(5).getAddress());
  }

  @Test
  void an_answer_holds_what_is_gone_is_resolved_what_is_new_is_new_and_what_returns_is_reopened()
      throws Exception {
    people();
    Carry april = issue(DemoReport.report(APRIL, without(GONE)));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(state(april, GONE)).isEqualTo(State.RESOLVED);
    assertThat(state(april, LATE)).isEqualTo(State.NEW);
    assertThat(state(april, "mortar-class/GT-4")).isEqualTo(State.OPEN);
    assertThat(april.log().lines().get(GONE).goneOn()).isEqualTo(APRIL);

    Carry may = issue(DemoReport.report(MAY, finding -> true));
    assertThat(state(may, GONE)).isEqualTo(State.REOPENED);
    assertThat(state(may, LATE)).isEqualTo(State.OPEN);
    assertThat(state(may, ASKED)).isEqualTo(State.ANSWERED);

    Carry june = issue(DemoReport.report(JUNE, without(LATE)));
    assertThat(state(june, GONE)).isEqualTo(State.OPEN);
    assertThat(state(june, LATE)).isEqualTo(State.RESOLVED);
    QuestionLog.LogLine line = june.log().lines().get(GONE);
    assertThat(line.firstSeen()).isEqualTo(MARCH);
    assertThat(line.lastSeen()).isEqualTo(JUNE);
  }

  @Test
  void the_sheet_tells_dates_and_age() throws Exception {
    issue(DemoReport.report(APRIL, without(GONE)));
    issue(DemoReport.report(MAY, without(GONE)));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(Desk.text(book, Headers.FINDINGS, GONE, Headers.STATE)).isEqualTo("resolved");
      assertThat(Desk.text(book, Headers.FINDINGS, GONE, Headers.GONE_ON)).isEqualTo(APRIL);
      assertThat(Desk.text(book, Headers.FINDINGS, GONE, Headers.AGE)).isEqualTo("35");
      assertThat(Desk.text(book, Headers.FINDINGS, GONE, Headers.LAST_SEEN)).isEqualTo(MARCH);
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, Headers.AGE)).isEqualTo("63");
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, Headers.LAST_SEEN)).isEqualTo(MAY);
    }
  }

  @Test
  void what_people_typed_is_kept_to_the_letter() throws Exception {
    people();
    issue(DemoReport.report(APRIL, without(GONE)));
    issue(DemoReport.report(MAY, without(GONE)));
    assertPeoplesWork("=ring them");
  }

  @Test
  void what_people_typed_outlives_a_save_in_another_spreadsheet_program() throws Exception {
    people();
    Assumptions.assumeTrue(OfficeProgram.openAndSave(file), "LibreOffice is not installed");
    Carry april = issue(DemoReport.report(APRIL, without(GONE)));
    assertThat(april.log().remarks()).isEmpty();
    Assumptions.assumeTrue(OfficeProgram.openAndSave(file), "LibreOffice is not installed");
    Carry may = issue(DemoReport.report(MAY, finding -> true));
    assertThat(state(may, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(state(may, GONE)).isEqualTo(State.REOPENED);
    assertPeoplesWork("=ring them");
    try (XSSFWorkbook book = Desk.open(file)) {
      Sheet aside = book.getSheet("Set aside");
      assertThat(aside.getLastRowNum()).isEqualTo(1);
      assertThat(aside.getRow(1).getCell(4).getStringCellValue()).startsWith("a formula");
    }
  }

  private void assertPeoplesWork(String note) throws Exception {
    try (XSSFWorkbook book = Desk.open(file)) {
      String questions = Headers.QUESTIONS;
      assertThat(Desk.text(book, questions, ASKED, Headers.STATUS)).isEqualTo("answered");
      assertThat(Desk.text(book, questions, ASKED, Headers.ASKED_OF)).isEqualTo("Tile supplier");
      assertThat(Desk.text(book, questions, ASKED, Headers.ANSWER))
          .isEqualTo("  450 psi, see letter\nof May ");
      assertThat(Desk.text(book, questions, ASKED, Headers.QUESTION))
          .isEqualTo("Our own words: how strong?");
      assertThat(Desk.text(book, questions, GONE, Headers.NOTE)).isEqualTo(note);
      assertThat(Desk.text(book, questions, ASKED, "RFI")).isEqualTo("RFI-0012");
      assertThat(Desk.text(book, Headers.FINDINGS, GONE, "Trade")).isEqualTo("tiling, lot 7");
      Sheet own = book.getSheet("Site notes");
      assertThat(own.getRow(0).getCell(0).getStringCellValue()).isEqualTo("Met on site, 3 March");
      // Whoever opens the file must not run what somebody else typed.
      assertThat(own.getRow(0).getCell(1).getCellType()).isEqualTo(CellType.STRING);
      assertThat(own.getRow(0).getCell(1).getStringCellValue())
          .isEqualTo("=COUNTA(Findings!A2:A40)");
      CellAddress place = Desk.row(book, Headers.FINDINGS, GONE).getCell(5).getAddress();
      assertThat(book.getSheet(Headers.FINDINGS).getCellComment(place).getString().getString())
          .isEqualTo("ask Wren about this");
    }
  }

  @Test
  void rows_stay_in_the_order_that_people_gave_them_and_new_ones_follow() throws Exception {
    Desk.edit(file, book -> swap(book.getSheet(Headers.FINDINGS), 1, 4));
    issue(DemoReport.report(APRIL, finding -> true));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(Desk.row(book, Headers.FINDINGS, ASKED).getRowNum()).isEqualTo(4);
      assertThat(Desk.row(book, Headers.FINDINGS, "bond-strength/GT-4").getRowNum()).isEqualTo(1);
      int last = book.getSheet(Headers.FINDINGS).getLastRowNum();
      assertThat(Desk.row(book, Headers.FINDINGS, LATE).getRowNum()).isEqualTo(last);
    }
  }

  private static void swap(XSSFSheet sheet, int one, int other) {
    XSSFRow upper = sheet.getRow(one);
    XSSFRow lower = sheet.getRow(other);
    for (int column = 0; column < upper.getLastCellNum(); column++) {
      var a = upper.getCell(column);
      var b = lower.getCell(column);
      if (a.getCellType() != org.apache.poi.ss.usermodel.CellType.STRING) continue;
      String text = a.getStringCellValue();
      a.setCellValue(b.getStringCellValue());
      b.setCellValue(text);
    }
  }

  @Test
  void columns_that_people_moved_or_formatted_stay_as_they_are() throws Exception {
    Desk.edit(
        file,
        book -> {
          XSSFSheet sheet = book.getSheet(Headers.FINDINGS);
          sheet.shiftColumns(5, sheet.getRow(0).getLastCellNum() - 1, 1);
          for (Row row : sheet) row.createCell(5).setCellValue(row.getRowNum() == 0 ? "Mine" : "x");
          sheet.setColumnWidth(5, 33 * 256);
          sheet.setColumnHidden(12, true);
        });
    issue(DemoReport.report(APRIL, finding -> true));
    try (XSSFWorkbook book = Desk.open(file)) {
      XSSFSheet sheet = book.getSheet(Headers.FINDINGS);
      assertThat(sheet.getColumnWidth(5)).isEqualTo(33 * 256);
      assertThat(sheet.isColumnHidden(12)).isTrue();
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, "Mine")).isEqualTo("x");
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, Headers.MESSAGE))
          .isEqualTo(finding(march(), ASKED).message());
      assertThat(sheet.getRow(0).getCell(6).getStringCellValue()).isEqualTo(Headers.MESSAGE);
    }
  }

  @Test
  void rows_without_a_match_are_kept_on_a_sheet_of_their_own_and_that_is_said() throws Exception {
    Desk.edit(
        file,
        book -> {
          Desk.type(book, Headers.QUESTIONS, ASKED, Headers.ANSWER, "yes, 450 psi");
          Desk.type(book, Headers.QUESTIONS, ASKED, Headers.ID, "bond-strength/GT-1 bis");
          Row twin = Desk.row(book, Headers.QUESTIONS, GONE);
          Sheet sheet = book.getSheet(Headers.QUESTIONS);
          Row copy = sheet.createRow(sheet.getLastRowNum() + 1);
          int id = Desk.layout(book, Headers.QUESTIONS).column(Headers.ID);
          copy.createCell(id).setCellValue(twin.getCell(id).getStringCellValue());
          copy.createCell(2).setCellValue("asked a second person");
        });
    Carry april = issue(DemoReport.report(APRIL, without(LATE)));
    assertThat(april.log().remarks())
        .anyMatch(remark -> remark.contains("no finding of the earlier issue has this id"))
        .anyMatch(remark -> remark.contains("an earlier row has the same id"))
        .anyMatch(remark -> remark.contains("rows of 1 findings were missing"));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(texts(book.getSheet("Set aside"), 3))
          .contains("yes, 450 psi", "asked a second person");
      assertThat(Desk.text(book, Headers.QUESTIONS, ASKED, Headers.NUMBER)).isEqualTo("1");
      assertThat(Desk.layout(book, Headers.QUESTIONS).strays()).isEmpty();
      assertThat(book.getSheet(Headers.QUESTIONS).getLastRowNum()).isEqualTo(17);
    }
  }

  private static List<String> texts(Sheet sheet, int column) {
    List<String> texts = new java.util.ArrayList<>();
    for (Row row : sheet) texts.add(row.getCell(column).getStringCellValue());
    return texts;
  }

  @Test
  void deleted_columns_come_back_and_that_is_said() throws Exception {
    Desk.edit(
        file,
        book -> {
          XSSFSheet sheet = book.getSheet(Headers.FINDINGS);
          int column = Desk.layout(book, Headers.FINDINGS).column(Headers.SOURCE);
          for (Row row : sheet) row.removeCell(row.getCell(column));
        });
    Carry april = issue(DemoReport.report(APRIL, finding -> true));
    assertThat(april.log().remarks()).anyMatch(remark -> remark.contains("added again: Source"));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, Headers.SOURCE))
          .isEqualTo("common practice, no source");
    }
  }

  @Test
  void without_the_column_of_ids_a_question_is_known_by_its_number() throws Exception {
    people();
    Desk.edit(file, book -> empty(book.getSheet(Headers.QUESTIONS), Headers.ID));
    Carry april = issue(DemoReport.report(APRIL, finding -> true));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(april.log().remarks()).anyMatch(remark -> remark.contains("added again: Id"));
    assertPeoplesWork("=ring them");
    try (XSSFWorkbook book = Desk.open(file)) {
      Sheet aside = book.getSheet("Set aside");
      assertThat(aside.getLastRowNum()).isEqualTo(1);
      assertThat(aside.getRow(1).getCell(4).getStringCellValue()).startsWith("a formula");
    }
  }

  @Test
  void without_the_column_of_ids_what_was_typed_among_the_findings_is_set_aside_and_that_is_said()
      throws Exception {
    people();
    Desk.edit(file, book -> empty(book.getSheet(Headers.FINDINGS), Headers.ID));
    Carry april = issue(DemoReport.report(APRIL, finding -> true));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(april.log().remarks())
        .anyMatch(remark -> remark.contains("added again: Id"))
        .anyMatch(remark -> remark.contains("the row has no id"));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(texts(book.getSheet("Set aside"), 3))
          .contains("tiling, lot 7", "ask Wren about this");
      assertThat(Desk.row(book, Headers.FINDINGS, GONE)).isNotNull();
    }
  }

  private static void empty(XSSFSheet sheet, String header) {
    int column = Desk.layout(sheet.getWorkbook(), sheet.getSheetName()).column(header);
    for (Row row : sheet) row.removeCell(row.getCell(column));
  }

  @Test
  void a_sheet_that_people_renamed_is_found_by_its_columns_and_named_as_before() throws Exception {
    people();
    Desk.edit(file, book -> book.setSheetName(book.getSheetIndex(Headers.QUESTIONS), "RFI log"));
    Carry april = issue(DemoReport.report(APRIL, finding -> true));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(april.log().remarks())
        .contains("The sheet \"RFI log\" was Questions and is called so again.");
    assertPeoplesWork("=ring them");
  }

  @Test
  void text_typed_over_ours_is_set_aside_before_it_is_written_anew() throws Exception {
    Desk.edit(
        file, book -> Desk.type(book, Headers.FINDINGS, ASKED, Headers.FOUND, "they told me 450"));
    issue(DemoReport.report(APRIL, finding -> true));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(texts(book.getSheet("Set aside"), 3)).contains("they told me 450");
      assertThat(Desk.text(book, Headers.FINDINGS, ASKED, Headers.FOUND)).isEmpty();
    }
  }

  @Test
  void a_hidden_sheet_of_the_former_name_is_taken_for_what_it_is() throws Exception {
    people();
    Desk.edit(file, book -> book.setSheetName(book.getSheetIndex("For the next issue"), "Ledger"));
    Carry april = issue(DemoReport.report(APRIL, without(GONE)));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(april.log().remarks()).noneMatch(remark -> remark.contains("is gone"));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(book.getSheet("Ledger")).isNull();
      assertThat(book.getSheet("For the next issue").getLastRowNum()).isGreaterThan(2);
    }
  }

  @Test
  void a_sheet_of_the_former_name_that_somebody_made_is_theirs() throws Exception {
    people();
    Desk.edit(
        file, book -> book.createSheet("Ledger").createRow(0).createCell(0).setCellValue("ours"));
    Carry april = issue(DemoReport.report(APRIL, without(GONE)));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(texts(book.getSheet("Ledger"), 0)).containsExactly("ours");
    }
  }

  @Test
  void without_its_hidden_sheet_a_workbook_is_still_carried() throws Exception {
    people();
    Desk.edit(file, book -> book.removeSheetAt(book.getSheetIndex("For the next issue")));
    Carry april = issue(DemoReport.report(APRIL, without(GONE)));
    assertThat(state(april, ASKED)).isEqualTo(State.ANSWERED);
    assertThat(state(april, GONE)).isEqualTo(State.RESOLVED);
    assertThat(april.log().lines().get(ASKED).firstSeen()).isEqualTo(MARCH);
    assertThat(april.log().remarks()).anyMatch(remark -> remark.contains("next issue\" is gone"));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(texts(book.getSheet("Set aside"), 3)).contains("Our own words: how strong?");
    }
  }

  @Test
  void a_finding_whose_document_could_not_be_read_this_time_is_not_resolved() throws Exception {
    Report report = DemoReport.report(APRIL, without(GONE));
    Report broken =
        new Report(
            report.run(),
            List.of(
                new Report.DocumentSummary(
                    DemoReport.SCHEDULE,
                    "xlsx",
                    Document.Status.UNREADABLE,
                    "it is damaged",
                    0,
                    0,
                    List.of())),
            report.entries(),
            report.findings(),
            report.verdicts(),
            report.calculations(),
            report.checks());
    Carry april = issue(broken);
    assertThat(state(april, GONE)).isEqualTo(State.OPEN);
    assertThat(april.log().lines().get(GONE).remark()).contains("it is damaged");
  }

  @Test
  void an_answer_that_stood_when_the_finding_came_back_counts_only_once_it_is_changed()
      throws Exception {
    people();
    issue(DemoReport.report(APRIL, without(ASKED)));
    Carry may = issue(DemoReport.report(MAY, finding -> true));
    assertThat(state(may, ASKED)).isEqualTo(State.REOPENED);
    Carry june = issue(DemoReport.report(JUNE, finding -> true));
    assertThat(state(june, ASKED)).isEqualTo(State.OPEN);
    Desk.edit(file, b -> Desk.type(b, Headers.QUESTIONS, ASKED, Headers.ANSWER, "510 psi"));
    assertThat(state(issue(DemoReport.report("2026-07-01", f -> true)), ASKED))
        .isEqualTo(State.ANSWERED);
  }

  @Test
  void question_numbers_are_never_given_twice() throws Exception {
    issue(DemoReport.report(APRIL, without(GONE)));
    Carry may = issue(DemoReport.report(MAY, finding -> true));
    assertThat(may.log().lines().values())
        .filteredOn(line -> line.number() > 0)
        .extracting(QuestionLog.LogLine::number)
        .doesNotHaveDuplicates();
    assertThat(may.log().lines().get(LATE).number()).isEqualTo(18);
  }

  @Test
  void the_earlier_file_is_never_changed_by_reading_it() throws Exception {
    byte[] before = Files.readAllBytes(file);
    EarlierLog.read(file).into(DemoReport.report(APRIL, without(GONE)));
    assertThat(file).hasBinaryContent(before);
  }

  @Test
  void the_same_earlier_workbook_and_run_give_the_same_bytes() throws Exception {
    people();
    Carry carry = EarlierLog.read(file).into(DemoReport.report(APRIL, without(GONE)));
    Path one = folder.resolve("one.xlsx");
    Path two = folder.resolve("two.xlsx");
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), one);
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), two);
    assertThat(two).hasSameBinaryContentAs(one);
  }

  @Test
  void the_summary_says_what_changed_and_who_holds_what() throws Exception {
    people();
    Desk.edit(
        file,
        book -> {
          String late = "bond-strength/GT-3";
          Desk.type(book, Headers.QUESTIONS, late, Headers.ASKED_OF, "Engineer");
          Desk.row(book, Headers.QUESTIONS, late)
              .getCell(Desk.layout(book, Headers.QUESTIONS).column(Headers.DUE))
              .setCellValue(java.time.LocalDate.parse("2026-03-20"));
        });
    issue(DemoReport.report(APRIL, without(GONE)));
    Files.createDirectories(Path.of("target/demo"));
    Files.copy(
        file,
        Path.of("target/demo/carried.xlsx"),
        java.nio.file.StandardCopyOption.REPLACE_EXISTING);
    try (XSSFWorkbook book = Desk.open(file)) {
      StringBuilder summary = new StringBuilder();
      for (Row row : book.getSheet("Summary")) {
        row.forEach(cell -> summary.append(cell).append(' '));
      }
      assertThat(summary)
          .contains("What changed since the issue of " + MARCH)
          .contains("resolved 1 ")
          .contains("with Engineer 1 open")
          .contains("past due 1 open (due before " + APRIL + ")")
          .contains("asked of nobody yet");
    }
  }
}
