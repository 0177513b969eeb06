package clearbed.recognise.vocabulary;

import clearbed.recognise.text.Stems;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.Together;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.tartarus.snowball.ext.EnglishStemmer;

/**
 * Which attributes the words of a text point to, whether or not it is understood. A word that few
 * attributes use points to them more than one that many use; of words that mean something only
 * together most have to be there.
 */
public final class Lexicon {
  /** A short form says less than the word: it may stand for another. */
  private static final double SHORT_FORM = 0.7;

  /** The words that an expression cannot do without are not all that it asks for. */
  private static final double OF_AN_EXPRESSION = 0.6;

  private static final int LONGEST_SHORT_FORM = 6;

  private static final Pattern SHORT = Pattern.compile("(?i)[a-z'][b-df-hj-np-tv-z']{1,5}");

  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}]+");

  /** Words of every kind of sentence, which point to nothing. */
  private static final Set<String> COMMON =
      Set.of(
          "the",
          "and",
          "for",
          "not",
          "with",
          "are",
          "has",
          "per",
          "all",
          "any",
          "its",
          "use",
          "who",
          "tile",
          "tiles",
          "glass",
          "one",
          "two",
          "may",
          "shall",
          "must",
          "will",
          "from",
          "that",
          "this",
          "type",
          "class",
          "than",
          "least",
          "less",
          "more",
          "minimum",
          "maximum",
          "required",
          "work",
          "before",
          "after",
          "until",
          "between",
          "over",
          "under",
          "into",
          "onto",
          "never",
          "each",
          "every",
          "other",
          "both",
          "only",
          "same",
          "when",
          "where",
          "without",
          "free",
          "product",
          "standard",
          "manufacturer",
          "provide",
          "install",
          "material",
          "surface",
          "area");

  /** Words whose letters make them look like short forms of others. */
  private static final Set<String> NOT_SHORT =
      Set.of(
          "as", "is", "it", "its", "if", "in", "on", "of", "or", "at", "an", "am", "us", "up", "ex",
          "off", "ask", "act", "add", "end", "well", "when", "such", "much", "both", "this", "that",
          "then", "than", "them", "with", "which", "most", "must", "last", "first", "next", "not",
          "but", "can", "has", "had", "was", "get", "got", "let", "set", "sit", "six", "ten");

  /** Stems that together point to an attribute, and how much each of them does. */
  private record Cue(
      String attribute, List<Set<String>> groups, double strength, Together.Set set) {
    Cue(String attribute, List<Set<String>> groups, double strength) {
      this(attribute, groups, strength, null);
    }
  }

  private final Map<String, Set<String>> attributesByStem = new HashMap<>();
  private final Map<String, List<Cue>> cuesByStem = new HashMap<>();
  private final Map<Character, Map<String, String>> words = new HashMap<>();
  private final double attributes;

  private final Set<String> commonStems = new HashSet<>();

  Lexicon(Vocabulary vocabulary) {
    EnglishStemmer stemmer = new EnglishStemmer();
    for (String word : COMMON) commonStems.add(Stems.stem(stemmer, word));
    attributes = Math.log(Math.max(2, vocabulary.attributes().size()));
    for (Attribute a : vocabulary.attributes()) {
      Attribute.Words w = a.words();
      w.headers().plain().forEach(phrase -> phrase(stemmer, phrase, a.id()));
      w.cues().plain().forEach(phrase -> phrase(stemmer, phrase, a.id()));
      w.cues().ofExpressions().forEach(word -> word(stemmer, word, a.id()));
      for (Together.Set set : w.together().sets()) together(stemmer, set, a.id());
    }
  }

  private void phrase(EnglishStemmer stemmer, String phrase, String attribute) {
    List<Set<String>> groups = new ArrayList<>();
    for (String word : split(phrase)) groups.add(Set.of(stem(stemmer, word, attribute)));
    if (!groups.isEmpty()) cue(new Cue(attribute, groups, 1));
  }

  private void word(EnglishStemmer stemmer, String word, String attribute) {
    for (String each : split(word))
      cue(new Cue(attribute, List.of(Set.of(stem(stemmer, each, attribute))), OF_AN_EXPRESSION));
  }

  private void together(EnglishStemmer stemmer, Together.Set set, String attribute) {
    List<Set<String>> groups = new ArrayList<>();
    for (Phrases group : set.groups()) {
      Set<String> stems = new HashSet<>();
      for (String words : Stream.concat(group.plain(), group.ofExpressions()).toList()) {
        List<String> each = new ArrayList<>();
        for (String word : split(words)) each.add(Stems.stem(stemmer, word));
        // "Safety glasses" are no glass.
        each.removeAll(commonStems);
        // Of "trowel line" neither word means by itself what both do; the last is nearer.
        if (!each.isEmpty()) stems.add(each.get(each.size() - 1));
      }
      if (!stems.isEmpty()) groups.add(stems);
    }
    if (groups.size() >= 2) cue(new Cue(attribute, groups, 1, set));
  }

  private String stem(EnglishStemmer stemmer, String word, String attribute) {
    String stem = Stems.stem(stemmer, word);
    attributesByStem.computeIfAbsent(stem, s -> new TreeSet<>()).add(attribute);
    words.computeIfAbsent(word.charAt(0), c -> new TreeMap<>()).put(word, stem);
    return stem;
  }

  private void cue(Cue cue) {
    for (Set<String> group : cue.groups())
      for (String stem : group) cuesByStem.computeIfAbsent(stem, s -> new ArrayList<>()).add(cue);
  }

  private static List<String> split(String phrase) {
    List<String> out = new ArrayList<>();
    for (String word : BETWEEN_WORDS.split(phrase.toLowerCase(Locale.ROOT))) {
      if (word.length() >= 3 && !COMMON.contains(word)) out.add(word);
    }
    return out;
  }

  /** Attributes by how much the words of a text point to them, from 0 to 1. */
  public Map<String, Double> pointedTo(String text) {
    Map<String, Double> said = said(Stems.of(text), true);
    return pointedTo(said, cue -> strength(cue, said, text));
  }

  /** The same of a heading, each of whose words is taken for itself. */
  Map<String, Double> pointedTo(List<Stems.Word> heading) {
    Map<String, Double> said = said(heading, false);
    return pointedTo(said, cue -> strength(cue, said));
  }

  private Map<String, Double> pointedTo(Map<String, Double> said, ToDoubleFunction<Cue> strength) {
    Map<String, Double> out = new LinkedHashMap<>();
    Set<Cue> seen = Collections.newSetFromMap(new IdentityHashMap<>());
    for (String stem : said.keySet()) {
      for (Cue cue : cuesByStem.getOrDefault(stem, List.of())) {
        if (seen.add(cue)) out.merge(cue.attribute(), strength.applyAsDouble(cue), Math::max);
      }
    }
    return out;
  }

  private Map<String, Double> said(List<Stems.Word> text, boolean shortForms) {
    Map<String, Double> said = new LinkedHashMap<>();
    for (Stems.Word word : text) {
      said.merge(word.stem(), 1.0, Math::max);
      boolean unknown = shortForms && !attributesByStem.containsKey(word.stem());
      if (unknown && mayBeShort(word.text()))
        longForms(word.text()).forEach(stem -> said.merge(stem, SHORT_FORM, Math::max));
    }
    return said;
  }

  /** Beside a membrane "waterproof" and "mesh" say nothing of the mounting. */
  private double strength(Cue cue, Map<String, Double> said, String text) {
    double strength = strength(cue, said);
    if (strength == 0 || cue.set() == null) return strength;
    String allowed = cue.set().allowed(text);
    if (allowed.length() == text.length()) return strength;
    return allowed.isEmpty() ? 0 : strength(cue, said(Stems.of(allowed), true));
  }

  private double strength(Cue cue, Map<String, Double> said) {
    double sum = 0;
    double all = 0;
    int missing = 0;
    for (Set<String> group : cue.groups()) {
      double own = cue.groups().size() > 1 && group.size() > 1 ? 1 : rarity(group);
      double best = 0;
      for (String stem : group) best = Math.max(best, said.getOrDefault(stem, 0.0));
      sum += own * best;
      all += own;
      if (best == 0) missing++;
    }
    boolean together = cue.groups().stream().anyMatch(g -> g.size() > 1);
    if (together && (missing > 1 || cue.groups().size() - missing < 2)) return 0;
    double share = all == 0 ? 0 : sum / all;
    double rare = together ? 1 : all / cue.groups().size();
    return cue.strength() * share * (0.4 + 0.6 * rare);
  }

  /** 1 for the word of one attribute, less the more use it. */
  private double rarity(Set<String> group) {
    double most = 0;
    for (String stem : group) {
      int uses = attributesByStem.getOrDefault(stem, Set.of("")).size();
      most = Math.max(most, 1 - Math.log(uses) / attributes);
    }
    return most;
  }

  private static boolean mayBeShort(String word) {
    return word.length() <= LONGEST_SHORT_FORM
        && SHORT.matcher(word).matches()
        && !NOT_SHORT.contains(word.toLowerCase(Locale.ROOT));
  }

  private Set<String> longForms(String word) {
    Set<String> stems = new TreeSet<>();
    words
        .getOrDefault(Character.toLowerCase(word.charAt(0)), Map.of())
        .forEach(
            (whole, stem) -> {
              if (Stems.abbreviates(word, whole)) stems.add(stem);
            });
    return stems;
  }
}
