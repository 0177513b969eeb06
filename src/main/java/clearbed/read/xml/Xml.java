package clearbed.read.xml;

import java.util.ArrayList;
import java.util.List;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.xml.sax.Attributes;

/** Walks a tree by local names, so that every variant of a namespace reads alike. */
public final class Xml {
  private Xml() {}

  public static List<Element> children(Element parent) {
    List<Element> found = new ArrayList<>();
    for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element e) found.add(e);
    }
    return found;
  }

  public static List<Element> children(Element parent, String name) {
    List<Element> found = children(parent);
    found.removeIf(e -> !is(e, name));
    return found;
  }

  /** The first child of that name, or null; null for no parent. */
  public static Element child(Element parent, String name) {
    if (parent == null) return null;
    for (Node n = parent.getFirstChild(); n != null; n = n.getNextSibling()) {
      if (n instanceof Element e && is(e, name)) return e;
    }
    return null;
  }

  /** The element at the end of a path of first children, or null. */
  public static Element at(Element parent, String... path) {
    Element e = parent;
    for (String name : path) e = child(e, name);
    return e;
  }

  public static boolean is(Node node, String name) {
    return name.equals(node.getLocalName());
  }

  /** An attribute of the element's own namespace, or null; null for no element. */
  public static String attribute(Element e, String name) {
    if (e == null || !e.hasAttributeNS(e.getNamespaceURI(), name)) return null;
    return e.getAttributeNS(e.getNamespaceURI(), name);
  }

  /** The {@code val} of a child, or null. */
  public static String val(Element parent, String child) {
    return attribute(child(parent, child), "val");
  }

  public static int val(Element parent, String child, int otherwise) {
    return number(val(parent, child), otherwise);
  }

  public static int number(String digits, int otherwise) {
    try {
      return digits == null ? otherwise : Integer.parseInt(digits.trim());
    } catch (NumberFormatException e) {
      return otherwise;
    }
  }

  /** The same of a streamed element that is there, such as {@code <strike val="0"/>}. */
  public static boolean isOn(Attributes attributes) {
    String val = attributes.getValue("val");
    return val == null || !(val.equals("0") || val.equals("false") || val.equals("off"));
  }

  /** A switch such as {@code <w:vanish/>}: absent, on, or off. */
  public static Boolean flag(Element parent, String child) {
    Element e = child(parent, child);
    if (e == null) return null;
    String val = attribute(e, "val");
    return val == null || !(val.equals("0") || val.equals("false") || val.equals("off"));
  }
}
