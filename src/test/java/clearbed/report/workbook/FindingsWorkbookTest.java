package clearbed.report.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import clearbed.model.report.Calculation;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.report.DemoReport;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.typed.Ledger;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFGraphicFrame;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FindingsWorkbookTest {
  /** Findings of a workbook that is large enough to be written with less memory. */
  private static final int MANY = 2_000;

  @TempDir Path folder;

  private Path written(Report report) throws IOException {
    Path file = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(report, file);
    return file;
  }

  private static XSSFWorkbook open(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new XSSFWorkbook(in);
    }
  }

  private static Report with(List<Finding> findings) {
    return with(findings, DemoReport.report().calculations());
  }

  private static Report with(List<Finding> findings, List<Calculation> calculations) {
    Report demo = DemoReport.report();
    return new Report(
        demo.run(),
        demo.documents(),
        demo.entries(),
        findings,
        demo.verdicts(),
        calculations,
        demo.checks());
  }

  private static List<List<String>> read(Path file, String sheet) throws IOException {
    try (InputStream in = Files.newInputStream(file);
        ReadableWorkbook book = new ReadableWorkbook(in)) {
      List<List<String>> rows = new ArrayList<>();
      for (var row : book.findSheet(sheet).orElseThrow().read()) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < row.getCellCount(); i++) cells.add(row.getCellText(i));
        rows.add(cells);
      }
      return rows;
    }
  }

  @Test
  void the_sheets_have_their_names_and_order() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      List<String> visible = new ArrayList<>();
      for (int i = 0; i < book.getNumberOfSheets(); i++) {
        if (!book.isSheetHidden(i)) visible.add(book.getSheetName(i));
      }
      assertThat(visible)
          .containsExactly(
              "Summary",
              "Findings",
              "Questions",
              "Tile by check",
              "Calculations",
              "Documents",
              "Reading");
      assertThat(book.getActiveSheetIndex()).isZero();
    }
  }

  @Test
  void an_independent_reader_finds_every_finding_that_is_reported() throws Exception {
    List<List<String>> rows = read(written(DemoReport.report()), "Findings");
    assertThat(rows.get(0)).startsWith("Id", "Level", "State", "Tags", "Check", "What is wrong");
    assertThat(rows.subList(1, rows.size()))
        .extracting(row -> row.get(0))
        .containsExactlyElementsOf(
            DemoReport.findings().stream()
                .filter(finding -> finding.suppressed().isEmpty())
                .map(Finding::id)
                .toList());
    assertThat(rows.get(1)).contains("error", "new", "GT-1", "bond-strength");
  }

  @Test
  void an_independent_reader_finds_coverage_questions_and_documents() throws Exception {
    Path file = written(DemoReport.report());
    List<List<String>> coverage = read(file, "Tile by check");
    assertThat(coverage.get(0)).contains("mortar-class", "mockup").doesNotContain("floor-slip");
    assertThat(coverage.get(1)).contains("ok", "error");
    assertThat(coverage.subList(1, 9)).extracting(row -> row.get(0)).contains("GT-1", "GT-8");
    assertThat(coverage.subList(1, 9)).anyMatch(row -> row.contains("warning"));
    assertThat(coverage.get(coverage.size() - 1).get(0))
        .startsWith("Nothing open for any tile: ")
        .contains("floor-slip");
    assertThat(read(file, "Questions")).hasSize(19);
    assertThat(read(file, "Documents"))
        .anyMatch(row -> row.contains("the row has no tag, it cannot be told what it is"))
        .anyMatch(row -> row.contains("unreadable") && row.contains("Moorhen Baths/details.pdf"));
  }

  @Test
  void the_sheet_coverage_says_in_how_much_of_the_text_the_whole_set_was_looked_at()
      throws Exception {
    List<List<String>> coverage = read(written(DemoReport.withReading()), "Tile by check");
    String looked =
        "looked in 412 of 430 sentences and 96 of 104 cells; not understood: 18 sentences and 8"
            + " cells; set aside: 40 sentences";
    assertThat(coverage.get(1)).startsWith("whole set").contains("ok", "unread");
    assertThat(coverage).anyMatch(row -> row.contains("whole set: " + looked));
  }

  @Test
  void the_same_report_gives_the_same_bytes_whenever_it_is_written() throws Exception {
    Path one = written(DemoReport.report());
    Path two = folder.resolve("two.xlsx");
    FindingsWorkbook.write(DemoReport.report(), two);
    assertThat(two).hasSameBinaryContentAs(one);
    try (ZipFile zip = new ZipFile(one.toFile())) {
      assertThat(zip.stream().map(ZipEntry::getTimeLocal).distinct())
          .containsExactly(java.time.LocalDateTime.of(1980, 1, 1, 0, 0));
    }
    Files.createDirectories(Path.of("target/demo"));
    Path demo = Path.of("target/demo/findings.xlsx");
    Files.copy(one, demo, StandardCopyOption.REPLACE_EXISTING);
  }

  @Test
  void document_properties_tell_the_issue_and_not_the_clock() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      var core = book.getProperties().getCoreProperties();
      assertThat(core.getCreated().toInstant()).hasToString("2026-03-02T00:00:00Z");
      assertThat(core.getModified().toInstant()).hasToString("2026-03-02T00:00:00Z");
      assertThat(core.getTitle()).isNotBlank();
      var custom = book.getProperties().getCustomProperties();
      assertThat(custom.getProperty("ClearbedFindings").getLpwstr()).isEqualTo("1");
    }
  }

  @Test
  void text_that_looks_like_a_formula_stays_text() throws Exception {
    List<Finding> nasty =
        Stream.of("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "=HYPERLINK(\"http://x\",\"y\")")
            .map(text -> DemoReport.inadequate("backing", "GT-1 " + text, Level.ERROR, text))
            .toList();
    try (XSSFWorkbook book = open(written(with(nasty)))) {
      XSSFSheet sheet = book.getSheet("Findings");
      for (int i = 0; i < nasty.size(); i++) {
        Cell found = sheet.getRow(i + 1).getCell(6);
        assertThat(found.getCellType()).isEqualTo(CellType.STRING);
        assertThat(found.getCellStyle().getQuotePrefixed()).isTrue();
      }
      for (String name :
          List.of("Summary", "Findings", "Tile by check", "Questions", "Documents")) {
        assertNoFormula(book.getSheet(name));
      }
    }
  }

  private static void assertNoFormula(Sheet sheet) {
    for (Row row : sheet) {
      for (Cell cell : row) assertThat(cell.getCellType()).isNotEqualTo(CellType.FORMULA);
    }
  }

  @Test
  void text_too_long_or_forbidden_for_a_cell_is_made_fit_with_a_word() throws Exception {
    String odd = "bell\u0007 half\uD800 escape _x0041_ " + "long ".repeat(10_000);
    Report report = with(List.of(DemoReport.inadequate("backing", "GT-1", Level.ERROR, odd)));
    try (XSSFWorkbook book = open(written(report))) {
      String text = book.getSheet("Findings").getRow(1).getCell(6).getStringCellValue();
      assertThat(text).startsWith("bell\uFFFD half\uFFFD escape _x0041_ long");
      assertThat(text).endsWith("or more characters left out]");
      assertThat(text.length()).isLessThanOrEqualTo(32_767);
    }
  }

  @Test
  void findings_and_questions_are_set_up_to_filter_and_to_print() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      for (String name : List.of("Findings", "Questions")) {
        XSSFSheet sheet = book.getSheet(name);
        assertThat(sheet.getPaneInformation().getHorizontalSplitPosition()).isEqualTo((short) 1);
        assertThat(sheet.getCTWorksheet().getAutoFilter().getRef()).startsWith("A1:");
        assertThat(sheet.getPrintSetup().getLandscape()).isTrue();
        assertThat(sheet.getFitToPage()).isTrue();
        assertThat(sheet.getPrintSetup().getFitWidth()).isEqualTo((short) 1);
        assertThat(sheet.getPrintSetup().getFitHeight()).isZero();
        assertThat(sheet.getRepeatingRows().formatAsString()).isEqualTo("1:1");
        assertThat(sheet.getFooter().getRight()).contains("&P");
      }
    }
  }

  @Test
  void rows_that_people_type_in_grow_with_the_text() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      for (String name : List.of("Findings", "Questions")) {
        XSSFSheet sheet = book.getSheet(name);
        assertThat(sheet.getLastRowNum()).isPositive();
        for (int at = 1; at <= sheet.getLastRowNum(); at++) {
          assertThat(sheet.getRow(at).getCTRow().getCustomHeight()).as(name + " " + at).isFalse();
        }
      }
    }
  }

  /** The area that a sheet says it has; some readers look no further. */
  private static String area(XSSFWorkbook book, String sheet) {
    return book.getSheet(sheet).getCTWorksheet().getDimension().getRef();
  }

  @Test
  void questions_offer_words_for_status_and_take_dates_only_for_dates() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      XSSFSheet sheet = book.getSheet("Questions");
      List<? extends DataValidation> rules = sheet.getDataValidations();
      assertThat(rules).hasSize(4);
      assertThat(rules.get(0).getValidationConstraint().getExplicitListValues())
          .containsExactly("to ask", "asked", "answered", "dropped");
      assertThat(rules.get(0).getShowErrorBox()).isTrue();
      assertThat(rules.get(1).getShowErrorBox()).isFalse();
      assertThat(headerAt(sheet, rules.get(2))).isEqualTo("Date asked");
      assertThat(headerAt(sheet, rules.get(3))).isEqualTo("Due");
    }
  }

  private static String headerAt(XSSFSheet sheet, DataValidation rule) {
    int column = rule.getRegions().getCellRangeAddress(0).getFirstColumn();
    return sheet.getRow(0).getCell(column).getStringCellValue();
  }

  @Test
  void a_place_leads_to_the_file_and_the_cell() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      XSSFSheet sheet = book.getSheet("Findings");
      Cell link = sheet.getRow(1).getCell(9);
      assertThat(link.getHyperlink().getAddress())
          .startsWith("Moorhen%20Baths/finish%20schedule.xlsx#'Tile'!F");
      assertThat(sheet.getHyperlink(link.getAddress()).getLocation()).startsWith("'Tile'!F");
    }
  }

  @Test
  void links_are_made_from_where_the_workbook_lies_and_to_the_archive_of_what_lies_in_one()
      throws Exception {
    DocumentLinks links = new DocumentLinks(path -> "../in/" + path);
    Datum.Link link =
        links.link(clearbed.model.document.Origin.ofCell("set 1.zip!/a/b.xlsx", "Tile", "B2", "x"));
    assertThat(link.address()).isEqualTo("../in/set%201.zip");
    assertThat(link.location()).isNull();
    assertThat(new DocumentLinks(path -> null).link("a.pdf").shown()).isEmpty();
    assertThat(DocumentLinks.uri("C: notes.pdf")).isEqualTo("./C:%20notes.pdf");
  }

  @Test
  void calculations_follow_their_inputs() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      XSSFSheet sheet = book.getSheet("Calculations");
      Cell spacing = find(sheet, "Spacing of joints");
      Cell required = find(sheet, "Width required");
      assertThat(required.getNumericCellValue())
          .isCloseTo(9e-6 * 144 * 80 / 0.25, org.assertj.core.data.Offset.offset(1e-12));
      spacing.setCellValue(24);
      book.getCreationHelper().createFormulaEvaluator().evaluateAll();
      assertThat(required.getNumericCellValue())
          .isCloseTo(2 * 9e-6 * 144 * 80 / 0.25, org.assertj.core.data.Offset.offset(1e-12));
    }
  }

  @Test
  void the_curve_under_a_movement_calculation_is_live_and_has_its_point() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      XSSFSheet sheet = book.getSheet("Calculations");
      assertThat(sheet.getDrawingPatriarch().getCharts()).hasSize(2);
      int top = find(sheet, "Spacing of joints, ft").getRowIndex();
      Row last = sheet.getRow(top + 8);
      assertThat(last.getCell(0).getNumericCellValue()).isEqualTo(24);
      assertThat(last.getCell(1).getNumericCellValue())
          .isCloseTo(2 * 9e-6 * 144 * 80 / 0.25, org.assertj.core.data.Offset.offset(1e-12));
      Row point = sheet.getRow(top + 9);
      assertThat(point.getCell(0).getNumericCellValue()).isEqualTo(12);
      assertThat(point.getCell(2).getNumericCellValue()).isEqualTo(0.125);
    }
  }

  @Test
  void of_the_calculations_the_results_are_printed_and_the_workings_are_not() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      XSSFSheet sheet = book.getSheet("Calculations");
      String area = book.getPrintArea(book.getSheetIndex(sheet));
      int last = CellRangeAddress.valueOf(area).getLastRow();
      int workings = find(sheet, "Quantity").getRowIndex() - 1;
      assertThat(area).startsWith("Calculations!$A$1:$H$");
      assertThat(sheet.getRow(last).getCell(7).toString()).as("names its row").isNotEmpty();
      assertThat(last).isBetween(5, workings - 1);
    }
  }

  private static Cell find(Sheet sheet, String label) {
    for (Row row : sheet) {
      if (row.getCell(0) != null && row.getCell(0).toString().equals(label)) return row.getCell(1);
    }
    throw new AssertionError("no row " + label);
  }

  @Test
  void charts_have_their_content_in_words() throws Exception {
    try (XSSFWorkbook book = open(written(DemoReport.report()))) {
      for (String name : List.of("Summary", "Calculations")) {
        for (var shape : book.getSheet(name).getDrawingPatriarch().getShapes()) {
          var frame = ((XSSFGraphicFrame) shape).getCTGraphicalObjectFrame();
          assertThat(frame.getNvGraphicFramePr().getCNvPr().getDescr()).hasSizeGreaterThan(30);
        }
      }
    }
  }

  @Test
  void the_summary_counts_by_level_and_names_suppressions_and_cautions() throws Exception {
    String text = read(written(DemoReport.report()), "Summary").toString();
    assertThat(text)
        .contains("[error, settle before tile is ordered or set, 17.0, 0.0, 0.0, 0.0, 0.0, 17.0]")
        .contains("coverage is inspected on site by the owner's laboratory")
        .contains("Silica dust", "Glass edges", "Alkali", "Epoxy", "Slips", "Falling tile")
        .contains("north-america", "moorhen.yaml", "Room 104 is a steam room")
        .contains("run them through text recognition first");
  }

  @Test
  void a_report_with_nothing_in_it_is_still_a_workbook() throws Exception {
    Report demo = DemoReport.report();
    Report empty =
        new Report(demo.run(), List.of(), List.of(), List.of(), List.of(), List.of(), List.of());
    assertThat(read(written(empty), "Summary").toString()).contains("No findings.");
  }

  @Test
  void a_large_workbook_is_read_back_the_same() throws Exception {
    List<Finding> many = many("=more than 400 psi");
    Path file = written(with(many));
    List<List<String>> rows = read(file, "Findings");
    assertThat(rows).hasSize(MANY + 1);
    assertThat(rows.get(MANY)).contains("bond-strength/GT-" + (MANY - 1), "=more than 400 psi");
    Path again = folder.resolve("again.xlsx");
    FindingsWorkbook.write(with(many), again);
    assertThat(again).hasSameBinaryContentAs(file);
    try (XSSFWorkbook book = open(file)) {
      assertThat(Ledger.read(book)).hasSize(MANY);
      assertThat(area(book, "Findings")).isEqualTo("A1:W" + (MANY + 1));
      // Behind the findings the documents and what was written on five sheets are noted.
      assertThat(area(book, "For the next issue")).isEqualTo("A1:H" + (MANY + 8));
      Cell expected = book.getSheet("Findings").getRow(1).getCell(7);
      assertThat(expected.getCellType()).isEqualTo(CellType.STRING);
      assertThat(expected.getCellStyle().getQuotePrefixed()).isTrue();
    }
  }

  @Test
  void the_calculations_of_a_large_workbook_are_those_of_a_small_one() throws Exception {
    List<Calculation> calculations = new ArrayList<>();
    for (RandomCalculations.Pair pair : RandomCalculations.pairs(20)) {
      calculations.add(pair.before());
    }
    Quantity width = Quantity.of(4, Unit.MILLIMETRE);
    Calculation.Step odd = new Calculation.Step("w", "Width", "as told", "7777*(", width);
    calculations.add(
        new Calculation("id", "movement-width", "GT-1", "Odd", List.of(), List.of(odd)));
    List<Finding> many = many("more than 400 psi");
    try (XSSFWorkbook small = open(written(with(many.subList(0, 1), calculations)));
        XSSFWorkbook large = open(written(with(many, calculations)))) {
      List<String> cells = cells(small.getSheet("Calculations"));
      assertThat(cells).hasSizeGreaterThan(1_000);
      assertThat(cells(large.getSheet("Calculations"))).isEqualTo(cells);
      assertThat(cells)
          .anyMatch(cell -> cell.contains("the number stands as computed"))
          .noneMatch(cell -> cell.contains("7777*("));
    }
  }

  @Test
  void a_calculation_that_waits_for_a_figure_says_which() throws Exception {
    String why = "area not understood: '120 + 80' (tile.csv, cell E2)";
    List<Calculation> calculations = new ArrayList<>();
    calculations.add(
        Calculation.lacking("quantities:GT-1", "quantities", "GT-1", "Quantities", why));
    calculations.add(RandomCalculations.pairs(1).get(0).before());
    List<Finding> one =
        List.of(DemoReport.missing("bond-strength", "GT-1", Level.ERROR, "more than 400 psi"));
    try (XSSFWorkbook book = open(written(with(one, calculations)))) {
      Row row = book.getSheet("Calculations").getRow(5);
      assertThat(row.getCell(0).getStringCellValue()).isEqualTo("GT-1: Quantities");
      assertThat(row.getCell(5).getStringCellValue()).isEqualTo("not worked out: " + why);
    }
  }

  private static List<Finding> many(String expected) {
    List<Finding> many = new ArrayList<>();
    for (int i = 0; i < MANY; i++) {
      many.add(DemoReport.missing("bond-strength", "GT-" + i, Level.ERROR, expected));
    }
    return many;
  }

  private static List<String> cells(XSSFSheet sheet) {
    List<String> cells = new ArrayList<>();
    cells.add(
        java.util.Arrays.toString(sheet.getRowBreaks())
            + " "
            + sheet.getDrawingPatriarch().getCharts().size());
    for (Row row : sheet) {
      for (Cell cell : row) {
        boolean formula = cell.getCellType() == CellType.FORMULA;
        boolean number =
            (formula ? cell.getCachedFormulaResultType() : cell.getCellType()) == CellType.NUMERIC;
        cells.add(
            cell.getAddress()
                + (formula ? " =" + cell.getCellFormula() : "")
                + " "
                + (number ? cell.getNumericCellValue() : cell.getStringCellValue())
                + " "
                + cell.getCellStyle().getDataFormatString());
      }
    }
    return cells;
  }

  @Test
  void a_failure_leaves_the_old_file_as_it_was_and_nothing_beside_it() throws Exception {
    Path file = folder.resolve("findings.xlsx");
    Files.writeString(file, "old");
    FileTime before = Files.getLastModifiedTime(file);
    QuestionLog broken =
        new QuestionLog(
            "x", "", "no workbook".getBytes(), List.of(), java.util.Map.of(), List.of());
    assertThatThrownBy(
            () -> FindingsWorkbook.write(DemoReport.report(), broken, path -> path, file))
        .isInstanceOf(IOException.class)
        .hasMessageStartingWith("cannot write " + file);
    assertThat(file).hasContent("old");
    assertThat(Files.getLastModifiedTime(file)).isEqualTo(before);
    assertThat(folder).isDirectoryNotContaining(path -> path.toString().endsWith(".part"));
  }

  @Test
  void a_folder_that_is_not_there_is_named() {
    Path file = folder.resolve("no/such/findings.xlsx");
    assertThatThrownBy(() -> FindingsWorkbook.write(DemoReport.report(), file))
        .isInstanceOf(IOException.class)
        .hasMessageContaining("the folder " + folder.resolve("no/such") + " is not there");
  }
}
