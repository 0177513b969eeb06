package clearbed.read;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import clearbed.read.block.Remarks;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.poi.hssf.usermodel.HSSFClientAnchor;
import org.apache.poi.hssf.usermodel.HSSFRichTextString;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.hssf.usermodel.HSSFTextbox;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFTextBox;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WorkbookReaderTest {
  @TempDir Path folder;

  @Test
  void bothExcelFormatsReadAlike() throws IOException {
    Document xlsx = read("schedule.xlsx", new XSSFWorkbook());
    Document xls = read("schedule.xls", new HSSFWorkbook());

    for (Document document : List.of(xlsx, xls)) {
      Table table = (Table) document.blocks().get(0);
      assertThat(table.sheet()).isTrue();
      assertThat(table.origin().sheet()).isEqualTo("Tile");
      assertThat(table.rows()).extracting(Row::number).containsExactly(1, 2, 4, 5, 6);
      assertThat(shown(table.rows().get(0))).containsExactly("A1=GLASS TILE");
      assertThat(table.rows().get(0).at(2).text()).isEqualTo("GLASS TILE");
      assertThat(shown(table.rows().get(2)))
          .containsExactly("A4=GT-1", "B4=0.125", "C4=2026-03-01", "D4=450 psi", "E4=1.5");
      assertThat(table.rows().get(2).at(0).remark()).isEqualTo("Check the colour");
      assertThat(table.rows().get(3).hidden()).isTrue();
      Cell continued = table.rows().get(3).at(0);
      assertThat(continued.continued()).isTrue();
      assertThat(table.origin(continued).cell()).isEqualTo("A4");
      assertThat(shown(table.rows().get(4))).containsExactly("A6=Line one\nline two");
      assertThat(document.blocks().get(1).origin().sheet()).isEqualTo("Hidden");
      assertThat(document.status()).isEqualTo(Status.PARTLY);
      assertThat(document.gaps())
          .extracting(g -> g.origin().cell(), g -> g.origin().text(), Document.Gap::reason)
          .containsExactly(
              tuple("F4", "#N/A", "the cell shows an error"),
              tuple("A5", null, "hidden row 5; read like the rest"),
              tuple("A4", "Check the colour", Remarks.COMMENT),
              tuple(null, null, "a hidden sheet; read like the rest"));
    }
  }

  private Document read(String name, Workbook workbook) throws IOException {
    try (workbook) {
      Sheet sheet = workbook.createSheet("Tile");
      sheet.createRow(0).createCell(0).setCellValue("GLASS TILE");
      sheet.addMergedRegion(new CellRangeAddress(0, 0, 0, 5));
      sheet.createRow(1).createCell(0).setCellValue("Tag");
      fillValues(workbook, sheet);
      sheet.createRow(4).createCell(1).setCellValue("1/8 in");
      sheet.getRow(4).setZeroHeight(true);
      sheet.addMergedRegion(new CellRangeAddress(3, 4, 0, 0));
      sheet.createRow(5).createCell(0).setCellValue("Line one\nline\u00A0two\u00AD");
      workbook.createSheet("Hidden").createRow(0).createCell(0).setCellValue("Old");
      workbook.setSheetHidden(1, true);
      return read(name, workbook::write);
    }
  }

  private static void fillValues(Workbook workbook, Sheet sheet) {
    var row = sheet.createRow(3);
    row.createCell(0).setCellValue("GT-1");
    comment(workbook, sheet, "Check the colour");
    row.createCell(1).setCellValue(0.125);
    row.createCell(2).setCellValue(LocalDate.of(2026, 3, 1));
    row.getCell(2).setCellStyle(style(workbook, "yyyy-mm-dd"));
    row.createCell(3).setCellValue(450);
    row.getCell(3).setCellStyle(style(workbook, "0 \"psi\""));
    row.createCell(4).setCellFormula("3/2");
    row.createCell(5).setCellFormula("NA()");
    workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
  }

  private static CellStyle style(Workbook workbook, String format) {
    CellStyle style = workbook.createCellStyle();
    style.setDataFormat(workbook.createDataFormat().getFormat(format));
    return style;
  }

  private static void comment(Workbook workbook, Sheet sheet, String words) {
    ClientAnchor anchor = workbook.getCreationHelper().createClientAnchor();
    Comment comment = sheet.createDrawingPatriarch().createCellComment(anchor);
    comment.setString(workbook.getCreationHelper().createRichTextString(words));
    comment.setAddress(3, 0);
  }

  @Test
  void textBoxesOfBothFormatsAreNotes() throws IOException {
    Document xlsx;
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      XSSFSheet sheet = workbook.createSheet("Tile");
      XSSFTextBox box =
          sheet
              .createDrawingPatriarch()
              .createTextbox(new XSSFClientAnchor(0, 0, 0, 0, 1, 2, 3, 4));
      box.setText("Joints align");
      xlsx = read("box.xlsx", workbook::write);
    }
    Document xls;
    try (HSSFWorkbook workbook = new HSSFWorkbook()) {
      HSSFSheet sheet = workbook.createSheet("Tile");
      HSSFClientAnchor anchor = new HSSFClientAnchor(0, 0, 0, 0, (short) 1, 2, (short) 3, 4);
      HSSFTextbox box = sheet.createDrawingPatriarch().createTextbox(anchor);
      box.setString(new HSSFRichTextString("Joints align"));
      xls = read("box.xls", workbook::write);
    }

    for (Document document : List.of(xlsx, xls)) {
      Paragraph note = (Paragraph) document.blocks().get(1);
      assertThat(note.text()).isEqualTo("Joints align");
      assertThat(note.region()).isEqualTo(Region.NOTE);
      assertThat(note.origin().cell()).isEqualTo("B3");
    }
  }

  @Test
  void aFormulaThatWasNeverWorkedOutIsAGap() throws IOException {
    Document document;
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      var row = workbook.createSheet("Tile").createRow(0);
      row.createCell(0).setCellValue("Width");
      row.createCell(1).setCellFormula("1+1");
      var stored = row.getCell(1).getCTCell();
      if (stored.isSetV()) stored.unsetV();
      document = read("bare.xlsx", workbook::write);
    }

    assertThat(document.gaps())
        .singleElement()
        .satisfies(g -> assertThat(g.reason()).contains("formula without its result"));
  }

  @Test
  void aLongSheetAndAbsurdMergedAreasAreTakenInStride() throws IOException {
    Document document;
    try (SXSSFWorkbook workbook = new SXSSFWorkbook(50)) {
      Sheet sheet = workbook.createSheet("Tile");
      for (int r = 0; r < 30_000; r++) {
        var row = sheet.createRow(r);
        row.createCell(0).setCellValue("GT-" + r);
        row.createCell(1).setCellValue("ANSI A118.15");
      }
      for (int i = 0; i < 30; i++) {
        sheet.addMergedRegionUnsafe(new CellRangeAddress(0, 1_048_575, 2 * i, 2 * i + 1));
      }
      document = read("long.xlsx", workbook::write);
    }

    Table table = (Table) document.blocks().get(0);
    assertThat(table.rows()).hasSize(30_000);
    assertThat(table.rows().get(29_999).cells()).hasSize(1);
    assertThat(document.gaps()).extracting(Document.Gap::reason).contains("59979 more such cells");
  }

  private interface Writer {
    void to(OutputStream out) throws IOException;
  }

  private Document read(String name, Writer writer) throws IOException {
    Path file = folder.resolve(name);
    try (OutputStream out = Files.newOutputStream(file)) {
      writer.to(out);
    }
    return ReadAll.of(file).get(0);
  }

  private static List<String> shown(Row row) {
    return row.cells().stream()
        .map(c -> Table.address(row.number(), c.column()) + "=" + c.text())
        .toList();
  }
}
