package clearbed.report;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** Puts rows that wait on disk into the sheet that was saved without them. */
record SheetRows(SXSSFSheet rows) implements FixedZip.Filling {
  private static final String NONE = "<sheetData/>";
  private static final String START = "<sheetData>";
  private static final String END = "</sheetData>";

  /**
   * The rows of every sheet that has some, by the name of its part; to be taken before the workbook
   * is saved, as the sheets are told how far their rows reach.
   */
  static Map<String, FixedZip.Filling> of(SXSSFWorkbook stream) {
    Map<String, FixedZip.Filling> out = new HashMap<>();
    for (Sheet sheet : stream) {
      SXSSFSheet twin = (SXSSFSheet) sheet;
      if (twin.getPhysicalNumberOfRows() == 0) continue;
      XSSFSheet saved = stream.getXSSFWorkbook().getSheet(twin.getSheetName());
      int last = twin.getLastRowNum();
      saved.setDimensionOverride(new CellRangeAddress(0, last, 0, width(twin) - 1));
      out.put(saved.getPackagePart().getPartName().getName().substring(1), new SheetRows(twin));
    }
    return out;
  }

  /** Of the rows still at hand: where the others are gone, all are as wide. */
  private static int width(SXSSFSheet twin) {
    int width = 1;
    for (Row row : twin) width = Math.max(width, row.getLastCellNum());
    return width;
  }

  @Override
  public InputStream filled(InputStream saved) throws IOException {
    // One character for a byte: places in the text are places in the bytes.
    String sheet = new String(saved.readAllBytes(), StandardCharsets.ISO_8859_1);
    int empty = sheet.indexOf(NONE);
    int end = empty >= 0 ? empty : sheet.indexOf(END);
    if (end < 0) throw new IOException("a sheet was saved without a place for its rows");
    String before = empty >= 0 ? sheet.substring(0, end) + START : sheet.substring(0, end);
    String after = empty >= 0 ? END + sheet.substring(end + NONE.length()) : sheet.substring(end);
    return new SequenceInputStream(
        Collections.enumeration(
            List.of(bytes(before), rows.getWorksheetXMLInputStream(), bytes(after))));
  }

  private static InputStream bytes(String text) {
    return new ByteArrayInputStream(text.getBytes(StandardCharsets.ISO_8859_1));
  }
}
