package clearbed.report.annotate.office;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * Finds words in a paragraph of a Word document, and cuts runs so that they begin and end with a
 * run. What a reader sees stays as it is.
 */
final class ParagraphWords {
  private final Element paragraph;
  private final List<Element> texts = new ArrayList<>();
  private final StringBuilder all = new StringBuilder();

  ParagraphWords(Element paragraph) {
    this.paragraph = paragraph;
    collect(paragraph);
  }

  /**
   * Children of the paragraph.
   *
   * @param first that holds the beginning of the words
   * @param last that holds their end
   */
  record NodeSpan(Node first, Node last) {}

  /** The words as part of the paragraph; null when they are not there, or are all of it. */
  NodeSpan find(String words) {
    String wanted = words.strip();
    if (wanted.isEmpty()) return null;
    int start = all.indexOf(wanted);
    if (start < 0) start = lower(all.toString()).indexOf(lower(wanted));
    if (start < 0 || all.toString().strip().length() <= wanted.length()) return null;
    int end = start + wanted.length();
    Node last = cut(end, false);
    Node first = cut(start, true);
    // A cut in one and the same run leaves the end in the later half.
    return new NodeSpan(first, following(first, last) ? last : first);
  }

  private static String lower(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  private void collect(Node node) {
    for (Node n = node.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element element)) continue;
      String name = element.getLocalName();
      if (name.equals("t") && element.getParentNode().getLocalName().equals("r")) {
        texts.add(element);
        all.append(words(element));
      } else if (name.equals("tab") || name.equals("br")) {
        gap();
      } else if (!name.equals("del") && !name.equals("txbxContent") && !name.equals("pPr")) {
        collect(element);
      }
    }
  }

  /** A tab or line break stands for a blank. */
  private void gap() {
    all.append(' ');
    texts.add(null);
  }

  /**
   * The child of the paragraph that begins, or ends, at an offset; runs that stand directly in the
   * paragraph are cut there.
   */
  private Node cut(int offset, boolean begins) {
    int at = 0;
    for (int i = 0; i < texts.size(); i++) {
      Element text = texts.get(i);
      int length = text == null ? 1 : words(text).length();
      boolean here = begins ? offset < at + length : offset <= at + length;
      if (here && text != null) return cut(text, offset - at, length, begins);
      at += length;
    }
    throw new IllegalStateException("the words were found and are gone");
  }

  private Node cut(Element text, int offset, int length, boolean begins) {
    Node run = text.getParentNode();
    boolean direct = run.getParentNode() == paragraph;
    boolean whole = begins ? offset == 0 && isFirst(text) : offset == length && isLast(text);
    if (!direct || whole) return top(run);
    Node later = run.cloneNode(true);
    Element twin = twin(text, run, later);
    String words = words(text);
    set(text, words.substring(0, offset));
    set(twin, words.substring(offset));
    removeSiblings(text, false);
    removeSiblings(twin, true);
    paragraph.insertBefore(later, run.getNextSibling());
    return begins ? later : run;
  }

  private Node top(Node node) {
    Node n = node;
    while (n.getParentNode() != paragraph) n = n.getParentNode();
    return n;
  }

  private static Element twin(Element text, Node run, Node copy) {
    Node there = run.getFirstChild();
    Node here = copy.getFirstChild();
    while (there != text) {
      there = there.getNextSibling();
      here = here.getNextSibling();
    }
    return (Element) here;
  }

  /** The library's nodes have no text content of their own. */
  private static String words(Element text) {
    StringBuilder words = new StringBuilder();
    for (Node n = text.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n.getNodeValue() != null) words.append(n.getNodeValue());
    }
    return words.toString();
  }

  private static void set(Element text, String words) {
    while (text.getFirstChild() != null) text.removeChild(text.getFirstChild());
    text.appendChild(text.getOwnerDocument().createTextNode(words));
    text.setAttributeNS("http://www.w3.org/XML/1998/namespace", "xml:space", "preserve");
  }

  /** Takes away what belongs to the other half of the run; its looks stay. */
  private static void removeSiblings(Element text, boolean before) {
    Node n = before ? text.getPreviousSibling() : text.getNextSibling();
    while (n != null) {
      Node next = before ? n.getPreviousSibling() : n.getNextSibling();
      if (!"rPr".equals(n.getLocalName())) n.getParentNode().removeChild(n);
      n = next;
    }
  }

  private static boolean isFirst(Element text) {
    for (Node n = text.getPreviousSibling(); n != null; n = n.getPreviousSibling()) {
      if (n instanceof Element && !"rPr".equals(n.getLocalName())) return false;
    }
    return true;
  }

  private static boolean isLast(Element text) {
    for (Node n = text.getNextSibling(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element) return false;
    }
    return true;
  }

  private static boolean following(Node first, Node last) {
    for (Node n = first; n != null; n = n.getNextSibling()) if (n == last) return true;
    return false;
  }
}
