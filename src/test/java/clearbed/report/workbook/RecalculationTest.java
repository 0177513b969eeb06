package clearbed.report.workbook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import clearbed.model.report.Calculation;
import clearbed.report.workbook.calculation.CalculationsSheet;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.typed.RenewedSheet;
import clearbed.report.workbook.typed.TypedSheet;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * An office program that changes the inputs of the sheet of calculations gets the numbers that our
 * own code gets for those inputs.
 */
class RecalculationTest {
  private static final int NUMBER = 1;
  private static final int OTHER = 3;

  @TempDir Path folder;

  @Test
  void libreOfficeGetsTheSameNumbersFromTheFormulas() throws Exception {
    List<RandomCalculations.Pair> pairs = RandomCalculations.pairs(60);
    Path file = folder.resolve("calculations.xlsx");
    write(file, pairs);
    assumeTrue(OfficeProgram.openAndSave(file), "LibreOffice is not installed");

    try (XSSFWorkbook book = open(file)) {
      XSSFSheet sheet = book.getSheet("Calculations");
      Map<String, Integer> blocks = blocks(sheet);
      int moved = 0;
      for (RandomCalculations.Pair pair : pairs) {
        moved += agrees(sheet, blocks.get(title(pair.after())), pair);
      }
      // Inputs that changed nothing would prove nothing.
      assertThat(moved).isGreaterThan(pairs.size() * 2);
    }
  }

  /** The sheet as it is made for the first figures, then the second typed over them. */
  private static void write(Path file, List<RandomCalculations.Pair> pairs) throws IOException {
    try (XSSFWorkbook book = new XSSFWorkbook()) {
      XSSFSheet sheet = book.createSheet("Calculations");
      try (SXSSFWorkbook stream = new SXSSFWorkbook(book);
          OutputStream out = Files.newOutputStream(file)) {
        List<Calculation> before = pairs.stream().map(RandomCalculations.Pair::before).toList();
        RenewedSheet own = new RenewedSheet("Calculations", new Pen(book), TypedSheet.none());
        new CalculationsSheet(
                sheet, stream.getSheet("Calculations"), own, new DocumentLinks(path -> null))
            .fill(before, List.of());
        stream.write(out);
      }
    }
    try (XSSFWorkbook book = open(file)) {
      XSSFSheet sheet = book.getSheet("Calculations");
      Map<String, Integer> blocks = blocks(sheet);
      for (RandomCalculations.Pair pair : pairs) type(sheet, blocks.get(title(pair.after())), pair);
      forgetResults(sheet);
      try (OutputStream out = Files.newOutputStream(file)) {
        book.write(out);
      }
    }
  }

  private static void type(XSSFSheet sheet, int top, RandomCalculations.Pair pair) {
    int row = top + 2;
    for (Calculation.Input input : pair.after().inputs()) {
      assertThat(sheet.getRow(row).getCell(0).getStringCellValue()).isEqualTo(input.label());
      sheet.getRow(row++).getCell(NUMBER).setCellValue(input.quantity().number());
    }
  }

  /** Without a stored result a program has to compute. */
  private static void forgetResults(XSSFSheet sheet) {
    for (Row row : sheet) {
      for (Cell cell : row) {
        if (cell.getCellType() != CellType.FORMULA) continue;
        ((XSSFCell) cell).getCTCell().unsetV();
      }
    }
  }

  /** Compares every step; gives how many differ from what stood there before. */
  private static int agrees(XSSFSheet sheet, int top, RandomCalculations.Pair pair) {
    int row = top + 2 + pair.after().inputs().size();
    int moved = 0;
    for (int i = 0; i < pair.after().steps().size(); i++) {
      Calculation.Step step = pair.after().steps().get(i);
      double number = sheet.getRow(row).getCell(NUMBER).getNumericCellValue();
      double expected = step.result().number();
      assertThat(number)
          .as("%s, row %d: %s of %s", pair.after().tag(), row + 1, step.expression(), pair.after())
          .isCloseTo(expected, within(Math.abs(expected) * 1e-9 + 1e-9));
      if (Math.abs(expected - pair.before().steps().get(i).result().number()) > 1e-6) moved++;
      inTheOtherSystem(sheet.getRow(row), step);
      if (step.name().equals(Calculation.MARGIN)) verdict(sheet, top, pair.after(), expected);
      row++;
    }
    return moved;
  }

  private static void inTheOtherSystem(Row row, Calculation.Step step) {
    clearbed.calc.figure.BothUnits.counterpart(step.result().unit())
        .ifPresent(
            unit ->
                assertThat(row.getCell(OTHER).getNumericCellValue())
                    .isCloseTo(
                        step.result().in(unit),
                        within(Math.abs(step.result().in(unit)) * 1e-9 + 1e-6)));
  }

  private static void verdict(XSSFSheet sheet, int top, Calculation calculation, double margin) {
    int row = top + 2 + calculation.inputs().size() + calculation.steps().size();
    assertThat(sheet.getRow(row).getCell(NUMBER).getStringCellValue())
        .as(calculation.tag())
        .isEqualTo(margin >= -1e-9 ? "enough" : "not enough");
  }

  private static String title(Calculation calculation) {
    return calculation.tag() + ": " + calculation.title();
  }

  private static Map<String, Integer> blocks(XSSFSheet sheet) {
    Map<String, Integer> rows = new HashMap<>();
    for (Row row : sheet) {
      Cell first = row.getCell(0);
      if (first != null && first.getCellType() == CellType.STRING) {
        rows.putIfAbsent(first.getStringCellValue(), row.getRowNum());
      }
    }
    return rows;
  }

  private static XSSFWorkbook open(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      return new XSSFWorkbook(in);
    }
  }
}
