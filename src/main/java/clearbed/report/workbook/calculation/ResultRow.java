package clearbed.report.workbook.calculation;

import clearbed.calc.figure.BothUnits;
import clearbed.model.report.Calculation;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;

/** One line of the results at the top, taken live from its block. */
final class ResultRow {
  private final Pen pen;
  private final Row row;

  ResultRow(Pen pen, Row row) {
    this.pen = pen;
    this.row = row;
  }

  void write(Calculation calculation, BlockRows block) {
    Calculation.Step last = calculation.steps().get(calculation.steps().size() - 1);
    String tag = calculation.tag().isEmpty() ? "" : calculation.tag() + ": ";
    pen.text(row, 0, tag + last.label(), Styles.Look.STRONG);
    Quantity result = last.result();
    number(1, "B" + (block.result() + 1), result, CalculationBlock.format(last));
    pen.text(row, 2, result.unit().symbol(), Styles.Look.TEXT);
    Unit other = BothUnits.beside(calculation, result.unit()).orElse(null);
    if (other == null) pen.text(row, 3, "", Styles.Look.TEXT);
    else number(3, "D" + (block.result() + 1), result.to(other), Figures.format(other));
    pen.text(row, 4, other == null ? "" : other.symbol(), Styles.Look.TEXT);
    String typed = block.typed().isEmpty() ? "" : ", with inputs that were typed";
    pen.text(row, 5, calculation.title() + typed, Styles.Look.TEXT);
    verdict(block);
    pen.text(row, 7, String.valueOf(block.title() + 1), Styles.Look.TEXT);
    Heights.fit(row, row.getSheet());
  }

  /** Of a calculation that waits for a figure. */
  void lacking(Calculation calculation) {
    String tag = calculation.tag().isEmpty() ? "" : calculation.tag() + ": ";
    pen.text(row, 0, tag + calculation.title(), Styles.Look.STRONG);
    for (int column = 1; column < CalculationBlock.COLUMNS; column++) {
      String words = column == 5 ? "not worked out: " + calculation.lacks() : "";
      pen.text(row, column, words, Styles.Look.TEXT);
    }
    Heights.fit(row, row.getSheet());
  }

  private void number(int column, String from, Quantity quantity, String format) {
    Cell cell = pen.put(row, column, new Datum.Blank(), Styles.Look.NUMBER);
    cell.setCellStyle(pen.styles().figures(cell.getCellStyle(), format));
    cell.setCellFormula(from);
    cell.setCellValue(quantity.number());
  }

  private void verdict(BlockRows block) {
    Cell cell = pen.text(row, 6, block.verdictWords(), Styles.Look.TEXT);
    if (block.verdict() <= 0) return;
    cell.setCellFormula("B" + (block.verdict() + 1));
    cell.setCellValue(block.verdictWords());
  }
}
