package clearbed.track;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.model.report.Report;
import clearbed.model.value.Entry;
import clearbed.report.DemoReport;
import clearbed.report.workbook.FindingsWorkbook;
import clearbed.report.workbook.OfficeProgram;
import clearbed.report.workbook.layout.Headers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellUtil;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever people type on whichever sheet is in the next workbook, and in the ones after it. */
class TypedAnywhereTest {
  private static final String BOND = "bond-strength/GT-1";
  private static final String BACKING = "backing/GT-6";
  private static final List<String> DATES =
      List.of("2026-03-02", "2026-04-06", "2026-05-04", "2026-06-01");

  private static final String SPACING = "Spacing of joints";
  private static final int NUMBER = 1;
  private static final int WHY = 5;

  @TempDir Path folder;
  private Path file;
  private boolean office;

  /** Text and its old address: where it stood, or where it stands for good. */
  private final Map<String, String> typed = new LinkedHashMap<>();

  @BeforeEach
  void a_first_issue() throws Exception {
    file = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(report(0), file);
  }

  /** Without the calculation of GT-5 from the third issue on. */
  private static Report report(int issue) {
    Report all = DemoReport.report(DATES.get(issue), finding -> true);
    return new Report(
        all.run(),
        all.documents(),
        all.entries(),
        all.findings(),
        all.verdicts(),
        issue < 2 ? all.calculations() : all.calculations().subList(0, 1),
        all.checks());
  }

  private Carry issue(int number) throws Exception {
    Carry carry = EarlierLog.read(file).into(report(number));
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), file);
    return carry;
  }

  private void person(Consumer<XSSFWorkbook> work) throws Exception {
    Desk.edit(file, work);
    if (office) {
      Assumptions.assumeTrue(OfficeProgram.openAndSave(file), "LibreOffice is not installed");
    }
  }

  @Test
  void everything_typed_on_every_sheet_is_there_after_three_more_issues() throws Exception {
    threeIssues();
  }

  @Test
  void the_same_holds_when_another_spreadsheet_program_saves_every_issue() throws Exception {
    office = true;
    threeIssues();
  }

  private void threeIssues() throws Exception {
    person(this::everywhere);
    issue(1);
    everythingIsThere();
    int aside = kept().size();
    person(book -> {});
    issue(2);
    everythingIsThere();
    // The calculation of GT-5 is gone, and what was typed at it has no place any more.
    int gone = kept().size() - aside;
    assertThat(gone).isEqualTo(2);
    person(book -> {});
    issue(3);
    everythingIsThere();
    assertThat(kept()).hasSize(aside + gone);
  }

  private void everywhere(XSSFWorkbook book) {
    beside(book, "Summary", "error", 9);
    over(book, "Summary", "warning", 1);
    below(book, "Summary");

    type(book.getSheet("Tile by check"), 0, 16, "note Tile by check header");
    beside(book, "Tile by check", "GT-3", 16);
    over(book, "Tile by check", "GT-4", 5);
    below(book, "Tile by check");

    beside(book, "Documents", "Moorhen Baths/details.pdf", 9);
    over(book, "Documents", "Moorhen Baths/logo.png", 4);
    below(book, "Documents");

    Sheet calculations = book.getSheet("Calculations");
    List<Row> spacings = rows(calculations, SPACING);
    spacings.get(0).getCell(NUMBER).setCellValue(10);
    spacings.get(1).getCell(NUMBER).setCellValue(9.5);
    type(calculations, spacings.get(1).getRowNum(), 9, "note at GT-5");
    type(calculations, spacings.get(0).getRowNum(), 9, "note at GT-3");
    Row width = rows(calculations, "Stated width").get(0);
    over(width.getCell(NUMBER), "1/8 or 3/16");
    Row range = rows(calculations, "Temperature range of the tile").get(0);
    over(range.getCell(3), "as the plant room reads");
    Cell formula = CellUtil.getCell(range, 10);
    formula.setCellFormula("B" + (range.getRowNum() + 1) + "*2.5");
    typed.put("=" + formula.getCellFormula(), address(formula));
    below(book, "Calculations");

    String findings = Headers.FINDINGS;
    typed.put("remark by hand", "");
    Desk.type(book, findings, BOND, Headers.REMARK, "remark by hand");
    over(Desk.cell(book, findings, BACKING, Headers.STATE), "closed, says Wren");
    over(Desk.cell(book, findings, BACKING, Headers.MESSAGE), "another message");
    Cell sum = Desk.cell(book, findings, BACKING, Headers.EXPECTED);
    sum.setCellFormula("1+1");
    typed.put("=1+1", address(sum));
    Desk.addColumn(book, findings, "Trade");
    typed.put("tiling, lot 7", "");
    Desk.type(book, findings, BACKING, "Trade", "tiling, lot 7");
    type(book.getSheet(findings), 3, 25, "note without a heading");
    below(book, findings);

    String questions = Headers.QUESTIONS;
    for (String header :
        List.of(Headers.ASKED_OF, Headers.ANSWER, Headers.NOTE, Headers.QUESTION)) {
      typed.put("typed in " + header, "");
      Desk.type(book, questions, BOND, header, "typed in " + header);
    }
    over(Desk.cell(book, questions, BOND, Headers.NUMBER), "1 bis");
    over(Desk.cell(book, questions, BOND, Headers.LEVEL), "no error");
    below(book, questions);

    type(book.createSheet("Site notes"), 4, 2, "met on site");
    type(book.getSheet("For the next issue"), 1, 3, "note on the hidden sheet");
    for (String name : List.of("Summary", "Calculations", findings)) comment(book.getSheet(name));
    box(book.getSheet("Tile by check"));
  }

  /** Beside a row of ours, where nothing of ours stands: it stays there. */
  private void beside(XSSFWorkbook book, String sheet, String label, int column) {
    type(
        book.getSheet(sheet),
        row(book.getSheet(sheet), label).getRowNum(),
        column,
        "note " + label);
  }

  private void type(Sheet sheet, int row, int column, String text) {
    CellUtil.getCell(CellUtil.getRow(row, sheet), column).setCellValue(text);
    typed.put(text, "");
  }

  private void over(XSSFWorkbook book, String sheet, String label, int column) {
    over(row(book.getSheet(sheet), label).getCell(column), "over " + sheet + " " + label);
  }

  private void over(Cell cell, String text) {
    cell.setBlank();
    cell.setCellValue(text);
    typed.put(text, address(cell));
  }

  private void below(XSSFWorkbook book, String name) {
    Sheet sheet = book.getSheet(name);
    Cell cell = CellUtil.getCell(CellUtil.getRow(sheet.getLastRowNum() + 3, sheet), 2);
    over(cell, "row below " + name);
  }

  private void comment(XSSFSheet sheet) {
    String text = "comment on " + sheet.getSheetName();
    var drawing = sheet.createDrawingPatriarch();
    var comment = drawing.createCellComment(drawing.createAnchor(0, 0, 0, 0, 2, 3, 5, 6));
    comment.setString(sheet.getWorkbook().getCreationHelper().createRichTextString(text));
    comment.setAddress(new CellAddress(4, 2));
    typed.put(
        text, sheet.getSheetName().equals(Headers.FINDINGS) ? "" : sheet.getSheetName() + "!C5");
  }

  private void box(XSSFSheet sheet) {
    XSSFClientAnchor anchor = new XSSFClientAnchor(0, 0, 0, 0, 3, 14, 6, 18);
    var box = sheet.createDrawingPatriarch().createTextbox(anchor);
    box.setText("words in a box");
    typed.put("words in a box", sheet.getSheetName() + "!D15");
  }

  private void everythingIsThere() throws Exception {
    try (XSSFWorkbook book = Desk.open(file)) {
      List<String> all = texts(book);
      List<String> kept = kept();
      typed.forEach(
          (text, address) -> {
            assertThat(all).as(text).anyMatch(there -> there.contains(text));
            if (address.isEmpty()) return;
            assertThat(kept).as(text).anyMatch(line -> line.startsWith(address + " | " + text));
          });
      assertThat(kept)
          .as("what stood there before")
          .anyMatch(line -> line.contains("over Summary warning | a risk to weigh"))
          .anyMatch(line -> line.contains("1/8 or 3/16 | 0.125"))
          .anyMatch(line -> line.contains("closed, says Wren | new"));
      Row spacing = rows(book.getSheet("Calculations"), SPACING).get(0);
      assertThat(spacing.getCell(NUMBER).getNumericCellValue()).isEqualTo(10);
      assertThat(spacing.getCell(WHY).getStringCellValue())
          .isEqualTo("typed in place of 12 ft; 12'-0\" o.c.");
    }
  }

  private static String address(Cell cell) {
    return cell.getSheet().getSheetName() + "!" + cell.getAddress();
  }

  private List<String> kept() throws Exception {
    List<String> lines = new ArrayList<>();
    try (XSSFWorkbook book = Desk.open(file)) {
      for (Row row : book.getSheet("Set aside")) {
        lines.add(text(row, 0) + "!" + text(row, 1) + " | " + text(row, 3) + " | " + text(row, 7));
      }
    }
    return lines;
  }

  private static String text(Row row, int column) {
    Cell cell = row.getCell(column);
    return cell == null ? "" : cell.getStringCellValue();
  }

  /** Every text of every sheet in sight, comments too. */
  private static List<String> texts(XSSFWorkbook book) {
    List<String> texts = new ArrayList<>();
    for (Sheet sheet : book) {
      if (sheet.getSheetName().equals("For the next issue")) continue;
      for (Row row : sheet) {
        for (Cell cell : row) {
          if (cell.getCellType() == CellType.STRING) texts.add(cell.getStringCellValue());
        }
      }
      sheet.getCellComments().values().forEach(each -> texts.add(each.getString().getString()));
    }
    return texts;
  }

  private static Row row(Sheet sheet, String label) {
    return rows(sheet, label).get(0);
  }

  private static List<Row> rows(Sheet sheet, String label) {
    List<Row> rows = new ArrayList<>();
    for (Row row : sheet) {
      Cell first = row.getCell(0);
      boolean isText = first != null && first.getCellType() == CellType.STRING;
      if (isText && first.getStringCellValue().equals(label)) rows.add(row);
    }
    return rows;
  }

  @Test
  void notes_stay_beside_the_rows_that_they_were_typed_at() throws Exception {
    person(
        book -> {
          beside(book, "Tile by check", "GT-3", 16);
          type(book.getSheet("Tile by check"), 0, 16, "Our view");
          Cell number = CellUtil.getCell(row(book.getSheet("Tile by check"), "GT-5"), 17);
          number.setCellValue(0.125);
          beside(book, "Documents", "Moorhen Baths/details.pdf", 10);
          type(
              book.getSheet("Calculations"),
              rows(book.getSheet("Calculations"), SPACING).get(1).getRowNum(),
              9,
              "of GT-5");
        });
    issue(1);
    issue(1);
    try (XSSFWorkbook book = Desk.open(file)) {
      Sheet coverage = book.getSheet("Tile by check");
      assertThat(text(row(coverage, "GT-3"), 16)).isEqualTo("note GT-3");
      assertThat(text(coverage.getRow(0), 16)).isEqualTo("Our view");
      assertThat(row(coverage, "GT-5").getCell(17).getNumericCellValue()).isEqualTo(0.125);
      Row details = row(book.getSheet("Documents"), "Moorhen Baths/details.pdf");
      assertThat(text(details, 10)).isEqualTo("note Moorhen Baths/details.pdf");
      assertThat(text(rows(book.getSheet("Calculations"), SPACING).get(1), 9)).isEqualTo("of GT-5");
      assertThat(book.getSheet("Set aside")).isNull();
      assertThat(texts(book))
          .anyMatch(text -> text.startsWith("Sheet Tile by check: what was typed"));
    }
  }

  @Test
  void a_changed_input_moves_the_results_and_is_marked_until_it_is_changed_back() throws Exception {
    person(
        book ->
            rows(book.getSheet("Calculations"), SPACING).get(0).getCell(NUMBER).setCellValue(10));
    issue(1);
    issue(2);
    try (XSSFWorkbook book = Desk.open(file)) {
      Sheet sheet = book.getSheet("Calculations");
      Cell movement = row(sheet, "Movement of the tile").getCell(NUMBER);
      assertThat(movement.getCellType()).isEqualTo(CellType.FORMULA);
      assertThat(movement.getNumericCellValue()).isCloseTo(9e-6 * 10 * 12 * 80, within(1e-12));
      assertThat(book.getSheet("Calculations").getDrawingPatriarch().getCharts())
          .anyMatch(chart -> chart.getCTChart().xmlText().contains("with inputs that were typed"));
      assertThat(row(sheet, "GT-3: Width required").getCell(5).getStringCellValue())
          .endsWith("with inputs that were typed");
      assertThat(texts(book))
          .contains(
              "Sheet Calculations, GT-3: Width of the movement joint, Spacing of joints: 10 ft,"
                  + " typed in place of 12 ft; the results there follow it.");
      assertThat(book.getSheet("Set aside")).isNull();
    }
    person(
        book ->
            rows(book.getSheet("Calculations"), SPACING).get(0).getCell(NUMBER).setCellValue(12));
    issue(3);
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(text(row(book.getSheet("Calculations"), SPACING), WHY)).isEqualTo("12'-0\" o.c.");
      assertThat(texts(book)).noneMatch(text -> text.contains("typed in place"));
      assertThat(book.getSheet("Set aside")).isNull();
    }
  }

  @Test
  void rows_that_people_sorted_or_put_in_are_not_taken_for_typed() throws Exception {
    person(
        book -> {
          swap(book.getSheet("Tile by check"), 1, 6);
          Sheet calculations = book.getSheet("Calculations");
          int at = rows(calculations, SPACING).get(0).getRowNum();
          calculations.shiftRows(at, calculations.getLastRowNum(), 1);
          over(CellUtil.getCell(CellUtil.getRow(at, calculations), 0), "a row put in");
          rows(calculations, SPACING).get(1).getCell(NUMBER).setCellValue(7);
        });
    issue(1);
    assertThat(kept()).hasSize(2).anyMatch(line -> line.contains("a row put in"));
    try (XSSFWorkbook book = Desk.open(file)) {
      List<Row> spacings = rows(book.getSheet("Calculations"), SPACING);
      assertThat(spacings.get(0).getCell(NUMBER).getNumericCellValue()).isEqualTo(12);
      assertThat(spacings.get(1).getCell(NUMBER).getNumericCellValue()).isEqualTo(7);
    }
  }

  private static void swap(Sheet sheet, int one, int other) {
    for (int column = 0; column < sheet.getRow(one).getLastCellNum(); column++) {
      Cell upper = sheet.getRow(one).getCell(column);
      Cell lower = sheet.getRow(other).getCell(column);
      String text = upper.getStringCellValue();
      upper.setCellValue(lower.getStringCellValue());
      lower.setCellValue(text);
    }
  }

  @Test
  void a_column_that_people_put_in_is_kept_and_ours_beside_it_are_not_taken_for_typed()
      throws Exception {
    person(
        book -> {
          XSSFSheet coverage = book.getSheet("Tile by check");
          coverage.shiftColumns(4, coverage.getRow(0).getLastCellNum() - 1, 1);
          for (Row row : coverage) row.createCell(4).setCellValue("put in " + row.getRowNum());
        });
    issue(1);
    assertThat(kept()).hasSize(10).contains("Tile by check!E4 | put in 3 | ");
  }

  @Test
  void without_what_we_noted_the_sheets_are_kept_whole() throws Exception {
    person(
        book -> {
          beside(book, "Tile by check", "GT-3", 16);
          over(book, "Summary", "warning", 1);
          book.removeSheetAt(book.getSheetIndex("For the next issue"));
        });
    issue(1);
    issue(2);
    try (XSSFWorkbook book = Desk.open(file)) {
      Sheet aside = book.getSheet("Tile by check (set aside)");
      assertThat(text(row(aside, "GT-3"), 16)).isEqualTo("note GT-3");
      assertThat(text(row(book.getSheet("Summary (set aside)"), "warning"), 1))
          .isEqualTo("over Summary warning");
      assertThat(book.getSheet("Tile by check (set aside) 2")).isNull();
      assertThat(book.getSheet("Calculations (set aside) 2")).isNull();
    }
  }

  @Test
  void a_workbook_without_our_mark_is_known_by_its_hidden_sheet_or_its_headings() throws Exception {
    person(TypedAnywhereTest::unmark);
    assertThat(EarlierLog.read(file).log().lines()).hasSize(24);
    assertThat(OpenQuestions.read(file, false).questions()).isNotEmpty();
    person(book -> book.removeSheetAt(book.getSheetIndex("For the next issue")));
    assertThat(EarlierLog.read(file).log().lines()).isNotEmpty();
    assertThat(OpenQuestions.read(file, false).questions()).isNotEmpty();
    issue(1);
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(book.getProperties().getCustomProperties().contains(FindingsWorkbook.MARK))
          .isTrue();
    }
  }

  private static void unmark(XSSFWorkbook book) {
    var properties = book.getProperties().getCustomProperties().getUnderlyingProperties();
    while (properties.sizeOfPropertyArray() > 0) properties.removeProperty(0);
  }

  @Test
  void questions_on_a_sheet_that_people_renamed_keep_their_numbers_without_the_hidden_sheet()
      throws Exception {
    Map<String, Integer> before = numbers(EarlierLog.read(file));
    person(
        book -> {
          unmark(book);
          book.removeSheetAt(book.getSheetIndex("For the next issue"));
          book.setSheetName(book.getSheetIndex(Headers.QUESTIONS), "RFI log");
          type(book.createSheet(Headers.QUESTIONS), 0, 0, "what we still have to ask ourselves");
        });
    Carry carry = issue(1);
    assertThat(numbers(EarlierLog.read(file))).isEqualTo(before);
    assertThat(carry.log().remarks())
        .anyMatch(remark -> remark.contains("\"RFI log\" was Questions"));
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(Desk.layout(book, Headers.QUESTIONS).rows()).hasSize(18);
      assertThat(book.getSheet("RFI log")).isNull();
      assertThat(text(book.getSheet("Questions (set aside)").getRow(0), 0))
          .isEqualTo("what we still have to ask ourselves");
    }
  }

  private static Map<String, Integer> numbers(EarlierLog log) {
    Map<String, Integer> numbers = new LinkedHashMap<>();
    log.log().lines().forEach((id, line) -> numbers.put(id, line.number()));
    numbers.values().removeIf(number -> number == 0);
    return numbers;
  }

  @Test
  void the_same_holds_for_a_workbook_whose_rows_went_to_disk() throws Exception {
    Report large = large();
    FindingsWorkbook.write(large, file);
    person(
        book -> {
          beside(book, "Tile by check", "GT-7", 18);
          beside(book, "Tile by check", "GT-1077", 16);
          over(book, "Tile by check", "GT-1078", 2);
          below(book, "Tile by check");
          rows(book.getSheet("Calculations"), SPACING).get(0).getCell(NUMBER).setCellValue(10);
          beside(book, "Calculations", SPACING, 9);
          beside(book, "Summary", "error", 9);
        });
    for (int again = 0; again < 2; again++) {
      Carry carry = EarlierLog.read(file).into(large);
      FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), file);
    }
    assertThat(kept()).hasSize(3);
    try (XSSFWorkbook book = Desk.open(file)) {
      assertThat(Desk.text(book, Headers.FINDINGS, BOND, Headers.STATE)).isEqualTo("open");
      assertThat(text(row(book.getSheet("Tile by check"), "GT-1077"), 16))
          .isEqualTo("note GT-1077");
      assertThat(text(row(book.getSheet("Tile by check"), "GT-7"), 18)).isEqualTo("note GT-7");
      // Some readers look no further than the area that a sheet says it has.
      String area = book.getSheet("Tile by check").getCTWorksheet().getDimension().getRef();
      assertThat(CellRangeAddress.valueOf(area).getLastColumn()).isEqualTo(18);
      Row spacing = row(book.getSheet("Calculations"), SPACING);
      assertThat(spacing.getCell(NUMBER).getNumericCellValue()).isEqualTo(10);
      assertThat(text(spacing, 9)).isEqualTo("note " + SPACING);
      assertThat(row(book.getSheet("Calculations"), "Movement of the tile").getCell(NUMBER))
          .extracting(Cell::getNumericCellValue)
          .isEqualTo(9e-6 * 10 * 12 * 80);
    }
  }

  private static Report large() {
    Report all = report(0);
    Entry model = all.entries().get(0);
    List<Entry> entries = new ArrayList<>();
    for (int i = 1; i <= 1_100; i++) {
      entries.add(
          new Entry("GT-" + i, true, "mosaic", model.origin(), model.places(), model.values()));
    }
    return new Report(
        all.run(),
        all.documents(),
        entries,
        all.findings(),
        all.verdicts(),
        all.calculations(),
        all.checks());
  }

  @Test
  void the_same_typed_workbook_gives_the_same_bytes() throws Exception {
    person(this::everywhere);
    Carry carry = EarlierLog.read(file).into(report(1));
    Path one = folder.resolve("one.xlsx");
    Path two = folder.resolve("two.xlsx");
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), one);
    FindingsWorkbook.write(carry.report(), carry.log(), UnaryOperator.identity(), two);
    assertThat(two).hasSameBinaryContentAs(one);
    Path demo = Files.createDirectories(Path.of("target/demo")).resolve("typed.xlsx");
    Files.copy(one, demo, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
  }
}
