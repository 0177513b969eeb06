package clearbed.report.annotate.office;

import clearbed.report.annotate.note.FindingNote;
import java.math.BigInteger;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.GregorianCalendar;
import org.apache.poi.xwpf.usermodel.XWPFComment;
import org.apache.poi.xwpf.usermodel.XWPFComments;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTComment;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/** Adds comments to a Word document (ECMA-376 part 1, 17.13.4). */
final class WordComments {
  private static final String INITIALS = "C";

  private final XWPFComments comments;
  private final GregorianCalendar date;
  private BigInteger next = BigInteger.ZERO;

  WordComments(XWPFDocument word, Instant date) {
    XWPFComments there = word.getDocComments();
    this.comments = there == null ? word.createComments() : there;
    this.date = GregorianCalendar.from(ZonedDateTime.ofInstant(date, ZoneOffset.UTC));
    for (CTComment comment : comments.getCtComments().getCommentList()) {
      next = next.max(comment.getId().add(BigInteger.ONE));
    }
  }

  /** Puts a comment over the words of the note, or over the paragraph that they make up. */
  void add(XWPFParagraph paragraph, FindingNote note) {
    XWPFComment comment = comments.createComment(next);
    comment.setAuthor(FindingNote.AUTHOR);
    comment.setInitials(INITIALS);
    comment.setDate(date);
    line(comment, note.heading(), true);
    for (String words : note.body()) line(comment, words, false);
    anchor((Element) paragraph.getCTP().getDomNode(), next.toString(), note);
    next = next.add(BigInteger.ONE);
  }

  private static void line(XWPFComment comment, String words, boolean bold) {
    XWPFRun run = comment.createParagraph().createRun();
    if (bold) run.setBold(true);
    String[] lines = words.split("\n", -1);
    for (int i = 0; i < lines.length; i++) {
      if (i > 0) run.addBreak();
      run.setText(lines[i]);
    }
  }

  /**
   * The range lies over the words where they are a part of the paragraph, else over all of it.
   * Nothing is moved.
   */
  private static void anchor(Element paragraph, String id, FindingNote note) {
    ParagraphWords.NodeSpan span = span(paragraph, note);
    Node first = span == null ? firstContent(paragraph) : span.first();
    Node after = span == null ? null : span.last().getNextSibling();
    paragraph.insertBefore(made(paragraph, "commentRangeStart", id), first);
    paragraph.insertBefore(made(paragraph, "commentRangeEnd", id), after);
    Element run = made(paragraph, "r", null);
    run.appendChild(made(paragraph, "commentReference", id));
    paragraph.insertBefore(run, after);
  }

  private static ParagraphWords.NodeSpan span(Element paragraph, FindingNote note) {
    for (String words : note.words()) {
      ParagraphWords.NodeSpan span = new ParagraphWords(paragraph).find(words);
      if (span != null) return span;
    }
    return null;
  }

  private static Node firstContent(Element paragraph) {
    Node first = paragraph.getFirstChild();
    while (first != null && !isContent(first)) first = first.getNextSibling();
    return first;
  }

  private static boolean isContent(Node node) {
    return node instanceof Element && !node.getLocalName().equals("pPr");
  }

  private static Element made(Element paragraph, String name, String id) {
    Document document = paragraph.getOwnerDocument();
    String namespace = paragraph.getNamespaceURI();
    String prefix = paragraph.getPrefix() == null ? "" : paragraph.getPrefix() + ":";
    Element element = document.createElementNS(namespace, prefix + name);
    // Attributes take no default namespace (ECMA-376 qualifies them).
    String own = prefix.isEmpty() ? "w:" : prefix;
    if (id != null) element.setAttributeNS(namespace, own + "id", id);
    return element;
  }
}
