package clearbed.mark;

import java.io.StringReader;
import java.util.HashMap;
import java.util.Map;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Walks the elements of a small XML text by local names; entities and document types are off. */
final class XmlElements {
  private XmlElements() {}

  @FunctionalInterface
  interface ElementVisitor {
    /**
     * @param text between the start of the element and what comes next
     */
    void element(String name, Map<String, String> attributes, String text);
  }

  /** Ends early, without a word, where the text is no XML: then nothing in it is ours. */
  static void each(String xml, ElementVisitor visitor) {
    XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    try {
      XMLStreamReader in = factory.createXMLStreamReader(new StringReader(xml));
      while (in.hasNext()) {
        if (in.next() == XMLStreamConstants.START_ELEMENT) visit(in, visitor);
      }
    } catch (XMLStreamException damaged) {
      // A reader of the format says so.
    }
  }

  private static void visit(XMLStreamReader in, ElementVisitor visitor) throws XMLStreamException {
    String name = in.getLocalName();
    Map<String, String> attributes = new HashMap<>();
    for (int i = 0; i < in.getAttributeCount(); i++) {
      attributes.put(in.getAttributeLocalName(i), in.getAttributeValue(i));
    }
    // An element within is visited by the loop once this one's own words are passed.
    String text = "";
    int event = in.next();
    if (event == XMLStreamConstants.CHARACTERS) text = in.getText();
    visitor.element(name, attributes, text);
    if (event == XMLStreamConstants.START_ELEMENT) visit(in, visitor);
  }
}
