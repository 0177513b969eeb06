package clearbed.cli;

import static clearbed.cli.SampleOutputs.assertOwn;
import static clearbed.cli.SampleOutputs.save;
import static clearbed.cli.SampleOutputs.schedule;
import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A findings workbook is no document, whatever people and programs do to it. */
class FindingsWorkbookAmongDocumentsTest extends OutputsAmongDocuments {
  /** What people and programs do to a findings workbook. */
  enum Deed {
    TYPE_ANSWERS,
    DROP_PROPERTIES,
    DELETE_HIDDEN_SHEET,
    SHOW_HIDDEN_SHEET_AND_RENAME_THE_OTHERS,
    KEEP_QUESTIONS_ALONE,
    ADD_A_SCHEDULE,
    SAVE_AS_XLS
  }

  @ParameterizedTest
  @EnumSource
  void a_findings_workbook_is_no_document_whatever_was_done_to_it(Deed deed) throws Exception {
    Path log = put("log.xlsx");
    String name = deed == Deed.SAVE_AS_XLS ? "log.xls" : "log.xlsx";
    try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(log))) {
      book.getSheet("Questions").getRow(1).getCell(7).setCellValue("ANSI A118.15 for GT-1");
      if (deed != Deed.TYPE_ANSWERS) {
        book.getProperties()
            .getCustomProperties()
            .getUnderlyingProperties()
            .getPropertyList()
            .clear();
      }
      Workbook saved = book;
      switch (deed) {
        case DELETE_HIDDEN_SHEET -> book.removeSheetAt(book.getSheetIndex("For the next issue"));
        case SHOW_HIDDEN_SHEET_AND_RENAME_THE_OTHERS -> {
          book.setSheetVisibility(
              book.getSheetIndex("For the next issue"), SheetVisibility.VISIBLE);
          for (String sheet : List.of("Summary", "Findings", "Tile by check", "Questions")) {
            book.setSheetName(book.getSheetIndex(sheet), "My " + sheet);
          }
        }
        case KEEP_QUESTIONS_ALONE -> {
          for (String sheet :
              List.of(
                  "Summary",
                  "Findings",
                  "Tile by check",
                  "Calculations",
                  "Documents",
                  "For the next issue")) {
            book.removeSheetAt(book.getSheetIndex(sheet));
          }
        }
        case ADD_A_SCHEDULE -> {
          book.removeSheetAt(book.getSheetIndex("For the next issue"));
          schedule(book.createSheet("Our own"));
        }
        case SAVE_AS_XLS -> saved = asXls(book);
        default -> {}
      }
      save(saved, folder.resolve(name));
    }
    assertOwn(read(name));
  }

  private static HSSFWorkbook asXls(XSSFWorkbook book) {
    HSSFWorkbook old = new HSSFWorkbook();
    for (Sheet sheet : book) {
      Sheet copy = old.createSheet(sheet.getSheetName());
      for (Row row : sheet) {
        for (Cell cell : row) {
          String text = clearbed.report.workbook.layout.SheetLayout.text(cell);
          int column = cell.getColumnIndex();
          Row there = copy.getRow(row.getRowNum());
          if (there == null) there = copy.createRow(row.getRowNum());
          if (column < 256) there.createCell(column).setCellValue(text);
        }
      }
    }
    return old;
  }

  @Test
  void sheets_copied_into_a_workbook_of_others_are_set_aside_and_the_rest_is_read()
      throws Exception {
    Path log = put("log.xlsx");
    Path theirs = folder.resolve("theirs.xlsx");
    try (XSSFWorkbook from = new XSSFWorkbook(Files.newInputStream(log));
        XSSFWorkbook to = new XSSFWorkbook()) {
      schedule(to.createSheet("Tile"));
      Sheet copy = to.createSheet("Open points");
      for (Row row : from.getSheet("Questions")) {
        Row there = copy.createRow(row.getRowNum() + 3);
        for (Cell cell : row) {
          there
              .createCell(cell.getColumnIndex())
              .setCellValue(clearbed.report.workbook.layout.SheetLayout.text(cell));
        }
      }
      save(to, theirs);
    }
    Document document = read("theirs.xlsx");
    assertThat(document.status()).isEqualTo(Status.PARTLY);
    assertThat(document.blocks())
        .extracting(block -> block.origin().sheet())
        .containsExactly("Tile");
    assertThat(document.gaps())
        .singleElement()
        .satisfies(
            gap -> {
              assertThat(gap.origin().sheet()).isEqualTo("Open points");
              assertThat(gap.reason()).contains("findings workbook");
            });
  }
}
