package clearbed.read.markup;

import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.xml.sax.Attributes;

/** Lines drawn through words by the styles of a web page (CSS Text Decoration, line-through). */
final class Striking {
  /** Under this name the class of an element comes through: one by its own says the region. */
  static final String CLASS = "data-class";

  private static final Pattern LINE =
      Pattern.compile("text-decoration(?:-line)?\\s*:[^;}]*line-through");
  private static final Pattern SHEET =
      Pattern.compile("<style\\b[^>]*>(.{0,200000}?)</style", Pattern.DOTALL);
  private static final Pattern RULE = Pattern.compile("([^{}]{1,500})\\{([^{}]*)\\}");
  private static final Pattern CLASS_AT_END =
      Pattern.compile("\\.([\\w-]+)\\s*(?:,|$)", Pattern.MULTILINE);

  private Striking() {}

  /** Classes that a style sheet within the page strikes through. */
  static Set<String> classes(byte[] page) {
    String text = new String(page, StandardCharsets.ISO_8859_1);
    Set<String> classes = new HashSet<>();
    if (!text.contains("line-through")) return classes;
    Matcher sheet = SHEET.matcher(text);
    while (sheet.find()) {
      Matcher rule = RULE.matcher(sheet.group(1));
      while (rule.find()) {
        if (!LINE.matcher(rule.group(2)).find()) continue;
        Matcher name = CLASS_AT_END.matcher(rule.group(1).strip());
        while (name.find()) classes.add(name.group(1));
      }
    }
    return classes;
  }

  /** Whether an element strikes its words through by a style of its own or by its class. */
  static boolean says(Attributes attributes, Set<String> struckClasses) {
    if (attributes.getLength() == 0) return false;
    String style = attributes.getValue("style");
    if (style != null && LINE.matcher(style.toLowerCase(Locale.ROOT)).find()) return true;
    if (struckClasses.isEmpty()) return false;
    String classes = attributes.getValue(CLASS);
    if (classes == null) classes = attributes.getValue("class");
    if (classes == null) return false;
    for (String name : classes.strip().split("\\s+")) if (struckClasses.contains(name)) return true;
    return false;
  }
}
