package clearbed.report.workbook.typed;

import clearbed.report.workbook.layout.SheetRow;
import java.util.HashSet;
import java.util.Set;

/**
 * Knows rows of a sheet that each issue writes anew by what stands in them: a tag, a file, a label
 * under its heading.
 */
final class RowKeys {
  private final boolean isOfDocuments;
  private final Set<String> headings = new HashSet<>();
  private String heading = "";

  /**
   * @param sheet name of the sheet that the rows are of
   */
  RowKeys(String sheet) {
    this.isOfDocuments = sheet.equals(BookSheets.DOCUMENTS);
  }

  /** Keys for the rows of the sheet as people left it, where a heading is known by its words. */
  RowKeys afterHeadings(Set<String> known) {
    headings.addAll(known);
    return this;
  }

  /** The key of the next row, in their order; several rows can have the same. */
  String of(SheetRow row) {
    String label = row.label(0);
    if (row.isHeading() || headings.contains(label)) heading = label;
    if (isOfDocuments) return document(row);
    return heading.isEmpty() || heading.equals(label) ? label : heading + " / " + label;
  }

  /** A file, or a place in it that was passed over. */
  private static String document(SheetRow row) {
    String reason = row.label(8);
    return reason.isEmpty() ? row.label(0) : row.label(0) + " / " + row.label(7) + " / " + reason;
  }
}
