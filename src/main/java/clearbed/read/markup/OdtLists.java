package clearbed.read.markup;

import clearbed.read.block.NumberWords;
import clearbed.read.xml.OdfStyles;
import clearbed.read.xml.Xml;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import org.xml.sax.Attributes;

/** Counts the items of the lists of an OpenDocument text. */
final class OdtLists {
  private static final String BULLET = "\u2022";

  private final Map<String, LevelStyle> levels = new HashMap<>();

  /** How far each list came, for those that count on. */
  private final Map<String, Integer> reached = new HashMap<>();

  private final Deque<OpenList> open = new ArrayDeque<>();
  private String defining = "";

  private record LevelStyle(String prefix, String format, String suffix, int start) {}

  private static final class OpenList {
    private final String style;
    private final int depth;
    private int next;

    OpenList(String style, int depth, int next) {
      this.style = style;
      this.depth = depth;
      this.next = next;
    }
  }

  void start(String name, Attributes attributes) {
    switch (name) {
      case "list-style" -> defining = String.valueOf(OdfStyles.value(attributes, "name"));
      case "list-level-style-number" -> define(attributes);
      case "list" -> startList(attributes);
      case "list-item" -> {
        String own = OdfStyles.value(attributes, "start-value");
        if (own != null && !open.isEmpty()) open.peek().next = Xml.number(own, open.peek().next);
      }
      default -> {}
    }
  }

  private void define(Attributes attributes) {
    String key = defining + " " + OdfStyles.value(attributes, "level");
    levels.put(
        key,
        new LevelStyle(
            text(attributes, "num-prefix"),
            text(attributes, "num-format"),
            text(attributes, "num-suffix"),
            Xml.number(OdfStyles.value(attributes, "start-value"), 1)));
  }

  private static String text(Attributes attributes, String name) {
    String value = OdfStyles.value(attributes, name);
    return value == null ? "" : value;
  }

  private void startList(Attributes attributes) {
    String style = OdfStyles.value(attributes, "style-name");
    if (style == null) style = open.isEmpty() ? "" : open.peek().style;
    int depth = open.size() + 1;
    LevelStyle level = levels.get(style + " " + depth);
    boolean goesOn = "true".equals(OdfStyles.value(attributes, "continue-numbering"));
    int first = level == null ? 1 : level.start();
    if (goesOn) first = reached.getOrDefault(style + " " + depth, first);
    open.push(new OpenList(style, depth, first));
  }

  void end(String name) {
    if (!name.equals("list") || open.isEmpty()) return;
    OpenList list = open.pop();
    reached.put(list.style + " " + list.depth, list.next);
  }

  /** What stands before the next item of the list that is open. */
  String label() {
    if (open.isEmpty()) return BULLET;
    OpenList list = open.peek();
    LevelStyle level = levels.get(list.style + " " + list.depth);
    if (level == null || level.format().isEmpty()) return BULLET;
    return level.prefix() + NumberWords.of(list.next++, format(level)) + level.suffix();
  }

  private static String format(LevelStyle level) {
    return switch (level.format()) {
      case "A" -> "upperLetter";
      case "a" -> "lowerLetter";
      case "I" -> "upperRoman";
      case "i" -> "lowerRoman";
      default -> "decimal";
    };
  }
}
