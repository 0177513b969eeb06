package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.base.config.StandardFiles;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.WordsHeld;
import clearbed.recognise.vocabulary.taught.Lessons;
import clearbed.recognise.vocabulary.taught.Taught;
import clearbed.recognise.vocabulary.taught.TaughtReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** The words of the trade, from {@code rulesets/vocabulary/*.yaml}: read once, never changed. */
public final class Vocabulary {

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

  private static final String ANY = "any";

  /** Gives the files by their paths under {@code rulesets/}. */
  public interface Files {
    StandardFiles.FileSource open(String path) throws IOException;
  }

  private final Taught taught;
  private final Families families;
  private final Attributes attributes;
  private final GlassNames glass;
  private final SectionRoles sections;
  private final StandardList standards;
  private final PlaceWords places;
  private final HeaderWords headerWords;
  private final HeadingEvidence headings;

  private final WordLists lists;

  private final Map<String, Phrases> surfaceHeaders;
  private final Map<String, Phrases> alike;
  private final Map<String, String> abroad;
  private final List<Pattern> amendments = new ArrayList<>();
  private final Map<String, Phrases> supposed;
  private final Map<String, Phrases> full;
  private final Map<String, Phrases> asksNothing = new HashMap<>();
  private final String ratioOfSpan;
  private final List<FlatnessClass> flatnessClasses = new ArrayList<>();

  private Vocabulary(Files files, List<ConfigFile> layers, Lessons lessons) throws IOException {
    ConfigNode language = file(files, "language");
    ConfigNode schedules = file(files, "schedules");
    ConfigNode materials = file(files, "materials");
    ConfigNode listed = file(files, "attributes").get("attributes");
    ListReader words = new ListReader(new WordsHeld());
    headerWords = new HeaderWords(schedules.get("abbreviations"));
    families = new Families(file(files, "families").get("families"), words);
    taught =
        new TaughtReader(listed, language.get("places"))
            .read(layers.stream().map(layer -> layer.root().get("words")).toList())
            .and(lessons);
    attributes =
        new Attributes(listed, language.get("groups"), words, families, taught, headerWords);
    lists = new WordLists(language, schedules, materials, words, taught);
    glass =
        new GlassNames(
            list("glassTile"),
            list("glassTileAbroad"),
            list("glassAlone"),
            list("notTile"),
            words.byName(materials.get("otherTile")));
    sections = new SectionRoles(file(files, "sections"), families, attributes);
    standards = new StandardList(file(files, "standards").get("standards"), families, attributes);
    surfaceHeaders = attributes.byTerm(schedules.get("surfaces"), "location.surface");
    alike = words.byName(schedules.get("alike"));
    abroad = wordsByName(schedules.get("abroad"), headings(schedules, listed));
    ratioOfSpan = ListReader.regex(language.get("flatness").get("ratio"));
    for (ConfigNode c : language.get("flatness").get("classes").items())
      flatnessClasses.add(FlatnessClass.of(c, ListReader.regex(c.get("name"))));
    supposed = supposed(language.get("supposed"), words);
    for (ConfigNode list : language.get("full").entries()) attribute(list, list.key());
    full = words.byName(language.get("full"));
    asksNothing(language.get("asksNothing"), words);
    places =
        new PlaceWords(language.get("places"), language.get("covers"), words, attributes, taught);
    for (ConfigNode form : language.get("amendments").items())
      amendments.add(
          Pattern.compile(ListReader.regex(form), Pattern.CASE_INSENSITIVE | Pattern.DOTALL));
    for (String list : List.of("schedule.tag", "schedule.material", "schedule.filler"))
      list(list).plain().forEach(headerWords::know);
    headings = new HeadingEvidence(this);
  }

  private static ConfigNode file(Files files, String name) throws IOException {
    return ConfigFile.read(files.open("vocabulary/" + name + ".yaml"), name).root();
  }

  private Map<String, Phrases> supposed(ConfigNode map, ListReader words) throws ConfigException {
    for (ConfigNode list : map.entries()) {
      String[] name = list.key().split(" ", 2);
      if (name.length != 2) throw list.fault("not an attribute and one of its terms");
      attributes.requireTerm(list, name[1], attribute(list, name[0]).id());
    }
    return words.byName(map);
  }

  private void asksNothing(ConfigNode map, ListReader words) throws ConfigException {
    Phrases any = words.phrases(map.get(ANY));
    for (ConfigNode list : map.entries()) {
      if (list.key().equals(ANY)) continue;
      attribute(list, list.key());
      asksNothing.put(list.key(), words.phrases(list).and(any));
    }
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
    return attributes.all();
  }

  /** What the words of a text point to. */
  public Lexicon lexicon() {
    return headings.lexicon();
  }

  /** The attribute of that name, or empty. */
  public Optional<Attribute> attribute(String id) {
    return attributes.find(id);
  }

  /** The attribute that the text of a node names. */
  public Attribute attribute(ConfigNode node) throws ConfigException {
    return attribute(node, node.text());
  }

  /** The attribute of a name that a file gives. */
  public Attribute attribute(ConfigNode place, String id) throws ConfigException {
    return attributes.require(place, id);
  }

  /** The attributes whose headings may be in a text, found by one look at it. */
  public List<Attribute> mayHead(String text) {
    return attributes.mayHead(text);
  }

  /** The label of an attribute; its name when the vocabulary has none. */
  public String label(String id) {
    return attribute(id).map(Attribute::label).orElse(id);
  }

  /** Words that tell glass tile from what is none. */
  public GlassNames glass() {
    return glass;
  }

  /** What sections may say. */
  public SectionRoles sections() {
    return sections;
  }

  /** The standards that are known. */
  public StandardList standards() {
    return standards;
  }

  /** Words for places. */
  public PlaceWords places() {
    return places;
  }

  /** Part of the work that a text speaks of; empty when it speaks of none. */
  public String family(String text) {
    return families.of(text);
  }

  public Map<String, Phrases> families() {
    return families.byName();
  }

  /** True for words that name and place things, with no verb that says or asks anything of them. */
  public boolean isVerbless(String words) {
    return !list("clause.verb").in(words) && !list("clause.imperative").in(words);
  }

  public Map<String, Phrases> surfaceHeaders() {
    return surfaceHeaders;
  }

  /** All headings of columns that are known as such. */
  private static Set<String> headings(ConfigNode schedules, ConfigNode attributes) {
    Set<String> out = new TreeSet<>(schedules.get("tag").texts());
    out.addAll(schedules.get("material").texts());
    for (ConfigNode attribute : attributes.items()) out.addAll(attribute.get("headers").texts());
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
    return lists.of(name);
  }
}
