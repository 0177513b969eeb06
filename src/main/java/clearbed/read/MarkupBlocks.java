package clearbed.read;

import clearbed.model.Block;
import clearbed.model.Document.Gap;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Paragraph.Region;
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
 * tables with spans. A table within a cell becomes a table of its own.
 */
final class MarkupBlocks extends DefaultHandler {
  private static final Set<String> BREAKS =
      Set.of(
          "p",
          "div",
          "li",
          "ul",
          "ol",
          "dl",
          "dt",
          "dd",
          "h1",
          "h2",
          "h3",
          "h4",
          "h5",
          "h6",
          "blockquote",
          "pre",
          "section",
          "article",
          "header",
          "footer",
          "caption",
          "hr",
          "body",
          "address",
          "fieldset",
          "form",
          "main",
          "nav",
          "aside",
          "figure",
          "figcaption");

  /** Their words are not shown. */
  private static final Set<String> UNSEEN =
      Set.of("head", "script", "style", "title", "template", "noscript", "del");

  private final String document;
  private final boolean sheets;
  private final List<Block> blocks = new ArrayList<>();
  private final List<Gap> gaps = new ArrayList<>();
  private final Deque<MarkupTable> tables = new ArrayDeque<>();
  private final Deque<StringBuilder> outerText = new ArrayDeque<>();
  private final Deque<Region> regions = new ArrayDeque<>();
  private final Deque<Integer> lists = new ArrayDeque<>();
  private final RtfRows rtfRows = new RtfRows(this::addParagraph, this::addTable);
  private StringBuilder text = new StringBuilder();
  private int heading;
  private int unseen;
  private int preformatted;
  private int ordinal;
  private String label = "";
  private boolean inItem;

  /**
   * @param sheets true when tables are sheets of a workbook
   */
  MarkupBlocks(String document, boolean sheets) {
    this.document = document;
    this.sheets = sheets;
  }

  List<Block> blocks() {
    flush();
    rtfRows.end();
    return blocks;
  }

  List<Gap> gaps() {
    return gaps;
  }

  void gap(String reason) {
    gaps.add(new Gap(Origin.ofDocument(document), reason));
  }

  @Override
  public void startElement(String uri, String local, String qName, Attributes attributes) {
    GivenUp.check();
    String name = local.toLowerCase(Locale.ROOT);
    if (UNSEEN.contains(name)) unseen++;
    if (BREAKS.contains(name)) breakText();
    switch (name) {
      case "br" -> text.append('\n');
      case "img" -> text.append(' ');
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
    if (kind == null) return regions.isEmpty() ? Region.BODY : regions.peek();
    return switch (kind) {
      case "header" -> Region.HEADER;
      case "footer" -> Region.FOOTER;
      case "footnote", "endnote", "annotation" -> Region.NOTE;
      default -> regions.isEmpty() ? Region.BODY : regions.peek();
    };
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

  private void startTable() {
    breakText();
    outerText.push(text);
    text = new StringBuilder();
    tables.push(new MarkupTable());
  }

  private void startCell(Attributes attributes) {
    text.setLength(0);
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
    if (BREAKS.contains(name)) breakText();
    if (UNSEEN.contains(name)) unseen--;
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
  }

  private void endCell() {
    if (tables.isEmpty()) return;
    tables.peek().endCell(CleanText.of(text.toString()).replaceAll("[ \\t]*\\n\\s*", "\n"));
    text.setLength(0);
  }

  private void endTable() {
    if (tables.isEmpty()) return;
    MarkupTable table = tables.pop();
    text = outerText.pop();
    // As in Word files a table takes a number of its own in the count of paragraphs.
    Origin place =
        sheets
            ? Origin.ofCell(document, "Sheet " + (blocks.size() + 1), null, null)
            : new Origin(document, null, null, null, ordinal + 1, null, null);
    table.build(place, sheets).ifPresent(this::addTable);
  }

  private void addTable(Block table) {
    ordinal++;
    blocks.add(table);
  }

  private void addTable(MarkupTable table) {
    table
        .build(new Origin(document, null, null, null, ordinal + 1, null, null), false)
        .ifPresent(this::addTable);
  }

  /** In a cell a new line; elsewhere the end of a paragraph. */
  private void breakText() {
    if (!tables.isEmpty()) {
      if (text.length() > 0 && text.charAt(text.length() - 1) != '\n') text.append('\n');
    } else {
      flush();
    }
  }

  private void flush() {
    String raw = text.toString();
    text.setLength(0);
    if (tables.isEmpty()) rtfRows.take(raw);
  }

  private void addParagraph(String raw) {
    String words = CleanText.of(raw);
    if (words.isEmpty()) return;
    Region region = regions.isEmpty() ? Region.BODY : regions.peek();
    Origin origin = new Origin(document, null, null, null, ++ordinal, null, words);
    int level = inItem && !lists.isEmpty() ? lists.size() - 1 : -1;
    String shown = inItem ? label : "";
    label = "";
    blocks.add(new Paragraph(origin, shown, heading, level, words, region));
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (unseen > 0) return;
    if (preformatted > 0) {
      text.append(chars, start, length);
      return;
    }
    for (int i = start; i < start + length; i++) {
      boolean blank = chars[i] == ' ' || chars[i] == '\n' || chars[i] == '\r';
      if (!blank) text.append(chars[i]);
      else if (text.length() > 0 && !Character.isWhitespace(text.charAt(text.length() - 1))) {
        text.append(' ');
      }
    }
  }

  @Override
  public void ignorableWhitespace(char[] chars, int start, int length) {
    characters(chars, start, length);
  }
}
