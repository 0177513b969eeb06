package clearbed.recognise.vocabulary;

import clearbed.base.Memo;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** The words of column headings: short forms spelt out, and headings known in any word order. */
public final class HeaderWords {
  private static final Pattern BETWEEN = Pattern.compile("[\\s/-]+");

  private static final Pattern BLANKS = Pattern.compile("\\s+");

  private static final Pattern PLURAL = Pattern.compile("(?<=\\w{3})s$");

  private final Map<String, String> longForms = new LinkedHashMap<>();
  private final Set<String> known = new TreeSet<>();

  /** By the short form; asked only when all words are known. */
  private final Memo<String, String> wholes = Memo.ofTexts();

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
      know(heading);
      Set<String> words = words(heading);
      // One word says too little out of its place.
      if (words.size() >= 2) byWords.putIfAbsent(words, attribute);
    }
  }

  /** Words that short forms may stand for. */
  void know(String heading) {
    for (String word : BETWEEN.split(heading.toLowerCase(Locale.ROOT)))
      if (word.length() > 2 && word.chars().allMatch(Character::isLetter)) known.add(word);
  }

  /**
   * The name with each short form replaced by the one word whose letters it has, in their order.
   *
   * @param name lower case, without full stops
   */
  public String byLetters(String name) {
    StringBuilder out = new StringBuilder();
    for (String word : BLANKS.split(name)) {
      if (out.length() > 0) out.append(' ');
      out.append(known.contains(word) ? word : wholes.get(word, () -> whole(word)));
    }
    return out.toString();
  }

  private String whole(String word) {
    String best = "";
    double most = 0;
    boolean several = false;
    for (String whole : known) {
      double quality = ShortForms.quality(word, whole);
      if (quality == 0 || quality < most) continue;
      boolean alike =
          quality == most && (whole.startsWith(stem(best)) || best.startsWith(stem(whole)));
      several = quality == most && (several || !alike);
      if (quality > most || alike && whole.length() < best.length()) best = whole;
      most = quality;
    }
    return most == 0 || several ? word : best;
  }

  /** "joint", "joints", "jointing". */
  private static String stem(String word) {
    return word.length() < 5 ? word : word.substring(0, Math.max(4, word.length() - 3));
  }

  /**
   * @param name lower case, without full stops
   */
  public String spelt(String name) {
    String out = " " + name + " ";
    for (Map.Entry<String, String> form : longForms.entrySet()) {
      if (out.contains(form.getKey())) out = out.replace(form.getKey(), form.getValue());
    }
    return BLANKS.matcher(out).replaceAll(" ").trim();
  }

  /** The attribute with a heading of exactly these words in any order, or null. */
  public Attribute inAnyOrder(String name, Phrases filler) {
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
