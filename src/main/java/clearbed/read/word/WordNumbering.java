package clearbed.read.word;

import clearbed.read.block.CleanText;
import clearbed.read.block.NumberWords;
import clearbed.read.xml.Xml;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.w3c.dom.Element;

/**
 * Computes the numbers that Word shows before paragraphs. Paragraphs must be passed in document
 * order, since every number counts on from those before it.
 */
final class WordNumbering {
  private static final int LEVELS = 9;

  private final WordStyles styles;
  private final Map<String, Element> abstracts = new HashMap<>();
  private final Map<String, Element> instances = new HashMap<>();
  private final Map<String, String> byStyleLink = new HashMap<>();
  private final Map<String, Counter> counters = new HashMap<>();
  private final Set<String> restarted = new HashSet<>();

  /** Where in the numbering a paragraph stands. */
  record ListPlace(String instance, int level) {}

  private static final class Counter {
    final int[] count = new int[LEVELS];
    final boolean[] running = new boolean[LEVELS];
  }

  /**
   * @param root of the numbering part, or null
   */
  WordNumbering(Element root, WordStyles styles) {
    this.styles = styles;
    if (root == null) return;
    for (Element e : Xml.children(root, "abstractNum")) {
      String id = Xml.attribute(e, "abstractNumId");
      abstracts.put(id, e);
      String link = Xml.val(e, "styleLink");
      if (link != null) byStyleLink.put(link, id);
    }
    for (Element e : Xml.children(root, "num")) instances.put(Xml.attribute(e, "numId"), e);
  }

  /** The numbering of a paragraph, its own or its style's; null when it has none. */
  ListPlace place(Element properties) {
    Element own = Xml.child(properties, "numPr");
    String instance = Xml.val(own, "numId");
    int level = Xml.val(own, "ilvl", -1);
    if (instance == null) {
      for (Element style : styles.chain(styles.styleOf(properties))) {
        Element styled = Xml.at(style, "pPr", "numPr");
        if (styled == null) continue;
        if (level < 0) level = Xml.val(styled, "ilvl", -1);
        if (instance == null) instance = Xml.val(styled, "numId");
        if (level < 0 && instance != null) level = linkedLevel(instance, style);
        if (instance != null) break;
      }
    }
    if (instance == null || !instances.containsKey(instance)) return null;
    return new ListPlace(instance, Math.min(LEVELS - 1, Math.max(0, level)));
  }

  /** The level that names the style, for a style that names the numbering but no level. */
  private int linkedLevel(String instance, Element style) {
    Element definition = definition(instance);
    if (definition == null) return -1;
    String id = Xml.attribute(style, "styleId");
    for (Element level : Xml.children(definition, "lvl")) {
      if (id != null && id.equals(Xml.val(level, "pStyle"))) {
        return Xml.number(Xml.attribute(level, "ilvl"), -1);
      }
    }
    return -1;
  }

  /** Counts the paragraph and gives its label; empty when the level shows none. */
  String next(ListPlace place) {
    Element definition = definition(place.instance());
    if (definition == null) return "";
    String key = Xml.attribute(definition, "abstractNumId");
    Counter counter = counters.computeIfAbsent(key, k -> new Counter());
    count(counter, place);
    return label(counter, place);
  }

  private void count(Counter counter, ListPlace place) {
    int at = place.level();
    for (int i = 0; i < LEVELS; i++) {
      // An instance that overrides a start begins anew where it is first used.
      Integer start = startOverride(place.instance(), i);
      if (start != null && i >= at && restarted.add(place.instance() + ":" + i)) {
        counter.running[i] = false;
      }
    }
    counter.count[at] = counter.running[at] ? counter.count[at] + 1 : start(place.instance(), at);
    counter.running[at] = true;
    for (int deeper = at + 1; deeper < LEVELS; deeper++) {
      if (restartsAfter(place.instance(), deeper, at)) counter.running[deeper] = false;
    }
  }

  private boolean restartsAfter(String instance, int level, int used) {
    int restart = Xml.val(level(instance, level), "lvlRestart", -1);
    if (restart < 0) return true;
    return restart > 0 && used <= restart - 1;
  }

  private String label(Counter counter, ListPlace place) {
    Element level = level(place.instance(), place.level());
    String format = format(level);
    String text = Xml.val(level, "lvlText");
    if (text == null || format.equals("none") && !text.contains("%"))
      return text == null ? "" : text;
    if (format.equals("bullet")) return text.isBlank() ? "" : "\u2022";
    boolean legal = Boolean.TRUE.equals(Xml.flag(level, "isLgl"));
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      int digit = c == '%' && i + 1 < text.length() ? text.charAt(i + 1) - '1' : -1;
      if (digit >= 0 && digit < LEVELS) {
        out.append(number(counter, place.instance(), digit, legal));
        i++;
      } else {
        out.append(c);
      }
    }
    return CleanText.line(out.toString());
  }

  private String number(Counter counter, String instance, int level, boolean legal) {
    int value = counter.running[level] ? counter.count[level] : start(instance, level);
    String format = format(level(instance, level));
    return NumberWords.of(value, legal && !format.equals("none") ? "decimal" : format);
  }

  private static String format(Element level) {
    Element format = Xml.child(level, "numFmt");
    if (format == null) {
      // Newer formats come wrapped, with an older one to fall back on.
      format = Xml.at(level, "AlternateContent", "Fallback", "numFmt");
    }
    String val = Xml.attribute(format, "val");
    return val == null ? "decimal" : val;
  }

  private int start(String instance, int level) {
    Integer override = startOverride(instance, level);
    return override != null ? override : Xml.val(level(instance, level), "start", 0);
  }

  private Integer startOverride(String instance, int level) {
    String val = Xml.val(override(instance, level), "startOverride");
    return val == null ? null : Integer.valueOf(Xml.number(val, 1));
  }

  private Element override(String instance, int level) {
    for (Element e : Xml.children(instances.get(instance), "lvlOverride")) {
      if (Xml.number(Xml.attribute(e, "ilvl"), -1) == level) return e;
    }
    return null;
  }

  private Element level(String instance, int level) {
    Element own = Xml.child(override(instance, level), "lvl");
    if (own != null) return own;
    Element definition = definition(instance);
    if (definition == null) return null;
    for (Element e : Xml.children(definition, "lvl")) {
      if (Xml.number(Xml.attribute(e, "ilvl"), -1) == level) return e;
    }
    return null;
  }

  /** The abstract numbering behind an instance, by way of a list style where one is named. */
  private Element definition(String instance) {
    Element num = instances.get(instance);
    Element definition = num == null ? null : abstracts.get(Xml.val(num, "abstractNumId"));
    String link = Xml.val(definition, "numStyleLink");
    if (link == null) return definition;
    Element linked = abstracts.get(byStyleLink.get(link));
    return linked == null ? definition : linked;
  }
}
