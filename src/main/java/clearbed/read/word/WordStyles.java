package clearbed.read.word;

import clearbed.read.xml.Xml;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.w3c.dom.Element;

/** The styles of a Word document, with what they take over from the styles they are based on. */
final class WordStyles {
  private static final Pattern HEADING = Pattern.compile("heading ([1-9])");

  private final Map<String, Element> byId = new HashMap<>();
  private final Map<String, Boolean> known = new HashMap<>();
  private String defaultParagraph;

  /**
   * @param root of the styles part, or null
   */
  static WordStyles of(Element root) {
    WordStyles styles = new WordStyles();
    if (root == null) return styles;
    for (Element style : Xml.children(root, "style")) {
      String id = Xml.attribute(style, "styleId");
      if (id == null) continue;
      styles.byId.put(id, style);
      boolean paragraph = "paragraph".equals(Xml.attribute(style, "type"));
      String standard = Xml.attribute(style, "default");
      if (paragraph && ("1".equals(standard) || "true".equals(standard))) {
        styles.defaultParagraph = id;
      }
    }
    return styles;
  }

  /** Id of the style of a paragraph, or null. */
  String styleOf(Element paragraphProperties) {
    String own = Xml.val(paragraphProperties, "pStyle");
    return own != null && byId.containsKey(own) ? own : defaultParagraph;
  }

  /** The style and those it is based on, nearest first; a circle is cut. */
  List<Element> chain(String id) {
    List<Element> chain = new ArrayList<>();
    for (Element s = byId.get(id); s != null && !chain.contains(s); ) {
      chain.add(s);
      s = byId.get(Xml.val(s, "basedOn"));
    }
    return chain;
  }

  /** 1 to 9, or 0 for body text. */
  int headingLevel(Element paragraphProperties) {
    int own = Xml.val(paragraphProperties, "outlineLvl", -1);
    if (own >= 0) return own < 9 ? own + 1 : 0;
    for (Element style : chain(styleOf(paragraphProperties))) {
      int level = Xml.val(Xml.child(style, "pPr"), "outlineLvl", -1);
      if (level >= 0) return level < 9 ? level + 1 : 0;
      String name = Xml.val(style, "name");
      Matcher heading = HEADING.matcher(name == null ? "" : name.toLowerCase(Locale.ROOT));
      if (heading.matches()) return Integer.parseInt(heading.group(1));
    }
    return 0;
  }

  /** Whether a run is hidden from the reader: by itself, its style, or the paragraph's style. */
  boolean isHidden(Element runProperties, String paragraphStyle) {
    return is("vanish", runProperties, paragraphStyle);
  }

  /** Whether a line, or two, is drawn through a run. */
  boolean isStruck(Element runProperties, String paragraphStyle) {
    return is("strike", runProperties, paragraphStyle)
        || is("dstrike", runProperties, paragraphStyle);
  }

  private boolean is(String property, Element runProperties, String paragraphStyle) {
    Boolean own = Xml.flag(runProperties, property);
    if (own != null) return own;
    String character = Xml.val(runProperties, "rStyle");
    Boolean styled = character == null ? null : styled(property, character);
    if (styled == null) styled = styled(property, paragraphStyle);
    return styled != null && styled;
  }

  /** Null where neither the style nor those it is based on say anything. */
  private Boolean styled(String property, String id) {
    String key = property + " " + id;
    if (!known.containsKey(key)) known.put(key, flag(property, id));
    return known.get(key);
  }

  private Boolean flag(String property, String id) {
    for (Element style : chain(id)) {
      Boolean flag = Xml.flag(Xml.child(style, "rPr"), property);
      if (flag != null) return flag;
    }
    return null;
  }
}
