package clearbed.report.workbook.calculation;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class QuantitySummaryTest {
  @TempDir Path folder;

  @Test
  void products_are_added_up_in_live_sums_and_tiles_without_an_area_are_named() throws Exception {
    Path schedule = folder.resolve("schedule.csv");
    Files.writeString(
        schedule,
        "Tag,Material,Size,Grout Joint,Area (sq ft)\n"
            + "GT-1,Glass tile,4 x 4 in,1/8 in,100\n"
            + "GT-2,Glass tile,4 x 4 in,1/8 in,50\n"
            + "GT-3,Glass tile,4 x 4 in,1/8 in,\n");
    Path out = folder.resolve("findings.xlsx");
    Main.run("check", schedule.toString(), "--quiet", "-o", out.toString());
    try (InputStream in = Files.newInputStream(out);
        XSSFWorkbook book = new XSSFWorkbook(in)) {
      XSSFSheet sheet = book.getSheet("Calculations");
      Map<String, Row> rows = new LinkedHashMap<>();
      for (Row row : sheet) {
        Cell first = row.getCell(0);
        if (first != null && first.getCellType() == CellType.STRING)
          rows.putIfAbsent(first.getStringCellValue(), row);
      }
      Cell all = rows.get("Tile in all, pieces").getCell(1);
      double one = rows.get("Tile GT-1, pieces").getCell(1).getNumericCellValue();
      double two = rows.get("Tile GT-2, pieces").getCell(1).getNumericCellValue();
      // 100 sq ft of 4 1/8 in modules are 847 tiles, 931 and some with 10 % waste.
      assertThat(one).isEqualTo(931);
      assertThat(all.getNumericCellValue()).isEqualTo(one + two);
      assertThat(all.getCellFormula()).contains("+");
      assertThat(rows.get("Membrane, area").getCell(1).getNumericCellValue())
          .isCloseTo(165, org.assertj.core.data.Offset.offset(1e-6));
      assertThat(rows.get("Not in these sums").getCell(5).getStringCellValue())
          .isEqualTo("not stated of GT-3: area");
      var evaluator = book.getCreationHelper().createFormulaEvaluator();
      evaluator.clearAllCachedResultValues();
      assertThat(evaluator.evaluate(all).getNumberValue()).isEqualTo(one + two);
      assertThat(evaluator.evaluate(rows.get("Backer rod, length").getCell(1)).getNumberValue())
          .isZero();
    }
  }
}
