package clearbed.read.markup;

import clearbed.base.Cancellation;
import clearbed.model.document.Block;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.read.block.BlockList;
import clearbed.read.block.BlockList.Aside;
import clearbed.read.block.CleanText;
import clearbed.read.block.Mark;
import clearbed.read.block.MarkedText;
import clearbed.read.xml.Xml;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Consumer;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Builds blocks from XHTML: paragraphs and list items with an ordinal, headings with their level,
 * tables with spans. A table within a cell becomes a table of its own; what hangs on a paragraph
 * follows it.
 */
final class MarkupBlocks extends DefaultHandler {
  private final String document;
  private final boolean sheets;
  private final Set<String> struckClasses;
  private final BlockList blocks;
  private final Deque<MarkupTable> tables = new ArrayDeque<>();
  private final Deque<MarkedText> outerText = new ArrayDeque<>();
  private final Deque<Region> regions = new ArrayDeque<>();
  private final Deque<Integer> lists = new ArrayDeque<>();
  private final Deque<Aside> asides = new ArrayDeque<>();
  private final Deque<MarkedText> interrupted = new ArrayDeque<>();
  private final List<Aside> waiting = new ArrayList<>();
  private final List<Aside> waitingForTable = new ArrayList<>();
  private final MarksInForce marks = new MarksInForce();
  private final RtfRows rtfRows = new RtfRows(this::addParagraph, this::addTable);
  private MarkedText text = new MarkedText();

  private int heading;
  private int unseen;
  private int preformatted;
  private String label = "";
  private boolean inItem;

  /**
   * @param sheets true when tables are sheets of a workbook
   * @param struckClasses of elements whose words the page strikes through
   */
  MarkupBlocks(String document, boolean sheets, Set<String> struckClasses) {
    this.document = document;
    this.sheets = sheets;
    this.struckClasses = struckClasses;
    this.blocks = new BlockList(document);
  }

  List<Block> blocks() {
    flush();
    rtfRows.end();
    blocks.tell(waiting);
    return blocks.blocks();
  }

  /** To be asked after {@link #blocks()}. */
  List<Gap> gaps() {
    return blocks.gaps();
  }

  void gap(String reason) {
    blocks.gap(reason);
  }

  @Override
  public void startElement(String uri, String local, String qName, Attributes attributes) {
    Cancellation.check();
    String name = local.toLowerCase(Locale.ROOT);
    boolean struck = HtmlElements.isStruck(name) || Striking.says(attributes, struckClasses);
    marks.startElement(struck ? Mark.STRUCK : null);
    if (HtmlElements.isUnseen(name)) unseen++;
    if (HtmlElements.breaksText(name)) breakText();
    switch (name) {
      case "br" -> text.append("\n", Set.of());
      case "img" -> text.append(" ", Set.of());
      case "pre" -> preformatted++;
      case "h1", "h2", "h3", "h4", "h5", "h6" -> heading = name.charAt(1) - '0';
      case "ul" -> lists.push(-1);
      case "ol" -> lists.push(Xml.number(attributes.getValue("start"), 1));
      case "li" -> startItem();
      case "div" -> regions.push(region(attributes.getValue("class")));
      case "table" -> startTable();
      case "tr" -> inTable(MarkupTable::startRow);
      case "td", "th" -> startCell(attributes);
      default -> {}
    }
  }

  private Region region(String kind) {
    if (kind == null) return region();
    return switch (kind) {
      case "header" -> Region.HEADER;
      case "footer" -> Region.FOOTER;
      case "footnote", "endnote", "annotation" -> Region.NOTE;
      default -> region();
    };
  }

  private Region region() {
    return regions.isEmpty() ? Region.BODY : regions.peek();
  }

  /** The words that follow stand in the margin of the page. */
  void startMargin(Region region) {
    breakText();
    regions.push(region);
  }

  void endMargin() {
    breakText();
    regions.poll();
  }

  /** Words from here on bear the mark, or no longer. */
  void mark(Mark mark, boolean on) {
    marks.set(mark, on);
  }

  /** A sign of the file's own, which is no word and bears no mark. */
  void structure(char sign) {
    text.append(String.valueOf(sign), Set.of());
  }

  /** Words that bear these marks, whatever stands around them. */
  void append(String words, Set<Mark> ofTheirOwn) {
    text.append(words, ofTheirOwn);
  }

  /** The words that follow hang on the paragraph that they interrupt. */
  void startAside(String part, Region region) {
    asides.push(new Aside(part, region, new MarkedText()));
    interrupted.push(text);
    text = asides.peek().words();
  }

  void endAside() {
    if (asides.isEmpty()) return;
    waiting.add(asides.pop());
    text = interrupted.pop();
  }

  private void startItem() {
    inItem = true;
    label = "\u2022";
    if (!lists.isEmpty() && lists.peek() >= 0) {
      int number = lists.pop();
      label = number + ".";
      lists.push(number + 1);
    }
  }

  /** What the file itself counts the item that has begun as. */
  void label(String counted) {
    label = counted;
  }

  private void startTable() {
    breakText();
    outerText.push(text);
    text = new MarkedText();
    tables.push(new MarkupTable());
  }

  private void startCell(Attributes attributes) {
    text = new MarkedText();
    int columns = Xml.number(attributes.getValue("colspan"), 1);
    int rows = Xml.number(attributes.getValue("rowspan"), 1);
    inTable(t -> t.startCell(columns, rows));
  }

  private void inTable(Consumer<MarkupTable> action) {
    if (!tables.isEmpty()) action.accept(tables.peek());
  }

  @Override
  public void endElement(String uri, String local, String qName) {
    String name = local.toLowerCase(Locale.ROOT);
    if (HtmlElements.breaksText(name)) breakText();
    if (HtmlElements.isUnseen(name)) unseen--;
    switch (name) {
      case "pre" -> preformatted--;
      case "h1", "h2", "h3", "h4", "h5", "h6" -> heading = 0;
      case "ul", "ol" -> lists.poll();
      case "li" -> inItem = false;
      case "div" -> regions.poll();
      case "td", "th" -> endCell();
      case "tr" -> inTable(MarkupTable::endRow);
      case "table" -> endTable();
      default -> {}
    }
    marks.endElement();
  }

  private void endCell() {
    if (tables.isEmpty()) return;
    Origin place = ofTable().withCell(tables.peek().address());
    blocks.tell(place, text);
    String words = CleanText.of(text.raw()).replaceAll("[ \\t]*\\n\\s*", "\n");
    tables.peek().endCell(words, blocks.remarks(place, waiting));
    text = new MarkedText();
  }

  private void endTable() {
    if (tables.isEmpty()) return;
    MarkupTable table = tables.pop();
    text = outerText.pop();
    table.build(ofTable(), sheets).ifPresent(this::addTable);
    if (tables.isEmpty() && asides.isEmpty()) blocks.tell(waiting);
  }

  private Origin ofTable() {
    String sheet = "Sheet " + (blocks.blocks().size() + 1);
    return sheets ? Origin.ofCell(document, sheet, null, null) : blocks.nextPlace();
  }

  private void addTable(Table table) {
    blocks.table(table, region());
  }

  private void addTable(MarkupTable table) {
    table.build(blocks.nextPlace(), false).ifPresent(this::addTable);
    blocks.tell(waitingForTable);
  }

  /** In a cell or a note a new line; elsewhere the end of a paragraph. */
  private void breakText() {
    if (!tables.isEmpty() || !asides.isEmpty()) {
      if (text.length() > 0 && text.last() != '\n') text.append("\n", Set.of());
    } else {
      flush();
    }
  }

  private void flush() {
    if (!tables.isEmpty() || !asides.isEmpty()) return;
    MarkedText whole = text;
    text = new MarkedText();
    blocks.tell(blocks.nextPlace(), whole);
    int before = blocks.ordinal();
    rtfRows.take(whole.raw());
    boolean gone = whole.isCut() && CleanText.of(whole.raw()).isEmpty();
    if (gone && blocks.ordinal() == before) blocks.countEmpty();
    if (rtfRows.isOpen()) {
      waitingForTable.addAll(waiting);
      waiting.clear();
    }
    blocks.tell(waiting);
  }

  private void addParagraph(String raw) {
    String words = CleanText.of(raw);
    if (words.isEmpty()) return;
    int level = inItem && !lists.isEmpty() ? lists.size() - 1 : -1;
    blocks.paragraph(words, inItem ? label : "", heading, level, region());
    if (region() == Region.BODY) label = "";
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (unseen > 0) return;
    if (preformatted > 0) {
      text.append(new String(chars, start, length), marks.all());
      return;
    }
    StringBuilder words = new StringBuilder(length);
    char last = text.last();
    for (int i = start; i < start + length; i++) {
      char c = chars[i];
      boolean blank = c == ' ' || c == '\n' || c == '\r';
      if (blank && (last == 0 || Character.isWhitespace(last))) continue;
      last = blank ? ' ' : c;
      words.append(last);
    }
    text.append(words, marks.all());
  }

  @Override
  public void ignorableWhitespace(char[] chars, int start, int length) {
    characters(chars, start, length);
  }
}
