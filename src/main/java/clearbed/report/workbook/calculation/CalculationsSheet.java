package clearbed.report.workbook.calculation;

import clearbed.mark.FindingsSheets;
import clearbed.model.report.Calculation;
import clearbed.model.report.Calculations;
import clearbed.model.value.Entry;
import clearbed.report.wording.Deferral;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.typed.RenewedSheet;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Every result with its inputs, in live formulas: change an input, and the rest follows. The
 * results of all stand at the top, entry by entry.
 */
public final class CalculationsSheet {
  /** More blocks than this nobody reads; the JSON has them all. */
  static final int MOST = 300;

  private static final int[] WIDTHS = {38, 14, 8, 11, 8, 58, 36, 6};

  /** Points of rows that a page holds on paper, at the scale of the sheet. */
  private static final float PAGE = 715;

  private final XSSFSheet sheet;
  private final SXSSFSheet rows;
  private final RenewedSheet own;
  private final Pen pen;
  private final DocumentLinks links;
  private final List<BlockRows> blocks = new ArrayList<>();
  private QuantitySummary summary;

  /**
   * @param rows where rows are made: the sheet's streaming twin
   */
  public CalculationsSheet(
      XSSFSheet sheet, SXSSFSheet rows, RenewedSheet own, DocumentLinks links) {
    this.sheet = sheet;
    this.rows = rows;
    this.own = own;
    this.pen = own.pen();
    this.links = links;
  }

  public void fill(List<Calculation> calculations, List<Entry> entries) {
    pen.turnTo(sheet);
    // The results at the top are written last.
    rows.setRandomAccessWindowSize(-1);
    for (int column = 0; column < WIDTHS.length; column++) {
      sheet.setColumnWidth(column, WIDTHS[column] * 256);
    }
    int next = heading(calculations);
    List<Calculation> shown = byTag(calculations);
    summary = new QuantitySummary(pen, rows, shown, entries);
    if (!shown.isEmpty()) write(shown, next + 1);
    note();
  }

  private void write(List<Calculation> shown, int top) {
    int overview = summary.height() == 0 ? top : top + summary.height() + 1;
    int next = overview + 1 + shown.size();
    LiveFormulas formulas = new LiveFormulas(sheet, rows);
    for (Calculation calculation : shown) {
      if (calculation.steps().isEmpty()) continue;
      CalculationBlock block = new CalculationBlock(sheet, rows, own, links, formulas, calculation);
      blocks.add(block.write(next + 1));
      next = blocks.get(blocks.size() - 1).end();
    }
    results(overview, shown);
    printResults(overview + shown.size());
    summary.write(top, blocks, formulas);
    breakPages();
    if (!typedInputs().isEmpty()) formulas.evaluateAll();
  }

  /** What people typed in place of inputs, and what came of it, a sentence each. */
  public List<String> typedInputs() {
    return blocks.stream()
        .flatMap(block -> block.typed().stream())
        .map(words -> "Sheet Calculations, " + words + "the results there follow it.")
        .toList();
  }

  /** Tells the next issue what was written; the rows were not written from top to bottom. */
  private void note() {
    Set<Integer> titles = new HashSet<>();
    for (BlockRows block : blocks) titles.add(block.title());
    titles.addAll(summary.headings());
    for (int at = 0; at <= rows.getLastRowNum(); at++) {
      Row row = rows.getRow(at);
      if (row != null) own.done(row, titles.contains(at));
    }
  }

  private int heading(List<Calculation> calculations) {
    Row title = rows.createRow(0);
    Heights.points(title, 24);
    pen.text(title, 0, "Calculations", Styles.Look.TITLE);
    String hint =
        FindingsSheets.CALCULATIONS
            + " hatched ones are assumed, no document states them. All else is computed from them."
            + " The results alone are printed; clear the print area to print their workings too.";
    pen.text(
        rows.createRow(1),
        0,
        calculations.isEmpty() ? "Nothing was computed." : hint,
        Styles.Look.SUBTITLE);
    pen.text(rows.createRow(2), 0, Deferral.LINE, Styles.Look.SUBTITLE);
    if (calculations.size() <= MOST) return 3;
    String more = "The first %d of %d; the JSON file has them all.";
    pen.text(rows.createRow(3), 0, more.formatted(MOST, calculations.size()), Styles.Look.STRONG);
    return 4;
  }

  /** What is computed for one entry stands together. */
  private static List<Calculation> byTag(List<Calculation> calculations) {
    Map<String, List<Calculation>> tags = new LinkedHashMap<>();
    for (Calculation one : Calculations.ofTheFirst(MOST, calculations)) {
      tags.computeIfAbsent(one.tag(), tag -> new ArrayList<>()).add(one);
    }
    return tags.values().stream().flatMap(List::stream).limit(MOST).toList();
  }

  private void results(int top, List<Calculation> shown) {
    Row header = rows.createRow(top);
    List<String> words =
        List.of("Result", "Number", "Unit", "Number", "Unit", "Calculation", "Stated is", "Row");
    for (int column = 0; column < words.size(); column++) {
      pen.text(header, column, words.get(column), Styles.Look.HEADER);
    }
    Iterator<BlockRows> block = blocks.iterator();
    for (int i = 0; i < shown.size(); i++) {
      ResultRow row = new ResultRow(pen, rows.createRow(top + 1 + i));
      if (shown.get(i).steps().isEmpty()) row.lacking(shown.get(i));
      else row.write(shown.get(i), block.next());
    }
  }

  /** Workings run to some pages for each tile; on paper they would bury the results. */
  private void printResults(int last) {
    XSSFWorkbook book = sheet.getWorkbook();
    book.setPrintArea(book.getSheetIndex(sheet), 0, CalculationBlock.COLUMNS - 1, 0, last);
  }

  /**
   * Inputs stay together and steps stay together, so that a page is filled as far as it goes; a
   * curve stays whole.
   */
  private void breakPages() {
    int pageTop = 0;
    for (BlockRows block : blocks) {
      // The gap above a title goes over with it.
      int top = block.title() - 1;
      int chart = block.chart() - 1;
      int bodyEnd = chart > 0 ? chart : block.end();
      pageTop = keepWhole(pageTop, top, block.steps());
      pageTop = keepWhole(pageTop, block.steps(), bodyEnd);
      if (chart > 0) pageTop = keepWhole(pageTop, chart, block.end());
    }
  }

  /** Breaks before the rows when they do not end on this page; gives the top row of the page. */
  private int keepWhole(int pageTop, int from, int end) {
    if (height(pageTop, end) <= PAGE) return pageTop;
    sheet.setRowBreak(from - 1);
    return from;
  }

  private float height(int from, int to) {
    float sum = 0;
    for (int at = from; at < to; at++) {
      Row row = rows.getRow(at);
      sum += row == null ? sheet.getDefaultRowHeightInPoints() : row.getHeightInPoints();
    }
    return sum;
  }
}
