package clearbed.report.workbook.typed;

import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.layout.CellContent;
import clearbed.report.workbook.layout.Headers;
import clearbed.report.workbook.layout.SheetLayout;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellAddress;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellUtil;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFShape;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFSimpleShape;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The sheet for what people wrote and what has no place of its own any more. */
public final class SetAsideSheet {
  static final String SHEET = "Set aside";

  /** What earlier programs called it. */
  private static final String FORMER = "Kept";

  private static final List<String> HEADERS =
      List.of(
          "Sheet",
          "Cell",
          "Column",
          "Text",
          "Why it is kept here",
          "Set aside on",
          "Id",
          "What stood there before");
  private static final String ANEW = "the sheet is written anew in each issue";
  private static final int[] WIDTHS = {14, 8, 22, 60, 44, 13, 24, 40};

  /** Why text is set aside that stands where we write. */
  static final String TYPED_OVER = "typed over a text of ours, which this issue writes anew";

  private final XSSFWorkbook book;
  private final Pen pen;
  private final String today;

  public SetAsideSheet(XSSFWorkbook book, Pen pen, String today) {
    this.book = book;
    this.pen = pen;
    this.today = today;
  }

  /** Moves rows that belong to no finding, and closes the gaps. */
  public void takeStrays(XSSFSheet sheet, SheetLayout layout) {
    takeComments(sheet, layout);
    List<SheetLayout.Stray> strays = layout.strays();
    for (SheetLayout.Stray stray : strays) takeRow(stray, layout);
    for (int i = strays.size() - 1; i >= 0; i--) remove(sheet, strays.get(i).row().getRowNum());
  }

  /**
   * Keeps what was typed over a text of ours.
   *
   * @param before what we had written there; empty when that is not known
   */
  public void takeCell(Cell cell, String header, String id, String before) {
    take(cell, header, TYPED_OVER, id, before);
  }

  /** Keeps what was typed on sheets that are written anew. */
  public void take(List<TypedSheet.AsideCell> asides) {
    for (TypedSheet.AsideCell aside : asides) {
      TypedCell cell = aside.cell();
      String key = cell.key() == null ? "" : cell.key();
      String text = cell.content().shown();
      add(cell.sheet(), cell.address(), "", text, aside.reason(), key, cell.before());
    }
  }

  /** Keeps what was taken from a cell, or from the workbook itself when the sheet is empty. */
  void takeOut(String sheet, String cell, String what, String text, String reason) {
    add(sheet, cell, what, text, reason, "", "");
  }

  /**
   * Names a formula whose cell keeps its text.
   *
   * @param result what people saw there
   */
  void takeFormula(Cell cell, String formula, String reason, String result) {
    add(name(cell.getSheet()), address(cell), "formula", formula, reason, "", result);
  }

  /** Keeps words of a letter that came back and that belong to no answer. */
  public void takeReply(String file, String place, String text, String why) {
    add(file, "", place, text, why, "", "");
  }

  /** Keeps what was written in boxes on a sheet that is about to be written anew. */
  void takeShapes(XSSFSheet sheet) {
    if (sheet.getDrawingPatriarch() == null) return;
    for (XSSFShape shape : sheet.getDrawingPatriarch()) {
      if (!(shape instanceof XSSFSimpleShape box) || box.getText().isBlank()) continue;
      String at = "";
      if (box.getAnchor() instanceof XSSFClientAnchor anchor) {
        at = new CellAddress(anchor.getRow1(), anchor.getCol1()).formatAsString();
      }
      add(sheet.getSheetName(), at, "box", box.getText(), ANEW, "", "");
    }
  }

  /** Keeps remarks that people pinned to cells of no finding, before rows are moved. */
  private void takeComments(XSSFSheet sheet, SheetLayout layout) {
    Set<Integer> rows = new HashSet<>();
    for (Row row : layout.rows().values()) rows.add(row.getRowNum());
    sheet
        .getCellComments()
        .forEach(
            (at, comment) -> {
              boolean stays = at.getRow() <= layout.header().getRowNum();
              if (stays || rows.contains(at.getRow())) return;
              String header = SheetLayout.text(layout.header().getCell(at.getColumn()));
              String words = comment.getString().getString();
              String why = "the row belongs to no finding";
              add(name(sheet), at.formatAsString(), header + " (comment)", words, why, "", "");
              CellUtil.getCell(CellUtil.getRow(at.getRow(), sheet), at.getColumn())
                  .removeCellComment();
            });
  }

  private static String name(Sheet sheet) {
    return sheet.getSheetName();
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
                    ANEW,
                    "",
                    ""));
  }

  private void takeRow(SheetLayout.Stray stray, SheetLayout layout) {
    String id = layout.text(stray.row(), Headers.ID).strip();
    for (Cell cell : stray.row()) {
      String header = SheetLayout.text(layout.header().getCell(cell.getColumnIndex()));
      take(cell, header, stray.reason(), id, "");
    }
  }

  private void take(Cell cell, String header, String reason, String id, String before) {
    CellContent content = CellContent.of(cell);
    if (content == null) return;
    add(name(cell.getSheet()), address(cell), header, content.shown(), reason, id, before);
  }

  private static String address(Cell cell) {
    return cell.getAddress().formatAsString();
  }

  private void add(
      String sheet,
      String cell,
      String header,
      String text,
      String reason,
      String id,
      String before) {
    XSSFSheet kept = sheet();
    Row row = kept.createRow(kept.getLastRowNum() + 1);
    List<String> values = List.of(sheet, cell, header, text, reason, today, id, before);
    for (int column = 0; column < values.size(); column++) {
      pen.text(row, column, values.get(column), Styles.Look.TEXT);
    }
  }

  private XSSFSheet sheet() {
    XSSFSheet former = book.getSheet(FORMER);
    boolean ours =
        former != null
            && former.getRow(0) != null
            && SheetLayout.text(former.getRow(0).getCell(0)).equals(HEADERS.get(0));
    if (ours && book.getSheet(SHEET) == null) book.setSheetName(book.getSheetIndex(former), SHEET);
    XSSFSheet kept = book.getSheet(SHEET);
    boolean isNew = kept == null;
    if (isNew) kept = book.createSheet(SHEET);
    Row header = kept.getRow(0) == null ? kept.createRow(0) : kept.getRow(0);
    for (int column = 0; column < HEADERS.size(); column++) {
      // A sheet of an older program lacks the last column.
      boolean missing = SheetLayout.isBlank(header.getCell(column));
      if (!missing) continue;
      pen.text(header, column, HEADERS.get(column), Styles.Look.HEADER);
      kept.setColumnWidth(column, WIDTHS[column] * 256);
    }
    if (!isNew) return kept;
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
