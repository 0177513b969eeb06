package clearbed.recognise.schedule.cell;

import clearbed.recognise.text.Stems;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.ShortForms;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.tartarus.snowball.ext.EnglishStemmer;

/**
 * Terms of attributes in the short forms of cells: {@code WHT}, {@code GYP BD}, {@code CONC SLAB}.
 * A short form that might stand for two terms of its attribute stands for neither.
 */
public final class ShortTerms {
  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}']+");

  /** Longer cells are sentences, which are not written in short forms. */
  private static final int MOST_WORDS = 4;

  /** Nearly no word of a cell is a denial: the longer ones need no look. */
  private static final int LONGEST_DENIAL = 5;

  /** Shorter words may be written out and short for another. */
  private static final int SHORTEST_WHOLE = 5;

  private record TermPhrase(String term, List<String> words) {
    /** A short form of its first word begins as that does. */
    boolean mayBeAmong(long beginnings) {
      return (beginnings & 1L << words.get(0).charAt(0)) != 0;
    }
  }

  private final Map<String, List<TermPhrase>> byAttribute = new LinkedHashMap<>();

  /** Words that are written out somewhere, and are short for no other. */
  private final Set<String> whole = new HashSet<>();

  private final Vocabulary vocabulary;

  public ShortTerms(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    for (Attribute a : vocabulary.attributes()) {
      List<TermPhrase> phrases = new ArrayList<>();
      a.words()
          .terms()
          .forEach(
              (term, list) ->
                  list.plain().forEach(p -> phrases.add(new TermPhrase(term, split(p)))));
      if (!a.terms().isEmpty()) byAttribute.put(a.id(), phrases);
      for (TermPhrase phrase : phrases)
        for (String word : phrase.words()) if (word.length() >= SHORTEST_WHOLE) whole.add(word);
    }
  }

  private static List<String> split(String text) {
    List<String> out = new ArrayList<>();
    for (String word : BETWEEN.split(text.toLowerCase(Locale.ROOT)))
      if (!word.isEmpty()) out.add(word);
    return out;
  }

  /** Attributes whose terms a cell has, with the share of its letters that they make up. */
  Map<String, Double> terms(String text) {
    Map<String, Double> out = new LinkedHashMap<>();
    long letters = text.chars().filter(Character::isLetterOrDigit).count();
    if (letters == 0) return out;
    List<String> words = split(text);
    long beginnings = beginnings(words);
    for (String id : byAttribute.keySet()) {
      double share = (double) said(vocabulary.attribute(id).orElseThrow(), text) / letters;
      if (share == 0 && of(id, words, beginnings).isPresent()) share = 0.8;
      if (share > 0) out.put(id, share);
    }
    return out;
  }

  private long said(Attribute a, String text) {
    if (!a.words().anyTerm().mayBeIn(text)) return 0;
    BitSet said = new BitSet();
    for (Phrases phrases : a.words().terms().values()) {
      for (Phrases.Hit hit : phrases.all(text))
        if (!denies(text.substring(0, hit.start()))) said.set(hit.start(), hit.end());
    }
    return said.stream().filter(at -> Character.isLetterOrDigit(text.charAt(at))).count();
  }

  /** The one term of an attribute that a text has in a short form. */
  public Optional<String> of(String attribute, String text) {
    List<String> words = split(text);
    return of(attribute, words, beginnings(words));
  }

  /** The characters that words begin with, up to the first letter, a bit each. */
  private static long beginnings(List<String> words) {
    long out = 0;
    for (String word : words) {
      int at = 0;
      while (at < word.length() - 1 && !Character.isLetter(word.charAt(at)))
        out |= 1L << word.charAt(at++);
      out |= 1L << word.charAt(at);
    }
    return out;
  }

  private Optional<String> of(String attribute, List<String> words, long beginnings) {
    if (words.isEmpty() || words.size() > MOST_WORDS) return Optional.empty();
    Set<String> terms = new LinkedHashSet<>();
    double best = 0;
    for (TermPhrase phrase : byAttribute.getOrDefault(attribute, List.of())) {
      if (!phrase.mayBeAmong(beginnings)) continue;
      double quality = quality(words, phrase.words());
      if (quality == 0 || quality < best) continue;
      if (quality > best) terms.clear();
      best = quality;
      terms.add(phrase.term());
    }
    return terms.size() == 1 ? Optional.of(terms.iterator().next()) : Optional.empty();
  }

  /** "Not" of "not walked on". */
  private boolean denies(String before) {
    return !before.isEmpty()
        && vocabulary.list("negation.directly").endsAt(before, before.length());
  }

  /** True of a word that is written out somewhere; "paint" and "painted" are the same. */
  private boolean isAnother(String word, String meant) {
    if (word.equals(meant) || !whole.contains(word)) return false;
    EnglishStemmer stemmer = new EnglishStemmer();
    return !Stems.stem(stemmer, word).equals(Stems.stem(stemmer, meant));
  }

  /** Every word of the phrase stands there, in its order; a word beside it takes half away. */
  private double quality(List<String> words, List<String> phrase) {
    if (phrase.size() > words.size()) return 0;
    double sum = 0;
    int at = 0;
    for (String meant : phrase) {
      double found = 0;
      while (at < words.size() && found == 0) {
        String word = words.get(at++);
        boolean tooShort = word.length() < 3 && !word.equals(meant) && phrase.size() == 1;
        found = tooShort ? 0 : ShortForms.quality(word, meant);
        // Stems take long: only of the few words that might be short for this one.
        if (found > 0 && isAnother(word, meant)) found = 0;
        if (found == 0 && word.length() <= LONGEST_DENIAL && denies(word)) return 0;
      }
      if (found == 0) return 0;
      sum += found;
    }
    return sum / phrase.size() - 0.1 * (words.size() - phrase.size());
  }
}
