package clearbed.report.workbook.typed;

import clearbed.mark.FindingsSheets;
import clearbed.model.report.Finding;
import clearbed.model.report.ProjectNames;
import clearbed.model.report.QuestionLog;
import clearbed.report.wording.SafeText;
import clearbed.report.workbook.cell.SheetSetup;
import clearbed.report.workbook.layout.CellContent;
import clearbed.report.workbook.layout.PackedText;
import clearbed.report.workbook.layout.SheetLayout;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;

/**
 * The hidden sheet that holds every finding whole, so that a later issue can tell our words from
 * what people typed over them.
 */
public final class Ledger {
  public static final String SHEET = FindingsSheets.LEDGER;

  /** Stands in front of what an issue noted of a sheet that it wrote. */
  private static final String SNAPSHOT = "Written on sheet";

  private static final String DOCUMENTS = "Documents";
  private static final String NAMES = "Project";
  private static final String ANSWERS = "Answers";
  private static final int FORMAT = 2;
  private static final int FIRST_ROW = 2;

  /** Leaves room for what is noted besides. */
  private static final int LAST_LINE = SheetSetup.LAST_ROW - 10;

  private static final int JSON = 7;
  private static final int PACKED = 2;

  private static final JsonMapper MAPPER =
      JsonMapper.builder()
          .enable(MapperFeature.SORT_PROPERTIES_ALPHABETICALLY)
          // Of a finding its components are written, not what follows from them.
          .disable(MapperFeature.AUTO_DETECT_IS_GETTERS)
          .build();

  private Ledger() {}

  /**
   * Reads the lines of an earlier issue; replies are not in it.
   *
   * @return by finding id; empty when the sheet is not there; rows that cannot be read are left out
   */
  public static Map<String, QuestionLog.LogLine> read(Workbook book) {
    Map<String, QuestionLog.LogLine> lines = new LinkedHashMap<>();
    Sheet sheet = book.getSheet(SHEET);
    if (sheet == null) return lines;
    for (Row row : sheet) {
      if (row.getRowNum() < FIRST_ROW) continue;
      QuestionLog.LogLine line = line(row);
      if (line != null) lines.putIfAbsent(line.finding().id(), line);
    }
    Map<?, ?> answers = noted(book, ANSWERS, Map.class, Map.of());
    lines.replaceAll(
        (id, line) -> answers.get(id) instanceof String words ? line.withAnswers(words) : line);
    return lines;
  }

  /** True when the workbook still has its hidden sheet, and not one of that name for other ends. */
  public static boolean isThere(Workbook book) {
    return !format(book).isEmpty();
  }

  /** Version of the layout of the workbook; empty when it has no hidden sheet of ours. */
  public static String format(Workbook book) {
    Row note = book.getSheet(SHEET) == null ? null : book.getSheet(SHEET).getRow(0);
    if (note == null
        || !SheetLayout.text(note.getCell(0)).strip().equals(FindingsSheets.LEDGER_NOTE)) return "";
    String format = SheetLayout.text(note.getCell(FORMAT)).strip();
    // The first programs did not write it.
    return format.isEmpty() ? "1" : format;
  }

  /** Paths of the documents of the issues so far; empty when that was not written. */
  public static List<String> documents(Workbook book) {
    return List.of(noted(book, DOCUMENTS, String[].class, new String[0]));
  }

  /** Names of the project and its people; none when they were not written. */
  public static ProjectNames names(Workbook book) {
    return noted(book, NAMES, ProjectNames.class, ProjectNames.NONE);
  }

  /** What was noted under a mark, or something else where it is not there or not whole. */
  private static <T> T noted(Workbook book, String mark, Class<T> type, T otherwise) {
    Row row = row(book, mark);
    if (row == null) return otherwise;
    try (InputStream in = PackedText.unpacking(PackedText.read(row, PACKED))) {
      return MAPPER.readValue(in, type);
    } catch (IOException broken) {
      return otherwise;
    }
  }

  /** True when an issue noted what it wrote on the sheets that each issue writes anew. */
  public static boolean hasSnapshots(Workbook book) {
    return row(book, SNAPSHOT) != null;
  }

  /** What was noted of the sheets that each issue writes anew, by name. */
  static Map<String, String> snapshots(Workbook book) {
    Map<String, String> snapshots = new LinkedHashMap<>();
    if (book.getSheet(SHEET) == null) return snapshots;
    for (Row row : book.getSheet(SHEET)) {
      if (!isMarked(row, SNAPSHOT)) continue;
      snapshots.put(SheetLayout.text(row.getCell(1)), PackedText.read(row, PACKED));
    }
    return snapshots;
  }

  private static Row row(Workbook book, String mark) {
    if (book.getSheet(SHEET) == null) return null;
    for (Row row : book.getSheet(SHEET)) if (isMarked(row, mark)) return row;
    return null;
  }

  private static boolean isMarked(Row row, String mark) {
    return row.getRowNum() >= FIRST_ROW && SheetLayout.text(row.getCell(0)).equals(mark);
  }

  /** What people typed on the hidden sheet. */
  static List<TypedCell> strange(Workbook book) {
    List<TypedCell> strange = new ArrayList<>();
    if (!isThere(book)) return strange;
    for (Row row : book.getSheet(SHEET)) {
      int ours = ours(row);
      for (Cell cell : row) {
        CellContent content = cell.getColumnIndex() < ours ? null : CellContent.of(cell);
        if (content == null) continue;
        strange.add(new TypedCell(SHEET, row.getRowNum(), null, content, "", null));
      }
    }
    return strange;
  }

  /** Cells of a row that are ours, from the first. */
  private static int ours(Row row) {
    if (row.getRowNum() == 0) return FORMAT + 1;
    boolean packed =
        Stream.of(SNAPSHOT, DOCUMENTS, NAMES, ANSWERS).anyMatch(mark -> isMarked(row, mark));
    if (!packed && (row.getRowNum() < FIRST_ROW || line(row) == null)) return 0;
    int end = packed ? PACKED : JSON;
    while (row.getCell(end) != null) end++;
    return end;
  }

  /** Date of the issue that wrote the sheet, ISO 8601; empty when there is none. */
  public static String date(Workbook book) {
    Sheet sheet = book.getSheet(SHEET);
    if (sheet == null || sheet.getRow(0) == null) return "";
    return SheetLayout.text(sheet.getRow(0).getCell(1));
  }

  /** Writes the lines into an empty sheet; what was noted of other sheets comes behind them. */
  public static void write(Sheet sheet, QuestionLog log, String date) {
    Row note = sheet.createRow(0);
    note.createCell(0).setCellValue(FindingsSheets.LEDGER_NOTE);
    note.createCell(1).setCellValue(date);
    note.createCell(FORMAT).setCellValue(SheetLayout.FORMAT);
    int at = FIRST_ROW;
    for (QuestionLog.LogLine line : log.lines().values()) {
      if (at > LAST_LINE) break;
      fill(sheet.createRow(at++), line);
    }
  }

  /** Writes the paths of documents that the next issue has to know of. */
  public static void writeDocuments(Sheet sheet, Collection<String> paths) {
    note(sheet, DOCUMENTS, paths);
  }

  /** Writes who the letter is from and to, and what was answered in earlier issues. */
  public static void writeNames(Sheet sheet, ProjectNames names, QuestionLog log) {
    if (!names.isEmpty()) note(sheet, NAMES, names);
    Map<String, String> answers = new LinkedHashMap<>();
    for (QuestionLog.LogLine line : log.lines().values()) {
      if (!line.answers().isEmpty()) answers.put(line.finding().id(), line.answers());
    }
    if (!answers.isEmpty()) note(sheet, ANSWERS, answers);
  }

  private static void note(Sheet sheet, String mark, Object what) {
    ByteArrayOutputStream packed = new ByteArrayOutputStream();
    try (OutputStream out = PackedText.packing(packed)) {
      MAPPER.writer().with(JsonWriteFeature.ESCAPE_NON_ASCII).writeValue(out, what);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    append(sheet, mark, "", packed.toString(StandardCharsets.ISO_8859_1));
  }

  /** Writes what was noted of a sheet. */
  public static void writeSnapshot(Sheet sheet, RenewedSheet renewed) {
    append(sheet, SNAPSHOT, renewed.name(), renewed.snapshot());
  }

  private static void append(Sheet sheet, String mark, String name, String packed) {
    Row row = sheet.createRow(Math.max(FIRST_ROW, sheet.getLastRowNum() + 1));
    row.createCell(0).setCellValue(mark);
    row.createCell(1).setCellValue(name);
    PackedText.write(row, PACKED, packed);
  }

  private static void fill(Row row, QuestionLog.LogLine line) {
    row.createCell(0).setCellValue(SafeText.of(line.finding().id()));
    row.createCell(1).setCellValue(line.number());
    row.createCell(2).setCellValue(line.firstSeen());
    row.createCell(3).setCellValue(line.lastSeen());
    row.createCell(4).setCellValue(line.goneOn());
    row.createCell(5).setCellValue(SafeText.of(line.remark()));
    row.createCell(6).setCellValue(SafeText.of(line.refuted()));
    PackedText.write(row, JSON, json(line.finding()));
  }

  private static QuestionLog.LogLine line(Row row) {
    if (row.getCell(JSON) == null) return null;
    try {
      Finding finding = MAPPER.readValue(PackedText.read(row, JSON), Finding.class);
      Cell number = row.getCell(1);
      return new QuestionLog.LogLine(
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
