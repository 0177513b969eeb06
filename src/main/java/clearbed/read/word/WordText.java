package clearbed.read.word;

import clearbed.read.block.Mark;
import clearbed.read.block.MarkedText;
import clearbed.read.xml.Xml;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Gathers the words of Word paragraphs, field codes left out, with the marks that they bear. One
 * for each story, since fields run on over paragraphs.
 */
public final class WordText {
  private final WordStyles styles;

  /** For each open field, whether its code (not yet its result) is being passed. */
  private final Deque<Boolean> inCode = new ArrayDeque<>();

  /**
   * ParagraphText were passed over as the code of a field that has not come to its result or end.
   */
  private boolean withholding;

  private MarkedText out;
  private List<Hung> hung;
  private boolean embedded;
  private String style;

  /** Those of what is being read: of its run, its tracked change, its story. */
  private Set<Mark> marks = Set.of();

  /** What hangs on a place in the text and is told beside it. */
  enum HungKind {
    FOOTNOTE,
    ENDNOTE,
    COMMENT,
    TEXT_BOX
  }

  /**
   * A note, a comment or a text box.
   *
   * @param id of a note or comment; null for a text box
   * @param content of a text box; null for others
   * @param marks of the place it hangs on
   */
  record Hung(HungKind kind, String id, Element content, Set<Mark> marks) {}

  /**
   * What a paragraph holds.
   *
   * @param hung in the order of their places
   * @param embedded true when a file of another program stands in it
   */
  record ParagraphText(MarkedText text, List<Hung> hung, boolean embedded) {}

  WordText(WordStyles styles) {
    this.styles = styles;
  }

  /**
   * @param around marks of all that the paragraph stands in
   */
  ParagraphText of(Element paragraph, Set<Mark> around) {
    out = new MarkedText();
    hung = new ArrayList<>();
    embedded = false;
    marks = around;
    style = styles.styleOf(Xml.child(paragraph, "pPr"));
    inline(paragraph, false);
    return new ParagraphText(out, hung, embedded);
  }

  /** Whether words are passed over until a field, which may have none, comes to its result. */
  boolean isWithholding() {
    return withholding;
  }

  private void marked(Mark mark, Runnable reading) {
    Set<Mark> outer = marks;
    marks = with(marks, mark);
    reading.run();
    marks = outer;
  }

  public static Set<Mark> with(Set<Mark> marks, Mark more) {
    Set<Mark> all = EnumSet.of(more);
    all.addAll(marks);
    return all;
  }

  /** The mark that an element of tracked changes puts on its content, or null. */
  static Mark change(Element e) {
    return switch (e.getLocalName()) {
      case "del" -> Mark.DELETED;
      case "moveFrom" -> Mark.MOVED;
      case "ins", "moveTo" -> Mark.INSERTED;
      default -> null;
    };
  }

  private void inline(Element parent, boolean placeholder) {
    for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element e)) continue;
      switch (e.getLocalName()) {
        case "r" -> run(e);
        case "pPr", "sdtPr", "sdtEndPr", "rPr" -> {}
        case "del", "moveFrom", "ins", "moveTo" -> marked(change(e), () -> inline(e, placeholder));
        case "sdt" -> control(e);
        case "AlternateContent" -> alternate(e);
        case "ruby" -> inline(base(e), false);
        default -> {
          if (isMath(e) && Xml.is(e, "t")) append(e.getTextContent());
          else inline(e, placeholder);
        }
      }
    }
  }

  private static Element base(Element ruby) {
    Element base = Xml.child(ruby, "rubyBase");
    return base == null ? ruby : base;
  }

  private static boolean isMath(Element e) {
    return String.valueOf(e.getNamespaceURI()).endsWith("/math");
  }

  /** A control that still shows its prompt is a blank to be filled in: shown in brackets. */
  private void control(Element control) {
    Element content = Xml.child(control, "sdtContent");
    if (content == null) return;
    boolean prompt = Boolean.TRUE.equals(Xml.flag(Xml.child(control, "sdtPr"), "showingPlcHdr"));
    int start = out.length();
    inline(content, prompt);
    if (!prompt || out.length() == start) return;
    StringBuilder text = out.words();
    String words = text.substring(start).strip();
    if (words.startsWith("[") && words.endsWith("]")) return;
    text.setLength(start);
    text.append('[').append(words).append(']');
  }

  private void alternate(Element e) {
    Element choice = Xml.child(e, "Choice");
    Element taken = choice != null ? choice : Xml.child(e, "Fallback");
    if (taken == null) return;
    runContent(taken);
  }

  private void run(Element run) {
    Set<Mark> outer = marks;
    Element properties = Xml.child(run, "rPr");
    if (styles.isStruck(properties, style)) marks = with(marks, Mark.STRUCK);
    if (styles.isHidden(properties, style)) marks = with(marks, Mark.HIDDEN);
    runContent(run);
    marks = outer;
  }

  private void runContent(Element run) {
    for (Node n = run.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element e)) continue;
      switch (e.getLocalName()) {
        case "t", "delText" -> append(e.getTextContent());
        case "tab", "ptab" -> append("\t");
        case "br" -> append(Xml.attribute(e, "type") == null ? "\n" : textWrapping(e));
        case "cr" -> append("\n");
        case "noBreakHyphen" -> append("-");
        case "sym" -> append(WordSymbols.of(Xml.attribute(e, "font"), Xml.attribute(e, "char")));
        case "fldChar" -> fieldMark(e);
        case "footnoteReference" -> hang(HungKind.FOOTNOTE, e);
        case "endnoteReference" -> hang(HungKind.ENDNOTE, e);
        case "commentReference" -> hang(HungKind.COMMENT, e);
        case "drawing", "pict" -> boxes(e);
        case "object" -> {
          embedded = true;
          boxes(e);
        }
        case "AlternateContent" -> alternate(e);
        case "r" -> run(e);
        case "ruby" -> inline(base(e), false);
        default -> {}
      }
    }
  }

  private static String textWrapping(Element lineBreak) {
    return "textWrapping".equals(Xml.attribute(lineBreak, "type")) ? "\n" : "";
  }

  private void append(String words) {
    if (!inCode.contains(Boolean.TRUE)) out.append(words, marks);
    else withholding |= !words.isBlank();
  }

  private void hang(HungKind kind, Element reference) {
    hung.add(new Hung(kind, Xml.attribute(reference, "id"), null, marks));
  }

  private void fieldMark(Element mark) {
    switch (String.valueOf(Xml.attribute(mark, "fldCharType"))) {
      case "begin" -> inCode.push(Boolean.TRUE);
      case "separate" -> {
        if (inCode.poll() != null) inCode.push(Boolean.FALSE);
      }
      case "end" -> inCode.poll();
      default -> {}
    }
    withholding &= inCode.contains(Boolean.TRUE);
  }

  private void boxes(Element drawing) {
    for (Element e : Xml.children(drawing)) {
      if (Xml.is(e, "txbxContent")) hung.add(new Hung(HungKind.TEXT_BOX, null, e, marks));
      else if (Xml.is(e, "AlternateContent")) {
        Element choice = Xml.child(e, "Choice");
        Element taken = choice != null ? choice : Xml.child(e, "Fallback");
        if (taken != null) boxes(taken);
      } else boxes(e);
    }
  }
}
