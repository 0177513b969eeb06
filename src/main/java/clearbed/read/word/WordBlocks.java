package clearbed.read.word;

import clearbed.base.Cancellation;
import clearbed.mark.OwnNotes;
import clearbed.model.document.Block;
import clearbed.model.document.Document.Gap;
import clearbed.model.document.Document.GapFate;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Paragraph.Region;
import clearbed.read.block.CleanText;
import clearbed.read.block.Gaps;
import clearbed.read.block.MarginText;
import clearbed.read.block.Mark;
import clearbed.read.block.Remarks;
import clearbed.read.word.WordText.Hung;
import clearbed.read.xml.Xml;
import java.util.ArrayList;
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
  private static final Around BODY = new Around(null, null, null, Region.BODY, Set.of());

  private final String document;
  private final WordStyles styles;
  private final WordNumbering numbering;
  private final WordAsides asides;
  private final List<Block> blocks = new ArrayList<>();
  private final Gaps gaps = new Gaps();
  private final Map<Element, Integer> ordinals = new IdentityHashMap<>();
  private final Set<String> marginTexts = new HashSet<>();
  private WordText wordText;

  /** Words left of a paragraph whose end was deleted: they run on into the next one. */
  private String carried = "";

  /** Number of the paragraph from which on words are passed over as a field's code. */
  private Integer withheldFrom;

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

  void add(Block block) {
    blocks.add(block);
  }

  /** The number of a paragraph, or of the one that its story hangs on. */
  Integer ordinal(Element paragraph, Around around) {
    return ordinals.getOrDefault(paragraph, around.anchor());
  }

  WordText.ParagraphText words(Element paragraph, Around around) {
    return wordText.of(paragraph, around.marks());
  }

  /** Words that were left for the next paragraph do not run on past the cell of a table. */
  void dropCarried() {
    carried = "";
  }

  List<Gap> gaps() {
    return gaps.list();
  }

  void body(Element body) {
    List<Element> paragraphs = WordParagraphs.in(body);
    for (int i = 0; i < paragraphs.size(); i++) ordinals.put(paragraphs.get(i), i + 1);
    story(body, BODY);
    endStory(BODY);
  }

  void looseComments() {
    for (Element comment : asides.looseComments()) hangComment(comment, null, BODY);
  }

  /** The words of a page header or footer, those of its tables too, each text once. */
  void margin(Element root, Region region) {
    String part = region == Region.HEADER ? "header" : "footer";
    int before = blocks.size();
    within(new Around(null, null, part, region, Set.of()), root);
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

  private void within(Around around, Element root) {
    WordText outerText = wordText;
    wordText = new WordText(styles);
    Integer outerFrom = withheldFrom;
    withheldFrom = null;
    story(root, around);
    endStory(around);
    withheldFrom = outerFrom;
    wordText = outerText;
  }

  /** A field that never ends takes the words behind its start for its code. */
  private void endStory(Around around) {
    if (wordText.isWithholding())
      gaps.add(
          origin(withheldFrom, null, around),
          "a field begins here and has no end; words behind its start are not read");
  }

  private void story(Element parent, Around around) {
    for (Element e : Xml.children(parent)) {
      Cancellation.check();
      switch (e.getLocalName()) {
        case "p" -> paragraph(e, around);
        case "tbl" -> new WordRows(this, numbering).read(e, around);
        case "sectPr", "sdtPr" -> {}
        case "AlternateContent" -> {
          Element choice = Xml.child(e, "Choice");
          if (choice != null) story(choice, around);
        }
        case "altChunk" -> gaps.add(origin(null, null, around), "a file inserted here is not read");
        default -> story(e, around.marked(WordText.change(e)));
      }
    }
  }

  private void paragraph(Element p, Around around) {
    Integer ordinal = ordinal(p, around);
    Element properties = Xml.child(p, "pPr");
    WordText.ParagraphText found = words(p, around);
    if (!wordText.isWithholding()) withheldFrom = null;
    else if (withheldFrom == null) withheldFrom = ordinal;
    String raw = carried + found.text().raw();
    String text = CleanText.of(raw);
    carried = "";
    report(found, ordinal, text, around);
    if (isEndDeleted(properties)) {
      carried = text.isEmpty() ? "" : raw;
    } else {
      add(properties, ordinal, text, found.text().isAll(Mark.HIDDEN), around);
    }
    for (Hung hung : found.hung()) hung(hung, ordinal, around);
  }

  private void add(
      Element properties, Integer ordinal, String text, boolean hidden, Around around) {
    WordNumbering.ListPlace place = numbering.place(properties);
    // A paragraph that is hidden as a whole shows no number; an empty one does.
    String label = place == null || hidden ? "" : numbering.next(place);
    if (text.isEmpty()) return;
    int level = place == null ? -1 : place.level();
    int heading = around.region() == Region.BODY ? styles.headingLevel(properties) : 0;
    Origin origin = origin(ordinal, text, around);
    blocks.add(new Paragraph(origin, label, heading, level, text, around.region()));
  }

  private static boolean isEndDeleted(Element properties) {
    Element mark = Xml.child(properties, "rPr");
    return Xml.child(mark, "del") != null || Xml.child(mark, "moveFrom") != null;
  }

  /** Tells what of a paragraph is not read, or not in force. */
  void report(WordText.ParagraphText found, Integer ordinal, String text, Around around) {
    Origin origin = origin(ordinal, text.isEmpty() ? null : text, around);
    if (found.embedded()) gaps.add(origin, "an object of another program is not read");
    gaps.add(origin, found.text());
  }

  void hung(Hung hung, Integer ordinal, Around at) {
    Element content = asides.take(hung);
    if (content == null) return;
    if (hung.kind() == WordText.HungKind.COMMENT) {
      hangComment(content, ordinal, at);
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
    within(new Around(ordinal, at.cell(), part, region, hung.marks()), content);
  }

  private void hangComment(Element comment, Integer ordinal, Around at) {
    Paragraph remark = remark(comment, ordinal, at);
    if (remark != null && at.cell() == null) blocks.add(remark);
  }

  /** What people say of a cell by this comment; empty when it is settled. */
  String remark(Hung comment, Integer ordinal, Around at) {
    Element content = asides.take(comment);
    Paragraph remark = content == null ? null : remark(content, ordinal, at);
    return remark == null ? "" : remark.text();
  }

  /**
   * A remark of a person: what it leaves open is open, what it says is no requirement.
   *
   * @return null when it is settled, or says nothing
   */
  private Paragraph remark(Element comment, Integer ordinal, Around at) {
    WordText plain = new WordText(styles);
    String said =
        WordParagraphs.in(comment).stream()
            .map(p -> CleanText.of(plain.of(p, Set.of()).text().raw()))
            .filter(words -> !words.isEmpty())
            .collect(Collectors.joining("\n"));
    // In a marked copy that came back the notes are ours, not people's.
    String text = OwnNotes.without(OwnNotes.signed(said, Xml.attribute(comment, "author")));
    if (text.isEmpty()) return null;
    Origin origin = new Origin(document, null, at.cell(), null, ordinal, null, text, "comment");
    boolean done = asides.isDone(comment);
    gaps.add(origin, Remarks.reason(Xml.attribute(comment, "author"), done), GapFate.PASSED_OVER);
    return done ? null : new Paragraph(origin, "", 0, -1, text, Region.COMMENT);
  }

  Origin origin(Integer ordinal, String text, Around around) {
    return new Origin(document, null, around.cell(), null, ordinal, null, text, around.part());
  }
}
