package clearbed.read.word;

import clearbed.base.Cancellation;
import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.model.document.Table.Cell;
import clearbed.model.document.Table.Row;
import clearbed.read.block.CleanText;
import clearbed.read.block.Mark;
import clearbed.read.word.WordText.Hung;
import clearbed.read.xml.Xml;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.w3c.dom.Element;

/**
 * Reads the rows of one Word table. Tables within its cells, and what hangs on their paragraphs,
 * follow it.
 */
final class WordRows {
  private final WordBlocks story;
  private final WordNumbering numbering;
  private final List<Nested> nested = new ArrayList<>();
  private final List<Later> later = new ArrayList<>();

  /** By column, the cell that those merged with it take over from. */
  private final Map<Integer, Cell> above = new HashMap<>();

  /** What people say of the cell that is being read. */
  private final StringBuilder remark = new StringBuilder();

  /** Something that hangs on a paragraph, to be read when its table is done. */
  private record Later(Hung hung, Integer ordinal, Around around) {}

  private record Nested(Element table, Around around) {}

  WordRows(WordBlocks story, WordNumbering numbering) {
    this.story = story;
    this.numbering = numbering;
  }

  /** Adds the table, and what follows it, to the blocks of its story. */
  void read(Element table, Around around) {
    Integer ordinal =
        WordParagraphs.ownParagraphs(table).stream()
            .findFirst()
            .map(p -> story.ordinal(p, around))
            .orElse(around.anchor());
    List<Row> rows = new ArrayList<>();
    List<Element> elements = WordTable.rows(table);
    for (int r = 1; r <= elements.size(); r++) {
      Row row = row(elements.get(r - 1), r, around);
      if (!row.cells().isEmpty()) rows.add(row);
    }
    Origin origin = story.origin(ordinal, null, around.inCell(null));
    if (!rows.isEmpty()) story.add(new Table(origin, rows, false));
    for (Nested inner : nested) new WordRows(story, numbering).read(inner.table(), inner.around());
    for (Later item : later) story.hung(item.hung(), item.ordinal(), item.around());
  }

  private Row row(Element tr, int number, Around ofTable) {
    Element properties = Xml.child(tr, "trPr");
    boolean hidden = Boolean.TRUE.equals(Xml.flag(properties, "hidden"));
    Around around = ofTable.marked(hidden ? Mark.HIDDEN : null);
    if (Xml.child(properties, "ins") != null) around = around.marked(Mark.INSERTED);
    if (Xml.child(properties, "del") != null) around = around.marked(Mark.DELETED);
    List<Cell> cells = new ArrayList<>();
    for (WordTable.PlacedCell placed : WordTable.cells(tr)) {
      Cell cell = cell(placed, number, around);
      if (cell.continued() || !cell.text().isEmpty() || !cell.remark().isEmpty()) cells.add(cell);
    }
    // What a deleted row would take over from above it goes with it.
    boolean deleted = around.marks().contains(Mark.DELETED);
    return new Row(number, deleted ? List.of() : cells, hidden);
  }

  private Cell cell(WordTable.PlacedCell placed, int row, Around ofRow) {
    Element own = Xml.child(placed.element(), "tcPr");
    Around around = ofRow.inCell(Table.address(row, placed.column()));
    if (Xml.child(own, "cellDel") != null) around = around.marked(Mark.DELETED);
    if (Xml.child(own, "cellIns") != null) around = around.marked(Mark.INSERTED);
    remark.setLength(0);
    StringBuilder words = new StringBuilder();
    words(placed.element(), words, around);
    story.dropCarried();
    String text = CleanText.of(words.toString());
    Element merge = Xml.child(own, "vMerge");
    boolean continues = merge != null && !"restart".equals(Xml.attribute(merge, "val"));
    Cell over = above.get(placed.column());
    if (continues && over != null)
      return new Cell(over.column(), over.columnSpan(), true, over.text(), "", over.firstRow(), 0);
    Cell cell = new Cell(placed.column(), placed.span(), false, text, remark.toString(), row, 0);
    if (merge != null && !text.isEmpty()) above.put(placed.column(), cell);
    else above.remove(placed.column());
    return cell;
  }

  private void words(Element parent, StringBuilder text, Around around) {
    for (Element e : Xml.children(parent)) {
      Cancellation.check();
      switch (e.getLocalName()) {
        case "p" -> paragraph(e, text, around);
        case "tbl" -> nested.add(new Nested(e, around.inCell(null)));
        case "tcPr", "sdtPr", "Fallback" -> {}
        default -> words(e, text, around.marked(WordText.change(e)));
      }
    }
  }

  private void paragraph(Element p, StringBuilder text, Around around) {
    WordText.ParagraphText found = story.words(p, around);
    Integer ordinal = story.ordinal(p, around);
    String words = CleanText.of(found.text().raw());
    story.report(found, ordinal, words, around);
    for (Hung hung : found.hung()) {
      // A comment belongs to its cell; the rest is read behind the table.
      if (hung.kind() == WordText.HungKind.COMMENT) remark(story.remark(hung, ordinal, around));
      else later.add(new Later(hung, ordinal, around));
    }
    WordNumbering.ListPlace place = numbering.place(Xml.child(p, "pPr"));
    String label = place == null ? "" : numbering.next(place);
    if (words.isEmpty()) return;
    if (text.length() > 0) text.append('\n');
    if (!label.isEmpty()) text.append(label).append(' ');
    text.append(words);
  }

  private void remark(String said) {
    if (said.isEmpty()) return;
    if (remark.length() > 0) remark.append('\n');
    remark.append(said);
  }
}
