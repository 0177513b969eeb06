package clearbed.report.workbook.cell;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Font;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The looks of cells. A colour never stands alone: the word it stands for is in the cell. */
public final class Styles {
  /** What a cell is for. */
  public enum Look {
    TITLE,
    SUBTITLE,
    SECTION,
    HEADER,
    HEADER_TO_FILL,
    HEADER_COUNT,
    HEADER_TURNED,
    TEXT,
    STRONG,
    TO_FILL,
    TO_FILL_DATE,
    LINK,
    NUMBER,
    COUNT,
    COUNT_LINK,
    SHARE,
    DATE,
    INPUT,
    ASSUMED,
    RESULT,
    RESULT_LABEL,
    TYPED
  }

  static final String INK = "1F2933";
  public static final String BAND = "26415A";
  static final String PALE = "E8EDF2";
  private static final String FACE = "Arial";
  static final String LINE = "B8C2CC";

  private final XSSFWorkbook book;
  private final Map<Look, XSSFCellStyle> looks = new EnumMap<>(Look.class);
  private final Map<Short, CellStyle> quoted = new HashMap<>();
  private final Map<String, CellStyle> formatted = new HashMap<>();

  Styles(XSSFWorkbook book) {
    this.book = book;
  }

  XSSFCellStyle get(Look look) {
    XSSFCellStyle known = looks.get(look);
    return known == null ? looks.computeIfAbsent(look, this::make) : known;
  }

  /** A look that came with the workbook, by its number. */
  public CellStyle at(int index) {
    return book.getCellStyleAt(index);
  }

  /** The same look for text that must never be taken for a formula when somebody edits the cell. */
  CellStyle quoted(CellStyle style) {
    return quoted.computeIfAbsent(
        style.getIndex(),
        index -> {
          CellStyle twin = book.createCellStyle();
          twin.cloneStyleFrom(style);
          twin.setQuotePrefixed(true);
          return twin;
        });
  }

  /** The same look with another number format. */
  public CellStyle figures(CellStyle style, String format) {
    return formatted.computeIfAbsent(
        style.getIndex() + " " + format,
        key -> {
          CellStyle twin = book.createCellStyle();
          twin.cloneStyleFrom(style);
          twin.setDataFormat(book.createDataFormat().getFormat(format));
          return twin;
        });
  }

  /**
   * Column widths are reckoned in digits of the first font; this one is the same width anywhere.
   */
  public static void plainFont(XSSFWorkbook book) {
    book.getFontAt(0).setFontName(FACE);
    book.getFontAt(0).setFontHeightInPoints((short) 10);
  }

  static XSSFColor colour(String hex) {
    byte[] rgb = HexFormat.of().parseHex(hex);
    return new XSSFColor(rgb, null);
  }

  private XSSFCellStyle make(Look look) {
    XSSFCellStyle style = book.createCellStyle();
    style.setVerticalAlignment(VerticalAlignment.TOP);
    style.setWrapText(true);
    style.setFont(font(10, false, INK));
    switch (look) {
      case TITLE -> plain(style, 16, BAND);
      case SUBTITLE -> plain(style, 10, INK);
      case SECTION -> section(style);
      case HEADER -> header(style, BAND, "FFFFFF");
      case HEADER_TO_FILL -> header(style, "F2D98B", INK);
      case HEADER_COUNT -> {
        header(style, BAND, "FFFFFF");
        style.setAlignment(HorizontalAlignment.RIGHT);
        style.setIndention((short) 1);
      }
      case HEADER_TURNED -> {
        header(style, BAND, "FFFFFF");
        style.setRotation((short) 90);
        style.setVerticalAlignment(VerticalAlignment.BOTTOM);
        style.setAlignment(HorizontalAlignment.CENTER);
        style.setWrapText(false);
      }
      case TEXT -> box(style);
      case STRONG -> {
        box(style);
        style.setFont(font(10, true, INK));
      }
      case TO_FILL -> fill(style, "FFFBEA");
      case TO_FILL_DATE -> {
        fill(style, "FFFBEA");
        date(style);
      }
      case LINK -> link(style);
      case NUMBER -> number(style, "0.######");
      case COUNT -> {
        number(style, "0");
        style.setIndention((short) 1);
      }
      case COUNT_LINK -> {
        number(style, "0");
        style.setIndention((short) 1);
        style.setFont(underlined());
      }
      case SHARE -> {
        number(style, "0%");
        style.setIndention((short) 1);
      }
      case DATE -> {
        box(style);
        date(style);
      }
      case INPUT -> {
        number(style, "0.##########");
        fill(style, "FFFBEA");
      }
      case TYPED -> {
        number(style, "0.##########");
        fill(style, "F2D98B");
        style.setFont(font(10, true, INK));
      }
      case RESULT -> {
        number(style, "0.######");
        fill(style, PALE);
        style.setFont(font(10, true, INK));
      }
      case RESULT_LABEL -> {
        fill(style, PALE);
        style.setFont(font(10, true, INK));
      }
      case ASSUMED -> {
        number(style, "0.##########");
        fill(style, "FFFBEA");
        style.setFillPattern(FillPatternType.THIN_FORWARD_DIAG);
        style.setFillBackgroundColor(colour("FFFBEA"));
        style.setFillForegroundColor(colour("D9B44A"));
        style.setFont(font(10, true, INK));
      }
    }
    return style;
  }

  private void plain(XSSFCellStyle style, int points, String ink) {
    style.setWrapText(false);
    style.setFont(font(points, points > 10, ink));
  }

  private void section(XSSFCellStyle style) {
    style.setWrapText(false);
    style.setFont(font(12, true, BAND));
    style.setBorderBottom(BorderStyle.MEDIUM);
    style.setBottomBorderColor(colour(BAND));
  }

  private void header(XSSFCellStyle style, String back, String ink) {
    fill(style, back);
    style.setFont(font(10, true, ink));
    style.setVerticalAlignment(VerticalAlignment.CENTER);
  }

  private void link(XSSFCellStyle style) {
    box(style);
    style.setFont(underlined());
  }

  private XSSFFont underlined() {
    XSSFFont font = font(10, false, "1D4F91");
    font.setUnderline(Font.U_SINGLE);
    return font;
  }

  private void number(XSSFCellStyle style, String format) {
    box(style);
    style.setAlignment(HorizontalAlignment.RIGHT);
    style.setDataFormat(book.createDataFormat().getFormat(format));
  }

  private void date(XSSFCellStyle style) {
    style.setDataFormat(book.createDataFormat().getFormat("yyyy-mm-dd"));
    style.setAlignment(HorizontalAlignment.LEFT);
  }

  private void fill(XSSFCellStyle style, String hex) {
    box(style);
    style.setFillForegroundColor(colour(hex));
    style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
  }

  private void box(XSSFCellStyle style) {
    style.setBorderBottom(BorderStyle.THIN);
    style.setBorderTop(BorderStyle.THIN);
    style.setBorderLeft(BorderStyle.THIN);
    style.setBorderRight(BorderStyle.THIN);
    style.setBottomBorderColor(colour(LINE));
    style.setTopBorderColor(colour(LINE));
    style.setLeftBorderColor(colour(LINE));
    style.setRightBorderColor(colour(LINE));
  }

  private XSSFFont font(int points, boolean bold, String ink) {
    XSSFFont font = book.createFont();
    font.setFontHeightInPoints((short) points);
    font.setFontName(FACE);
    font.setBold(bold);
    font.setColor(colour(ink));
    return font;
  }
}
