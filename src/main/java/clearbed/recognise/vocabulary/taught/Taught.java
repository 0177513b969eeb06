package clearbed.recognise.vocabulary.taught;

import clearbed.model.report.TaughtWord;
import clearbed.model.value.Unit;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.WordsHeld;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Words of an office, as its layers teach them. */
public final class Taught {
  /** What kind of words they are. */
  public enum Kind {
    COLUMN,
    TERM,
    PLACE,
    GLASS,
    TAG,
    LETTERS,
    /** Letters over a column that a legend spells out. */
    HEADING,
    /** Letters in a cell that a legend spells out. */
    SHORT
  }

  /**
   * @param meaning attribute or role of a column; attribute of a term or a place; else empty
   * @param term that the words stand for; empty when they only name the attribute
   * @param unit of the figures of a column, or null
   * @param source file and line that teach it
   */
  public record Word(
      Kind kind, String words, String meaning, String term, Unit unit, String source) {
    /** What it was taught as, as people write it. */
    public String as() {
      String what =
          switch (kind) {
            case GLASS -> "glass tile";
            case TAG -> "form of a tag";
            case LETTERS -> "letters of tags of glass tile";
            case HEADING, SHORT -> "short for";
            default ->
                meaning.equals(HeadingEvidence.OTHER)
                    ? TaughtReader.NOTHING
                    : meaning.replace(HeadingEvidence.SURFACE, "surface ").replace("@", "");
          };
      return what
          + (term.isEmpty() ? "" : " " + term)
          + (unit == null ? "" : " in " + unit.symbol());
    }

    /** How it is said of what was read by it. */
    public String evidence() {
      return "taught: " + source;
    }
  }

  private static final String LEGEND = "a legend of the documents";

  /** Behind each separator something new begins. */
  private static final Pattern SEPARATED = Pattern.compile("(?<=[,;/+&] ?)(?=\\p{Lu})");

  private static final Pattern SEPARATORS = Pattern.compile("\\s*[,;/+&]\\s*|\\s+and\\s+");

  /** Letters that something opens with; one alone might be the first of a name. */
  private static final Pattern OPENING =
      Pattern.compile(
          "(\\p{Lu}[\\p{L}&']{1,5}(?:[-/]\\p{Lu}{1,4})?)(?![\\p{L}\\d]|[-./]\\w)(.*)",
          Pattern.DOTALL);

  /** Shorter names are the letters of marks only. */
  private static final int SHORTEST_WORD = 2;

  static final Taught NOTHING = new Taught(List.of());

  private final List<Word> words;
  private final Map<String, Word> columns = new HashMap<>();
  private final List<Pattern> tags = new ArrayList<>();
  private final List<Word> letters = new ArrayList<>();
  private final Map<String, String> heads = new HashMap<>();
  private final Map<String, String> shorts = new HashMap<>();

  /** Words that state nothing that is asked for. */
  private final Map<Word, Phrases> nothing = new LinkedHashMap<>();

  Taught(List<Word> words) {
    this.words = List.copyOf(words);
    for (Word word : words) {
      if (word.kind() == Kind.COLUMN) columns.put(heading(word.words()), word);
      if (word.kind() == Kind.TAG) tags.add(form(word.words()));
      if (word.kind() == Kind.LETTERS) letters.add(word);
      if (word.kind() == Kind.HEADING) heads.put(word.words(), word.term());
      if (word.kind() == Kind.SHORT) shorts.put(key(word.words(), word.meaning()), word.term());
      if (word.kind() == Kind.TERM && word.meaning().equals(HeadingEvidence.OTHER))
        nothing.put(word, new Phrases(List.of(word.words()), new WordsHeld()));
    }
  }

  public List<Word> words() {
    return words;
  }

  /** The same, and what the documents of a set teach themselves. */
  public Taught and(Lessons lessons) {
    if (lessons.isEmpty()) return this;
    List<Word> all = new ArrayList<>(words);
    for (String mark : lessons.marks())
      all.add(new Word(Kind.TAG, mark, "", "", null, "the marks of the schedules"));
    for (String name : lessons.glass()) {
      all.add(new Word(Kind.LETTERS, name, "", "", null, LEGEND));
      // "V" is the letter of marks and hardly a word; of sections everything speaks.
      if (name.length() > SHORTEST_WORD && Character.isLetter(name.charAt(0)))
        all.add(new Word(Kind.GLASS, name, "", "", null, LEGEND));
    }
    for (Lessons.Explained e : lessons.explained())
      all.add(
          new Word(
              e.heads() ? Kind.HEADING : Kind.SHORT,
              e.form(),
              e.family(),
              e.meaning(),
              null,
              LEGEND));
    return new Taught(all);
  }

  /** False where the documents explain no short forms, as most do not. */
  public boolean spells() {
    return !heads.isEmpty() || !shorts.isEmpty();
  }

  /** A heading with the words that a legend has for its letters: {@code See-through (SEE)}. */
  public String speltHeading(String heading) {
    String words = heads.get(heading.strip());
    return words == null ? heading : words + " (" + heading.strip() + ")";
  }

  /**
   * A cell with the words that a legend has for its letters: {@code INT-W floor} is of an interior
   * wet floor. Letters further on may be of anything.
   *
   * @param family part of the work that its heading speaks of, or empty
   */
  public String spelt(String cell, String family) {
    if (shorts.isEmpty()) return cell;
    String plain = PlainText.line(cell).strip();
    String whole = shorts.getOrDefault(key(plain, family), shorts.get(plain));
    if (whole != null) return whole;
    String each = eachSpelt(plain, family);
    if (!each.isEmpty()) return each;
    StringBuilder out = new StringBuilder();
    boolean spelt = false;
    for (String part : SEPARATED.split(plain)) {
      Matcher opening = OPENING.matcher(part);
      String words = opening.matches() ? shorts.get(opening.group(1)) : null;
      spelt |= words != null;
      out.append(words == null ? part : words + opening.group(2));
    }
    return spelt ? out.toString() : cell;
  }

  /** "W, F": nothing but letters that are explained; empty where there is more. */
  private String eachSpelt(String plain, String family) {
    List<String> out = new ArrayList<>();
    for (String part : SEPARATORS.split(plain)) {
      String words = shorts.getOrDefault(key(part, family), shorts.get(part));
      if (words == null) return "";
      out.add(words);
    }
    return out.size() < 2 ? "" : String.join(", ", out);
  }

  private static String key(String letters, String family) {
    return family.isEmpty() ? letters : family + " " + letters;
  }

  /** What says that a tag is of glass tile by its letters, or null. */
  public Word letters(String tag) {
    for (Word word : letters) {
      if (!tag.startsWith(word.words())) continue;
      String rest = tag.substring(word.words().length());
      if (rest.isEmpty() || !Character.isLetter(rest.charAt(0))) return word;
    }
    return null;
  }

  /** What says that letters by themselves stand for glass tile, or null. */
  public Word standsFor(String text) {
    if (letters.isEmpty()) return null;
    String plain = text.strip();
    // "V" is the letter of marks and hardly a word.
    if (plain.length() < SHORTEST_WORD) return null;
    return letters.stream().filter(word -> word.words().equals(plain)).findFirst().orElse(null);
  }

  /** The same as people are shown them. */
  public List<TaughtWord> forReaders() {
    return words.stream()
        .filter(w -> w.kind() != Kind.HEADING || !w.term().equals(shorts.get(w.words())))
        .map(
            w ->
                new TaughtWord(
                    w.kind().name().toLowerCase(Locale.ROOT),
                    w.words(),
                    w.as(),
                    w.meaning().startsWith("@") ? "" : w.meaning(),
                    w.source()))
        .toList();
  }

  /** What a column was taught to hold, by its whole heading or its lowest; null for none. */
  public Word column(String heading, String lowest) {
    if (columns.isEmpty()) return null;
    Word whole = columns.get(heading(heading));
    return whole != null ? whole : columns.get(heading(lowest));
  }

  /** The words taught for a term, or for the attribute itself where the term is empty. */
  public List<String> of(Kind kind, String attribute, String term) {
    return words.stream()
        .filter(w -> w.kind() == kind && w.meaning().equals(attribute) && w.term().equals(term))
        .map(Word::words)
        .toList();
  }

  public List<String> glass() {
    return words.stream().filter(w -> w.kind() == Kind.GLASS).map(Word::words).toList();
  }

  /** What says that a text states nothing that is asked for, or null. */
  public Word aside(String text) {
    for (Map.Entry<Word, Phrases> each : nothing.entrySet())
      if (each.getValue().in(text)) return each.getKey();
    return null;
  }

  /** True when a text is a tag of a form that was taught. */
  public boolean isTag(String text) {
    if (tags.isEmpty()) return false;
    String plain = PlainText.line(text);
    return tags.stream().anyMatch(form -> form.matcher(plain).matches());
  }

  /** Where a text has tags of the forms that were taught. */
  public List<Phrases.Hit> tagsIn(String text) {
    if (tags.isEmpty()) return List.of();
    List<Phrases.Hit> out = new ArrayList<>();
    for (Pattern form : tags) {
      Matcher m = form.matcher(text);
      while (m.find()) out.add(new Phrases.Hit(m.start(), m.end()));
    }
    return out;
  }

  private static Pattern form(String written) {
    StringBuilder out = new StringBuilder("(?<![A-Za-z0-9.-])");
    for (char c : written.toCharArray()) {
      if (c == '#') out.append("\\d");
      else if (c == '@') out.append("[A-Z]");
      else out.append(Pattern.quote(String.valueOf(c)));
    }
    return Pattern.compile(out.append("(?![A-Za-z0-9]|[.-]\\d)").toString());
  }

  private static String heading(String text) {
    return PlainText.line(text).toLowerCase(Locale.ROOT).replaceAll("[.:*]+$", "").strip();
  }

  /** All of it, for what must change when it changes. */
  public String key() {
    return words.isEmpty() ? "" : words.toString();
  }
}
