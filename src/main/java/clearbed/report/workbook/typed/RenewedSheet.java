package clearbed.report.workbook.typed;

import clearbed.report.wording.SafeText;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.layout.CellContent;
import clearbed.report.workbook.layout.SheetRow;
import clearbed.report.workbook.layout.SheetSnapshot;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;

/**
 * A sheet that each issue writes anew: notes what is written there, and puts back beside it what
 * people typed.
 */
public final class RenewedSheet {
  private final String name;
  private final Pen pen;
  private final TypedSheet typed;
  private final SheetSnapshot snapshot = new SheetSnapshot();
  private final RowKeys keys;

  /** Numbers of ours that a typed one stands in place of, by row. */
  private final Map<Integer, CellContent> ours = new HashMap<>();

  private int width;

  /** Columns that anything stands in, what people typed included. */
  private int reach;

  public RenewedSheet(String name, Pen pen, TypedSheet typed) {
    this.name = name;
    this.pen = pen;
    this.typed = typed;
    this.keys = new RowKeys(name);
  }

  public String name() {
    return name;
  }

  /** Columns from the first to the last that anything stands in. */
  public int reach() {
    return reach;
  }

  /** What writes the cells of this sheet. */
  public Pen pen() {
    return pen;
  }

  /** Takes note of a row that is written; to be called from top to bottom. */
  public void done(Row row) {
    done(row, false);
  }

  /**
   * @param heading true for a row that tells the rows below it apart
   */
  public void done(Row row, boolean heading) {
    List<CellContent> cells = new ArrayList<>();
    for (Cell cell : row) {
      CellContent content = CellContent.of(cell);
      CellContent own = ours.get(row.getRowNum());
      if (own != null && own.column() == cell.getColumnIndex()) content = own;
      if (content != null) cells.add(content);
      width = Math.max(width, cell.getColumnIndex() + 1);
    }
    SheetRow written = new SheetRow(row.getRowNum(), heading, cells);
    if (!cells.isEmpty()) snapshot.add(written);
    for (TypedCell cell : typed.take(keys.of(written))) putBack(row, cell);
    reach = Math.max(reach, row.getLastCellNum());
  }

  private void putBack(Row row, TypedCell cell) {
    int at = cell.content().column();
    // What stood behind our last column stays behind it.
    if (at >= typed.width()) at += Math.max(0, width - typed.width());
    Cell there = row.getCell(at);
    if (!cell.isNote()) typed.setAside(cell, cell.reason());
    else if (there != null && CellContent.of(there) != null) {
      typed.setAside(cell, "this issue writes into its cell");
    } else {
      if (there != null) row.removeCell(there);
      write(row, at, cell.content());
    }
  }

  /** With the looks that people gave it. */
  private void write(Row row, int column, CellContent content) {
    Cell cell = row.createCell(column);
    cell.setCellStyle(pen.styles().at(content.style()));
    switch (content.kind()) {
      case NUMBER -> cell.setCellValue(content.number());
      case DATE -> cell.setCellValue(content.time());
      default -> cell.setCellValue(SafeText.of(content.text()));
    }
  }

  /**
   * What people typed over a number, to be written in its place; null when they did not. What is no
   * number, or meant another unit, is set aside.
   *
   * @param heading that the row stands under
   * @param unit that stands in the column behind the number
   */
  public Double typedOver(String heading, String label, int column, String unit) {
    TypedCell cell = typed.takeOver(heading + " / " + label, column);
    if (cell == null) return null;
    if (cell.content().kind() != CellContent.Type.NUMBER) {
      typed.setAside(cell, "typed over a number, and no number itself");
      return null;
    }
    if (!cell.ours().label(column + 1).equals(unit.strip())) {
      typed.setAside(cell, "typed over a number that has another unit now");
      return null;
    }
    return cell.content().number();
  }

  /** Says what we would have written where a typed number stands. */
  public void noteOurs(int row, int column, double number) {
    ours.put(row, CellContent.number(column, number, false, CellContent.NO_STYLE));
  }

  /** All that was written, packed for the hidden sheet. */
  String snapshot() {
    return snapshot.packed();
  }
}
