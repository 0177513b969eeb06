package clearbed.report.annotate.office;

import clearbed.model.report.Level;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/**
 * Frames cells. The line tells the level without colour: thick for an error, middling for a
 * warning, dashed for a note. All else of the cell's look stays.
 */
final class CellMarks {
  /** A merged area with a longer edge, such as a whole row, is marked at its first cell only. */
  private static final int LONGEST_EDGE = 500;

  private static final short INK = IndexedColors.DARK_RED.getIndex();
  private static final short FILL = IndexedColors.LEMON_CHIFFON.getIndex();

  private final Workbook workbook;
  private final Map<MarkedStyle, CellStyle> styles = new HashMap<>();
  private final Map<String, List<CellRangeAddress>> merged = new HashMap<>();

  CellMarks(Workbook workbook) {
    this.workbook = workbook;
  }

  private record Sides(boolean top, boolean right, boolean bottom, boolean left) {}

  private record MarkedStyle(int style, Sides sides, Level level, boolean filled) {}

  void mark(Cell cell, Level level) {
    Sheet sheet = cell.getSheet();
    CellRangeAddress area = area(cell);
    for (int r = area.getFirstRow(); r <= area.getLastRow(); r++) {
      for (int c = area.getFirstColumn(); c <= area.getLastColumn(); c++) {
        Sides sides =
            new Sides(
                r == area.getFirstRow(),
                c == area.getLastColumn(),
                r == area.getLastRow(),
                c == area.getFirstColumn());
        frame(WorkbookMarks.cell(sheet, r, c), sides, level);
      }
    }
  }

  /** The merged area that the cell stands in, or the cell alone. */
  private CellRangeAddress area(Cell cell) {
    int row = cell.getRowIndex();
    int column = cell.getColumnIndex();
    for (CellRangeAddress area :
        merged.computeIfAbsent(
            cell.getSheet().getSheetName(), k -> cell.getSheet().getMergedRegions())) {
      if (area.isInRange(row, column) && area.getNumberOfCells() <= LONGEST_EDGE) return area;
    }
    return new CellRangeAddress(row, row, column, column);
  }

  private void frame(Cell cell, Sides sides, Level level) {
    CellStyle old = cell.getCellStyle();
    // A fill that is there may carry white letters, and has a meaning of its own.
    boolean filled = old.getFillPattern() == FillPatternType.NO_FILL && !isInTable(cell);
    MarkedStyle key = new MarkedStyle(old.getIndex(), sides, level, filled);
    cell.setCellStyle(styles.computeIfAbsent(key, k -> framed(old, k)));
  }

  private CellStyle framed(CellStyle old, MarkedStyle key) {
    CellStyle style = workbook.createCellStyle();
    style.cloneStyleFrom(old);
    BorderStyle line = line(key.level());
    if (key.sides().top()) {
      style.setBorderTop(line);
      style.setTopBorderColor(INK);
    }
    if (key.sides().right()) {
      style.setBorderRight(line);
      style.setRightBorderColor(INK);
    }
    if (key.sides().bottom()) {
      style.setBorderBottom(line);
      style.setBottomBorderColor(INK);
    }
    if (key.sides().left()) {
      style.setBorderLeft(line);
      style.setLeftBorderColor(INK);
    }
    if (key.filled()) {
      style.setFillForegroundColor(FILL);
      style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
    }
    return style;
  }

  private static BorderStyle line(Level level) {
    return switch (level) {
      case ERROR -> BorderStyle.THICK;
      case WARNING -> BorderStyle.MEDIUM;
      case NOTE -> BorderStyle.MEDIUM_DASHED;
    };
  }

  /** Tables colour their letters by a style that the cell does not know of. */
  private static boolean isInTable(Cell cell) {
    return cell instanceof XSSFCell
        && ((XSSFSheet) cell.getSheet())
            .getTables().stream()
                .anyMatch(
                    t ->
                        cell.getRowIndex() >= t.getStartRowIndex()
                            && cell.getRowIndex() <= t.getEndRowIndex()
                            && cell.getColumnIndex() >= t.getStartColIndex()
                            && cell.getColumnIndex() <= t.getEndColIndex());
  }
}
