package clearbed.report.annotate.office;

import clearbed.report.annotate.note.FindingNote;
import clearbed.report.annotate.note.Job;
import clearbed.report.wording.SafeText;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.poi.hssf.usermodel.HSSFRichTextString;
import org.apache.poi.hssf.usermodel.HSSFSheet;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.Comment;
import org.apache.poi.ss.usermodel.CreationHelper;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.util.Units;
import org.apache.poi.xssf.usermodel.XSSFRichTextString;

/** Writes notes into the comment of a cell. */
final class CellComments {
  private static final int WIDTH_IN_PIXELS = 340;
  private static final int LETTERS_IN_A_LINE = 48;
  private static final double POINTS_PER_LINE = 12.5;
  private static final int MOST_LINES = 40;

  /** How Excel names the author of the stand-in for a conversation, which it shows instead. */
  private static final String CONVERSATION = "tc=";

  private final Sheet sheet;

  CellComments(Sheet sheet) {
    this.sheet = sheet;
  }

  void add(Cell cell, List<FindingNote> notes, Job job) {
    String text = notes.stream().map(FindingNote::text).collect(Collectors.joining("\n\n"));
    Comment there = sheet.getCellComment(cell.getAddress());
    if (there == null) {
      create(cell, text);
    } else if (String.valueOf(there.getAuthor()).startsWith(CONVERSATION)) {
      for (FindingNote note : notes) {
        job.list(
            note, "the cell holds a conversation, which takes no words of others; framed only");
      }
    } else {
      append(there, text);
    }
  }

  private void create(Cell cell, String text) {
    CreationHelper helper = sheet.getWorkbook().getCreationHelper();
    Comment comment = sheet.createDrawingPatriarch().createCellComment(anchor(helper, cell, text));
    comment.setAuthor(FindingNote.AUTHOR);
    comment.setString(helper.createRichTextString(SafeText.of(text)));
    comment.setAddress(cell.getAddress());
    comment.setVisible(false);
  }

  /** Keeps the fonts of what stands there. */
  private static void append(Comment comment, String text) {
    RichTextString old = comment.getString();
    String added = "\n\n" + FindingNote.AUTHOR + ":\n" + text;
    if (old instanceof XSSFRichTextString rich) {
      rich.append(SafeText.of(added));
      comment.setString(rich);
      return;
    }
    HSSFRichTextString before = (HSSFRichTextString) old;
    HSSFRichTextString joined = new HSSFRichTextString(SafeText.of(before.getString() + added));
    for (int i = 0; i < before.numFormattingRuns(); i++) {
      int start = before.getIndexOfFormattingRun(i);
      joined.applyFont(start, before.length(), before.getFontOfFormattingRun(i));
    }
    comment.setString(joined);
  }

  /** A box that opens at the right edge of the cell, as wide and high as the text wants. */
  private ClientAnchor anchor(CreationHelper helper, Cell cell, String text) {
    ClientAnchor anchor = helper.createClientAnchor();
    // The library knows the cell of a comment by the corner of its box, so it starts in the cell.
    anchor.setCol1(cell.getColumnIndex());
    anchor.setRow1(cell.getRowIndex());
    anchor.setDx1(columnWidth(cell));
    anchor.setCol2(rightColumn(cell.getColumnIndex() + 1));
    anchor.setRow2(bottomRow(cell.getRowIndex(), text));
    return anchor;
  }

  /** In the unit of the format: thousandths of the column, or English metric units. */
  private int columnWidth(Cell cell) {
    if (sheet instanceof HSSFSheet) return 1023;
    return Units.pixelToEMU((int) sheet.getColumnWidthInPixels(cell.getColumnIndex()));
  }

  private int rightColumn(int first) {
    int last = sheet.getWorkbook().getSpreadsheetVersion().getLastColumnIndex();
    int column = Math.min(first, last);
    for (double width = 0; width < WIDTH_IN_PIXELS && column < last; column++) {
      width += sheet.isColumnHidden(column) ? 0 : sheet.getColumnWidthInPixels(column);
    }
    return column;
  }

  private int bottomRow(int first, String text) {
    int last = sheet.getWorkbook().getSpreadsheetVersion().getLastRowIndex();
    int lines = (int) text.lines().mapToLong(l -> 1 + l.length() / LETTERS_IN_A_LINE).sum();
    double wanted = Math.min(MOST_LINES, lines + 1) * POINTS_PER_LINE;
    int row = first;
    for (double height = 0; height < wanted && row < last; row++) {
      Row there = sheet.getRow(row);
      height += there == null ? sheet.getDefaultRowHeightInPoints() : there.getHeightInPoints();
    }
    return row;
  }
}
