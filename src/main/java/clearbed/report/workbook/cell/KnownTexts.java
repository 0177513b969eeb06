package clearbed.report.workbook.cell;

import java.util.HashMap;
import java.util.Map;
import org.apache.poi.ooxml.POIXMLDocumentPart;
import org.apache.poi.ooxml.POIXMLRelation;
import org.apache.poi.ss.usermodel.RichTextString;
import org.apache.poi.xssf.model.SharedStringsTable;
import org.apache.poi.xssf.usermodel.XSSFFactory;
import org.apache.poi.xssf.usermodel.XSSFRelation;

/**
 * The table of the texts of a new workbook. The library's own writes every text as XML to see
 * whether it has it; most of them say what others say.
 */
public final class KnownTexts extends SharedStringsTable {
  private final Map<String, Integer> plain = new HashMap<>();

  /** Makes the parts of a new workbook, this table among them. */
  public static XSSFFactory factory() {
    return new XSSFFactory() {
      @Override
      public POIXMLDocumentPart newDocumentPart(POIXMLRelation of) {
        return of == XSSFRelation.SHARED_STRINGS ? new KnownTexts() : super.newDocumentPart(of);
      }
    };
  }

  @Override
  public int addSharedStringItem(RichTextString text) {
    if (text.numFormattingRuns() > 0) return super.addSharedStringItem(text);
    Integer known = plain.get(text.getString());
    if (known == null) {
      known = super.addSharedStringItem(text);
      plain.put(text.getString(), known);
    } else {
      count++;
    }
    return known;
  }
}
