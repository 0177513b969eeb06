package clearbed.recognise;

import clearbed.base.config.ConfigNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** The words of column headings: short forms spelt out, and headings known in any word order. */
final class HeaderWords {
  private static final Pattern BETWEEN = Pattern.compile("[\\s/-]+");

  private static final Pattern BLANKS = Pattern.compile("\\s+");

  private static final Pattern PLURAL = Pattern.compile("(?<=\\w{3})s$");

  private final Map<String, String> longForms = new LinkedHashMap<>();
  private final Map<Set<String>, Attribute> byWords = new LinkedHashMap<>();

  /**
   * @param abbreviations short form to long form
   */
  HeaderWords(ConfigNode abbreviations) {
    for (ConfigNode form : abbreviations.entries())
      longForms.put(" " + form.key() + " ", " " + form.text() + " ");
  }

  /**
   * @param headings as written
   */
  void add(Attribute attribute, List<String> headings) {
    for (String heading : headings) {
      Set<String> words = words(heading);
      // One word says too little out of its place.
      if (words.size() >= 2) byWords.putIfAbsent(words, attribute);
    }
  }

  /**
   * @param name lower case, without full stops
   */
  String spelt(String name) {
    String out = " " + name + " ";
    for (Map.Entry<String, String> form : longForms.entrySet()) {
      if (out.contains(form.getKey())) out = out.replace(form.getKey(), form.getValue());
    }
    return BLANKS.matcher(out).replaceAll(" ").trim();
  }

  /** The attribute with a heading of exactly these words in any order, or null. */
  Attribute inAnyOrder(String name, Phrases filler) {
    Set<String> words = words(name);
    Attribute exact = byWords.get(words);
    if (exact != null) return exact;
    words.removeIf(filler::matches);
    return byWords.get(words);
  }

  private static Set<String> words(String heading) {
    Set<String> words = new TreeSet<>();
    for (String word : BETWEEN.split(heading.toLowerCase(Locale.ROOT).trim())) {
      if (!word.isEmpty() && !word.equals("of")) words.add(PLURAL.matcher(word).replaceAll(""));
    }
    return words;
  }
}
