package clearbed.report;

import clearbed.model.QuestionLog;
import clearbed.report.Column.Owner;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Writes a sheet that people work in: all new, or into what they left of it. */
final class LogSheet {
  private final XSSFSheet sheet;
  private final List<Column> columns;
  private final Pen pen;

  LogSheet(XSSFSheet sheet, List<Column> columns, Pen pen) {
    this.sheet = sheet;
    this.columns = columns;
    this.pen = pen;
  }

  String name() {
    return sheet.getSheetName();
  }

  List<Column> columns() {
    return columns;
  }

  /**
   * Writes header and rows into an empty sheet. The rows get no height, so that programs fit them
   * to their text, what people type later included: a streamed row could only have a fixed one.
   *
   * @param rows where rows are made: the sheet itself, or its streaming twin
   */
  void fill(Sheet rows, List<QuestionLog.Line> lines) {
    pen.turnTo(sheet);
    Row header = rows.createRow(0);
    Heights.points(header, 30);
    for (int column = 0; column < columns.size(); column++) writeHeader(header, column, column);
    int[] widths = columns.stream().mapToInt(Column::width).toArray();
    int at = 1;
    for (QuestionLog.Line line : lines) {
      if (at == SheetSetup.LAST_ROW) {
        String more = "The sheet is full; the rest is in the JSON file.";
        pen.text(rows.createRow(at), 0, more, Styles.Look.STRONG);
        break;
      }
      Row row = rows.createRow(at++);
      for (int column = 0; column < columns.size(); column++) {
        pen.put(row, column, columns.get(column).datum().apply(line), columns.get(column).look());
      }
      Heights.fit(row, widths);
    }
    int last = Math.max(at - 1, 1);
    SheetSetup.header(sheet, 0, last, columns.size());
    printArea(last);
  }

  /**
   * Writes into a sheet that people worked in: their rows stay where they are, new ones follow.
   *
   * @param earlier the lines as the earlier issue wrote them, empty when that is not known
   * @param kept where text goes that would be lost
   */
  void update(
      QuestionLog log,
      Map<String, QuestionLog.Line> earlier,
      Kept kept,
      List<QuestionLog.Line> lines) {
    pen.turnTo(sheet);
    SheetLayout layout = SheetLayout.of(sheet, headers(), log);
    kept.takeStrays(sheet, layout);
    addMissing(layout);
    int next = lastRow(layout) + 1;
    for (QuestionLog.Line line : lines) {
      Row row = layout.rows().get(line.finding().id());
      boolean added = row == null;
      if (added) row = sheet.createRow(next++);
      write(row, added, layout, line, earlier.get(line.finding().id()), kept);
    }
    int width = layout.header().getLastCellNum() - 1;
    int top = layout.header().getRowNum();
    sheet.setAutoFilter(new CellRangeAddress(top, Math.max(next - 1, top + 1), 0, width));
  }

  private void write(
      Row row,
      boolean added,
      SheetLayout layout,
      QuestionLog.Line line,
      QuestionLog.Line before,
      Kept kept) {
    for (Column column : columns) {
      if (column.owner() == Owner.PEOPLE && !added) continue;
      int at = layout.column(column.header());
      Datum datum = column.datum().apply(line);
      if (!added && reworded(row.getCell(at), column, datum, before)) {
        if (column.owner() == Owner.WORDING && before != null) continue;
        kept.takeCell(row.getCell(at), column.header(), line.finding().id());
      }
      pen.put(row, at, datum, column.look());
    }
    Heights.fit(row, sheet);
  }

  /** True when somebody typed over what the earlier issue wrote, or may have. */
  private static boolean reworded(Cell cell, Column column, Datum now, QuestionLog.Line before) {
    if (column.owner() == Owner.STATE) return false;
    String text = SheetLayout.text(cell);
    if (text.isBlank()) return false;
    String ours = before == null ? now.shown() : column.datum().apply(before).shown();
    return !text.strip().equals(ours.strip());
  }

  private void addMissing(SheetLayout layout) {
    for (Column column : columns) {
      if (layout.column(column.header()) >= 0) continue;
      int at = layout.append(column.header());
      writeHeader(layout.header(), at, columns.indexOf(column));
    }
  }

  private void writeHeader(Row header, int at, int index) {
    Column column = columns.get(index);
    Styles.Look look = column.toFill() ? Styles.Look.HEADER_TO_FILL : Styles.Look.HEADER;
    pen.text(header, at, column.header(), look);
    sheet.setColumnWidth(at, column.width() * 256);
  }

  private int lastRow(SheetLayout layout) {
    return layout.rows().values().stream()
        .mapToInt(Row::getRowNum)
        .max()
        .orElse(layout.header().getRowNum());
  }

  private List<String> headers() {
    return columns.stream().map(Column::header).toList();
  }

  private void printArea(int lastRow) {
    int printed = (int) columns.stream().takeWhile(Column::printed).count();
    int index = sheet.getWorkbook().getSheetIndex(sheet);
    sheet.getWorkbook().setPrintArea(index, 0, printed - 1, 0, lastRow);
  }
}
