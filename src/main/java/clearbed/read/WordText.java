package clearbed.read;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Gathers the words of Word paragraphs: tracked insertions and field results in, tracked deletions,
 * field codes and hidden text out. One for each story, since fields run on over paragraphs.
 */
final class WordText {
  private final WordStyles styles;

  /** For each open field, whether its code (not yet its result) is being passed. */
  private final Deque<Boolean> inCode = new ArrayDeque<>();

  private StringBuilder out;
  private boolean hidden;
  private List<Element> boxes;
  private List<String> notes;
  private boolean embedded;
  private String style;

  /**
   * What a paragraph holds.
   *
   * @param raw words as stored, to be cleaned
   * @param hidden true when hidden text was left out
   * @param boxes contents of text boxes anchored in it
   * @param notes ids of footnotes ({@code f1}) and endnotes ({@code e1}) it refers to
   * @param embedded true when a file of another program stands in it
   */
  record Words(
      String raw, boolean hidden, List<Element> boxes, List<String> notes, boolean embedded) {}

  WordText(WordStyles styles) {
    this.styles = styles;
  }

  Words of(Element paragraph) {
    out = new StringBuilder();
    hidden = false;
    boxes = new ArrayList<>();
    notes = new ArrayList<>();
    embedded = false;
    style = styles.styleOf(Xml.child(paragraph, "pPr"));
    inline(paragraph, false);
    return new Words(out.toString(), hidden, boxes, notes, embedded);
  }

  private void inline(Element parent, boolean placeholder) {
    for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element e)) continue;
      switch (e.getLocalName()) {
        case "r" -> run(e);
        case "del", "moveFrom", "pPr", "sdtPr", "sdtEndPr", "rPr" -> {}
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
    String words = out.substring(start).strip();
    if (words.startsWith("[") && words.endsWith("]")) return;
    out.setLength(start);
    out.append('[').append(words).append(']');
  }

  private void alternate(Element e) {
    Element choice = Xml.child(e, "Choice");
    Element taken = choice != null ? choice : Xml.child(e, "Fallback");
    if (taken == null) return;
    runContent(taken);
  }

  private void run(Element run) {
    if (styles.isHidden(Xml.child(run, "rPr"), style)) {
      hidden |= !run.getTextContent().isBlank();
      fieldMarksOnly(run);
      return;
    }
    runContent(run);
  }

  /** The codes of fields are often hidden; their ends must still be seen. */
  private void fieldMarksOnly(Element run) {
    for (Element e : Xml.children(run, "fldChar")) fieldMark(e);
  }

  private void runContent(Element run) {
    for (Node n = run.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element e)) continue;
      switch (e.getLocalName()) {
        case "t" -> append(e.getTextContent());
        case "tab", "ptab" -> append("\t");
        case "br" -> append(Xml.attribute(e, "type") == null ? "\n" : textWrapping(e));
        case "cr" -> append("\n");
        case "noBreakHyphen" -> append("-");
        case "sym" -> append(WordSymbols.of(Xml.attribute(e, "font"), Xml.attribute(e, "char")));
        case "fldChar" -> fieldMark(e);
        case "footnoteReference" -> notes.add("f" + Xml.attribute(e, "id"));
        case "endnoteReference" -> notes.add("e" + Xml.attribute(e, "id"));
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
    if (!inCode.contains(Boolean.TRUE)) out.append(words);
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
  }

  private void boxes(Element drawing) {
    for (Element e : Xml.children(drawing)) {
      if (Xml.is(e, "txbxContent")) boxes.add(e);
      else if (Xml.is(e, "AlternateContent")) {
        Element choice = Xml.child(e, "Choice");
        Element taken = choice != null ? choice : Xml.child(e, "Fallback");
        if (taken != null) boxes(taken);
      } else boxes(e);
    }
  }
}
