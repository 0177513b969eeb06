package clearbed.report.workbook.log;

import clearbed.model.report.Level;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.State;
import clearbed.report.workbook.cell.Datum;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.layout.CellContent;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import clearbed.report.workbook.log.LogColumn.Owner;
import clearbed.report.workbook.typed.SetAsideSheet;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Writes a sheet that people work in: all new, or into what they left of it. */
public final class LogSheet {
  /** Number, tags and question. */
  private static final int ASKED = 3;

  private final XSSFSheet sheet;
  private final List<LogColumn> columns;
  private final Pen pen;

  public LogSheet(XSSFSheet sheet, List<LogColumn> columns, Pen pen) {
    this.sheet = sheet;
    this.columns = columns;
    this.pen = pen;
  }

  public String name() {
    return sheet.getSheetName();
  }

  public List<LogColumn> columns() {
    return columns;
  }

  /**
   * Writes header and rows into an empty sheet. The rows get no height, so that programs fit them
   * to their text, what people type later included: a streamed row could only have a fixed one.
   *
   * @param rows where rows are made: the sheet itself, or its streaming twin
   */
  public void fill(Sheet rows, List<QuestionLog.LogLine> lines) {
    pen.turnTo(sheet);
    Row header = rows.createRow(0);
    Heights.points(header, 30);
    for (int column = 0; column < columns.size(); column++) writeHeader(header, column, column);
    int[] widths = columns.stream().mapToInt(LogColumn::width).toArray();
    int at = 1;
    for (QuestionLog.LogLine line : lines) {
      if (at == SheetSetup.LAST_ROW) {
        pen.text(rows.createRow(at), 0, SheetSetup.FULL, Styles.Look.STRONG);
        break;
      }
      Row row = rows.createRow(at++);
      for (int column = 0; column < columns.size(); column++) {
        pen.put(row, column, columns.get(column).datum().apply(line), columns.get(column).look());
      }
      Heights.fit(row, widths);
    }
    int last = Math.max(at - 1, 1);
    // Beside the question people type; it stays in sight.
    int fixed = columns.get(0).header().equals(Headers.NUMBER) ? ASKED : 0;
    SheetSetup.header(sheet, fixed, last, columns.size());
    printArea(last);
  }

  /**
   * Writes into a sheet that people worked in: their rows stay where they are, new ones follow.
   *
   * @param before what the earlier issue wrote
   * @param kept where text goes that would be lost
   */
  public void update(
      QuestionLog log, Before before, SetAsideSheet kept, List<QuestionLog.LogLine> lines) {
    pen.turnTo(sheet);
    SheetLayout layout = SheetLayout.ofLines(sheet, headers(), log.lines().values());
    kept.takeStrays(sheet, layout);
    addMissing(layout);
    int next = lastRow(layout) + 1;
    for (QuestionLog.LogLine line : lines) {
      Row row = layout.rows().get(line.finding().id());
      boolean added = row == null;
      if (added) row = sheet.createRow(next++);
      if (added) add(row, layout, line);
      else write(row, layout, line, before, kept);
      Heights.fit(row, sheet);
    }
    int width = layout.header().getLastCellNum() - 1;
    int top = layout.header().getRowNum();
    sheet.setAutoFilter(new CellRangeAddress(top, Math.max(next - 1, top + 1), 0, width));
  }

  private void add(Row row, SheetLayout layout, QuestionLog.LogLine line) {
    for (LogColumn column : columns) {
      pen.put(row, layout.column(column.header()), column.datum().apply(line), column.look());
    }
  }

  private void write(
      Row row, SheetLayout layout, QuestionLog.LogLine line, Before before, SetAsideSheet kept) {
    for (LogColumn column : columns) {
      if (column.owner() == Owner.PEOPLE) continue;
      int at = layout.column(column.header());
      Cell cell = row.getCell(at);
      Datum datum = column.datum().apply(line);
      String id = line.finding().id();
      boolean isFormula = cell != null && cell.getCellType() == CellType.FORMULA;
      if (column.owner() == Owner.SHARED && !isFormula) {
        datum = before.withTheirs(cell, column, datum, id);
      } else if (before.isTypedOver(cell, column, datum, id)) {
        if (column.owner() == Owner.WORDING && before.isKnown(id)) continue;
        kept.takeCell(cell, column.header(), id, before.shown(column, id));
      }
      if (isFormula) cell.setBlank();
      pen.put(row, at, datum, column.look());
    }
  }

  /**
   * What the earlier issue wrote in the cells.
   *
   * @param columns as they were then
   * @param lines as they were then, by finding id; empty when that is not known
   */
  public record Before(List<LogColumn> columns, Map<String, QuestionLog.LogLine> lines) {
    boolean isKnown(String id) {
      return lines.containsKey(id);
    }

    /** As people saw it; empty when it is not known. */
    String shown(LogColumn column, String id) {
      QuestionLog.LogLine line = lines.get(id);
      if (line == null) return "";
      return columns.stream()
          .filter(then -> then.header().equals(column.header()))
          .map(then -> then.datum().apply(line).shown())
          .findFirst()
          .orElse("");
    }

    /** True when somebody typed over what stood there, or may have. */
    boolean isTypedOver(Cell cell, LogColumn column, Datum now, String id) {
      if (SheetLayout.isBlank(cell)) return false;
      if (cell.getCellType() == CellType.FORMULA) return true;
      String text = SheetLayout.text(cell).strip();
      if (now instanceof Datum.Link) return !Pen.isOfLink(text);
      if (isKnown(id)) return !text.equals(shown(column, id).strip());
      if (column.owner() == Owner.STATE) return !couldBeOurs(text);
      return !text.equals(now.shown().strip());
    }

    /** A word, date or number like those that we write where findings stand. */
    private static boolean couldBeOurs(String text) {
      boolean isWord =
          Stream.of(Level.values()).anyMatch(level -> level.word().equals(text))
              || Stream.of(State.values()).anyMatch(state -> state.word().equals(text))
              || Headers.isSuppressed(text);
      return isWord || text.matches("\\d+|\\d{4}-\\d{2}-\\d{2}");
    }

    /** Our words behind those that people added to the ones we wrote before. */
    Datum withTheirs(Cell cell, LogColumn column, Datum now, String id) {
      String text = SheetLayout.isBlank(cell) ? "" : CellContent.of(cell).shown();
      String old = shown(column, id);
      int at = old.isEmpty() ? -1 : text.indexOf(old);
      String theirs = at < 0 ? text : text.substring(0, at) + text.substring(at + old.length());
      if (theirs.isBlank()) return now;
      String ours = now.shown();
      if (ours.isEmpty() || theirs.contains(ours)) return new Datum.Text(theirs.strip());
      return new Datum.Text(theirs.strip() + "\n" + ours);
    }
  }

  private void addMissing(SheetLayout layout) {
    for (LogColumn column : columns) {
      if (layout.column(column.header()) >= 0) continue;
      int at = layout.append(column.header());
      writeHeader(layout.header(), at, columns.indexOf(column));
    }
  }

  private void writeHeader(Row header, int at, int index) {
    LogColumn column = columns.get(index);
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
    return columns.stream().map(LogColumn::header).toList();
  }

  private void printArea(int lastRow) {
    int printed = (int) columns.stream().takeWhile(LogColumn::printed).count();
    int index = sheet.getWorkbook().getSheetIndex(sheet);
    sheet.getWorkbook().setPrintArea(index, 0, printed - 1, 0, lastRow);
  }
}
