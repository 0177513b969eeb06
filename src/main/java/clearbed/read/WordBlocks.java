package clearbed.read;

import clearbed.model.Block;
import clearbed.model.Document.Gap;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Paragraph.Region;
import clearbed.model.Table;
import clearbed.model.Table.Cell;
import clearbed.model.Table.Row;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.w3c.dom.Element;

/** Turns the stories of a Word document into blocks. */
final class WordBlocks {
  private final String document;
  private final WordStyles styles;
  private final WordNumbering numbering;
  private final List<Block> blocks = new ArrayList<>();
  private final List<Gap> gaps = new ArrayList<>();
  private final Map<Element, Integer> ordinals = new IdentityHashMap<>();
  private final Map<String, Integer> noteCalls = new HashMap<>();
  private final Set<String> marginTexts = new HashSet<>();
  private Origin firstHidden;
  private int hiddenCount;
  private WordText wordText;

  /** Ordinal for paragraphs outside the body: where their note or text box hangs, or null. */
  private Integer anchor;

  /** Words left of a paragraph whose end was deleted: they run on into the next one. */
  private String carried = "";

  WordBlocks(String document, WordStyles styles, WordNumbering numbering) {
    this.document = document;
    this.styles = styles;
    this.numbering = numbering;
    this.wordText = new WordText(styles);
  }

  List<Block> blocks() {
    return blocks;
  }

  List<Gap> gaps() {
    List<Gap> all = new ArrayList<>(gaps);
    if (hiddenCount > 0) {
      String reason = "hidden text left out, " + places(hiddenCount) + " from here on";
      all.add(new Gap(firstHidden, reason));
    }
    return all;
  }

  private static String places(int count) {
    return count == 1 ? "1 place" : count + " places";
  }

  void body(Element body) {
    List<Element> paragraphs = WordParagraphs.in(body);
    for (int i = 0; i < paragraphs.size(); i++) ordinals.put(paragraphs.get(i), i + 1);
    story(body, Region.BODY);
  }

  void margin(Element root, Region region) {
    wordText = new WordText(styles);
    int before = blocks.size();
    story(root, region);
    List<Block> added = blocks.subList(before, blocks.size());
    added.removeIf(b -> b instanceof Paragraph p && !marginTexts.add(p.region() + p.text()));
    wordText = new WordText(styles);
  }

  void note(Element note, String id) {
    anchor = noteCalls.get(id);
    // Separators between text and notes are kept as notes that nothing refers to.
    if (anchor != null) story(note, Region.NOTE);
    anchor = null;
  }

  private void story(Element parent, Region region) {
    for (Element e : Xml.children(parent)) {
      GivenUp.check();
      switch (e.getLocalName()) {
        case "p" -> paragraph(e, region);
        case "tbl" -> table(e, region);
        case "del", "moveFrom", "sectPr", "sdtPr" -> {}
        case "AlternateContent" -> {
          Element choice = Xml.child(e, "Choice");
          if (choice != null) story(choice, region);
        }
        case "altChunk" -> gap(origin(null, null), "a file inserted here is not read");
        default -> story(e, region);
      }
    }
  }

  private void paragraph(Element p, Region region) {
    Integer ordinal = ordinals.getOrDefault(p, anchor);
    Element properties = Xml.child(p, "pPr");
    WordText.Words found = wordText.of(p);
    String raw = carried + found.raw();
    String text = CleanText.of(raw);
    carried = "";
    report(found, ordinal, text);
    if (isEndDeleted(properties)) {
      carried = text.isEmpty() ? "" : raw;
    } else {
      add(properties, region, ordinal, text, found.hidden());
    }
    for (Element box : found.boxes()) box(box, ordinal);
  }

  private void add(
      Element properties, Region region, Integer ordinal, String text, boolean hidden) {
    // A paragraph that is hidden as a whole shows no number either; an empty one does.
    if (text.isEmpty() && hidden) return;
    WordNumbering.Place place = numbering.place(properties);
    String label = place == null ? "" : numbering.next(place);
    if (text.isEmpty()) return;
    int level = place == null ? -1 : place.level();
    int heading = region == Region.BODY ? styles.headingLevel(properties) : 0;
    blocks.add(new Paragraph(origin(ordinal, text), label, heading, level, text, region));
  }

  private static boolean isEndDeleted(Element properties) {
    Element mark = Xml.child(properties, "rPr");
    return Xml.child(mark, "del") != null || Xml.child(mark, "moveFrom") != null;
  }

  private void report(WordText.Words found, Integer ordinal, String text) {
    for (String note : found.notes()) noteCalls.putIfAbsent(note, ordinal == null ? 1 : ordinal);
    Origin origin = origin(ordinal, text.isEmpty() ? null : text);
    if (found.embedded()) gap(origin, "an object of another program is not read");
    if (found.hidden() && hiddenCount++ == 0) firstHidden = origin;
  }

  private void gap(Origin origin, String reason) {
    gaps.add(new Gap(origin, reason));
  }

  private void box(Element content, Integer ordinal) {
    Integer before = anchor;
    WordText outer = wordText;
    anchor = ordinal;
    wordText = new WordText(styles);
    story(content, Region.NOTE);
    wordText = outer;
    anchor = before;
  }

  private Origin origin(Integer ordinal, String text) {
    return new Origin(document, null, null, null, ordinal, null, text);
  }

  private void table(Element table, Region region) {
    List<Element> nested = new ArrayList<>();
    List<Element> boxes = new ArrayList<>();
    Integer ordinal =
        WordParagraphs.ownParagraphs(table).stream()
            .findFirst()
            .map(p -> ordinals.getOrDefault(p, anchor))
            .orElse(anchor);
    List<Row> rows = new ArrayList<>();
    Map<Integer, Cell> above = new HashMap<>();
    List<Element> elements = WordTable.rows(table);
    for (int r = 1; r <= elements.size(); r++) {
      Row row = row(elements.get(r - 1), r, above, nested, boxes);
      if (row != null && !row.cells().isEmpty()) rows.add(row);
    }
    if (!rows.isEmpty()) blocks.add(new Table(origin(ordinal, null), rows, false));
    for (Element inner : nested) table(inner, region);
    for (Element box : boxes) box(box, ordinal);
  }

  /** Null for a row that is deleted. */
  private Row row(
      Element tr, int number, Map<Integer, Cell> above, List<Element> nested, List<Element> boxes) {
    Element properties = Xml.child(tr, "trPr");
    if (Xml.child(properties, "del") != null) return null;
    boolean hidden = Boolean.TRUE.equals(Xml.flag(properties, "hidden"));
    List<Cell> cells = new ArrayList<>();
    for (WordTable.Placed placed : WordTable.cells(tr)) {
      String text = cellText(placed.element(), nested, boxes);
      Element merge = Xml.at(placed.element(), "tcPr", "vMerge");
      boolean continues = merge != null && !"restart".equals(Xml.attribute(merge, "val"));
      Cell over = above.get(placed.column());
      if (continues && over != null) {
        cells.add(
            new Cell(over.column(), over.columnSpan(), true, over.text(), "", over.firstRow(), 0));
        continue;
      }
      Cell cell = new Cell(placed.column(), placed.span(), false, text, "", number, 0);
      if (merge != null && !text.isEmpty()) above.put(placed.column(), cell);
      else above.remove(placed.column());
      if (!text.isEmpty()) cells.add(cell);
    }
    return new Row(number, cells, hidden);
  }

  private String cellText(Element tc, List<Element> nested, List<Element> boxes) {
    StringBuilder text = new StringBuilder();
    cellText(tc, text, nested, boxes);
    carried = "";
    return CleanText.of(text.toString());
  }

  private void cellText(
      Element parent, StringBuilder text, List<Element> nested, List<Element> boxes) {
    for (Element e : Xml.children(parent)) {
      GivenUp.check();
      switch (e.getLocalName()) {
        case "p" -> cellParagraph(e, text, boxes);
        case "tbl" -> nested.add(e);
        case "tcPr", "del", "moveFrom", "sdtPr", "Fallback" -> {}
        default -> cellText(e, text, nested, boxes);
      }
    }
  }

  private void cellParagraph(Element p, StringBuilder text, List<Element> boxes) {
    WordText.Words found = wordText.of(p);
    String words = CleanText.of(found.raw());
    report(found, ordinals.getOrDefault(p, anchor), words);
    boxes.addAll(found.boxes());
    WordNumbering.Place place = numbering.place(Xml.child(p, "pPr"));
    String label = place == null ? "" : numbering.next(place);
    if (words.isEmpty()) return;
    if (text.length() > 0) text.append('\n');
    if (!label.isEmpty()) text.append(label).append(' ');
    text.append(words);
  }
}
