package clearbed.read.word;

import clearbed.base.Cancellation;
import clearbed.mark.OwnNotes;
import clearbed.model.document.Block;
import clearbed.model.document.Document.Fate;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import clearbed.read.block.CleanText;
import clearbed.read.block.Gaps;
import clearbed.read.block.MarginText;
import clearbed.read.block.Mark;
import clearbed.read.block.Remarks;
import clearbed.read.word.WordText.Hung;
import clearbed.read.xml.Xml;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.w3c.dom.Element;

/**
 * Turns the stories of a Word document into blocks. Notes, comments and text boxes follow the
 * paragraph, or the table, that they hang on.
 */
final class WordBlocks {
  private final String document;
  private final WordStyles styles;
  private final WordNumbering numbering;
  private final WordAsides asides;
  private final List<Block> blocks = new ArrayList<>();
  private final Gaps gaps = new Gaps();
  private final Map<Element, Integer> ordinals = new IdentityHashMap<>();
  private final Set<String> marginTexts = new HashSet<>();
  private WordText wordText;

  /** What stands around the paragraph that is being read. */
  private Around around = new Around(null, null, null, Region.BODY, Set.of());

  /** What people say of the cell that is being read. */
  private final StringBuilder remark = new StringBuilder();

  /** Words left of a paragraph whose end was deleted: they run on into the next one. */
  private String carried = "";

  /** Number of the paragraph from which on words are passed over as a field's code. */
  private Integer withheldFrom;

  /**
   * @param anchor ordinal for paragraphs outside the body: where their note or text box hangs, or
   *     null
   * @param cell address, or null outside tables
   * @param part as in {@link Origin#part()}
   * @param region of paragraphs
   * @param marks of rows and tracked changes
   */
  private record Around(Integer anchor, String cell, String part, Region region, Set<Mark> marks) {
    Around marked(Mark mark) {
      return mark == null
          ? this
          : new Around(anchor, cell, part, region, WordText.with(marks, mark));
    }

    Around inCell(String address) {
      return new Around(anchor, address, part, region, marks);
    }
  }

  /** Something that hangs on a paragraph, to be read when its table is done. */
  private record Later(Hung hung, Integer ordinal, Around around) {}

  private record Nested(Element table, Around around) {}

  WordBlocks(String document, WordStyles styles, WordNumbering numbering, WordAsides asides) {
    this.document = document;
    this.styles = styles;
    this.numbering = numbering;
    this.asides = asides;
    this.wordText = new WordText(styles);
  }

  List<Block> blocks() {
    return blocks;
  }

  List<Gap> gaps() {
    return gaps.list();
  }

  void body(Element body) {
    List<Element> paragraphs = WordParagraphs.in(body);
    for (int i = 0; i < paragraphs.size(); i++) ordinals.put(paragraphs.get(i), i + 1);
    story(body);
    endStory();
  }

  void looseComments() {
    for (Element comment : asides.looseComments()) comment(comment, null, around);
  }

  /** The words of a page header or footer, those of its tables too, each text once. */
  void margin(Element root, Region region) {
    String part = region == Region.HEADER ? "header" : "footer";
    int before = blocks.size();
    within(new Around(null, null, part, region, Set.of()), () -> story(root));
    List<Block> added = new ArrayList<>(blocks.subList(before, blocks.size()));
    blocks.subList(before, blocks.size()).clear();
    List<String> words = new ArrayList<>();
    for (Paragraph p : MarginText.lines(added, part, region)) {
      boolean remark = p.region() == Region.COMMENT;
      if (!remark && !marginTexts.add(p.region() + p.text())) continue;
      blocks.add(p);
      if (!remark) words.add(p.text());
    }
    MarginText.tell(gaps, document, part, words);
  }

  private void within(Around inner, Runnable reading) {
    Around outer = around;
    WordText outerText = wordText;
    around = inner;
    wordText = new WordText(styles);
    Integer outerFrom = withheldFrom;
    withheldFrom = null;
    reading.run();
    endStory();
    withheldFrom = outerFrom;
    wordText = outerText;
    around = outer;
  }

  /** A field that never ends takes the words behind its start for its code. */
  private void endStory() {
    if (wordText.isWithholding())
      gaps.add(
          origin(withheldFrom, null),
          "a field begins here and has no end; words behind its start are not read");
  }

  private void story(Element parent) {
    for (Element e : Xml.children(parent)) {
      Cancellation.check();
      switch (e.getLocalName()) {
        case "p" -> paragraph(e);
        case "tbl" -> table(e);
        case "sectPr", "sdtPr" -> {}
        case "AlternateContent" -> {
          Element choice = Xml.child(e, "Choice");
          if (choice != null) story(choice);
        }
        case "altChunk" -> gaps.add(origin(null, null), "a file inserted here is not read");
        default -> {
          Around outer = around;
          around = around.marked(WordText.change(e));
          story(e);
          around = outer;
        }
      }
    }
  }

  private void paragraph(Element p) {
    Integer ordinal = ordinals.getOrDefault(p, around.anchor());
    Element properties = Xml.child(p, "pPr");
    WordText.ParagraphText found = wordText.of(p, around.marks());
    if (!wordText.isWithholding()) withheldFrom = null;
    else if (withheldFrom == null) withheldFrom = ordinal;
    String raw = carried + found.text().raw();
    String text = CleanText.of(raw);
    carried = "";
    report(found, ordinal, text);
    if (isEndDeleted(properties)) {
      carried = text.isEmpty() ? "" : raw;
    } else {
      add(properties, ordinal, text, found.text().isAll(Mark.HIDDEN));
    }
    for (Hung hung : found.hung()) hung(hung, ordinal, around);
  }

  private void add(Element properties, Integer ordinal, String text, boolean hidden) {
    WordNumbering.Place place = numbering.place(properties);
    // A paragraph that is hidden as a whole shows no number; an empty one does.
    String label = place == null || hidden ? "" : numbering.next(place);
    if (text.isEmpty()) return;
    int level = place == null ? -1 : place.level();
    int heading = around.region() == Region.BODY ? styles.headingLevel(properties) : 0;
    Origin origin = origin(ordinal, text);
    blocks.add(new Paragraph(origin, label, heading, level, text, around.region()));
  }

  private static boolean isEndDeleted(Element properties) {
    Element mark = Xml.child(properties, "rPr");
    return Xml.child(mark, "del") != null || Xml.child(mark, "moveFrom") != null;
  }

  private void report(WordText.ParagraphText found, Integer ordinal, String text) {
    Origin origin = origin(ordinal, text.isEmpty() ? null : text);
    if (found.embedded()) gaps.add(origin, "an object of another program is not read");
    gaps.add(origin, found.text());
  }

  private void hung(Hung hung, Integer ordinal, Around at) {
    Element content = asides.take(hung);
    if (content == null) return;
    if (hung.kind() == WordText.HungKind.COMMENT) {
      comment(content, ordinal, at);
      return;
    }
    String name =
        switch (hung.kind()) {
          case FOOTNOTE -> "footnote";
          case ENDNOTE -> "endnote";
          default -> "text box";
        };
    boolean inMargin = at.region() == Region.HEADER || at.region() == Region.FOOTER;
    Region region = inMargin ? at.region() : Region.NOTE;
    String part = inMargin ? at.part() : name;
    within(new Around(ordinal, at.cell(), part, region, hung.marks()), () -> story(content));
  }

  /** A remark of a person: what it leaves open is open, what it says is no requirement. */
  private void comment(Element comment, Integer ordinal, Around at) {
    WordText plain = new WordText(styles);
    String said =
        WordParagraphs.in(comment).stream()
            .map(p -> CleanText.of(plain.of(p, Set.of()).text().raw()))
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining("\n"));
    // In a marked copy that came back the notes are ours, not people's.
    String text = OwnNotes.without(OwnNotes.signed(said, Xml.attribute(comment, "author")));
    if (text.isEmpty()) return;
    Origin origin = new Origin(document, null, at.cell(), null, ordinal, null, text, "comment");
    boolean done = asides.isDone(comment);
    gaps.add(origin, Remarks.reason(Xml.attribute(comment, "author"), done), Fate.PASSED_OVER);
    if (done) return;
    if (at.cell() != null) remark.append(remark.length() > 0 ? "\n" : "").append(text);
    else blocks.add(new Paragraph(origin, "", 0, -1, text, Region.COMMENT));
  }

  private Origin origin(Integer ordinal, String text) {
    return new Origin(document, null, around.cell(), null, ordinal, null, text, around.part());
  }

  private void table(Element table) {
    List<Nested> nested = new ArrayList<>();
    List<Later> later = new ArrayList<>();
    Around outer = around;
    Integer ordinal =
        WordParagraphs.ownParagraphs(table).stream()
            .findFirst()
            .map(p -> ordinals.getOrDefault(p, outer.anchor()))
            .orElse(outer.anchor());
    List<Row> rows = new ArrayList<>();
    Map<Integer, Cell> above = new HashMap<>();
    List<Element> elements = WordTable.rows(table);
    for (int r = 1; r <= elements.size(); r++) {
      Row row = row(elements.get(r - 1), r, above, nested, later);
      if (!row.cells().isEmpty()) rows.add(row);
      around = outer;
    }
    Origin origin = new Origin(document, null, null, null, ordinal, null, null, around.part());
    if (!rows.isEmpty()) blocks.add(new Table(origin, rows, false));
    for (Nested inner : nested) {
      around = inner.around();
      table(inner.table());
    }
    around = outer;
    for (Later item : later) hung(item.hung(), item.ordinal(), item.around());
  }

  private Row row(
      Element tr, int number, Map<Integer, Cell> above, List<Nested> nested, List<Later> later) {
    Element properties = Xml.child(tr, "trPr");
    boolean hidden = Boolean.TRUE.equals(Xml.flag(properties, "hidden"));
    if (hidden) around = around.marked(Mark.HIDDEN);
    if (Xml.child(properties, "ins") != null) around = around.marked(Mark.INSERTED);
    if (Xml.child(properties, "del") != null) around = around.marked(Mark.DELETED);
    Around ofRow = around;
    List<Cell> cells = new ArrayList<>();
    for (WordTable.Placed placed : WordTable.cells(tr)) {
      around = ofRow.inCell(Table.address(number, placed.column()));
      Element own = Xml.child(placed.element(), "tcPr");
      if (Xml.child(own, "cellDel") != null) around = around.marked(Mark.DELETED);
      if (Xml.child(own, "cellIns") != null) around = around.marked(Mark.INSERTED);
      remark.setLength(0);
      String text = cellText(placed.element(), nested, later);
      String said = remark.toString();
      Element merge = Xml.child(own, "vMerge");
      boolean continues = merge != null && !"restart".equals(Xml.attribute(merge, "val"));
      Cell over = above.get(placed.column());
      if (continues && over != null) {
        cells.add(
            new Cell(over.column(), over.columnSpan(), true, over.text(), "", over.firstRow(), 0));
        continue;
      }
      Cell cell = new Cell(placed.column(), placed.span(), false, text, said, number, 0);
      if (merge != null && !text.isEmpty()) above.put(placed.column(), cell);
      else above.remove(placed.column());
      if (!text.isEmpty() || !said.isEmpty()) cells.add(cell);
    }
    // What a deleted row would take over from above it goes with it.
    boolean deleted = ofRow.marks().contains(Mark.DELETED);
    return new Row(number, deleted ? List.of() : cells, hidden);
  }

  private String cellText(Element tc, List<Nested> nested, List<Later> later) {
    StringBuilder text = new StringBuilder();
    cellText(tc, text, nested, later);
    carried = "";
    return CleanText.of(text.toString());
  }

  private void cellText(
      Element parent, StringBuilder text, List<Nested> nested, List<Later> later) {
    for (Element e : Xml.children(parent)) {
      Cancellation.check();
      switch (e.getLocalName()) {
        case "p" -> cellParagraph(e, text, later);
        case "tbl" -> nested.add(new Nested(e, around.inCell(null)));
        case "tcPr", "sdtPr", "Fallback" -> {}
        default -> {
          Around outer = around;
          around = around.marked(WordText.change(e));
          cellText(e, text, nested, later);
          around = outer;
        }
      }
    }
  }

  private void cellParagraph(Element p, StringBuilder text, List<Later> later) {
    WordText.ParagraphText found = wordText.of(p, around.marks());
    Integer ordinal = ordinals.getOrDefault(p, around.anchor());
    String words = CleanText.of(found.text().raw());
    report(found, ordinal, words);
    for (Hung hung : found.hung()) {
      // A comment belongs to its cell; the rest is read behind the table.
      if (hung.kind() == WordText.HungKind.COMMENT) hung(hung, ordinal, around);
      else later.add(new Later(hung, ordinal, around));
    }
    WordNumbering.Place place = numbering.place(Xml.child(p, "pPr"));
    String label = place == null ? "" : numbering.next(place);
    if (words.isEmpty()) return;
    if (text.length() > 0) text.append('\n');
    if (!label.isEmpty()) text.append(label).append(' ');
    text.append(words);
  }
}
