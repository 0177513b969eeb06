package clearbed.recognise.schedule.grid;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import clearbed.read.WordParts;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Schedules that stand beside each other on one grid are as many schedules. */
class SideBySideTest {
  private static final String[][] TWO = {
    {"GLASS TILE", "", "", "", "PORCELAIN TILE"},
    {"Tag", "Material", "Mortar", "", "Tag", "Material", "Mortar"},
    {"GT-1", "Glass mosaic tile", "ANSI A118.15", "", "PT-1", "Porcelain tile", "ANSI A118.4"},
    {"GT-2", "Cast glass tile", "ANSI A118.4", "", "PT-2", "Porcelain tile", "ANSI A118.1"},
    {"", "", "", "", "GT-3", "Fused glass tile", "ANSI A118.11"},
  };

  @TempDir Path folder;

  @Test
  void two_tables_of_a_csv_file_are_two() throws IOException {
    StringBuilder csv = new StringBuilder();
    for (String[] row : TWO) csv.append(String.join(",", row)).append('\n');
    Files.writeString(folder.resolve("tile.csv"), csv);

    assertTwo(Checked.of(folder));
  }

  @Test
  void two_tables_of_a_workbook_are_two_under_a_title_over_both() throws IOException {
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      Sheet sheet = workbook.createSheet("Sheet1");
      sheet.createRow(0).createCell(0).setCellValue("FINISH SCHEDULES");
      sheet.addMergedRegion(new CellRangeAddress(0, 0, 0, 6));
      for (int r = 0; r < TWO.length; r++) fill(sheet, r + 2, TWO[r]);
      // A heading over rows of both, and a table below that fills the column between.
      sheet.createRow(8).createCell(0).setCellValue("POOL");
      sheet.addMergedRegion(new CellRangeAddress(8, 8, 0, 6));
      fill(sheet, 9, "GT-4", "Glass tile", "ANSI A118.15", "", "GT-5", "Glass tile", "A118.3");
      fill(sheet, 11, "Tag", "Material", "Size", "Mortar", "Grout");
      fill(sheet, 12, "GT-6", "Glass tile", "1 x 1 in", "ANSI A118.15", "ANSI A118.7");
      try (OutputStream out = Files.newOutputStream(folder.resolve("tile.xlsx"))) {
        workbook.write(out);
      }
    }

    Checked checked = Checked.of(folder);

    assertTwo(checked);
    assertThat(checked.governing("GT-4", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(checked.governing("GT-5", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(checked.governing("GT-6", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(checked.governing("GT-6", "grout.standard")).containsExactly("ANSI A118.7");
    assertThat(checked.entry("GT-3").origin().cell()).isEqualTo("E7");
  }

  @Test
  void two_tables_of_a_word_table_are_two() throws IOException {
    StringBuilder rows = new StringBuilder();
    for (String[] row : TWO) {
      String[] cells = new String[7];
      for (int c = 0; c < 7; c++) {
        cells[c] = WordParts.p(c < row.length ? WordParts.run(row[c]) : "");
      }
      rows.append(WordParts.row("", cells));
    }
    new WordParts()
        .part("document", WordParts.table(rows.toString()))
        .write(folder.resolve("tile.docx"));

    assertTwo(Checked.of(folder));
  }

  @Test
  void three_tables_are_three_and_one_heading_may_stand_lower() throws IOException {
    Files.writeString(
        folder.resolve("tile.csv"),
        """
        Tag,Material,Size,,Tag,Material,Mortar,,,,
        GT-1,Glass tile,1 x 1 in,,GT-2,Glass tile,ANSI A118.15,,Room,Floor,Walls
        GT-3,Glass tile,2 x 2 in,,GT-4,Glass tile,ANSI A118.4,,101,GT-1,GT-2
        """);

    Checked checked = Checked.of(folder);

    assertThat(checked.project().glass())
        .extracting(Entry::tag)
        .containsExactlyInAnyOrder("GT-1", "GT-2", "GT-3", "GT-4");
    assertThat(checked.governing("GT-4", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(checked.entry("GT-1").values("mortar.standard")).isEmpty();
  }

  @Test
  void an_empty_column_within_one_table_parts_nothing() throws IOException {
    Files.writeString(
        folder.resolve("tile.csv"),
        """
        Tag,Material,,Mortar,Grout
        GT-1,Glass tile,,ANSI A118.15,ANSI A118.7
        GT-2,Glass tile,,ANSI A118.4,ANSI A118.3
        """);

    Checked checked = Checked.of(folder);

    assertThat(checked.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(checked.governing("GT-2", "grout.standard")).containsExactly("ANSI A118.3");
  }

  private static void assertTwo(Checked checked) {
    assertThat(checked.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(checked.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(checked.governing("GT-3", "mortar.standard")).containsExactly("ANSI A118.11");
    assertThat(checked.project().entries())
        .filteredOn(e -> !e.glass())
        .extracting(Entry::tag)
        .containsExactlyInAnyOrder("PT-1", "PT-2");
  }

  private static void fill(Sheet sheet, int at, String... words) {
    var row = sheet.createRow(at);
    List<String> cells = List.of(words);
    for (int i = 0; i < cells.size(); i++) row.createCell(i).setCellValue(cells.get(i));
  }
}
