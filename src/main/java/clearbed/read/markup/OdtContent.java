package clearbed.read.markup;

import clearbed.model.document.Paragraph.Region;
import clearbed.read.block.Mark;
import clearbed.read.word.WordText;
import clearbed.read.xml.OdfStyles;
import clearbed.read.xml.Xml;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.AttributesImpl;
import org.xml.sax.helpers.DefaultHandler;

/**
 * Hands the parts of an OpenDocument text on as markup, with what its styles and its tracked
 * changes say of the words (OpenDocument 1.3, part 3).
 */
final class OdtContent extends DefaultHandler {
  private static final Attributes NONE = new AttributesImpl();
  private static final int MOST = 1 << 14;
  private static final int MOST_BLANKS = 100;
  private static final int MOST_CELLS = 200;
  private static final int DEEPEST_HEADING = 6;

  /** Their words repeat what the text says, or are no part of it. */
  private static final Set<String> NO_WORDS =
      Set.of("note-citation", "ruby-text", "hidden-text", "tracked-changes");

  private static final List<Mark> OF_STYLES = List.of(Mark.STRUCK, Mark.HIDDEN);

  private final MarkupBlocks blocks;
  private final OdfStyles styles;
  private final OdtLists lists = new OdtLists();
  private final Deque<Set<Mark>> look = new ArrayDeque<>();
  private final Map<String, StringBuilder> deletions = new HashMap<>();
  private final Set<String> insertions = new HashSet<>();
  private final Set<String> insertionsOpen = new HashSet<>();
  private String region = "";
  private StringBuilder deleted;
  private String noteClass = "footnote";
  private final Deque<Integer> outerParagraphs = new ArrayDeque<>();
  private int paragraphs;
  private int noWords;
  private int objects;

  OdtContent(MarkupBlocks blocks, OdfStyles styles) {
    this.blocks = blocks;
    this.styles = styles;
  }

  /** Objects of other programs that stand in the text. */
  int objects() {
    return objects;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    styles.start(name, attributes);
    lists.start(name, attributes);
    if (isWithoutWords(uri, name)) noWords++;
    switch (name) {
      case "header", "header-left", "header-first" -> blocks.startMargin(Region.HEADER);
      case "footer", "footer-left", "footer-first" -> blocks.startMargin(Region.FOOTER);
      case "changed-region" -> region = String.valueOf(OdfStyles.value(attributes, "id"));
      case "deletion" -> deletions.put(region, deleted = new StringBuilder());
      case "insertion" -> insertions.add(region);
      case "change" -> deletion(attributes);
      case "change-start" -> insertion(attributes, true);
      case "change-end" -> insertion(attributes, false);
      case "section" -> look("section", attributes);
      case "p" -> startParagraph("p", attributes);
      case "h" -> startParagraph("h" + level(attributes), attributes);
      case "span" -> look("text", attributes);
      case "s" -> words(" ".repeat(Math.min(MOST_BLANKS, count(attributes, "c"))));
      case "tab" -> words("\t");
      case "line-break" -> blocks.startElement("", "br", "br", NONE);
      case "list" -> blocks.startElement("", "ul", "ul", NONE);
      case "list-item" -> {
        blocks.startElement("", "li", "li", NONE);
        blocks.label(lists.label());
      }
      case "table" -> blocks.startElement("", "table", "table", NONE);
      case "table-row" -> blocks.startElement("", "tr", "tr", NONE);
      case "table-cell" -> startCell(attributes);
      case "note" -> noteClass = String.valueOf(OdfStyles.value(attributes, "note-class"));
      case "note-body" -> startAside(noteClass, Region.NOTE);
      case "annotation" -> startAside("comment", Region.COMMENT);
      case "text-box" -> startAside("text box", Region.NOTE);
      case "object", "object-ole" -> objects++;
      default -> {}
    }
  }

  /** What a picture shows is told by elements of another standard. */
  private static boolean isWithoutWords(String uri, String name) {
    return uri.contains(":svg-compatible:") || NO_WORDS.contains(name);
  }

  private void startParagraph(String element, Attributes attributes) {
    paragraphs++;
    if (deleted != null) deleted.append(deleted.length() > 0 ? " " : "");
    else blocks.startElement("", element, element, NONE);
    look("paragraph", attributes);
  }

  /** What stands in it outside its own paragraphs is about it: who wrote, and when. */
  private void startAside(String part, Region where) {
    outerParagraphs.push(paragraphs);
    paragraphs = 0;
    blocks.startAside(part, where);
  }

  private static int level(Attributes attributes) {
    return Math.min(DEEPEST_HEADING, count(attributes, "outline-level"));
  }

  /** What the style says, or else what it stands in. */
  private void look(String family, Attributes attributes) {
    String style = OdfStyles.value(attributes, "style-name");
    Set<Mark> now = look.isEmpty() ? Set.of() : look.peek();
    Boolean struck = styles.isStruck(family, style);
    if (struck != null) now = changed(now, Mark.STRUCK, struck);
    boolean unseen = "none".equals(OdfStyles.value(attributes, "display"));
    if (unseen || styles.isUnseen(family, style)) now = changed(now, Mark.HIDDEN, true);
    look.push(now);
    show();
  }

  private static Set<Mark> changed(Set<Mark> marks, Mark mark, boolean on) {
    if (on) return WordText.with(marks, mark);
    Set<Mark> less = new HashSet<>(marks);
    less.remove(mark);
    return less;
  }

  private void unlook() {
    look.poll();
    show();
  }

  private void show() {
    Set<Mark> now = look.isEmpty() ? Set.of() : look.peek();
    for (Mark mark : OF_STYLES) blocks.mark(mark, now.contains(mark));
  }

  private void deletion(Attributes attributes) {
    StringBuilder words = deletions.get(OdfStyles.value(attributes, "change-id"));
    if (words != null) blocks.append(words.toString(), Set.of(Mark.DELETED));
  }

  private void insertion(Attributes attributes, boolean starts) {
    String id = OdfStyles.value(attributes, "change-id");
    if (!insertions.contains(id)) return;
    if (starts) insertionsOpen.add(id);
    else insertionsOpen.remove(id);
    blocks.mark(Mark.INSERTED, !insertionsOpen.isEmpty());
  }

  private void startCell(Attributes attributes) {
    AttributesImpl spans = new AttributesImpl();
    span(spans, "colspan", count(attributes, "number-columns-spanned"));
    span(spans, "rowspan", count(attributes, "number-rows-spanned"));
    int repeats = Math.min(MOST_CELLS, count(attributes, "number-columns-repeated"));
    for (int i = 1; i < repeats; i++) {
      blocks.startElement("", "td", "td", spans);
      blocks.endElement("", "td", "td");
    }
    blocks.startElement("", "td", "td", spans);
  }

  private static void span(AttributesImpl attributes, String name, int cells) {
    attributes.addAttribute("", name, name, "CDATA", String.valueOf(cells));
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    styles.end(name);
    lists.end(name);
    if (isWithoutWords(uri, name)) noWords--;
    switch (name) {
      case "header", "header-left", "header-first" -> blocks.endMargin();
      case "footer", "footer-left", "footer-first" -> blocks.endMargin();
      case "deletion" -> deleted = null;
      case "section", "span" -> unlook();
      case "p", "h" -> {
        unlook();
        paragraphs--;
        // All that the paragraph's own element does is done for any heading.
        if (deleted == null) end(name.equals("p") ? "p" : "h1");
      }
      case "line-break" -> end("br");
      case "list" -> end("ul");
      case "list-item" -> end("li");
      case "table" -> end("table");
      case "table-row" -> end("tr");
      case "table-cell" -> end("td");
      case "note-body", "annotation", "text-box" -> {
        paragraphs = outerParagraphs.isEmpty() ? 0 : outerParagraphs.pop();
        blocks.endAside();
      }
      default -> {}
    }
  }

  private void end(String element) {
    blocks.endElement("", element, element);
  }

  private static int count(Attributes attributes, String name) {
    return Math.max(1, Math.min(MOST, Xml.number(OdfStyles.value(attributes, name), 1)));
  }

  private void words(String words) {
    blocks.characters(words.toCharArray(), 0, words.length());
  }

  @Override
  public void characters(char[] chars, int start, int length) {
    if (paragraphs == 0) return;
    if (deleted != null) deleted.append(chars, start, length);
    else if (noWords == 0) blocks.characters(chars, start, length);
  }
}
