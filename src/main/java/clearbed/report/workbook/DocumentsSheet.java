package clearbed.report.workbook;

import clearbed.base.DisplayText;
import clearbed.model.document.Document;
import clearbed.model.report.Report;
import clearbed.report.wording.Phrasing;
import clearbed.report.workbook.cell.DocumentLinks;
import clearbed.report.workbook.cell.Heights;
import clearbed.report.workbook.cell.Pen;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.cell.Styles;
import clearbed.report.workbook.typed.RenewedSheet;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Every file: what was read of it, what was not, and why. */
final class DocumentsSheet {
  private static final List<String> HEADERS =
      List.of(
          "File",
          "Link",
          "Format",
          "Status",
          "Reason",
          "Glass tiles",
          "Other items",
          "Place in it",
          "What became of it",
          "Why",
          "Words");
  private static final int[] WIDTHS = {42, 6, 8, 11, 38, 9, 9, 34, 13, 40, 44};

  private final XSSFSheet sheet;
  private final RenewedSheet own;
  private final Pen pen;
  private final DocumentLinks links;

  DocumentsSheet(XSSFSheet sheet, RenewedSheet own, DocumentLinks links) {
    this.sheet = sheet;
    this.own = own;
    this.pen = own.pen();
    this.links = links;
  }

  /**
   * Writes header and rows.
   *
   * @param rows where rows are made: the sheet's streaming twin
   */
  void fill(Sheet rows, List<Report.DocumentSummary> documents) {
    pen.turnTo(sheet);
    Row header = rows.createRow(0);
    for (int column = 0; column < HEADERS.size(); column++) {
      pen.text(header, column, HEADERS.get(column), Styles.Look.HEADER);
      sheet.setColumnWidth(column, WIDTHS[column] * 256);
    }
    Heights.points(header, 30);
    own.done(header);
    int at = 1;
    for (Report.DocumentSummary document : documents) {
      if (at >= SheetSetup.LAST_ROW) break;
      document(rows.createRow(at++), document);
      for (Document.Gap gap : document.skipped()) {
        if (at >= SheetSetup.LAST_ROW) break;
        gap(rows.createRow(at++), document, gap);
      }
    }
    if (at >= SheetSetup.LAST_ROW) {
      Row note = rows.createRow(at);
      pen.text(note, 0, SheetSetup.FULL, Styles.Look.STRONG);
      own.done(note);
    }
    int last = Math.max(at - 1, 1);
    SheetSetup.header(sheet, 1, last, HEADERS.size());
  }

  private void document(Row row, Report.DocumentSummary document) {
    int gaps = document.skipped().size();
    pen.text(row, 0, DisplayText.path(document.path()), Styles.Look.STRONG);
    pen.put(row, 1, links.link(document.path()), Styles.Look.LINK);
    pen.text(row, 2, document.format(), Styles.Look.TEXT);
    pen.text(row, 3, Phrasing.of(document.status()), Styles.Look.STRONG);
    pen.text(row, 4, document.reason(), Styles.Look.TEXT);
    pen.count(row, 5, document.glassEntries());
    pen.count(row, 6, document.otherEntries());
    pen.text(row, 7, gaps == 0 ? "" : Phrasing.count(gaps, "place") + ", below", Styles.Look.TEXT);
    for (int column = 8; column < HEADERS.size(); column++) {
      pen.text(row, column, "", Styles.Look.TEXT);
    }
    Heights.fit(row, WIDTHS);
    own.done(row);
  }

  private void gap(Row row, Report.DocumentSummary document, Document.Gap gap) {
    pen.text(row, 0, DisplayText.path(document.path()), Styles.Look.TEXT);
    pen.put(row, 1, links.link(gap.origin()), Styles.Look.LINK);
    for (int column = 2; column < 7; column++) pen.text(row, column, "", Styles.Look.TEXT);
    pen.text(row, 7, gap.origin().place(), Styles.Look.TEXT);
    String words = gap.origin().text();
    pen.text(row, 8, Phrasing.of(gap.fate()), Styles.Look.TEXT);
    pen.text(row, 9, gap.reason(), Styles.Look.TEXT);
    pen.text(row, 10, words == null ? "" : words, Styles.Look.TEXT);
    Heights.fit(row, WIDTHS);
    own.done(row);
  }
}
