package clearbed.recognise.vocabulary.phrase;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;
import java.util.stream.Stream;

/** A list of phrases of the vocabulary, ready to be looked for. */
public final class Phrases {

  /** A phrase found. */
  public record Hit(int start, int end) {
    public int distanceTo(int from, int to) {
      return start >= to ? start - to : Math.max(0, from - end);
    }
  }

  // Written [^.;] in the vocabulary, for "still the same sentence": the point of A118.15 ends none.
  private static final String WITHIN_SENTENCE = "[^.;]";

  /** How far a phrase that is to stand at a place may reach from it, in characters. */
  private static final int REACH = 120;

  private static final List<Hit> NONE = List.of();
  private static final String BREAK = "[\\s-]+";
  private static final Pattern BREAKS = Pattern.compile(BREAK);
  private static final String NO_STOP = "(?:[^;](?<!\\.(?!\\w)))";

  /**
   * @param needed numbers of words one of which is in every text that has the phrase; empty when
   *     that is not known
   * @param start of every text that is the phrase, in any case
   */
  private record Phrase(
      Expression expression, int[] needed, String start, int length, List<String> named) {
    Pattern pattern() {
      return expression.pattern();
    }

    boolean mayBeIn(WordsHeld.Text text) {
      for (int word : needed) {
        if (text.holds(word)) return true;
      }
      return needed.length == 0;
    }
  }

  /** Compiled when it is first asked for: of thousands of words a run asks for a few. */
  private static final class Expression {
    private final String written;
    private volatile Pattern pattern;

    Expression(String written) {
      this.written = written;
    }

    Pattern pattern() {
      if (pattern == null) pattern = Pattern.compile(written, Pattern.CASE_INSENSITIVE);
      return pattern;
    }
  }

  private final Phrase[] phrases;
  private final WordsHeld words;

  /** The words of all phrases; null when some phrase is to be looked for in every text. */
  private final WordsHeld.Some some;

  /** The first characters of texts that may be one of the phrases, a bit each. */
  private final long starts;

  /**
   * @param written words, beginnings of words with a star behind them, or regular expressions
   *     between slashes
   * @param words shared by the phrases that are looked for in the same texts
   */
  public Phrases(List<String> written, WordsHeld words) {
    this(words, new ArrayList<>(written.stream().map(phrase -> compile(phrase, words)).toList()));
  }

  private Phrases(WordsHeld words, List<Phrase> compiled) {
    compiled.sort(Comparator.comparingInt(Phrase::length).reversed());
    phrases = compiled.toArray(Phrase[]::new);
    this.words = words;
    this.some =
        compiled.stream().anyMatch(p -> p.needed.length == 0)
            ? null
            : new WordsHeld.Some(compiled.stream().flatMapToInt(p -> Arrays.stream(p.needed)));
    long first = 0;
    for (Phrase p : phrases) first |= p.start().isEmpty() ? -1 : bit(p.start().charAt(0));
    starts = first;
  }

  /** The phrases of a list of the vocabulary. */
  public static Phrases of(ConfigNode list, WordsHeld words) throws ConfigException {
    List<Phrase> compiled = new ArrayList<>();
    for (ConfigNode item : list.items()) {
      try {
        compiled.add(compile(item.text(), words));
      } catch (PatternSyntaxException e) {
        throw item.fault("not a regular expression: " + e.getDescription() + ": " + item.text());
      }
    }
    return new Phrases(words, compiled);
  }

  private static long bit(char c) {
    return 1L << Character.toLowerCase(Character.toUpperCase(c));
  }

  /** The phrases of several that are looked for in the same texts. */
  public static Phrases ofAll(Collection<Phrases> several, WordsHeld words) {
    List<Phrase> all = new ArrayList<>();
    for (Phrases each : several) all.addAll(List.of(each.phrases));
    return new Phrases(words, all);
  }

  /** The phrases of both. */
  public Phrases and(Phrases other) {
    return ofAll(List.of(this, other), words);
  }

  /** These and others, as written; itself where there are none. */
  public Phrases and(List<String> written, WordsHeld words) {
    return written.isEmpty() ? this : and(new Phrases(written, words));
  }

  /** The words that the phrases are made of; of an expression those that it cannot do without. */
  public Stream<String> words() {
    return Arrays.stream(phrases).flatMap(phrase -> phrase.named().stream());
  }

  /** The phrases that are words, and beginnings of words, as written. */
  public Stream<String> plain() {
    return Arrays.stream(phrases)
        .filter(phrase -> !phrase.start().isEmpty())
        .map(phrase -> String.join(" ", phrase.named()));
  }

  /** Of the expressions the words that they cannot do without. */
  public Stream<String> ofExpressions() {
    return Arrays.stream(phrases)
        .filter(phrase -> phrase.start().isEmpty())
        .flatMap(phrase -> phrase.named().stream());
  }

  public boolean isEmpty() {
    return phrases.length == 0;
  }

  /**
   * @param text in plain form
   */
  public boolean in(String text) {
    return first(text) != null;
  }

  /** False where no phrase is in the text, nor in any that it is a part of by whole words. */
  public boolean mayBeIn(String text) {
    return some == null || words.in(text).holdsAny(some);
  }

  public boolean mayBeIn(WordsHeld.Text text) {
    return some == null || text.holdsAny(some);
  }

  /** The leftmost hit, or null. */
  public Hit first(String text) {
    Hit first = null;
    WordsHeld.Text held = words.in(text);
    if (some != null && !held.holdsAny(some)) return null;
    for (Phrase phrase : phrases) {
      if (!phrase.mayBeIn(held)) continue;
      Matcher m = phrase.pattern().matcher(text);
      if (m.find() && (first == null || m.start() < first.start()))
        first = new Hit(m.start(), m.end());
    }
    return first;
  }

  /** Every hit; overlapping hits of shorter phrases are left out. */
  public List<Hit> all(String text) {
    List<Hit> hits = NONE;
    WordsHeld.Text held = words.in(text);
    if (some != null && !held.holdsAny(some)) return NONE;
    for (Phrase phrase : phrases) {
      if (!phrase.mayBeIn(held)) continue;
      Matcher m = phrase.pattern().matcher(text);
      while (m.find()) {
        Hit hit = new Hit(m.start(), m.end());
        if (hits == NONE) hits = new ArrayList<>();
        if (apart(hit, hits)) hits.add(hit);
      }
    }
    if (hits.size() > 1) hits.sort(Comparator.comparingInt(Hit::start));
    return hits;
  }

  private static boolean apart(Hit hit, List<Hit> hits) {
    for (Hit h : hits) {
      if (hit.start() < h.end() && h.start() < hit.end()) return false;
    }
    return true;
  }

  /** True when one stands right at that place. */
  public boolean startsAt(String text, int start) {
    int from = Math.min(start, text.length());
    String rest = text.substring(from, Math.min(text.length(), from + REACH));
    WordsHeld.Text held = words.in(rest);
    for (Phrase phrase : phrases) {
      if (phrase.mayBeIn(held) && phrase.pattern().matcher(rest).lookingAt()) return true;
    }
    return false;
  }

  /** True when one stands right before that place, but for blanks. */
  public boolean endsAt(String text, int end) {
    String before = text.substring(Math.max(0, end - REACH), end).stripTrailing();
    WordsHeld.Text held = words.in(before);
    for (Phrase phrase : phrases) {
      if (!phrase.mayBeIn(held)) continue;
      Matcher m = phrase.pattern().matcher(before);
      for (int from = 0; from <= before.length() && m.find(from); from = m.start() + 1) {
        if (m.end() == before.length()) return true;
      }
    }
    return false;
  }

  /** The whole text is one of the phrases. */
  public boolean matches(String text) {
    if (!text.isEmpty() && (starts & bit(text.charAt(0))) == 0) return false;
    for (Phrase p : phrases) {
      boolean possible =
          p.start().isEmpty()
              ? p.mayBeIn(words.in(text))
              : text.regionMatches(true, 0, p.start(), 0, p.start().length());
      if (possible && p.pattern().matcher(text).matches()) return true;
    }
    return false;
  }

  /** False where no text that begins so is one of the phrases, whatever comes behind. */
  public boolean mayBegin(String start) {
    if (!start.isEmpty() && (starts & bit(start.charAt(0))) == 0) return false;
    for (Phrase p : phrases) {
      Matcher m = p.pattern().matcher(start);
      if (m.matches() || m.hitEnd()) return true;
    }
    return false;
  }

  /** The text with every hit blanked out, same length. */
  public String without(String text) {
    List<Hit> hits = all(text);
    if (hits.isEmpty()) return text;
    StringBuilder out = new StringBuilder(text);
    for (Hit hit : hits) {
      for (int i = hit.start(); i < hit.end(); i++) out.setCharAt(i, ' ');
    }
    return out.toString();
  }

  private static Phrase compile(String phrase, WordsHeld held) {
    if (phrase.length() > 2 && phrase.startsWith("/") && phrase.endsWith("/")) {
      String body = phrase.substring(1, phrase.length() - 1).replace(WITHIN_SENTENCE, NO_STOP);
      Expression expression = new Expression(body);
      // What is wrong with it is to be said when it is read.
      expression.pattern();
      Needed needed = Needed.of(body);
      int[] words = needed.words().stream().mapToInt(held::number).toArray();
      return new Phrase(expression, words, "", 40, needed.named());
    }
    boolean stem = phrase.endsWith("*");
    String whole = stem ? phrase.substring(0, phrase.length() - 1) : phrase;
    String plain = PlainText.of(whole).toLowerCase(Locale.ROOT).trim();
    // A dash alone parts no words.
    String[] words = BREAKS.matcher(plain).matches() ? new String[] {plain} : plain.split(BREAK);
    StringBuilder regex = new StringBuilder("(?<![A-Za-z0-9])");
    String longest = "";
    for (int i = 0; i < words.length; i++) {
      if (i > 0) regex.append("[\\s-]*");
      regex.append(Pattern.quote(words[i]));
      if (i < words.length - 1 && words[i].length() > 2) regex.append("s?");
      if (words[i].length() > longest.length()) longest = words[i];
    }
    boolean word = Character.isLetterOrDigit(whole.charAt(whole.length() - 1));
    if (stem) regex.append("\\w*");
    else if (word) regex.append("(?:s|es)?(?![A-Za-z0-9])");
    return new Phrase(
        new Expression(regex.toString()),
        new int[] {held.number(longest)},
        words.length == 0 ? "" : words[0],
        phrase.length(),
        List.of(words));
  }
}
