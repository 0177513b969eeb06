package clearbed.read.word;

import clearbed.model.document.Origin;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.xmlbeans.XmlBeans;
import org.openxmlformats.schemas.wordprocessingml.x2006.main.CTP;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * The paragraphs of a Word document as {@link Origin#paragraph()} counts them: every paragraph of
 * the body in document order from 1, those in table cells, content controls and tracked changes
 * too, empty ones too; not those in text boxes, notes, headers and footers.
 */
public final class WordParagraphs {
  private WordParagraphs() {}

  /** The paragraphs of the body; the one numbered n stands at n - 1. */
  public static List<XWPFParagraph> of(XWPFDocument document) {
    List<XWPFParagraph> paragraphs = new ArrayList<>();
    for (Element e : in((Element) document.getDocument().getBody().getDomNode())) {
      paragraphs.add(paragraph(document, e));
    }
    return paragraphs;
  }

  /**
   * The paragraph at an origin that reading gave: for a table cell its first paragraph. Empty when
   * the document has no such place.
   */
  public static Optional<XWPFParagraph> at(XWPFDocument document, Origin origin) {
    if (origin.paragraph() == null) return Optional.empty();
    List<Element> all = in((Element) document.getDocument().getBody().getDomNode());
    int index = origin.paragraph() - 1;
    if (index < 0 || index >= all.size()) return Optional.empty();
    Element found = all.get(index);
    if (origin.cell() != null) {
      Element table = WordTable.around(found);
      Element cell = table == null ? null : WordTable.cell(table, origin.cell());
      if (cell != null) found = ownParagraphs(cell).stream().findFirst().orElse(found);
    }
    return Optional.of(paragraph(document, found));
  }

  private static XWPFParagraph paragraph(XWPFDocument document, Element element) {
    return new XWPFParagraph((CTP) XmlBeans.nodeToXmlObject(element), document);
  }

  /** Every paragraph element under a story's root, in document order. */
  static List<Element> in(Element root) {
    List<Element> found = new ArrayList<>();
    collect(root, true, found);
    return found;
  }

  /** Paragraph elements that stand in a cell or table itself, not in a table nested in it. */
  static List<Element> ownParagraphs(Element root) {
    List<Element> found = new ArrayList<>();
    collect(root, false, found);
    return found;
  }

  private static void collect(Element parent, boolean intoTables, List<Element> found) {
    for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (!(n instanceof Element e)) continue;
      switch (e.getLocalName()) {
        case "p" -> found.add(e);
        case "tbl" -> {
          if (intoTables) collect(e, true, found);
        }
        case "Fallback", "sectPr", "tblPr", "tblGrid", "trPr", "tcPr", "sdtPr" -> {}
        default -> collect(e, intoTables, found);
      }
    }
  }
}
