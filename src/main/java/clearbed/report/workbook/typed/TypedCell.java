package clearbed.report.workbook.typed;

import clearbed.report.workbook.layout.CellContent;
import clearbed.report.workbook.layout.SheetRow;
import org.apache.poi.ss.util.CellAddress;

/**
 * What somebody typed on a sheet that each issue writes anew.
 *
 * @param row where it stood, from 0
 * @param key of the row, by which the next issue finds it; null when it has none of its own
 * @param before what we had written there; empty when nothing
 * @param ours the row as we had written it, or null for a row that people added
 */
record TypedCell(
    String sheet, int row, String key, CellContent content, String before, SheetRow ours) {

  String address() {
    return new CellAddress(row, content.column()).formatAsString();
  }

  /** True for words beside ours, which may stand beside ours again. */
  boolean isNote() {
    return before.isEmpty() && key != null && content.kind() != CellContent.Type.FORMULA;
  }

  /** Why it is set aside, when the next issue has its row. */
  String reason() {
    if (ours == null) return "the row was added by hand; the sheet is written anew in each issue";
    if (!before.isEmpty()) return SetAsideSheet.TYPED_OVER;
    return content.kind() == CellContent.Type.FORMULA
        ? "in the new issue the formula might speak of other cells"
        : "its row cannot be told from another";
  }
}
