package clearbed.report.workbook.cell;

import java.util.List;
import org.apache.poi.ss.usermodel.ComparisonOperator;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PaperSize;
import org.apache.poi.ss.usermodel.PatternFormatting;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.ss.util.CellReference;
import org.apache.poi.xssf.usermodel.XSSFConditionalFormattingRule;
import org.apache.poi.xssf.usermodel.XSSFFontFormatting;
import org.apache.poi.xssf.usermodel.XSSFPatternFormatting;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFSheetConditionalFormatting;

/** What a sheet does apart from its cells: paper, colours of words, drop-downs. */
public final class SheetSetup {
  /** The last row that Excel has, from 0. */
  public static final int LAST_ROW = 1_048_575;

  /** What stands there when there is more to write. */
  public static final String FULL = "The sheet is full; the rest is in the JSON file.";

  /** Dates before this are slips of the pen. */
  private static final String EARLIEST = "DATE(2000,1,1)";

  private static final String LATEST = "DATE(2100,12,31)";

  private SheetSetup() {}

  /**
   * What the words of a drop-down mean.
   *
   * @param words at most 255 characters (ECMA-376, dataValidation)
   * @param strict true when nothing else may be typed
   */
  record Meaning(String title, String words, boolean strict) {}

  /** A word and the colours of cells that begin with it; dark, middle and light tell in grey. */
  public record Tint(String word, String back, String ink) {}

  public static final List<Tint> LEVELS =
      List.of(
          new Tint("error", "6E1A3B", "FFFFFF"),
          new Tint("warning", "EFB64C", "1F2933"),
          new Tint("note", "DCE9F2", "1F2933"));

  public static final List<Tint> STATES =
      List.of(
          new Tint("new", "CFDDEA", "1F2933"),
          new Tint("reopened", "6E1A3B", "FFFFFF"),
          new Tint("resolved", "E4E4E4", "555555"),
          new Tint("suppressed", "E4E4E4", "555555"));

  public static final List<Tint> OUTCOMES =
      List.of(
          new Tint("error", "6E1A3B", "FFFFFF"),
          new Tint("warning", "EFB64C", "1F2933"),
          new Tint("note", "DCE9F2", "1F2933"),
          new Tint("unread", "D9C8E3", "1F2933"),
          new Tint("undecided", "F6E7C6", "1F2933"),
          new Tint("hidden", "E4E4E4", "555555"),
          new Tint("n/a", "FFFFFF", "6B7680"));

  /**
   * Keeps the header row in sight and on every page, and lets the rows below it be filtered.
   *
   * @param fixed columns that stay in sight too
   */
  public static void header(XSSFSheet sheet, int fixed, int lastRow, int columns) {
    sheet.createFreezePane(fixed, 1);
    sheet.setAutoFilter(new CellRangeAddress(0, lastRow, 0, columns - 1));
    sheet.setRepeatingRows(new CellRangeAddress(0, 0, -1, -1));
  }

  /** Colours cells of a column range by the word they begin with. */
  public static void tint(
      XSSFSheet sheet, int firstRow, int firstColumn, int lastColumn, List<Tint> tints) {
    XSSFSheetConditionalFormatting rules = sheet.getSheetConditionalFormatting();
    String corner = new CellReference(firstRow, firstColumn, false, false).formatAsString();
    CellRangeAddress[] area = {new CellRangeAddress(firstRow, LAST_ROW, firstColumn, lastColumn)};
    for (Tint tint : tints) {
      String test = "LEFT(" + corner + "," + tint.word().length() + ")=\"" + tint.word() + "\"";
      XSSFConditionalFormattingRule rule = rules.createConditionalFormattingRule(test);
      XSSFPatternFormatting fill = rule.createPatternFormatting();
      fill.setFillPattern(PatternFormatting.SOLID_FOREGROUND);
      fill.setFillForegroundColor(Styles.colour(tint.back()));
      fill.setFillBackgroundColor(Styles.colour(tint.back()));
      XSSFFontFormatting font = rule.createFontFormatting();
      font.setFontColor(Styles.colour(tint.ink()));
      rules.addConditionalFormatting(area, rule);
    }
  }

  /** Greys rows whose state says that nothing is to be done, so that what is open stands out. */
  public static void greySettled(XSSFSheet sheet, int state, int lastColumn) {
    XSSFSheetConditionalFormatting rules = sheet.getSheetConditionalFormatting();
    String cell = "$" + CellReference.convertNumToColString(state) + "2";
    String test = "OR(%1$s=\"resolved\",%1$s=\"answered\",%1$s=\"suppressed\")".formatted(cell);
    XSSFConditionalFormattingRule rule = rules.createConditionalFormattingRule(test);
    XSSFPatternFormatting fill = rule.createPatternFormatting();
    fill.setFillPattern(PatternFormatting.SOLID_FOREGROUND);
    fill.setFillForegroundColor(Styles.colour("E4E4E4"));
    fill.setFillBackgroundColor(Styles.colour("E4E4E4"));
    rule.createFontFormatting().setFontColor(Styles.colour("555555"));
    CellRangeAddress[] area = {new CellRangeAddress(1, LAST_ROW, 0, lastColumn)};
    rules.addConditionalFormatting(area, rule);
  }

  /**
   * Offers words in a column.
   *
   * @param meaning what they mean, shown beside a cell that is selected
   */
  public static void offer(
      XSSFSheet sheet, int firstRow, int column, List<String> words, Meaning meaning) {
    DataValidationHelper helper = sheet.getDataValidationHelper();
    DataValidationConstraint list =
        helper.createExplicitListConstraint(words.toArray(String[]::new));
    DataValidation rule = helper.createValidation(list, area(firstRow, column));
    rule.setSuppressDropDownArrow(true);
    rule.setShowPromptBox(true);
    rule.createPromptBox(meaning.title(), meaning.words());
    rule.setShowErrorBox(meaning.strict());
    rule.createErrorBox("Not one of the words", "Choose one of: " + String.join(", ", words) + ".");
    sheet.addValidationData(rule);
  }

  /** Takes only dates in a column. */
  public static void datesOnly(XSSFSheet sheet, int firstRow, int column) {
    DataValidationHelper helper = sheet.getDataValidationHelper();
    DataValidationConstraint between =
        helper.createDateConstraint(ComparisonOperator.BETWEEN, EARLIEST, LATEST, "yyyy-mm-dd");
    DataValidation rule = helper.createValidation(between, area(firstRow, column));
    rule.setShowPromptBox(true);
    rule.createPromptBox(
        "A date", "Such as 2026-03-31. Past due questions are counted on Summary.");
    rule.setShowErrorBox(true);
    rule.createErrorBox("Not a date", "Type a date, such as 2026-03-31.");
    sheet.addValidationData(rule);
  }

  private static CellRangeAddressList area(int firstRow, int column) {
    return new CellRangeAddressList(firstRow, LAST_ROW, column, column);
  }

  /** Percent at which 180 characters fit across a letter page on its side. */
  private static final short NARROWED = 70;

  /**
   * How a sheet goes onto paper.
   *
   * @param pagesWide 0 for a sheet that sets its own page breaks, which a sheet fitted to its pages
   *     would not keep
   */
  public record PaperSetup(boolean landscape, PaperSize size, int pagesWide) {}

  public static void paper(XSSFSheet sheet, PaperSetup paper, String title) {
    boolean fit = paper.pagesWide() > 0;
    sheet.setFitToPage(fit);
    sheet.setAutobreaks(fit);
    sheet.getPrintSetup().setLandscape(paper.landscape());
    sheet.getPrintSetup().setPaperSize(paper.size());
    if (fit) {
      sheet.getPrintSetup().setFitWidth((short) paper.pagesWide());
      sheet.getPrintSetup().setFitHeight((short) 0);
    } else {
      sheet.getPrintSetup().setScale(NARROWED);
    }
    sheet.setMargin(PageMargin.LEFT, 0.4);
    sheet.setMargin(PageMargin.RIGHT, 0.4);
    sheet.setMargin(PageMargin.TOP, 0.6);
    sheet.setMargin(PageMargin.BOTTOM, 0.6);
    sheet.getHeader().setLeft(title);
    sheet.getHeader().setRight("&A");
    sheet.getFooter().setRight("Page &P of &N");
    sheet.getFooter().setLeft("Clearbed");
  }
}
