package clearbed.report.workbook;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.typed.Ledger;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the workbook of the sample says, as somebody of the trade reads it. */
class WordsOfTheTradeTest {
  @TempDir static Path folder;
  private static Path file;

  @BeforeAll
  static void the_sample_is_checked() {
    file = folder.resolve("findings.xlsx");
    Main.run("check", "sample-specs/draft", "--quiet", "-o", file.toString());
  }

  /** Cells as people see them, by row. */
  private static List<List<String>> shown(String name) throws Exception {
    DataFormatter formatter = new DataFormatter();
    formatter.setUseCachedValuesForFormulaCells(true);
    List<List<String>> shown = new ArrayList<>();
    try (XSSFWorkbook book = new XSSFWorkbook(file.toFile())) {
      for (Row row : book.getSheet(name)) {
        List<String> cells = new ArrayList<>();
        for (Cell cell : row) cells.add(formatter.formatCellValue(cell).strip());
        shown.add(cells);
      }
    }
    return shown;
  }

  @Test
  void no_sheet_but_the_column_for_programs_names_an_attribute_as_the_program_does()
      throws Exception {
    List<String> names = Vocabulary.standard().attributes().stream().map(Attribute::id).toList();
    assertThat(names).contains("grout.width");
    try (XSSFWorkbook book = new XSSFWorkbook(file.toFile())) {
      for (Sheet sheet : book) {
        if (sheet.getSheetName().equals(Ledger.SHEET)) continue;
        for (Row row : sheet) {
          for (Cell cell : row) {
            String header = SheetLayout.text(sheet.getRow(0).getCell(cell.getColumnIndex()));
            String text = SheetLayout.text(cell);
            if (header.equals(Headers.ATTRIBUTE) || header.equals(Headers.ID)) continue;
            assertThat(names)
                .as("%s %s", sheet.getSheetName(), cell.getAddress())
                .noneMatch(name -> text.equals(name) || text.startsWith(name + " "));
          }
        }
      }
    }
  }

  @Test
  void columns_of_a_schedule_are_named_with_what_they_hold_and_its_unit() throws Exception {
    assertThat(shown("Reading"))
        .anyMatch(
            row -> row.contains("GROUT Joint (in)") && row.contains("Grout joint width (in)"));
  }

  @Test
  void words_that_were_not_understood_name_the_open_checks_alone_that_they_may_answer()
      throws Exception {
    List<List<String>> reading = shown("Reading");
    int column = reading.get(0).indexOf("Open checks it may answer");
    List<String> findings = shown("Findings").stream().map(row -> row.get(4)).toList();
    assertThat(reading).anyMatch(row -> row.get(column).contains("mortar-class"));
    assertThat(findings).contains("mortar-class").doesNotContain("tile-size");
    assertThat(reading).noneMatch(row -> row.get(column).contains("tile-size"));
  }

  @Test
  void widths_of_joints_are_fractions_of_an_inch() throws Exception {
    assertThat(shown("Calculations"))
        .anyMatch(row -> row.contains("GT-4: Required joint width") && row.contains("5/8"))
        .anyMatch(row -> row.contains("Joint width as stated") && row.contains("1/4"));
  }

  @Test
  void the_table_of_tiles_and_checks_says_what_its_words_mean() throws Exception {
    List<String> below = shown("Tile by check").stream().map(row -> row.get(0)).toList();
    assertThat(below).anyMatch(words -> words.startsWith("ok: nothing is open."));
    for (SheetSetup.Tint tint : SheetSetup.OUTCOMES)
      assertThat(below).as(tint.word()).anyMatch(words -> words.contains(tint.word()));
  }
}
