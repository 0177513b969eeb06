package clearbed.report.workbook.typed;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.report.DemoReport;
import clearbed.report.workbook.FindingsWorkbook;
import clearbed.report.workbook.layout.Headers;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EarlierWorkbookTest {
  @TempDir Path folder;
  private byte[] bytes;

  @BeforeEach
  void write() throws Exception {
    Path file = folder.resolve("findings.xlsx");
    FindingsWorkbook.write(DemoReport.report(), file);
    bytes = Files.readAllBytes(file);
  }

  @Test
  void the_sheets_that_people_work_in_are_opened_without_the_rows_of_the_others() throws Exception {
    try (XSSFWorkbook book = EarlierWorkbook.open(bytes)) {
      assertThat(rows(book, Headers.FINDINGS)).isGreaterThan(1);
      assertThat(rows(book, Headers.QUESTIONS)).isGreaterThan(1);
      for (String name : new String[] {"Summary", "Tile by check", "Documents", Ledger.SHEET}) {
        assertThat(rows(book, name)).as(name).isZero();
      }
    }
  }

  @Test
  void the_hidden_sheet_is_opened_by_itself() throws Exception {
    try (XSSFWorkbook book = EarlierWorkbook.openLedger(bytes)) {
      assertThat(rows(book, Headers.FINDINGS)).isZero();
      assertThat(Ledger.read(book)).isNotEmpty();
    }
  }

  @Test
  void sheets_that_people_added_or_named_anew_are_theirs() throws Exception {
    byte[] changed;
    try (XSSFWorkbook book = new XSSFWorkbook(new java.io.ByteArrayInputStream(bytes))) {
      book.createSheet("Meeting & notes").createRow(3).createCell(1).setCellValue("ours");
      book.setSheetName(book.getSheetIndex("Tile by check"), "Coverage in March");
      var out = new java.io.ByteArrayOutputStream();
      book.write(out);
      changed = out.toByteArray();
    }
    try (XSSFWorkbook book = EarlierWorkbook.open(changed)) {
      assertThat(rows(book, "Meeting & notes")).isOne();
      assertThat(rows(book, "Coverage in March")).isGreaterThan(1);
    }
  }

  private static int rows(XSSFWorkbook book, String sheet) {
    return book.getSheet(sheet).getPhysicalNumberOfRows();
  }
}
