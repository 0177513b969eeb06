package clearbed.read.sheet;

import clearbed.read.block.MarkedText;
import java.util.BitSet;
import java.util.function.Supplier;
import org.apache.poi.hssf.usermodel.HSSFRichTextString;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.RichTextString;

/** Which words of the cells of an old Excel workbook a line is drawn through. */
final class XlsStrikes {
  private final BitSet struckFonts = new BitSet();

  XlsStrikes(HSSFWorkbook workbook) {
    // The format has no font 4: those behind it are numbered one higher.
    int fonts = workbook.getNumberOfFonts();
    int end = fonts > 4 ? fonts + 1 : fonts;
    for (int i = 0; i < end; i++) {
      if (workbook.getFontAt(i).getStrikeout()) struckFonts.set(workbook.getFontAt(i).getIndex());
    }
  }

  /** The words of a cell of which some are struck through; null where none is. */
  MarkedText in(Cell cell, Supplier<String> shown) {
    if (struckFonts.isEmpty()) return null;
    boolean struck = struckFonts.get(cell.getCellStyle().getFontIndex());
    RichText rich = cell.getCellType() == CellType.STRING ? rich(cell) : null;
    if (rich != null) return rich.in(struck);
    return struck ? RichText.of(shown.get()).in(true) : null;
  }

  private RichText rich(Cell cell) {
    RichTextString words = cell.getRichStringCellValue();
    if (!(words instanceof HSSFRichTextString text) || text.numFormattingRuns() == 0) return null;
    RichText rich = new RichText();
    String all = text.getString();
    int runs = text.numFormattingRuns();
    // What stands before the first run looks like the cell.
    rich.add(all.substring(0, Math.min(all.length(), text.getIndexOfFormattingRun(0))), null);
    for (int i = 0; i < runs; i++) {
      int from = Math.min(all.length(), text.getIndexOfFormattingRun(i));
      int next = i + 1 < runs ? text.getIndexOfFormattingRun(i + 1) : all.length();
      boolean struck = struckFonts.get(text.getFontOfFormattingRun(i));
      rich.add(all.substring(from, Math.max(from, Math.min(all.length(), next))), struck);
    }
    return rich;
  }
}
