package clearbed.report.workbook.layout;

import java.util.List;

/**
 * What a row of a sheet holds.
 *
 * @param at its number, from 0
 * @param isHeading true when the rows below it are told apart by it
 * @param cells that are not blank, from left to right
 */
public record SheetRow(int at, boolean isHeading, List<CellContent> cells) {

  /** The content of a column, or null. */
  CellContent cell(int column) {
    for (CellContent cell : cells) if (cell.column() == column) return cell;
    return null;
  }

  /** The words that a row is known by in that column; empty when it is blank. */
  public String label(int column) {
    CellContent cell = cell(column);
    return cell == null ? "" : cell.label();
  }

  /** True when both hold the same, wherever they stand. */
  public boolean isSame(SheetRow other) {
    if (cells.size() != other.cells.size()) return false;
    for (int i = 0; i < cells.size(); i++) {
      CellContent one = cells.get(i);
      CellContent twin = other.cells.get(i);
      boolean moved = at != other.at || one.column() != twin.column();
      if (!one.isSame(twin, moved)) return false;
    }
    return true;
  }
}
