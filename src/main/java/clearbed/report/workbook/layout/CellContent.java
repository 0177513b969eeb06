package clearbed.report.workbook.layout;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.DateUtil;

/**
 * What a cell holds, apart from its looks.
 *
 * @param column from 0
 * @param text a number as Java writes it, a date as ISO 8601, a formula without its equals sign
 * @param style its number in the workbook's table of styles, or {@link #NO_STYLE}
 */
public record CellContent(int column, Type kind, String text, int style) {
  public static final int NO_STYLE = -1;

  public enum Type {
    TEXT,
    NUMBER,
    DATE,
    FORMULA
  }

  /** Spreadsheet programs keep 15 digits of a number, and fewer in a formula. */
  private static final double NEAR = 1e-9;

  private static final MathContext DIGITS = new MathContext(10);
  private static final Pattern FIGURE =
      Pattern.compile("(?<![A-Za-z0-9_$.])(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?");
  private static final Pattern REFERENCE = Pattern.compile("\\$?\\b[A-Z]{1,3}\\$?\\d+\\b");

  /** The content of a cell; null when it is blank. */
  public static CellContent of(Cell cell) {
    int column = cell.getColumnIndex();
    return switch (cell.getCellType()) {
      case FORMULA -> new CellContent(column, Type.FORMULA, cell.getCellFormula(), NO_STYLE);
      case NUMERIC -> number(cell);
      case STRING -> text(column, cell.getStringCellValue(), NO_STYLE);
      case BOOLEAN -> text(column, Boolean.toString(cell.getBooleanCellValue()), NO_STYLE);
      case ERROR -> text(column, cell.toString(), NO_STYLE);
      default -> null;
    };
  }

  private static CellContent number(Cell cell) {
    int column = cell.getColumnIndex();
    return number(column, cell.getNumericCellValue(), DateUtil.isCellDateFormatted(cell), NO_STYLE);
  }

  /**
   * A number, or a date.
   *
   * @param isDate whether people see it as a date
   */
  public static CellContent number(int column, double number, boolean isDate, int style) {
    if (!isDate || !DateUtil.isValidExcelDate(number)) {
      return new CellContent(column, Type.NUMBER, Double.toString(number), style);
    }
    LocalDateTime time = DateUtil.getLocalDateTime(number);
    boolean isDay = time.toLocalTime().equals(LocalTime.MIDNIGHT);
    String text = isDay ? time.toLocalDate().toString() : time.toString();
    return new CellContent(column, Type.DATE, text, style);
  }

  /** Text, or null when it is blank. */
  static CellContent text(int column, String text, int style) {
    return text.isBlank() ? null : new CellContent(column, Type.TEXT, text, style);
  }

  public LocalDateTime time() {
    return text.contains("T") ? LocalDateTime.parse(text) : LocalDate.parse(text).atStartOfDay();
  }

  public double number() {
    return Double.parseDouble(text);
  }

  /** As people see it, a number with all its digits. */
  public String shown() {
    return switch (kind) {
      case NUMBER -> new BigDecimal(text).stripTrailingZeros().toPlainString();
      case FORMULA -> "=" + text;
      case TEXT, DATE -> text;
    };
  }

  /**
   * True when a spreadsheet program can have made the one of the other by saving it.
   *
   * @param moved whether cells stand elsewhere than they did, so that a formula names others
   */
  public boolean isSame(CellContent other, boolean moved) {
    if (kind != other.kind) return false;
    return switch (kind) {
      case NUMBER -> isNear(number(), other.number());
      case FORMULA -> formula(text, moved).equals(formula(other.text, moved));
      case TEXT, DATE -> plain().equals(other.plain());
    };
  }

  private static boolean isNear(double one, double other) {
    return Math.abs(one - other) <= NEAR * Math.max(Math.abs(one), Math.abs(other));
  }

  /** Without the sign that text like {@code _x0041_} is written with in some kinds of files. */
  String plain() {
    return text.replace("_x005F_", "_").replace("\r\n", "\n").strip();
  }

  /** What a row is known by when it begins with this cell: a formula without the cells it names. */
  String label() {
    return kind == Type.FORMULA ? "=" + formula(text, true) : plain();
  }

  /** Programs spell numbers and blanks their own way. */
  private static String formula(String text, boolean moved) {
    String[] parts = text.split("\"", -1);
    for (int i = 0; i < parts.length; i += 2) {
      String part = parts[i].replaceAll("\\s", "").toUpperCase(Locale.ROOT);
      if (moved) part = REFERENCE.matcher(part).replaceAll("#");
      parts[i] = FIGURE.matcher(part).replaceAll(CellContent::figure);
    }
    return String.join("\"", parts);
  }

  private static String figure(java.util.regex.MatchResult found) {
    BigDecimal figure = new BigDecimal(found.group()).round(DIGITS).stripTrailingZeros();
    return Matcher.quoteReplacement(figure.toString());
  }
}
