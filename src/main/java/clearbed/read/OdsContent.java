package clearbed.read;

import clearbed.mark.OwnNotes;
import clearbed.model.Block;
import clearbed.model.Document.Gap;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import java.util.ArrayList;
import java.util.List;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** The sheets of an OpenDocument spreadsheet; repeated cells and rows are written out. */
final class OdsContent extends DefaultHandler {
  private static final String DUBLIN_CORE = "http://purl.org/dc/elements/1.1/";

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
  private StringBuilder text = new StringBuilder();
  private StringBuilder remark = new StringBuilder();
  private int annotation;

  /** Who wrote a comment, or when: no words of the comment. */
  private StringBuilder about;

  private String author;
  private int shapes;
  private int deleted;
  private StringBuilder note = new StringBuilder();

  private record Filled(int column, int repeat, int span, int rows, String text, String remark) {}

  OdsContent(String document) {
    this.document = document;
  }

  List<Block> blocks() {
    return blocks;
  }

  List<Gap> gaps() {
    return gaps;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    if (uri.equals(DUBLIN_CORE)) about = new StringBuilder();
    switch (name) {
      case "table" -> startSheet(value(attributes, "name"));
      case "table-row" -> startRow(attributes);
      case "table-cell", "covered-table-cell" -> startCell(attributes);
      case "annotation" -> annotation++;
      case "tracked-changes" -> deleted++;
      case "shapes", "custom-shape", "frame" -> shapes++;
      case "p" -> {
        if (target().length() > 0) target().append('\n');
      }
      case "s" -> target().append(" ".repeat(Math.min(100, number(attributes, "c"))));
      case "tab" -> target().append('\t');
      case "line-break" -> target().append('\n');
      default -> {}
    }
  }

  private StringBuilder target() {
    if (about != null) return about;
    if (annotation > 0) return remark;
    return shapes > 0 ? note : text;
  }

  private void startSheet(String name) {
    if (deleted > 0 || grid != null) return;
    sheet = name;
    grid = new SheetGrid(document, name);
    row = 0;
    text.setLength(0);
  }

  private void startRow(Attributes attributes) {
    row++;
    rowRepeat = number(attributes, "number-rows-repeated");
    String visibility = value(attributes, "visibility");
    hidden = visibility != null && !visibility.equals("visible");
    column = 0;
    filled.clear();
  }

  private void startCell(Attributes attributes) {
    columnRepeat = number(attributes, "number-columns-repeated");
    columnSpan = number(attributes, "number-columns-spanned");
    rowSpan = number(attributes, "number-rows-spanned");
    text = new StringBuilder();
    remark = new StringBuilder();
    author = null;
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    if (uri.equals(DUBLIN_CORE)) {
      if (name.equals("creator")) author = about.toString().strip();
      about = null;
    }
    switch (name) {
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
    String words = CleanText.of(text.toString());
    String comment = CleanText.of(OwnNotes.signed(remark.toString().strip(), author));
    if (shown && column < MOST_COLUMNS && !(words.isEmpty() && comment.isEmpty())) {
      filled.add(new Filled(column, columnRepeat, columnSpan, rowSpan, words, comment));
    }
    column = Math.min(MOST_COLUMNS, column + Math.min(MOST_COLUMNS, columnRepeat));
    text.setLength(0);
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
      if (isError(cell.text())) {
        grid.gap(at, cell.column() + c, cell.text(), "the cell shows an error");
        continue;
      }
      grid.cell(cell.column() + c, cell.text(), cell.remark());
    }
    if (cell.span() > 1 || cell.rows() > 1) {
      grid.merge(at, cell.column(), at + cell.rows() - 1, cell.column() + cell.span() - 1);
    }
    return true;
  }

  /** Formula errors are stored as the words on show, and in LibreOffice's notation. */
  private static boolean isError(String words) {
    return words.matches("#(REF|DIV/0|N/A|NAME|VALUE|NUM|NULL)[!?]?|Err:\\d+");
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
    target().append(chars, start, length);
  }

  private static String value(Attributes attributes, String name) {
    for (int i = 0; i < attributes.getLength(); i++) {
      if (attributes.getLocalName(i).equals(name)) return attributes.getValue(i);
    }
    return null;
  }

  private static int number(Attributes attributes, String name) {
    return Math.max(1, Math.min(1 << 24, Xml.number(value(attributes, name), 1)));
  }
}
