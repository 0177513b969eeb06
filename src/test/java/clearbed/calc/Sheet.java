package clearbed.calc;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Calculation;
import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.CellValue;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** Redoes a calculation as a spreadsheet would: inputs in cells, steps as live formulas. */
public final class Sheet {
  private static final Pattern NAME = Pattern.compile("\\{([a-z0-9_]+)\\}");
  private static final Pattern CALL = Pattern.compile("[A-Z]+(?=\\()");

  private Sheet() {}

  /** Every formula gives the number that the step carries. */
  public static void agrees(Calculation calculation) {
    Map<String, Double> found = evaluate(calculation);
    for (Calculation.Step step : calculation.steps()) {
      double expected = step.result().number();
      assertThat(found.get(step.name()))
          .as("%s = %s", step.name(), step.expression())
          .isCloseTo(
              expected, org.assertj.core.data.Offset.offset(Math.abs(expected) * 1e-9 + 1e-12));
    }
  }

  private static Map<String, Double> evaluate(Calculation calculation) {
    Map<String, String> cells = new HashMap<>();
    Map<String, Double> found = new HashMap<>();
    try (XSSFWorkbook workbook = new XSSFWorkbook()) {
      XSSFSheet sheet = workbook.createSheet();
      for (Calculation.Input input : calculation.inputs()) {
        cell(sheet, cells, input.name()).setCellValue(input.quantity().number());
      }
      for (Calculation.Step step : calculation.steps()) {
        String formula = withCells(step.expression(), cells);
        Cell cell = cell(sheet, cells, step.name());
        cell.setCellFormula(formula);
        CellValue value = workbook.getCreationHelper().createFormulaEvaluator().evaluate(cell);
        assertThat(value.getCellType()).as(formula).isEqualTo(CellType.NUMERIC);
        found.put(step.name(), value.getNumberValue());
      }
    } catch (IOException e) {
      throw new AssertionError(e);
    }
    return found;
  }

  private static Cell cell(XSSFSheet sheet, Map<String, String> cells, String name) {
    int row = sheet.getPhysicalNumberOfRows();
    assertThat(cells.put(name, "B" + (row + 1))).as("name used twice: %s", name).isNull();
    return sheet.createRow(row).createCell(1);
  }

  private static String withCells(String expression, Map<String, String> cells) {
    Matcher calls = CALL.matcher(expression);
    while (calls.find()) {
      assertThat(calls.group()).isIn("MAX", "MIN", "CEILING", "IF", "ROUNDUP");
    }
    return NAME.matcher(expression)
        .replaceAll(
            name -> {
              assertThat(cells).as(expression).containsKey(name.group(1));
              return cells.get(name.group(1));
            });
  }
}
