package clearbed.report;

import java.util.List;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The sheet for what people wrote and what has no place of its own any more. */
final class Kept {
  static final String SHEET = "Kept";
  private static final List<String> HEADERS =
      List.of("Sheet", "Cell", "Column", "Text", "Why it is kept here", "Set aside on", "Id");
  private static final int[] WIDTHS = {14, 8, 22, 60, 44, 13, 24};

  private final XSSFWorkbook book;
  private final Pen pen;
  private final String today;

  Kept(XSSFWorkbook book, Pen pen, String today) {
    this.book = book;
    this.pen = pen;
    this.today = today;
  }

  /** Moves rows that belong to no finding, and closes the gaps. */
  void takeStrays(Sheet sheet, SheetLayout layout) {
    List<SheetLayout.Stray> strays = layout.strays();
    for (SheetLayout.Stray stray : strays) takeRow(stray, layout);
    for (int i = strays.size() - 1; i >= 0; i--) remove(sheet, strays.get(i).row().getRowNum());
  }

  void takeCell(Cell cell, String header, String id) {
    take(cell, header, "typed over a text of ours, which this issue writes anew", id);
  }

  /** Keeps the remarks that people pinned to cells of a sheet that is about to be written anew. */
  void takeComments(XSSFSheet sheet) {
    sheet
        .getCellComments()
        .forEach(
            (address, comment) ->
                add(
                    sheet.getSheetName(),
                    address.formatAsString(),
                    "comment of " + comment.getAuthor(),
                    comment.getString().getString(),
                    "the sheet is written anew in each issue",
                    ""));
  }

  private void takeRow(SheetLayout.Stray stray, SheetLayout layout) {
    String id = layout.text(stray.row(), Headers.ID).strip();
    for (Cell cell : stray.row()) {
      String header = SheetLayout.text(layout.header().getCell(cell.getColumnIndex()));
      take(cell, header, stray.reason(), id);
      if (cell.getCellComment() != null) {
        String words = cell.getCellComment().getString().getString();
        add(
            cell.getSheet().getSheetName(),
            address(cell),
            header + " (comment)",
            words,
            stray.reason(),
            id);
      }
    }
  }

  private void take(Cell cell, String header, String reason, String id) {
    String text = SheetLayout.text(cell);
    if (cell.getCellType() == CellType.FORMULA) {
      text = "=" + cell.getCellFormula();
    }
    if (text.isEmpty()) return;
    add(cell.getSheet().getSheetName(), address(cell), header, text, reason, id);
  }

  private static String address(Cell cell) {
    return cell.getAddress().formatAsString();
  }

  private void add(
      String sheet, String cell, String header, String text, String reason, String id) {
    XSSFSheet kept = sheet();
    Row row = kept.createRow(kept.getLastRowNum() + 1);
    List<String> values = List.of(sheet, cell, header, text, reason, today, id);
    for (int column = 0; column < values.size(); column++) {
      pen.text(row, column, values.get(column), Styles.Look.TEXT);
    }
  }

  private XSSFSheet sheet() {
    XSSFSheet kept = book.getSheet(SHEET);
    if (kept != null) return kept;
    kept = book.createSheet(SHEET);
    Row header = kept.createRow(0);
    for (int column = 0; column < HEADERS.size(); column++) {
      pen.text(header, column, HEADERS.get(column), Styles.Look.HEADER);
      kept.setColumnWidth(column, WIDTHS[column] * 256);
    }
    kept.createFreezePane(0, 1);
    kept.setRepeatingRows(new CellRangeAddress(0, 0, -1, -1));
    return kept;
  }

  private static void remove(Sheet sheet, int index) {
    Row row = sheet.getRow(index);
    for (Cell cell : row) {
      cell.removeCellComment();
      if (cell.getHyperlink() != null) cell.removeHyperlink();
    }
    sheet.removeRow(row);
    if (index < sheet.getLastRowNum()) sheet.shiftRows(index + 1, sheet.getLastRowNum(), -1);
  }
}
