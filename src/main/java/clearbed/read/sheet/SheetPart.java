package clearbed.read.sheet;

import clearbed.model.document.Table;
import clearbed.read.block.CleanText;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** Streams the rows of one worksheet into a grid. */
final class SheetPart extends DefaultHandler {
  private static final Pattern NOTHING = Pattern.compile("0+(?:\\.0*)?");
  private static final int LAST_ROW = 1 << 20;
  private static final int LAST_COLUMN = (1 << 14) - 1;

  private final SheetGrid grid;
  private final SharedStrings strings;
  private final CellStyles styles;
  private final boolean from1904;

  /** By address; what is left at the end hangs on cells that hold nothing. */
  private final Map<String, String> comments;

  private final StringBuilder value = new StringBuilder();
  private int row;
  private int column;
  private String type;
  private int style;
  private boolean formula;
  private boolean collecting;

  /** A text that stands in the cell itself; null where there is none. */
  private TextRuns inline;

  private boolean inInline;

  SheetPart(
      SheetGrid grid,
      SharedStrings strings,
      CellStyles styles,
      boolean from1904,
      Map<String, String> comments) {
    this.grid = grid;
    this.strings = strings;
    this.styles = styles;
    this.from1904 = from1904;
    this.comments = new TreeMap<>(comments);
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    switch (name) {
      case "row" -> startRow(attributes);
      case "c" -> startCell(attributes);
      case "v" -> collecting = true;
      case "f" -> formula = true;
      case "is" -> {
        inInline = true;
        inline = new TextRuns();
      }
      case "col" -> columns(attributes);
      case "mergeCell" -> merge(attributes.getValue("ref"));
      default -> {
        if (inInline) inline.start(name, attributes);
      }
    }
  }

  private void startRow(Attributes attributes) {
    String number = attributes.getValue("r");
    row = number == null ? row + 1 : bounded(number, row + 1);
    column = -1;
    grid.row(row, isHidden(attributes, "ht"));
  }

  private void columns(Attributes attributes) {
    if (!isHidden(attributes, "width")) return;
    int first = bounded(String.valueOf(attributes.getValue("min")), 0);
    int last = Math.min(LAST_COLUMN + 1, bounded(String.valueOf(attributes.getValue("max")), 0));
    if (first > 0 && last >= first) grid.hideColumns(first - 1, last - 1);
  }

  /** By a flag, or by being drawn together to nothing. */
  private static boolean isHidden(Attributes attributes, String size) {
    String flag = attributes.getValue("hidden");
    String measure = attributes.getValue(size);
    boolean none = measure != null && NOTHING.matcher(measure).matches();
    return none || "1".equals(flag) || "true".equals(flag);
  }

  private void startCell(Attributes attributes) {
    String address = attributes.getValue("r");
    column = address == null ? column + 1 : columnOf(address);
    type = attributes.getValue("t");
    String index = attributes.getValue("s");
    style = index == null ? 0 : bounded(index, 0);
    formula = false;
    inline = null;
    value.setLength(0);
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    switch (name) {
      case "v" -> collecting = false;
      case "c" -> endCell();
      default -> {
        if (inInline) inline.end(name);
        if (name.equals("is")) inInline = false;
      }
    }
  }

  private void endCell() {
    if (column < 0 || column > LAST_COLUMN || row < 1 || row > LAST_ROW) {
      beyond();
      return;
    }
    String remark = "";
    if (!comments.isEmpty()) {
      String found = comments.remove(Table.address(row, column));
      remark = found == null ? "" : found;
    }
    boolean struck = styles.isStruck(style);
    RichText rich = rich();
    if (rich != null) grid.marked(column, rich.in(struck), remark);
    else if (struck) grid.marked(column, RichText.of(text()).in(true), remark);
    else grid.cell(column, text(), remark);
  }

  /** Null for a text that looks like its cell all over. */
  private RichText rich() {
    if (inline != null) return inline.text();
    return "s".equals(type) ? strings.richAt(bounded(value.toString().trim(), -1)) : null;
  }

  private void beyond() {
    boolean words = inline != null && !inline.text().plain().isBlank();
    if (words || !value.isEmpty())
      grid.gap(row, Math.max(0, column), null, "beyond the last cell of a sheet");
  }

  private String text() {
    String stored = value.toString();
    if (type == null || type.equals("n")) return number(stored.trim());
    return switch (type) {
      case "s" -> shared(stored.trim());
      case "b" -> stored.trim().equals("1") ? "TRUE" : "FALSE";
      case "e" -> {
        grid.gap(row, column, stored, "the cell shows an error");
        yield "";
      }
      default -> ExcelText.of(stored);
    };
  }

  private String number(String stored) {
    if (!stored.isEmpty()) return CleanText.of(styles.shown(style, stored, from1904));
    if (formula) {
      grid.gap(row, column, null, "a formula without its result; open and save the workbook");
    }
    return "";
  }

  private String shared(String index) {
    String text = strings.at(bounded(index, -1));
    if (text != null) return text;
    grid.gap(row, column, null, "its text is missing from the file");
    return "";
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (collecting) value.append(chars, start, length);
    if (inInline) inline.characters(chars, start, length);
  }

  /** Comments on empty cells come last, since the grid puts its rows in order. */
  @Override
  public void endDocument() {
    comments.forEach(
        (address, words) -> {
          int at = rowOf(address);
          if (at < 1) return;
          grid.row(at, false);
          grid.cell(columnOf(address), "", words);
        });
  }

  private void merge(String area) {
    if (area == null) return;
    int colon = area.indexOf(':');
    if (colon < 0) return;
    String from = area.substring(0, colon);
    String to = area.substring(colon + 1);
    if (rowOf(from) < 1 || rowOf(to) < rowOf(from) || columnOf(to) < columnOf(from)) return;
    grid.merge(rowOf(from), columnOf(from), rowOf(to), columnOf(to));
  }

  private static int bounded(String digits, int otherwise) {
    try {
      return Integer.parseInt(digits.trim());
    } catch (NumberFormatException e) {
      return otherwise;
    }
  }

  private static int columnOf(String address) {
    int result = 0;
    for (int i = 0; i < address.length() && result < 1 << 20; i++) {
      char c = Character.toUpperCase(address.charAt(i));
      if (c >= 'A' && c <= 'Z') result = result * 26 + c - 'A' + 1;
      else if (c != '$') break;
    }
    return result - 1;
  }

  private static int rowOf(String address) {
    return bounded(address.replaceFirst("^\\$?[A-Za-z]*\\$?", ""), 0);
  }
}
