package clearbed.read.xml;

import java.util.HashMap;
import java.util.Map;
import org.xml.sax.Attributes;
import org.xml.sax.helpers.DefaultHandler;

/** What the styles of an OpenDocument file say of words beyond the words. */
public final class OdfStyles extends DefaultHandler {
  /** A chain of styles that is longer is a circle. */
  private static final int DEEPEST = 50;

  private final Map<String, Style> styles = new HashMap<>();
  private Style open;

  private static final class Style {
    private final String parent;
    private Boolean struck;
    private Boolean hidden;

    Style(String parent) {
      this.parent = parent;
    }
  }

  /** Takes note of the element if it is of a style; others are passed over. */
  public void start(String name, Attributes attributes) {
    switch (name) {
      case "style" -> {
        String family = value(attributes, "family");
        String parent = value(attributes, "parent-style-name");
        open = new Style(parent == null ? null : key(family, parent));
        styles.put(key(family, value(attributes, "name")), open);
      }
      case "text-properties" -> {
        if (open != null) text(open, attributes);
      }
      case "table-properties" -> {
        if (open != null && "false".equals(value(attributes, "display"))) open.hidden = true;
      }
      default -> {}
    }
  }

  private static void text(Style style, Attributes attributes) {
    String line = value(attributes, "text-line-through-style");
    if (line == null) line = value(attributes, "text-line-through-type");
    if (line != null) style.struck = !line.equals("none");
    String display = value(attributes, "display");
    if (display != null) style.hidden = display.equals("none");
  }

  public void end(String name) {
    if (name.equals("style")) open = null;
  }

  @Override
  public void startElement(String uri, String name, String qName, Attributes attributes) {
    start(name, attributes);
  }

  @Override
  public void endElement(String uri, String name, String qName) {
    end(name);
  }

  /** Whether a line is drawn through words of a style; null where none of its styles says. */
  public Boolean isStruck(String family, String name) {
    Style style = style(family, name);
    for (int i = 0; style != null && i < DEEPEST; i++) {
      if (style.struck != null) return style.struck;
      style = style.parent == null ? null : styles.get(style.parent);
    }
    return null;
  }

  /** Whether what bears the style does not show. */
  public boolean isUnseen(String family, String name) {
    Style style = style(family, name);
    for (int i = 0; style != null && i < DEEPEST; i++) {
      if (style.hidden != null) return style.hidden;
      style = style.parent == null ? null : styles.get(style.parent);
    }
    return false;
  }

  private Style style(String family, String name) {
    return name == null ? null : styles.get(key(family, name));
  }

  private static String key(String family, String name) {
    return family + ' ' + name;
  }

  /** An attribute by its local name, of whichever namespace. */
  public static String value(Attributes attributes, String name) {
    for (int i = 0; i < attributes.getLength(); i++) {
      if (attributes.getLocalName(i).equals(name)) return attributes.getValue(i);
    }
    return null;
  }
}
