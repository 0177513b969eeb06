package clearbed.read.sheet;

import clearbed.mark.OwnNotes;
import clearbed.model.document.Block;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.read.block.CleanText;
import clearbed.read.block.Mark;
import clearbed.read.block.MarkedText;
import clearbed.read.xml.OdfStyles;
import clearbed.read.xml.Xml;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The sheets of an OpenDocument spreadsheet; repeated cells and rows are written out. */
final class OdsContent extends DefaultHandler {
  private static final String DUBLIN_CORE = "http://purl.org/dc/elements/1.1/";

  private static final Pattern ERROR =
      Pattern.compile("#(REF|DIV/0|N/A|NAME|VALUE|NUM|NULL)[!?]?|Err:\\d+");

  private static final int MOST_COLUMNS = 1 << 14;

  /** A filled row repeated more often than this is a ruled-out empty form, not a schedule. */
  private static final int MOST_REPEATS = 10_000;

  /** Cells written out beyond those in the file, in the whole document. */
  private static final int MOST_COPIES = 500_000;

  private final String document;
  private final List<Block> blocks = new ArrayList<>();
  private final List<Gap> gaps = new ArrayList<>();
  private final List<Filled> filled = new ArrayList<>();
  private SheetGrid grid;
  private String sheet;
  private int row;
  private int rowRepeat;
  private boolean hidden;
  private int column;
  private int columnRepeat;
  private int columnSpan;
  private int rowSpan;
  private int copies;
  private final OdfStyles styles;
  private final List<String> columnStyles = new ArrayList<>();
  private final Deque<Boolean> strikes = new ArrayDeque<>();
  private String rowStyle;
  private int paragraphs;
  private MarkedText text = new MarkedText();
  private StringBuilder remark = new StringBuilder();
  private int annotation;

  /** Who wrote a comment, or when: no words of the comment. */
  private StringBuilder about;

  private String author;
  private int shapes;
  private int deleted;
  private StringBuilder note = new StringBuilder();

  private record Filled(
      int column, int repeat, int span, int rows, MarkedText text, String remark) {}

  /**
   * @param styles those that the document has outside its content
   */
  OdsContent(String document, OdfStyles styles) {
    this.document = document;
    this.styles = styles;
  }

  List<Block> blocks() {
    return blocks;
  }

  List<Gap> gaps() {
    return gaps;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    styles.start(name, attributes);
    if (uri.equals(DUBLIN_CORE)) about = new StringBuilder();
    switch (name) {
      case "table" -> startSheet(attributes);
      case "table-column" -> startColumn(attributes);
      case "table-row" -> startRow(attributes);
      case "table-cell", "covered-table-cell" -> startCell(attributes);
      case "annotation" -> annotation++;
      case "tracked-changes" -> deleted++;
      case "shapes", "custom-shape", "frame" -> shapes++;
      case "p" -> {
        paragraphs++;
        if (hasWords()) append("\n");
        strikes.push(struck("paragraph", attributes));
      }
      case "span" -> strikes.push(struck("text", attributes));
      case "s" -> append(" ".repeat(Math.min(100, number(attributes, "c"))));
      case "tab" -> append("\t");
      case "line-break" -> append("\n");
      default -> {}
    }
  }

  private boolean hasWords() {
    if (annotation > 0) return remark.length() > 0;
    return shapes > 0 ? note.length() > 0 : text.length() > 0;
  }

  /** Of the element itself, or else of what it stands in. */
  private boolean struck(String family, Attributes attributes) {
    Boolean own = styles.isStruck(family, OdfStyles.value(attributes, "style-name"));
    return own == null ? isStruck() : own;
  }

  private boolean isStruck() {
    return !strikes.isEmpty() && strikes.peek();
  }

  private void append(String words) {
    if (about != null) about.append(words);
    else if (annotation > 0) remark.append(words);
    else if (shapes > 0) note.append(words);
    else text.append(words, isStruck() ? Set.of(Mark.STRUCK) : Set.of());
  }

  private void startSheet(Attributes attributes) {
    if (deleted > 0 || grid != null) return;
    sheet = OdfStyles.value(attributes, "name");
    grid = new SheetGrid(document, sheet);
    if (styles.isUnseen("table", OdfStyles.value(attributes, "style-name")))
      grid.hide(SheetNotes.HIDDEN);
    row = 0;
    columnStyles.clear();
    text = new MarkedText();
  }

  private void startColumn(Attributes attributes) {
    if (grid == null) return;
    int first = columnStyles.size();
    int end = Math.min(MOST_COLUMNS, first + number(attributes, "number-columns-repeated"));
    String style = OdfStyles.value(attributes, "default-cell-style-name");
    while (columnStyles.size() < end) columnStyles.add(style);
    if (isHidden(attributes) && end > first) grid.hideColumns(first, end - 1);
  }

  private static boolean isHidden(Attributes attributes) {
    String visibility = OdfStyles.value(attributes, "visibility");
    return visibility != null && !visibility.equals("visible");
  }

  private void startRow(Attributes attributes) {
    row++;
    rowRepeat = number(attributes, "number-rows-repeated");
    hidden = isHidden(attributes);
    rowStyle = OdfStyles.value(attributes, "default-cell-style-name");
    column = 0;
    filled.clear();
  }

  private void startCell(Attributes attributes) {
    columnRepeat = number(attributes, "number-columns-repeated");
    columnSpan = number(attributes, "number-columns-spanned");
    rowSpan = number(attributes, "number-rows-spanned");
    text = new MarkedText();
    remark = new StringBuilder();
    strikes.clear();
    String style = OdfStyles.value(attributes, "style-name");
    if (style == null) style = rowStyle;
    if (style == null && column < columnStyles.size()) style = columnStyles.get(column);
    strikes.push(Boolean.TRUE.equals(styles.isStruck("table-cell", style)));
    author = null;
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    styles.end(name);
    if (uri.equals(DUBLIN_CORE)) {
      if (name.equals("creator")) author = about.toString().strip();
      about = null;
    }
    switch (name) {
      case "p" -> {
        paragraphs--;
        strikes.poll();
      }
      case "span" -> strikes.poll();
      case "table-cell" -> endCell(true);
      case "covered-table-cell" -> endCell(false);
      case "table-row" -> endRow();
      case "table" -> endSheet();
      case "annotation" -> annotation--;
      case "tracked-changes" -> deleted--;
      case "shapes", "custom-shape", "frame" -> {
        shapes--;
        if (shapes == 0) endNote();
      }
      default -> {}
    }
  }

  private void endCell(boolean shown) {
    String comment = CleanText.of(OwnNotes.signed(remark.toString().strip(), author));
    boolean none = CleanText.of(text.raw()).isEmpty() && text.pieces().isEmpty();
    if (shown && column < MOST_COLUMNS && !(none && comment.isEmpty())) {
      filled.add(new Filled(column, columnRepeat, columnSpan, rowSpan, text, comment));
    }
    column = Math.min(MOST_COLUMNS, column + Math.min(MOST_COLUMNS, columnRepeat));
    text = new MarkedText();
    strikes.clear();
  }

  private void endRow() {
    if (grid == null) return;
    int repeats = filled.isEmpty() ? 0 : Math.min(rowRepeat, MOST_REPEATS);
    boolean room = true;
    for (int i = 0; i < repeats && room; i++) {
      grid.row(row + i, hidden);
      for (Filled cell : filled) room &= fill(cell, row + i, i > 0);
    }
    if (!room || !filled.isEmpty() && rowRepeat > MOST_REPEATS) {
      grid.gap(row, 0, null, "a row repeated too often; rest left out");
    }
    row = Math.min(1 << 24, row + Math.min(1 << 24, rowRepeat) - 1);
  }

  /** False when there is no room left for more copies. */
  private boolean fill(Filled cell, int at, boolean again) {
    for (int c = 0; c < cell.repeat() && cell.column() + c < MOST_COLUMNS; c++) {
      if ((again || c > 0) && copies++ >= MOST_COPIES) return false;
      String words = CleanText.of(cell.text().raw());
      if (isError(words)) {
        grid.gap(at, cell.column() + c, words, "the cell shows an error");
        continue;
      }
      grid.marked(cell.column() + c, cell.text(), cell.remark());
    }
    if (cell.span() > 1 || cell.rows() > 1) {
      grid.merge(at, cell.column(), at + cell.rows() - 1, cell.column() + cell.span() - 1);
    }
    return true;
  }

  /** Formula errors are stored as the words on show, and in LibreOffice's notation. */
  private static boolean isError(String words) {
    return ERROR.matcher(words).matches();
  }

  private void endSheet() {
    if (grid == null || deleted > 0) return;
    blocks.add(grid.table());
    gaps.addAll(grid.gaps());
    grid = null;
  }

  private void endNote() {
    String words = CleanText.of(note.toString());
    note = new StringBuilder();
    if (words.isEmpty()) return;
    Origin origin = Origin.ofCell(document, sheet, null, words);
    blocks.add(new Paragraph(origin, "", 0, -1, words, Paragraph.Region.NOTE));
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (paragraphs > 0 || about != null) append(new String(chars, start, length));
  }

  private static int number(Attributes attributes, String name) {
    return Math.max(1, Math.min(1 << 24, Xml.number(OdfStyles.value(attributes, name), 1)));
  }
}
