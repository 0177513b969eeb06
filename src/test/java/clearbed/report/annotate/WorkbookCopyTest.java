package clearbed.report.annotate;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import clearbed.model.report.Report;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.usermodel.WorkbookFactory;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkbookCopyTest {
  @TempDir Path folder;
  private Desk desk;

  @BeforeEach
  void desk() throws IOException {
    desk = Desk.in(folder);
  }

  @ParameterizedTest
  @ValueSource(strings = {"s.xlsx", "s.xls"})
  void a_later_run_knows_the_copy_from_its_source(String name) throws Exception {
    write(name.endsWith("s") ? new HSSFWorkbook() : new XSSFWorkbook(), name);
    String format = name.substring(2);
    desk.annotate(
        Desk.report(
            name, format, Desk.finding("mortar", Level.ERROR, Desk.cell(name, "Tile", "B3"))));
    assertThat(ReadAll.of(desk.sources(), desk.copies()))
        .extracting(Document::status)
        .containsExactly(Document.Status.READ, Document.Status.IGNORED);
  }

  @Test
  void every_finding_is_a_comment_of_its_cell() throws Exception {
    write(new XSSFWorkbook(), "s.xlsx");
    Finding two =
        Desk.finding(
            "colour",
            Level.NOTE,
            Desk.cell("s.xlsx", "Tile", "B3"),
            Desk.cell("s.xlsx", "Tile", "H40"));
    var result =
        desk.annotate(
            Desk.report(
                "s.xlsx",
                "xlsx",
                Desk.finding("mortar", Level.ERROR, Desk.cell("s.xlsx", "Tile", "B3")),
                two));
    assertThat(result.failures()).isEmpty();
    assertThat(result.shortfalls()).isEmpty();
    Path copy = desk.copies().resolve("s.xlsx");
    assertThat(result.files()).containsExactly(copy);
    var comments = Desk.elements(copy, "xl/comments1.xml", "comment");
    assertThat(comments).extracting(c -> c.getAttribute("ref")).contains("B3", "H40").hasSize(3);
    assertThat(comments.get(1).getTextContent())
        .isEqualTo(
            """
            ERROR mortar (GT-1)
            The mortar of GT-1 is not stated.
            Question: Which mortar has GT-1?
            Not a design. Codes, the makers' written instructions and the licensed professional decide; \
            check figures against the edition specified.

            NOTE colour (GT-1)
            The colour of GT-1 is not stated.
            Question: Which colour has GT-1?
            See also: s.xlsx, sheet Tile, cell H40""");
    assertThat(Desk.elements(copy, "xl/comments1.xml", "author"))
        .extracting(a -> a.getTextContent())
        .contains("Clearbed");
  }

  @Test
  void the_frame_leaves_the_rest_of_the_look_and_the_formula_alone() throws Exception {
    write(new XSSFWorkbook(), "s.xlsx");
    checkLook("s.xlsx", "xlsx");
  }

  @Test
  void old_workbooks_are_marked_alike() throws Exception {
    write(new HSSFWorkbook(), "s.xls");
    checkLook("s.xls", "xls");
    try (Workbook copy = WorkbookFactory.create(desk.copies().resolve("s.xls").toFile())) {
      assertThat(
              copy.getSheet("Tile").getCellComment(new CellAddress("C3")).getString().getString())
          .startsWith("ERROR mortar (GT-1)\n");
    }
  }

  private void checkLook(String name, String format) throws IOException {
    String before = Desk.digest(desk.sources().resolve(name));
    var result =
        desk.annotate(
            Desk.report(
                name,
                format,
                Desk.finding("mortar", Level.ERROR, Desk.cell(name, "Tile", "C3")),
                Desk.finding("grout", Level.WARNING, Desk.cell(name, "Tile", "B3"))));
    assertThat(result.failures()).isEmpty();
    assertThat(Desk.digest(desk.sources().resolve(name))).isEqualTo(before);
    try (Workbook copy = WorkbookFactory.create(desk.copies().resolve(name).toFile(), null, true)) {
      Row row = copy.getSheet("Tile").getRow(2);
      assertThat(row.getCell(2).getCellFormula()).isEqualTo("SUM(D3:E3)");
      assertThat(row.getCell(2).getNumericCellValue()).isEqualTo(7);
      CellStyle style = row.getCell(2).getCellStyle();
      assertThat(style.getBorderTop()).isEqualTo(BorderStyle.THICK);
      assertThat(style.getBorderLeft()).isEqualTo(BorderStyle.THICK);
      assertThat(style.getDataFormatString()).isEqualTo("0.00");
      assertThat(style.getAlignment()).isEqualTo(HorizontalAlignment.CENTER);
      assertThat(copy.getFontAt(style.getFontIndex()).getBold()).isTrue();
      assertThat(style.getFillPattern()).isEqualTo(FillPatternType.SOLID_FOREGROUND);
      CellStyle filled = row.getCell(1).getCellStyle();
      assertThat(filled.getBorderTop()).isEqualTo(BorderStyle.MEDIUM);
      assertThat(filled.getFillForegroundColor()).isEqualTo(IndexedColors.GREEN.getIndex());
      assertThat(row.getCell(3).getCellStyle().getBorderTop()).isEqualTo(BorderStyle.NONE);
    }
  }

  @Test
  void a_merged_area_is_framed_all_round() throws Exception {
    write(new XSSFWorkbook(), "s.xlsx");
    desk.annotate(report("A6"));
    try (Workbook copy =
        WorkbookFactory.create(desk.copies().resolve("s.xlsx").toFile(), null, true)) {
      Sheet sheet = copy.getSheet("Tile");
      CellStyle corner = sheet.getRow(6).getCell(2).getCellStyle();
      assertThat(corner.getBorderRight()).isEqualTo(BorderStyle.THICK);
      assertThat(corner.getBorderBottom()).isEqualTo(BorderStyle.THICK);
      assertThat(corner.getBorderTop()).isEqualTo(BorderStyle.NONE);
      assertThat(sheet.getRow(5).getCell(0).getCellStyle().getBorderTop())
          .isEqualTo(BorderStyle.THICK);
    }
  }

  @Test
  void a_comment_that_is_there_is_added_to() throws Exception {
    write(new XSSFWorkbook(), "s.xlsx");
    desk.annotate(report("A1"));
    var comments = Desk.elements(desk.copies().resolve("s.xlsx"), "xl/comments1.xml", "comment");
    assertThat(comments).hasSize(1);
    assertThat(comments.get(0).getTextContent())
        .startsWith("Ask the tile maker.")
        .contains("Clearbed:\nERROR mortar (GT-1)");
  }

  @Test
  void a_conversation_is_left_alone_and_its_findings_are_listed() throws Exception {
    write(new XSSFWorkbook(), "s.xlsx", "tc={8D1B}");
    var result = desk.annotate(report("A1"));
    assertThat(result.shortfalls())
        .singleElement()
        .satisfies(s -> assertThat(s.reason()).contains("conversation"));
    assertThat(desk.copies().resolve("s.xlsx.findings.txt")).content().contains("ERROR mortar");
    assertThat(
            Desk.elements(desk.copies().resolve("s.xlsx"), "xl/comments1.xml", "comment")
                .get(0)
                .getTextContent())
        .isEqualTo("Ask the tile maker.");
  }

  @Test
  void a_finding_without_a_cell_is_at_the_first_and_says_so() throws Exception {
    write(new XSSFWorkbook(), "s.xlsx");
    Finding whole =
        Desk.finding("mockup", Level.ERROR, clearbed.model.document.Origin.ofDocument("s.xlsx"));
    var result = desk.annotate(Desk.report("s.xlsx", "xlsx", whole));
    assertThat(result.shortfalls())
        .singleElement()
        .satisfies(
            s -> {
              assertThat(s.marked()).isTrue();
              assertThat(s.reason()).contains("first cell");
            });
  }

  private Report report(String cell) {
    return Desk.report(
        "s.xlsx", "xlsx", Desk.finding("mortar", Level.ERROR, Desk.cell("s.xlsx", "Tile", cell)));
  }

  private void write(Workbook book, String name) throws IOException {
    write(book, name, "Somebody");
  }

  private void write(Workbook book, String name, String author) throws IOException {
    Sheet sheet = book.createSheet("Tile");
    Row row = sheet.createRow(2);
    Cell filled = row.createCell(1);
    filled.setCellValue("=not a formula");
    filled.setCellStyle(book.createCellStyle());
    filled.getCellStyle().setFillForegroundColor(IndexedColors.GREEN.getIndex());
    filled.getCellStyle().setFillPattern(FillPatternType.SOLID_FOREGROUND);
    Cell formula = row.createCell(2);
    formula.setCellFormula("SUM(D3:E3)");
    row.createCell(3).setCellValue(3);
    row.createCell(4).setCellValue(4);
    CellStyle style = book.createCellStyle();
    Font bold = book.createFont();
    bold.setBold(true);
    style.setFont(bold);
    style.setAlignment(HorizontalAlignment.CENTER);
    style.setDataFormat(book.createDataFormat().getFormat("0.00"));
    formula.setCellStyle(style);
    book.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(formula);
    sheet.addMergedRegion(CellRangeAddress.valueOf("A6:C7"));
    if (book instanceof XSSFWorkbook) addComment(book, sheet, author);
    try (OutputStream out = Files.newOutputStream(desk.sources().resolve(name));
        book) {
      book.write(out);
    }
  }

  private static void addComment(Workbook book, Sheet sheet, String author) {
    Cell cell = sheet.createRow(0).createCell(0);
    ClientAnchor anchor = book.getCreationHelper().createClientAnchor();
    Comment comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(book.getCreationHelper().createRichTextString("Ask the tile maker."));
    comment.setAuthor(author);
    cell.setCellComment(comment);
  }
}
