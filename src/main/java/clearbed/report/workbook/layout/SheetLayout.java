package clearbed.report.workbook.layout;

import clearbed.model.report.QuestionLog;
import clearbed.model.value.Quantity;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.DataFormatter;
import org.apache.poi.ss.usermodel.DateUtil;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.SheetVisibility;
import org.apache.poi.ss.usermodel.Workbook;

/**
 * Where columns and rows stand in a sheet after people have moved them about.
 *
 * <p>Columns are known by their header, rows by their id, wherever they are.
 */
public final class SheetLayout {
  /** Version of the layout, as a workbook names it. */
  public static final String FORMAT = "1";

  /** A header row further down than this is not looked for. */
  private static final int DEEPEST_HEADER = 50;

  private static final int ENOUGH_HEADERS = 3;

  private static final SheetVisibility VISIBLE = SheetVisibility.VISIBLE;

  private final Row header;
  private final Map<String, Integer> columns;
  private final List<String> missing;
  private final Map<String, Row> rows = new LinkedHashMap<>();
  private final List<Stray> strays = new ArrayList<>();

  /** A row that belongs to no finding, and why. */
  public record Stray(Row row, String reason) {}

  private SheetLayout(Row header, List<String> headers) {
    this.header = header;
    this.columns = positions(header);
    this.missing = headers.stream().filter(name -> !columns.containsKey(key(name))).toList();
  }

  /**
   * Reads the layout of a sheet.
   *
   * @param headers names of our columns
   * @param known ids that a row may have
   * @return null when the sheet has no header row of ours
   */
  public static SheetLayout of(Sheet sheet, List<String> headers, Set<String> known) {
    return of(sheet, headers, known, Map.of());
  }

  /**
   * Reads the layout of a sheet, and where its column of ids is gone, knows rows by the number of
   * their question.
   *
   * @param lines findings that a row may be of
   */
  public static SheetLayout ofLines(
      Sheet sheet, List<String> headers, Collection<QuestionLog.LogLine> lines) {
    Map<String, String> byNumber = new HashMap<>();
    Set<String> known = new HashSet<>();
    for (QuestionLog.LogLine line : lines) {
      known.add(line.finding().id());
      if (line.number() > 0) {
        byNumber.putIfAbsent(Integer.toString(line.number()), line.finding().id());
      }
    }
    return of(sheet, headers, known, byNumber);
  }

  private static SheetLayout of(
      Sheet sheet, List<String> headers, Set<String> known, Map<String, String> byNumber) {
    Row header = headerRow(sheet, headers);
    if (header == null) return null;
    SheetLayout layout = new SheetLayout(header, headers);
    layout.sortRows(sheet, known, byNumber);
    return layout;
  }

  /**
   * The sheet of that name, or the one that has its columns under a name that people gave it.
   *
   * @return null when there is none, or more than one that could be it
   */
  public static Sheet find(Workbook book, String name) {
    Sheet named = book.getSheet(name);
    if (named != null && headerRow(named, Headers.of(name)) != null) return named;
    List<Sheet> like = like(book, name);
    return like.size() == 1 ? like.get(0) : named;
  }

  /** The sheets in sight that have most of the columns of that one, whatever they are called. */
  public static List<Sheet> like(Workbook book, String name) {
    List<String> headers = Headers.of(name);
    List<Sheet> found = new ArrayList<>();
    for (Sheet sheet : book) {
      Row header = headerRow(sheet, headers);
      if (header == null || book.getSheetVisibility(book.getSheetIndex(sheet)) != VISIBLE) continue;
      Map<String, Integer> there = positions(header);
      long own = headers.stream().filter(each -> there.containsKey(key(each))).count();
      if (own * 2 > headers.size()) found.add(sheet);
    }
    return found;
  }

  /** True when a sheet has most columns of our findings or questions: the workbook is ours. */
  public static boolean isOurs(Workbook book) {
    return !like(book, Headers.FINDINGS).isEmpty() || !like(book, Headers.QUESTIONS).isEmpty();
  }

  /** Text of a cell as people see it, dates as ISO 8601, a formula by its result. */
  public static String text(Cell cell) {
    if (cell == null) return "";
    CellType type =
        cell.getCellType() == CellType.FORMULA
            ? cell.getCachedFormulaResultType()
            : cell.getCellType();
    return switch (type) {
      case STRING -> cell.getStringCellValue();
      case NUMERIC -> number(cell);
      case BOOLEAN -> Boolean.toString(cell.getBooleanCellValue());
      default -> "";
    };
  }

  private static String number(Cell cell) {
    if (DateUtil.isCellDateFormatted(cell)) {
      return cell.getLocalDateTimeCellValue().toLocalDate().toString();
    }
    if (cell.getCellType() == CellType.FORMULA) {
      return Quantity.figure(cell.getNumericCellValue());
    }
    return new DataFormatter(Locale.ROOT).formatCellValue(cell);
  }

  /** Column of a header, from 0, or -1. */
  public int column(String name) {
    return columns.getOrDefault(key(name), -1);
  }

  /** The text in a row under a header; empty when there is no such column or cell. */
  public String text(Row row, String name) {
    int column = column(name);
    return row == null || column < 0 ? "" : text(row.getCell(column));
  }

  /** Our columns that are no longer there. */
  public List<String> missing() {
    return missing;
  }

  /** The row of each finding, top to bottom. */
  public Map<String, Row> rows() {
    return rows;
  }

  /** Rows with something in them that belong to no finding, top to bottom. */
  public List<Stray> strays() {
    return strays;
  }

  public Row header() {
    return header;
  }

  /** Adds a column of ours that people had deleted, after the last one that holds anything. */
  public int append(String name) {
    int column = columns.values().stream().mapToInt(at -> at + 1).max().orElse(0);
    for (Row row : header.getSheet()) {
      for (Cell cell : row) {
        if (cell.getColumnIndex() >= column && !isBlank(cell)) column = cell.getColumnIndex() + 1;
      }
    }
    columns.put(key(name), column);
    return column;
  }

  private void sortRows(Sheet sheet, Set<String> known, Map<String, String> byNumber) {
    boolean numbered = column(Headers.ID) < 0 && column(Headers.NUMBER) >= 0;
    for (Row row : sheet) {
      if (row.getRowNum() <= header.getRowNum() || isBlank(row)) continue;
      String id =
          numbered
              ? byNumber.getOrDefault(text(row, Headers.NUMBER).strip(), "")
              : text(row, Headers.ID).strip();
      String reason = strayReason(id, known);
      if (reason.isEmpty()) rows.put(id, row);
      else strays.add(new Stray(row, reason));
    }
  }

  private String strayReason(String id, Set<String> known) {
    if (id.isEmpty()) return "the row has no id";
    if (!known.contains(id)) return "no finding of the earlier issue has this id";
    return rows.containsKey(id) ? "an earlier row has the same id" : "";
  }

  private static boolean isBlank(Row row) {
    for (Cell cell : row) if (!isBlank(cell)) return false;
    return true;
  }

  /** True when nobody can have typed into the cell: a formula without a result is typed, too. */
  public static boolean isBlank(Cell cell) {
    if (cell == null) return true;
    return switch (cell.getCellType()) {
      case FORMULA, ERROR -> false;
      default -> text(cell).isBlank();
    };
  }

  private static Row headerRow(Sheet sheet, List<String> headers) {
    for (Row row : sheet) {
      if (row.getRowNum() > DEEPEST_HEADER) return null;
      Map<String, Integer> found = positions(row);
      long own = headers.stream().filter(name -> found.containsKey(key(name))).count();
      if (own >= ENOUGH_HEADERS) return row;
    }
    return null;
  }

  private static Map<String, Integer> positions(Row row) {
    Map<String, Integer> found = new HashMap<>();
    for (Cell cell : row) {
      String name = key(text(cell));
      if (!name.isEmpty()) found.putIfAbsent(name, cell.getColumnIndex());
    }
    return found;
  }

  private static String key(String header) {
    return header.strip().toLowerCase(Locale.ROOT);
  }
}
