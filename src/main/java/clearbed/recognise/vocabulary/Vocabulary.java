package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.base.config.StandardFiles;
import clearbed.recognise.text.PlainText;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/** The words of the trade, from {@code rulesets/vocabulary/*.yaml}: read once, never changed. */
public final class Vocabulary {

  /** What a section may say of glass tile. */
  public record SectionRole(
      String number, boolean article, List<String> families, List<String> only) {}

  /** The files that it is read from, under {@code rulesets/}. */
  public static final List<String> FILES =
      List.of(
          "vocabulary/attributes.yaml",
          "vocabulary/families.yaml",
          "vocabulary/materials.yaml",
          "vocabulary/sections.yaml",
          "vocabulary/standards.yaml",
          "vocabulary/language.yaml",
          "vocabulary/schedules.yaml");

  /** Parts of the work that no word shows. */
  private static final Set<String> WORDLESS = Set.of("process", "location");

  private static final String ANY = "any";

  /** Gives the files by their paths under {@code rulesets/}. */
  public interface Files {
    StandardFiles.FileSource open(String path) throws IOException;
  }

  private final WordsHeld wordsHeld = new WordsHeld();
  private final List<Attribute> attributes;
  private final Map<String, Attribute> byId = new LinkedHashMap<>();
  private final Map<String, Phrases> families;
  private final Map<String, StandardInfo> standards = new LinkedHashMap<>();
  private final Map<String, Phrases> otherTile;
  private final List<SectionRole> sections = new ArrayList<>();
  private final Map<String, String> sectionTitles = new LinkedHashMap<>();
  private final Map<String, List<String>> covers = new LinkedHashMap<>();
  private final Map<String, Phrases> exposurePlaces;
  private final Map<String, Phrases> surfacePlaces;
  private final Map<String, Phrases> language = new LinkedHashMap<>();
  private final Map<String, Phrases> surfaceHeaders;
  private final HeaderWords headerWords;
  private final Map<String, Phrases> alike;
  private final Map<String, String> abroad;
  private final HeadingEvidence headings;
  private final String placeLead;
  private final List<Pattern> amendments = new ArrayList<>();
  private final Map<String, Phrases> supposed;
  private final Map<String, Phrases> full;
  private final Map<String, Phrases> asksNothing = new HashMap<>();
  private final String placeSuited;
  private final String ratioOfSpan;
  private final List<FlatnessClass> flatnessClasses = new ArrayList<>();
  private final Taught taught;

  private Vocabulary(Files files, List<ConfigFile> layers, Lessons lessons) throws IOException {
    ConfigNode words = file(files, "language");
    ConfigNode schedules = file(files, "schedules");
    ConfigNode materials = file(files, "materials");
    headerWords = new HeaderWords(schedules.get("abbreviations"));
    families = phrasesByName(file(files, "families").get("families"));
    ConfigNode listed = file(files, "attributes").get("attributes");
    taught =
        new TaughtReader(listed, words.get("places"))
            .read(layers.stream().map(layer -> layer.root().get("words")).toList())
            .and(lessons);
    attributes = attributes(listed, words.get("groups"));
    otherTile = phrasesByName(materials.get("otherTile"));
    for (String list :
        List.of(
            "glassTile",
            "glassTileAbroad",
            "glassAlone",
            "behindGlass",
            "notTile",
            "namedOnly",
            "notGlassTitle",
            "otherFinish")) language.put(list, phrases(materials.get(list)));
    language.computeIfPresent("glassTile", (list, known) -> known.and(taught.glass(), wordsHeld));
    sections(file(files, "sections"));
    for (ConfigNode standard : file(files, "standards").get("standards").items())
      standard(standard);
    for (ConfigNode list : words.get("negation").entries())
      language.put("negation." + list.key(), phrases(list));
    for (String list :
        List.of(
            "open",
            "empty",
            "ditto",
            "sameAs",
            "blanksRepeat",
            "references",
            "ofStandards",
            "publication",
            "finite",
            "except",
            "amending")) language.put(list, phrases(words.get(list)));
    for (String list :
        List.of(
            "tag",
            "material",
            "roomNumber",
            "looks",
            "sides",
            "measured",
            "questioned",
            "answered",
            "filler",
            "others",
            "former",
            "latest",
            "unchanged",
            "calling",
            "struck",
            "elsewhere",
            "passed",
            "denied",
            "besideFigures")) language.put("schedule." + list, phrases(schedules.get(list)));
    surfaceHeaders = phrasesByTerm(schedules.get("surfaces"), "location.surface");
    alike = phrasesByName(schedules.get("alike"));
    abroad = wordsByName(schedules.get("abroad"), headings(schedules, file(files, "attributes")));
    ConfigNode places = words.get("places");
    placeLead = regex(places.get("lead"));
    placeSuited = regex(places.get("suited"));
    for (String list :
        List.of(
            "notAlone",
            "otherwise",
            "usual",
            "temperature",
            "denied",
            "never",
            "beside",
            "structures",
            "labels",
            "conditions")) language.put("places." + list, phrases(places.get(list)));
    for (String group : List.of("clause", "vague")) {
      for (ConfigNode list : words.get(group).entries())
        language.put(group + "." + list.key(), phrases(list));
    }
    for (String list : List.of("over", "edge", "ofAThing"))
      language.put("flatness." + list, phrases(words.get("flatness").get(list)));
    ratioOfSpan = regex(words.get("flatness").get("ratio"));
    for (ConfigNode classes : words.get("flatness").get("classes").items())
      flatnessClasses.add(FlatnessClass.of(classes, regex(classes.get("name"))));
    supposed = supposed(words.get("supposed"));
    for (ConfigNode list : words.get("full").entries()) attribute(list, list.key());
    full = phrasesByName(words.get("full"));
    Phrases anyLeft = phrases(words.get("asksNothing").get(ANY));
    for (ConfigNode list : words.get("asksNothing").entries()) {
      if (list.key().equals(ANY)) continue;
      attribute(list, list.key());
      asksNothing.put(list.key(), phrases(list).and(anyLeft));
    }
    surfacePlaces =
        withTaught(phrasesByTerm(places.get("surface"), "location.surface"), "location.surface");
    exposurePlaces =
        withTaught(exposures(places.get("exposure"), places.get("rooms")), "location.exposure");
    for (ConfigNode form : words.get("amendments").items())
      amendments.add(Pattern.compile(regex(form), Pattern.CASE_INSENSITIVE | Pattern.DOTALL));
    covers(words.get("covers"), places.get("exposure"));
    for (String list : List.of("schedule.tag", "schedule.material", "schedule.filler"))
      list(list).plain().forEach(headerWords::know);
    headings = new HeadingEvidence(this);
  }

  private static ConfigNode file(Files files, String name) throws IOException {
    return ConfigFile.read(files.open("vocabulary/" + name + ".yaml"), name).root();
  }

  /**
   * Reads the vocabulary that ships with the tool, or the edited one beside the installed program.
   *
   * @throws IOException naming file, line and reason, when one cannot be read or understood
   */
  public static Vocabulary standard() throws IOException {
    return of(StandardFiles::open);
  }

  /**
   * The same with the words that layers teach, the later over the earlier. They are known in memory
   * only.
   *
   * @throws IOException naming file, line and reason
   */
  public static Vocabulary standard(List<Path> layers) throws IOException {
    return standard(layers, Lessons.NOTHING);
  }

  /**
   * The same, with marks of a form of their own that the schedules of a set have.
   *
   * @throws IOException naming file, line and reason
   */
  public static Vocabulary standard(List<Path> layers, Lessons lessons) throws IOException {
    List<ConfigFile> files = new ArrayList<>();
    for (Path layer : layers) files.add(ConfigFile.read(StandardFiles.given(layer), "ruleset"));
    return new Vocabulary(StandardFiles::open, files, lessons);
  }

  /** The same of files that come from elsewhere. */
  public static Vocabulary of(Files files) throws IOException {
    return new Vocabulary(files, List.of(), Lessons.NOTHING);
  }

  /** What layers have taught. */
  public Taught taught() {
    return taught;
  }

  public List<Attribute> attributes() {
    return attributes;
  }

  /** What the words of a text point to. */
  public Lexicon lexicon() {
    return headings.lexicon();
  }

  /** The attribute of that name, or empty. */
  public Optional<Attribute> attribute(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The attribute that the text of a node names. */
  public Attribute attribute(ConfigNode node) throws ConfigException {
    return attribute(node, node.text());
  }

  /** The attribute of a name that a file gives. */
  public Attribute attribute(ConfigNode place, String id) throws ConfigException {
    Attribute attribute = byId.get(id);
    if (attribute == null) throw place.unknown(id, "no attribute named " + id, byId.keySet());
    return attribute;
  }

  /** What a fact may be limited to: exposures, and places that cover some. */
  public Set<String> exposures() {
    Set<String> out = new TreeSet<>(byId.get("location.exposure").terms());
    out.addAll(covers.keySet());
    return out;
  }

  /** The attributes whose headings may be in a text, found by one look at it. */
  public List<Attribute> mayHead(String text) {
    WordsHeld.Text held = wordsHeld.in(text);
    List<Attribute> out = new ArrayList<>();
    for (Attribute a : attributes) if (a.words().headers().mayBeIn(held)) out.add(a);
    return out;
  }

  /** The label of an attribute; its name when the vocabulary has none. */
  public String label(String id) {
    Attribute attribute = byId.get(id);
    return attribute == null ? id : attribute.label();
  }

  /** True where naming the standard states that attribute. */
  public boolean states(String designation, String attribute) {
    return standardOf(designation).filter(i -> i.states().contains(attribute)).isPresent();
  }

  public Optional<StandardInfo> standardOf(String designation) {
    StandardInfo info = standards.get(designation);
    // EN 12004-1 unlisted as a part is still EN 12004; so with BS and ISO.
    if (info == null && designation.matches("(?:EN|BS|ISO|DIN|AS) \\d+-\\d+")) {
      info = standards.get(designation.substring(0, designation.indexOf('-')));
    }
    return Optional.ofNullable(info);
  }

  /** The standard that a class is of, or empty. */
  public Optional<StandardInfo> standardOfCode(String code) {
    return standards.values().stream()
        .filter(info -> !info.codes().isEmpty() && code.matches(info.codes()))
        .findFirst();
  }

  /** True when the words limited to {@code place} hold at {@code exposure}. */
  public boolean covers(String place, String exposure) {
    return covers.getOrDefault(place, List.of(place)).contains(exposure);
  }

  /** True when the text speaks of glass tile. */
  public boolean speaksOfGlassTile(String text) {
    return list("glassTile").in(list("notTile").without(PlainText.of(text)));
  }

  /** True when the text may speak of glass or of glass tile: asked before what takes long. */
  public boolean mayNameGlass(String text) {
    return list("glassTile").mayBeIn(text)
        || list("glassAlone").mayBeIn(text)
        || list("glassTileAbroad").mayBeIn(text);
  }

  /** True when the text describes glass tile, in English or as it is called abroad. */
  public boolean describesGlassTileAnywhere(String text) {
    return describesGlassTile(text) || list("glassTileAbroad").in(text);
  }

  /** True when the text names a tile that is not of glass, whatever else it names. */
  public boolean namesOtherTile(String text) {
    return otherTile.values().stream().anyMatch(kind -> kind.in(text));
  }

  /** True when the text speaks of glass, and of no thing of glass that is not tile. */
  public boolean namesGlass(String text) {
    return list("glassAlone").mayBeIn(text) && list("glassAlone").in(list("notTile").without(text));
  }

  /** The other kind of tile that the text speaks of, before any glass tile; empty when none. */
  public Optional<String> describesOtherTile(String text) {
    String plain = list("notTile").without(PlainText.of(text));
    if (list("glassTile").in(plain)) return Optional.empty();
    return otherTile.entrySet().stream()
        .filter(e -> e.getValue().in(plain))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** True when glass tile is the first tile that the text speaks of. */
  public boolean describesGlassTile(String text) {
    String whole = PlainText.of(text);
    if (!list("glassTile").mayBeIn(whole)) return false;
    String plain = list("notTile").without(whole);
    Phrases.Hit glass = list("glassTile").first(plain);
    return glass != null
        && otherTile.values().stream()
            .map(other -> other.first(plain))
            .allMatch(hit -> hit == null || hit.start() > glass.start());
  }

  /**
   * Part of the work that a text speaks of: the first named, and tile only where no other is, as
   * the tile is what mortar or grout are for. Empty when it speaks of none.
   */
  public String family(String text) {
    String best = "";
    int at = Integer.MAX_VALUE;
    for (Map.Entry<String, Phrases> family : families.entrySet()) {
      Phrases.Hit hit = family.getValue().first(text);
      if (hit == null || hit.start() >= at) continue;
      boolean tile = family.getKey().equals("tile");
      if (tile && !best.isEmpty()) continue;
      best = family.getKey();
      at = tile ? Integer.MAX_VALUE : hit.start();
    }
    return best;
  }

  /** True when all that is at {@code place} is at {@code wide}. */
  public boolean coversAll(String wide, String place) {
    List<String> all = covers.get(wide);
    return all != null && all.containsAll(covers.getOrDefault(place, List.of(place)));
  }

  public Map<String, Phrases> families() {
    return families;
  }

  public Map<String, Phrases> otherTile() {
    return otherTile;
  }

  public Map<String, Phrases> exposurePlaces() {
    return exposurePlaces;
  }

  /** True for words that name and place things, with no verb that says or asks anything of them. */
  public boolean isVerbless(String words) {
    return !list("clause.verb").in(words) && !list("clause.imperative").in(words);
  }

  public Map<String, Phrases> surfacePlaces() {
    return surfacePlaces;
  }

  public Map<String, Phrases> surfaceHeaders() {
    return surfaceHeaders;
  }

  /** All headings of columns that are known as such. */
  private static Set<String> headings(ConfigNode schedules, ConfigNode attributes) {
    Set<String> out = new TreeSet<>(schedules.get("tag").texts());
    out.addAll(schedules.get("material").texts());
    for (ConfigNode attribute : attributes.get("attributes").items())
      out.addAll(attribute.get("headers").texts());
    return out;
  }

  /** Words of headings that stand for one another, by the one of them that stands for all. */
  private static Map<String, String> wordsByName(ConfigNode node, Set<String> headings)
      throws ConfigException {
    Map<String, String> out = new HashMap<>();
    for (ConfigNode name : node.entries()) {
      if (!headings.contains(name.key()))
        throw name.unknown(name.key(), "'" + name.key() + "' is not known here", headings);
      for (ConfigNode word : name.items()) {
        if (out.put(word.text(), name.key()) != null)
          throw word.fault("'" + word.text() + "' stands twice under 'abroad'");
      }
    }
    return Map.copyOf(out);
  }

  /** A whole heading of another language by the English one, in small letters; else as it is. */
  public String inEnglish(String heading) {
    return abroad.getOrDefault(heading, heading);
  }

  Map<String, Phrases> alike() {
    return alike;
  }

  /** What the words of headings point to. */
  public HeadingEvidence headings() {
    return headings;
  }

  public HeaderWords headerWords() {
    return headerWords;
  }

  /** Ways of changing what another document says, the first that fits counts. */
  public List<Pattern> amendments() {
    return amendments;
  }

  /** True when a document of that name or title is issued to change others. */
  public boolean amends(String title) {
    return list("amending").in(title.replaceAll("[_.-]", " "));
  }

  public String placeLead() {
    return placeLead;
  }

  /** Words before a place that say what a thing is fit for, so that it limits nothing. */
  public String placeSuited() {
    return placeSuited;
  }

  /** A part of the span; the part is in its groups. */
  public String ratioOfSpan() {
    return ratioOfSpan;
  }

  /** Names of classes that stand for deviations. */
  public List<FlatnessClass> flatnessClasses() {
    return flatnessClasses;
  }

  /**
   * True where a text leaves what it speaks of to somebody, or wants it later than it helps: "may
   * be used at the contractor's option" asks for nothing.
   */
  public boolean asksNothing(String attribute, String text) {
    return mustBeAsked(attribute) && asksNothing.get(attribute).in(text);
  }

  /** True of what nobody does unless it is asked for, such as a mock-up. */
  public boolean mustBeAsked(String attribute) {
    return asksNothing.containsKey(attribute);
  }

  /** Words for all there can be of an amount, by attribute. */
  public Map<String, Phrases> full() {
    return full;
  }

  /** Words by which a clause supposes a tile, by {@code attribute term}. */
  public Map<String, Phrases> supposed() {
    return supposed;
  }

  /** A list of {@code language.yaml} or {@code materials.yaml}. */
  public Phrases list(String name) {
    return language.get(name);
  }

  /** What a section of that number may say; by title where there is none, or none of the list. */
  public Optional<SectionRole> role(String number, String title) {
    String n = number.isEmpty() ? byTitle(title) : number;
    if (n.isEmpty()) return Optional.empty();
    SectionRole best = null;
    for (SectionRole role : sections) {
      if (n.startsWith(role.number())
          && (best == null || role.number().length() > best.number().length())) best = role;
    }
    if (best == null && !number.isEmpty()) return role("", title);
    return Optional.ofNullable(best);
  }

  private String byTitle(String title) {
    String lower = title.toLowerCase(Locale.ROOT);
    return sectionTitles.entrySet().stream()
        .filter(e -> lower.contains(e.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("");
  }

  private List<Attribute> attributes(ConfigNode list, ConfigNode shared) throws ConfigException {
    Map<String, Phrases> groups = phrasesByName(shared);
    AttributeReader reader = new AttributeReader(groups, wordsHeld, taught);
    for (ConfigNode n : list.items()) {
      Attribute attribute = reader.read(n);
      family(n.get("family"));
      headerWords.add(attribute, n.get("headers").texts());
      if (byId.put(attribute.id(), attribute) != null)
        throw n.get("id").fault(attribute.id() + " stands twice in this file");
    }
    return List.copyOf(byId.values());
  }

  private void sections(ConfigNode file) throws ConfigException {
    for (ConfigNode s : file.get("sections").items()) {
      for (ConfigNode family : s.get("families").items()) family(family);
      for (ConfigNode id : s.get("only").items()) attribute(id);
      sections.add(
          new SectionRole(
              s.get("number").text(),
              s.get("scope").text().equals("article"),
              s.get("families").texts(),
              s.get("only").texts()));
    }
    for (ConfigNode t : file.get("titles").items()) {
      if (role(t.get("as").text(), "").isEmpty())
        throw t.get("as").fault("'" + t.get("as").text() + "' is no section of this file");
      sectionTitles.put(t.get("title").text(), t.get("as").text());
    }
  }

  private void standard(ConfigNode n) throws ConfigException {
    StandardInfo info =
        new StandardInfo(
            n.get("designation").text(),
            n.get("subject").text(),
            n.get("states").texts(),
            n.get("families").texts(),
            n.get("status").text(),
            n.get("successor").text(),
            n.get("edition").text(),
            n.get("mark").text(),
            n.has("codes") ? regex(n.get("codes")) : "",
            n.has("undated"));
    for (ConfigNode id : n.get("states").items()) attribute(id);
    for (ConfigNode family : n.get("families").items()) family(family);
    if (standards.put(info.designation(), info) != null)
      throw n.get("designation").fault(info.designation() + " stands twice in this file");
  }

  private static String regex(ConfigNode node) throws ConfigException {
    try {
      return Pattern.compile(node.text()).pattern();
    } catch (PatternSyntaxException e) {
      throw node.fault("not a regular expression: " + e.getDescription());
    }
  }

  private void covers(ConfigNode map, ConfigNode places) throws ConfigException {
    for (ConfigNode place : places.entries()) {
      if (!map.has(place.key())) term(place, place.key(), "location.exposure");
    }
    for (ConfigNode place : map.entries()) {
      if (!places.has(place.key()))
        throw place.unknown(place.key(), "no place named " + place.key(), exposurePlaces.keySet());
      for (ConfigNode term : place.items()) term(term, term.text(), "location.exposure");
      covers.put(place.key(), place.texts());
    }
  }

  private Phrases phrases(ConfigNode list) throws ConfigException {
    return Phrases.of(list, wordsHeld);
  }

  private Map<String, Phrases> phrasesByName(ConfigNode map) throws ConfigException {
    Map<String, Phrases> out = new LinkedHashMap<>();
    for (ConfigNode list : map.entries()) out.put(list.key(), phrases(list));
    return out;
  }

  private Map<String, Phrases> phrasesByTerm(ConfigNode map, String attribute)
      throws ConfigException {
    for (ConfigNode list : map.entries()) term(list, list.key(), attribute);
    return phrasesByName(map);
  }

  /** What limits a clause to a place, and of some kinds of places the rooms as well. */
  private Map<String, Phrases> exposures(ConfigNode map, ConfigNode rooms) throws ConfigException {
    Map<String, Phrases> out = phrasesByName(map);
    for (ConfigNode kind : rooms.items()) {
      term(kind, kind.text(), "location.exposure");
      Phrases of = byId.get("location.exposure").words().terms().get(kind.text());
      out.merge(kind.text(), of, Phrases::and);
    }
    return out;
  }

  private Map<String, Phrases> withTaught(Map<String, Phrases> places, String attribute) {
    Map<String, Phrases> out = new LinkedHashMap<>(places);
    for (Taught.Word word : taught.words()) {
      if (word.kind() != Taught.Kind.PLACE || !word.meaning().equals(attribute)) continue;
      Phrases one = new Phrases(List.of(word.words()), wordsHeld);
      out.merge(word.term(), one, Phrases::and);
    }
    return out;
  }

  private Map<String, Phrases> supposed(ConfigNode map) throws ConfigException {
    for (ConfigNode list : map.entries()) {
      String[] name = list.key().split(" ", 2);
      if (name.length != 2) throw list.fault("not an attribute and one of its terms");
      term(list, name[1], attribute(list, name[0]).id());
    }
    return phrasesByName(map);
  }

  private void term(ConfigNode place, String word, String attribute) throws ConfigException {
    Attribute of = attribute(place, attribute);
    if (!of.hasTerm(word))
      throw place.unknown(word, "'" + word + "' is not a term of " + attribute, of.terms());
  }

  private void family(ConfigNode name) throws ConfigException {
    if (!WORDLESS.contains(name.text()) && !families.containsKey(name.text()))
      throw name.unknown(
          name.text(), "no family named " + name.text() + " in families.yaml", families.keySet());
  }
}
