package clearbed.read.word;

import clearbed.read.xml.OfficePackage;
import clearbed.read.xml.Xml;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.poi.openxml4j.exceptions.OpenXML4JException;
import org.apache.poi.openxml4j.opc.PackagePart;
import org.w3c.dom.Element;
import org.xml.sax.SAXException;

/** Footnotes, endnotes and comments of a Word document, each to be taken once, by its id. */
final class WordAsides {
  private final Map<String, Element> footnotes = new LinkedHashMap<>();
  private final Map<String, Element> endnotes = new LinkedHashMap<>();
  private final Map<String, Element> comments = new LinkedHashMap<>();

  /** Ids of paragraphs that end comments which are marked as done. */
  private final Set<String> done = new HashSet<>();

  static WordAsides of(OfficePackage parts, PackagePart main)
      throws IOException, SAXException, OpenXML4JException {
    WordAsides asides = new WordAsides();
    collect(parts.first(main, "footnotes"), "footnote", asides.footnotes);
    collect(parts.first(main, "endnotes"), "endnote", asides.endnotes);
    collect(parts.first(main, "comments"), "comment", asides.comments);
    PackagePart threads = parts.first(main, "commentsExtended");
    if (threads == null) return asides;
    for (Element e : Xml.children(OfficePackage.tree(threads), "commentEx")) {
      if ("1".equals(Xml.attribute(e, "done"))) asides.done.add(Xml.attribute(e, "paraId"));
    }
    return asides;
  }

  private static void collect(PackagePart part, String name, Map<String, Element> into)
      throws IOException, SAXException {
    if (part == null) return;
    for (Element e : Xml.children(OfficePackage.tree(part), name)) {
      into.put(Xml.attribute(e, "id"), e);
    }
  }

  /** Null when there is none, or it was taken before. */
  Element take(WordText.Hung hung) {
    return switch (hung.kind()) {
      case FOOTNOTE -> footnotes.remove(hung.id());
      case ENDNOTE -> endnotes.remove(hung.id());
      case COMMENT -> comments.remove(hung.id());
      case TEXT_BOX -> hung.content();
    };
  }

  /** Comments that nothing in the text refers to. */
  List<Element> looseComments() {
    List<Element> loose = new ArrayList<>(comments.values());
    comments.clear();
    return loose;
  }

  /** True for a comment that somebody marked as settled. */
  boolean isDone(Element comment) {
    return WordParagraphs.in(comment).stream().anyMatch(p -> done.contains(paragraphId(p)));
  }

  /** The id is of a younger namespace than the paragraph. */
  private static String paragraphId(Element paragraph) {
    for (int i = 0; i < paragraph.getAttributes().getLength(); i++) {
      if (Xml.is(paragraph.getAttributes().item(i), "paraId")) {
        return paragraph.getAttributes().item(i).getNodeValue();
      }
    }
    return null;
  }
}
