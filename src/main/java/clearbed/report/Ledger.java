package clearbed.report;

import clearbed.model.Finding;
import clearbed.model.QuestionLog;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;

/**
 * The hidden sheet that holds every finding whole, so that a later issue can tell our words from
 * what people typed over them.
 */
public final class Ledger {
  static final String SHEET = "Ledger";
  private static final String NOTE =
      "Written by Clearbed for its next issue. Please leave this sheet as it is.";

  /** Text of one finding goes on in the next cell after this many characters. */
  private static final int CHUNK = 30_000;

  private static final int FIRST_ROW = 2;
  private static final int JSON = 7;

  private static final JsonMapper MAPPER =
      JsonMapper.builder().enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY).build();

  private Ledger() {}

  /**
   * Reads the lines of an earlier issue; replies are not in it.
   *
   * @return by finding id; empty when the sheet is not there; rows that cannot be read are left out
   */
  public static Map<String, QuestionLog.Line> read(Workbook book) {
    Map<String, QuestionLog.Line> lines = new LinkedHashMap<>();
    Sheet sheet = book.getSheet(SHEET);
    if (sheet == null) return lines;
    for (Row row : sheet) {
      if (row.getRowNum() < FIRST_ROW) continue;
      QuestionLog.Line line = line(row);
      if (line != null) lines.putIfAbsent(line.finding().id(), line);
    }
    return lines;
  }

  /** True when the workbook still has its hidden sheet. */
  public static boolean isThere(Workbook book) {
    return book.getSheet(SHEET) != null;
  }

  /** Date of the issue that wrote the sheet, ISO 8601; empty when there is none. */
  public static String date(Workbook book) {
    Sheet sheet = book.getSheet(SHEET);
    if (sheet == null || sheet.getRow(0) == null) return "";
    return SheetLayout.text(sheet.getRow(0).getCell(1));
  }

  /** Writes into an empty sheet. */
  static void write(Sheet sheet, QuestionLog log, String date) {
    Row note = sheet.createRow(0);
    note.createCell(0).setCellValue(NOTE);
    note.createCell(1).setCellValue(date);
    int at = FIRST_ROW;
    for (QuestionLog.Line line : log.lines().values()) {
      if (at > SheetSetup.LAST_ROW) break;
      fill(sheet.createRow(at++), line);
    }
  }

  private static void fill(Row row, QuestionLog.Line line) {
    row.createCell(0).setCellValue(SafeText.of(line.finding().id()));
    row.createCell(1).setCellValue(line.number());
    row.createCell(2).setCellValue(line.firstSeen());
    row.createCell(3).setCellValue(line.lastSeen());
    row.createCell(4).setCellValue(line.goneOn());
    row.createCell(5).setCellValue(SafeText.of(line.remark()));
    row.createCell(6).setCellValue(SafeText.of(line.refuted()));
    String json = json(line.finding());
    int column = JSON;
    for (int from = 0; from < json.length(); from += CHUNK) {
      int to = Math.min(from + CHUNK, json.length());
      row.createCell(column++).setCellValue(json.substring(from, to));
    }
  }

  private static QuestionLog.Line line(Row row) {
    StringBuilder json = new StringBuilder();
    for (int column = JSON; row.getCell(column) != null; column++) {
      json.append(SheetLayout.text(row.getCell(column)));
    }
    try {
      Finding finding = MAPPER.readValue(json.toString(), Finding.class);
      Cell number = row.getCell(1);
      return new QuestionLog.Line(
          finding,
          number == null ? 0 : (int) number.getNumericCellValue(),
          SheetLayout.text(row.getCell(2)),
          SheetLayout.text(row.getCell(3)),
          SheetLayout.text(row.getCell(4)),
          SheetLayout.text(row.getCell(5)),
          SheetLayout.text(row.getCell(6)),
          QuestionLog.Reply.NONE);
    } catch (JsonProcessingException | IllegalStateException | IllegalArgumentException broken) {
      return null;
    }
  }

  /** JSON in plain ASCII: every character comes back as it was, whatever XML would make of it. */
  private static String json(Finding finding) {
    try {
      return MAPPER
          .writer()
          .with(JsonWriteFeature.ESCAPE_NON_ASCII)
          .writeValueAsString(finding)
          .replace("_x", "\\u005fx");
    } catch (JsonProcessingException wrong) {
      throw new IllegalStateException("a finding could not be written as JSON", wrong);
    }
  }
}
