package clearbed.recognise.vocabulary;

import clearbed.base.Memo;
import clearbed.recognise.text.Stems;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.tartarus.snowball.ext.EnglishStemmer;

/**
 * What the words of a heading point to: attributes and roles of columns. Each phrase of the
 * vocabulary is compared word by word, stems and short forms counting as far as they are alike.
 */
public final class HeadingEvidence {
  public static final String TAG = "@tag";
  public static final String MATERIAL = "@material";

  /** Columns that are none of ours: prices, dates, who drew it. */
  public static final String OTHER = "@other";

  public static final String SURFACE = "@surface:";

  /** A word such as "type" or "required" weighs less than one that names something. */
  private static final double FILLER = 0.25;

  private static final double CUE = 0.6;
  private static final double LABEL = 0.8;

  /** The part of the work alone. */
  private static final double FAMILY = 0.35;

  private static final double SURE_SHORT_FORM = 0.5;
  private static final double INITIALS = 0.75;

  /** What is said to be done, asked as a question. */
  private static final double ASKED = 0.8;

  private static final Set<String> NUMBERED = Set.of("no", "number");

  /** Money, whatever it is for. */
  private static final Pattern MONEY =
      Pattern.compile(
          "[$€£¥]|\\b(?:usd|eur|gbp|aud|cad|sgd|aed|sar|qar|omr|chf)\\b", Pattern.CASE_INSENSITIVE);

  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{M}\\p{N}']+");

  /**
   * @param strength from 0 to 1
   * @param why in words
   * @param isShort true where it is a short form, or initials
   */
  public record Heard(double strength, String why, boolean isShort) {
    public Heard times(double factor) {
      return new Heard(strength * factor, why, isShort);
    }
  }

  private record WeighedWord(String text, String stem, double weight) {}

  private record HeadingPhrase(
      String role, List<WeighedWord> words, double weight, double strength) {}

  private static final BitSet NONE = new BitSet();

  private final Vocabulary vocabulary;
  private final EnglishStemmer stemmer = new EnglishStemmer();
  private final List<HeadingPhrase> phrases = new ArrayList<>();

  /** Numbers of the phrases that have a word. */
  private final Map<String, BitSet> byStem = new HashMap<>();

  private final Map<String, BitSet> byText = new HashMap<>();
  private final Memo<String, Map<String, Double>> shortForms = Memo.ofTexts();
  private final Set<String> known = new HashSet<>();
  private final Set<String> ofFamilies = new HashSet<>();
  private final Map<String, String> alike = new HashMap<>();

  /** By letters, then by role: the phrase that begins so. */
  private final Map<String, Map<String, String>> initials = new HashMap<>();

  /** The words of the phrases of each part of the work that tells. */
  private final Map<String, List<List<WeighedWord>>> families = new LinkedHashMap<>();

  private final Memo<String, Map<String, Heard>> lately = Memo.ofTexts();
  private final Lexicon lexicon;

  HeadingEvidence(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.lexicon = new Lexicon(vocabulary);
    vocabulary
        .alike()
        .forEach((one, others) -> others.plain().forEach(other -> alike.put(other, one)));
    for (Map.Entry<String, Phrases> family : vocabulary.families().entrySet()) {
      if (!family.getKey().equals("tile"))
        family.getValue().plain().forEach(p -> words(p).forEach(w -> ofFamilies.add(w.stem())));
    }
    for (Attribute a : vocabulary.attributes()) {
      a.words().headers().plain().forEach(p -> add(a.id(), p, 1));
      if (a.kind() != Attribute.Kind.REQUIRED)
        a.words().cues().plain().forEach(p -> add(a.id(), p, CUE));
      if (a.kind() != Attribute.Kind.WORDS) add(a.id(), a.label(), LABEL);
    }
    vocabulary
        .list("schedule.roomNumber")
        .plain()
        .filter(p -> !NUMBERED.contains(p))
        .forEach(p -> add("location.room", p, 1));
    vocabulary.list("schedule.tag").plain().forEach(p -> add(TAG, p, 1));
    vocabulary.list("schedule.material").plain().forEach(p -> add(MATERIAL, p, 1));
    vocabulary.list("schedule.others").plain().forEach(p -> add(OTHER, p, 1));
    vocabulary
        .surfaceHeaders()
        .forEach((surface, list) -> list.plain().forEach(p -> add(SURFACE + surface, p, 1)));
    pairs();
    vocabulary.list("schedule.filler").plain().forEach(p -> words(p).forEach(this::know));
    vocabulary
        .families()
        .forEach((family, list) -> families.put(family, list.plain().map(this::words).toList()));
    families.remove("tile");
  }

  Lexicon lexicon() {
    return lexicon;
  }

  private void add(String role, String phrase, double strength) {
    List<WeighedWord> words = words(phrase);
    if (words.isEmpty()) return;
    words.forEach(this::know);
    for (WeighedWord w : words) {
      byStem.computeIfAbsent(w.stem(), stem -> new BitSet()).set(phrases.size());
      byText.computeIfAbsent(w.text(), text -> new BitSet()).set(phrases.size());
    }
    phrases.add(new HeadingPhrase(role, words, weight(words), strength));
    if (words.size() < 2) return;
    StringBuilder first = new StringBuilder();
    for (WeighedWord w : words) first.append(w.text().charAt(0));
    initials
        .computeIfAbsent(first.toString(), letters -> new LinkedHashMap<>())
        .putIfAbsent(role, phrase);
  }

  private void know(WeighedWord word) {
    known.add(word.stem());
  }

  private static double weight(List<WeighedWord> words) {
    return words.stream().mapToDouble(WeighedWord::weight).sum();
  }

  private synchronized List<WeighedWord> words(String text) {
    List<WeighedWord> out = new ArrayList<>();
    for (String word : BETWEEN.split(text.toLowerCase(Locale.ROOT))) {
      if (word.isEmpty()) continue;
      boolean filler = vocabulary.list("schedule.filler").matches(word);
      for (String meant : alike.getOrDefault(word, word).split(" ")) {
        WeighedWord one = new WeighedWord(meant, Stems.stem(stemmer, meant), filler ? FILLER : 1);
        if (out.stream().noneMatch(w -> w.stem().equals(one.stem()))) out.add(one);
      }
    }
    return out;
  }

  /** "MJ" is a movement joint in every heading, where no other pair of words begins so. */
  private void pairs() {
    Map<String, Set<String>> pairs = new HashMap<>();
    for (HeadingPhrase p : phrases) {
      if (p.words().size() != 2 || p.strength() < 1 || weight(p.words()) < 2) continue;
      String first = p.words().get(0).text().charAt(0) + "" + p.words().get(1).text().charAt(0);
      pairs
          .computeIfAbsent(first, f -> new TreeSet<>())
          .add(p.words().get(0).text() + " " + p.words().get(1).text());
    }
    pairs.forEach(
        (first, words) -> {
          boolean joint = words.stream().filter(w -> w.endsWith(" joint")).count() == 1;
          if (joint && !alike.containsKey(first))
            alike.put(first, words.stream().filter(w -> w.endsWith(" joint")).findFirst().get());
        });
  }

  /**
   * What a heading points to, by attribute or role.
   *
   * @param text without its unit and brackets
   */
  public Map<String, Heard> of(String text) {
    return lately.get(text, () -> Map.copyOf(find(text)));
  }

  private Map<String, Heard> find(String text) {
    Map<String, Heard> out = new LinkedHashMap<>();
    List<WeighedWord> heading = words(text);
    if (heading.isEmpty()) return out;
    BitSet near = new BitSet();
    for (WeighedWord word : heading) {
      near.or(byStem.getOrDefault(word.stem(), NONE));
      standsFor(word).keySet().forEach(meant -> near.or(byText.get(meant)));
    }
    near.stream()
        .forEach(
            at -> {
              Heard heard = heard(heading, phrases.get(at));
              if (heard != null)
                out.merge(phrases.get(at).role(), heard, HeadingEvidence::stronger);
            });
    for (WeighedWord word : heading) initials(word, heading, out);
    families(text, heading, out);
    required(text, heading, out);
    return out;
  }

  /** Columns that ask whether something is done are headed by sentences, more or less. */
  private void required(String text, List<WeighedWord> heading, Map<String, Heard> out) {
    boolean several = heading.stream().filter(w -> w.weight() == 1).count() >= 2;
    Map<String, Double> pointed = several ? lexicon.pointedTo(Stems.of(text)) : Map.of();
    for (Attribute a : vocabulary.attributes()) {
      if (a.kind() != Attribute.Kind.REQUIRED) continue;
      double strength = ASKED * pointed.getOrDefault(a.id(), 0.0);
      if (a.words().requiredIn(text)) strength = 1;
      if (strength > 0)
        out.merge(a.id(), new Heard(strength, "heading", false), HeadingEvidence::stronger);
    }
  }

  public static boolean isMoney(String text) {
    return MONEY.matcher(text).find();
  }

  public static Heard stronger(Heard one, Heard other) {
    return other.strength() > one.strength() ? other : one;
  }

  private Heard heard(List<WeighedWord> heading, HeadingPhrase phrase) {
    double matched = 0;
    double own = 0;
    double ofHeading = 0;
    String shortOf = "";
    for (WeighedWord word : phrase.words()) {
      double best = 0;
      WeighedWord by = null;
      for (WeighedWord h : heading) {
        double quality = quality(h, word);
        if (quality > best) {
          best = quality;
          by = h;
        }
      }
      if (by == null) continue;
      matched += best * word.weight();
      if (!ofFamilies.contains(word.stem())) own += best * word.weight();
      ofHeading += by.weight();
      if (best < 1) shortOf = word.text();
    }
    if (matched == 0 || phrase.role().equals(OTHER) && matched < phrase.weight()) return null;
    double share = matched / phrase.weight() * Math.min(1, ofHeading / weight(heading));
    // The part of the work alone does not tell which of its attributes is meant.
    boolean part = own < 0.5 && matched < phrase.weight() - 0.5;
    if (part && !phrase.role().startsWith("@")) share = Math.min(share, FAMILY);
    String why = shortOf.isEmpty() ? "heading" : "abbreviation of " + shortOf;
    return new Heard(phrase.strength() * share, why, !shortOf.isEmpty());
  }

  private double quality(WeighedWord heading, WeighedWord word) {
    if (heading.stem().equals(word.stem())) return 1;
    return standsFor(heading).getOrDefault(word.text(), 0.0);
  }

  /** The words of known headings that a word is short for, and how well. */
  private Map<String, Double> standsFor(WeighedWord heading) {
    if (known.contains(heading.stem())) return Map.of();
    return shortForms.get(
        heading.text(),
        () -> {
          Map<String, Double> out = new HashMap<>();
          for (String text : byText.keySet()) {
            double quality = ShortForms.quality(heading.text(), text);
            if (quality > 0) out.put(text, quality);
          }
          return out;
        });
  }

  /** {@code MJ} of movement joint. */
  private void initials(WeighedWord word, List<WeighedWord> heading, Map<String, Heard> out) {
    if (word.text().length() < 2 || word.text().length() > 4 || known.contains(word.stem())) return;
    double share = word.weight() / weight(heading);
    initials
        .getOrDefault(word.text(), Map.of())
        .forEach(
            (role, of) ->
                out.merge(
                    role,
                    new Heard(INITIALS * share, "initials of " + of, true),
                    HeadingEvidence::stronger));
  }

  private void families(String text, List<WeighedWord> heading, Map<String, Heard> out) {
    for (String family : familiesOf(text, heading)) {
      for (Attribute a : vocabulary.attributes()) {
        if (a.family().equals(family) && a.kind() != Attribute.Kind.REQUIRED)
          out.merge(a.id(), new Heard(FAMILY, "of " + family, false), HeadingEvidence::stronger);
      }
    }
  }

  /**
   * Parts of the work that the words name, in short forms, too; "tile" is none that tells.
   *
   * @param text without its unit and brackets
   */
  public Set<String> familiesOf(String text) {
    return text.isEmpty() ? Set.of() : familiesOf(text, words(text));
  }

  private Set<String> familiesOf(String text, List<WeighedWord> heading) {
    Set<String> out = new TreeSet<>();
    families.forEach(
        (family, phrased) -> {
          boolean named =
              vocabulary.families().get(family).in(text)
                  || phrased.stream().anyMatch(phrase -> inShort(heading, phrase));
          if (named) out.add(family);
        });
    return out;
  }

  private boolean inShort(List<WeighedWord> heading, List<WeighedWord> phrase) {
    return phrase.stream()
        .allMatch(w -> heading.stream().anyMatch(h -> quality(h, w) >= SURE_SHORT_FORM));
  }
}
