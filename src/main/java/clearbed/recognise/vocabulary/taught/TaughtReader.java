package clearbed.recognise.vocabulary.taught;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.model.value.Unit;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.HeadingEvidence;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.WordsHeld;
import clearbed.recognise.vocabulary.taught.Taught.Kind;
import clearbed.recognise.vocabulary.taught.Taught.Word;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.PatternSyntaxException;

/**
 * Reads the words that layers teach, and holds them to the attributes, terms and places there are.
 */
public final class TaughtReader {
  /** A column of nothing that is asked for. */
  static final String NOTHING = "nothing";

  private static final String UNKNOWN = "?";
  private static final String EXPOSURE = "location.exposure";
  private static final String SURFACE = "location.surface";

  /** Terms by attribute. */
  private final Map<String, Set<String>> terms = new LinkedHashMap<>();

  private final Map<String, ConfigNode> attributes = new LinkedHashMap<>();
  private final Set<String> exposures = new LinkedHashSet<>();
  private final Set<String> surfaces = new LinkedHashSet<>();

  /**
   * @param attributes of {@code attributes.yaml}
   * @param places of {@code language.yaml}
   */
  public TaughtReader(ConfigNode attributes, ConfigNode places) {
    for (ConfigNode a : attributes.items()) {
      String id = a.get("id").text();
      this.attributes.put(id, a);
      Set<String> own = new LinkedHashSet<>();
      a.get("terms").entries().forEach(term -> own.add(term.key()));
      terms.put(id, own);
    }
    exposures.addAll(terms.getOrDefault(EXPOSURE, Set.of()));
    places.get("exposure").entries().forEach(place -> exposures.add(place.key()));
    surfaces.addAll(terms.getOrDefault(SURFACE, Set.of()));
  }

  /**
   * @param layers the {@code words} of each, the later over the earlier
   */
  public Taught read(List<ConfigNode> layers) throws ConfigException {
    Map<String, Word> out = new LinkedHashMap<>();
    for (ConfigNode layer : layers) {
      for (ConfigNode n : layer.get("columns").entries()) put(out, column(n));
      for (ConfigNode n : layer.get("terms").entries()) put(out, term(n));
      for (ConfigNode n : layer.get("places").entries()) put(out, place(n));
      for (ConfigNode n : listed(layer.get("glass")))
        put(out, word(n, Kind.GLASS, n.text(), "", "", null));
      for (ConfigNode n : listed(layer.get("tags")))
        put(out, word(n, Kind.TAG, n.text(), "", "", null));
    }
    return out.isEmpty() ? Taught.NOTHING : new Taught(List.copyOf(out.values()));
  }

  private static void put(Map<String, Word> out, Word word) {
    String key = PlainText.line(word.words()).toLowerCase(Locale.ROOT);
    out.put(word.kind() + " " + key, word);
  }

  /** A section whose lines are all comments is nothing. */
  private static List<ConfigNode> listed(ConfigNode list) {
    return list.items().stream().filter(ConfigNode::isText).toList();
  }

  private Word column(ConfigNode n) throws ConfigException {
    String said = said(n);
    Unit unit = null;
    int in = said.indexOf(" in ");
    if (in > 0) {
      String name = said.substring(in + 4).strip();
      unit = Quantities.unitOfHeader("in, (" + name + ")");
      if (unit == null)
        throw n.fault("'" + name + "' is no unit; write one such as mm, in, psi or °F");
      said = said.substring(0, in).strip();
    }
    String meaning = meaning(n, said);
    boolean measured = attributes.containsKey(meaning) && isMeasured(attributes.get(meaning));
    if (unit != null && !measured) throw n.fault(said + " has no unit; leave ' in ...' out");
    return word(n, Kind.COLUMN, n.key(), meaning, "", unit);
  }

  private static boolean isMeasured(ConfigNode attribute) {
    return Set.of("amount", "size", "flatness").contains(attribute.get("kind").text());
  }

  private String meaning(ConfigNode n, String said) throws ConfigException {
    if (said.equals("tag")) return HeadingEvidence.TAG;
    if (said.equals("material")) return HeadingEvidence.MATERIAL;
    if (said.equals(NOTHING)) return HeadingEvidence.OTHER;
    if (said.startsWith("surface ")) {
      String surface = said.substring("surface ".length()).strip();
      if (!surfaces.contains(surface))
        throw n.unknown(surface, "no surface named " + surface, surfaces);
      return HeadingEvidence.SURFACE + surface;
    }
    if (attributes.containsKey(said)) return said;
    Set<String> known = new TreeSet<>(attributes.keySet());
    known.addAll(List.of("tag", "material", NOTHING));
    throw n.perhaps(
        said,
        "'" + said + "' is no attribute, nor tag, material, surface ... or " + NOTHING,
        known);
  }

  private Word term(ConfigNode n) throws ConfigException {
    String said = said(n);
    if (said.equals(NOTHING)) return word(n, Kind.TERM, n.key(), HeadingEvidence.OTHER, "", null);
    if (attributes.containsKey(said)) return word(n, Kind.TERM, n.key(), said, "", null);
    int blank = said.indexOf(' ');
    String first = blank < 0 ? said : said.substring(0, blank);
    if (terms.containsKey(first)) {
      String term = said.substring(blank + 1).strip();
      if (!terms.get(first).contains(term))
        throw n.unknown(term, "'" + term + "' is not a term of " + first, terms.get(first));
      return word(n, Kind.TERM, n.key(), first, term, null);
    }
    List<String> with = new ArrayList<>();
    terms.forEach(
        (attribute, own) -> with.addAll(own.contains(said) ? List.of(attribute) : List.of()));
    if (with.size() == 1) return word(n, Kind.TERM, n.key(), with.get(0), said, null);
    if (with.size() > 1)
      throw n.fault(
          "'"
              + said
              + "' is a term of several attributes; write one of "
              + String.join(", ", with.stream().map(a -> "'" + a + " " + said + "'").toList()));
    Set<String> known = new TreeSet<>(attributes.keySet());
    terms.values().forEach(known::addAll);
    throw n.perhaps(said, "'" + said + "' is no term of any attribute, and no attribute", known);
  }

  private Word place(ConfigNode n) throws ConfigException {
    String said = said(n);
    if (exposures.contains(said)) return word(n, Kind.PLACE, n.key(), EXPOSURE, said, null);
    if (surfaces.contains(said)) return word(n, Kind.PLACE, n.key(), SURFACE, said, null);
    Set<String> known = new LinkedHashSet<>(exposures);
    known.addAll(surfaces);
    throw n.unknown(said, "'" + said + "' is no exposure and no surface", known);
  }

  private static String said(ConfigNode n) throws ConfigException {
    String said = n.text().strip();
    if (said.equals(UNKNOWN) || said.endsWith(" " + UNKNOWN))
      throw n.fault(n.path() + ": write what it stands for in place of the ?");
    return said;
  }

  private static Word word(
      ConfigNode n, Kind kind, String words, String meaning, String term, Unit unit)
      throws ConfigException {
    if (words.length() > 200)
      throw n.fault("longer than 200 characters; teach the few words that tell");
    try {
      new Phrases(List.of(words), new WordsHeld());
    } catch (PatternSyntaxException e) {
      throw n.fault("not a regular expression: " + e.getDescription() + ": " + words);
    }
    return new Word(kind, words, meaning, term, unit, n.file().name() + ", line " + n.line());
  }
}
