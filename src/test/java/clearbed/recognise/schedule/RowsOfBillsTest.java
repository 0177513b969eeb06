package clearbed.recognise.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Bills count their groups and have rows for work on several tiles. */
class RowsOfBillsTest {
  @TempDir Path folder;

  @Test
  void rows_that_name_tiles_are_of_those_and_titles_of_groups_are_no_tiles() throws IOException {
    String[][] rows = {
      {"Pos.", "Code", "Description", "Qty"},
      {"24.01", "Glass tile"},
      {"24.01.10", "GT-1", "Cast glass tile, opaque, 50 x 50 x 8 mm", "12"},
      {"24.01.20", "GT-2", "Fused glass mosaic, opaque, 20 x 20 x 4 mm", "9"},
      {"24.01.30", "GT-3", "Cast glass tile, opaque, 90 x 90 x 8 mm", "8"},
      {"24.02", "Movement joints"},
      {"24.02.10", "", "Movement joint in GT-1 and GT-2, width 8 mm, silicone to ISO 11600", "30"},
      {"24.02.20", "GT-3", "Movement joint in GT-3, width 10 mm, polysulfide to ISO 11600", "4"},
      {"24.03.10", "", "Sample areas, glass: one for each of GT-1 to GT-3 before laying", "3"}
    };
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      Sheet sheet = book.createSheet("Bill");
      for (int r = 0; r < rows.length; r++) {
        Row row = sheet.createRow(r);
        for (int c = 0; c < rows[r].length; c++) row.createCell(c).setCellValue(rows[r][c]);
        if (rows[r].length == 2) sheet.addMergedRegion(new CellRangeAddress(r, r, 1, 3));
      }
      try (OutputStream out = Files.newOutputStream(folder.resolve("bill.xlsx"))) {
        book.write(out);
      }
    }
    Checked checked = Checked.of(folder);
    assertThat(checked.project().glass())
        .extracting(Entry::tag)
        .containsExactly("GT-1", "GT-2", "GT-3");
    assertThat(checked.governing("GT-1", "movement.width")).containsExactly("8 mm");
    assertThat(checked.governing("GT-3", "movement.width")).containsExactly("10 mm");
    assertThat(checked.findings("mockup")).isEmpty();
  }

  @Test
  void items_that_are_counted_by_marks_are_no_tiles_beside_a_column_of_those() throws IOException {
    Files.writeString(
        folder.resolve("form.csv"),
        "Item,Work,Tile type,\"Tile size, in.\",Est. qty,Unit,Unit price\n"
            + "C-1,\"Glass mosaic, spray wall\",T-1,1 x 1,640,SF,\n"
            + "C-2,\"Glass mosaic, floor ring\",T-2,1 x 1,410,SF,\n"
            + "C-3,\"Glass tile, entry hall\",T-5,3 x 6,270,SF,\n"
            + "C-4,Porcelain floor,T-20,12 x 24,5200,SF,\n"
            + "C-5,Porcelain cove base,T-21,6 x 12,710,LF,\n"
            + "C-6,\"Glass mosaic, shower walls\",T-7,2 x 4,980,SF,\n"
            + "C-7,\"Movement joints, sealant and rod\",-,-,1150,LF,\n");
    Checked checked = Checked.of(folder);
    assertThat(checked.project().glass())
        .extracting(Entry::tag)
        .containsExactly("T-1", "T-2", "T-5", "T-7");
    assertThat(checked.governing("T-5", "tile.size")).containsExactly("3 in x 6 in");
  }

  @Test
  void a_title_with_its_number_alone_is_a_group_where_tiles_have_marks() throws IOException {
    Files.writeString(
        folder.resolve("bill.csv"),
        "Item No.,Finish Code,Description of item,Location,Unit,Qty\n"
            + "7.0,,\"Preamble: rates include adhesive, grout and glass tile to PS-09.\",,,\n"
            + "7.1,,PART A - GLASS TILE AND GLASS MOSAIC,,,\n"
            + "7.1.1,WG-1,\"Glass tile 100 x 300 x 8 mm, opaque\",Lobby,sqm,64\n"
            + "7.1.2,WG-2,\"Fused glass mosaic 25 x 25 x 5 mm, opaque\",Showers,sqm,48\n");
    assertThat(Checked.of(folder).project().glass())
        .extracting(Entry::tag)
        .containsExactly("WG-1", "WG-2");
  }

  @Test
  void the_number_of_a_line_is_no_tile_where_its_item_is_none() throws IOException {
    Files.writeString(
        folder.resolve("bill.csv"),
        "GLASS TILE AND OTHER FINISHES\n"
            + "Line,Item,Description,Unit,Qty\n"
            + "A.1,GT-1,\"Cast glass tile, opaque, 50 x 50 x 8 mm\",m2,12\n"
            + "A.2,GT-2,\"Fused glass mosaic, opaque, 20 x 20 x 4 mm\",m2,9\n"
            + "B.1,,Sample boards as section 2.4,no,3\n");
    Checked checked = Checked.of(folder);
    assertThat(checked.project().entries()).extracting(Entry::tag).containsExactly("GT-1", "GT-2");
  }
}
