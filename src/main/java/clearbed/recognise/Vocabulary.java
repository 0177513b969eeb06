package clearbed.recognise;

import clearbed.model.Content;
import clearbed.model.Dimension;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.PatternSyntaxException;

/** The words of the trade, from {@code rulesets/vocabulary/*.yaml}: read once, never changed. */
public final class Vocabulary {

  /** What a section may say of glass tile. */
  record SectionRole(String number, boolean article, List<String> families, List<String> only) {}

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

  private final WordsHeld wordsHeld = new WordsHeld();
  private final List<Attribute> attributes;
  private final Map<String, Attribute> byId = new LinkedHashMap<>();
  private final Map<String, Phrases> families = new LinkedHashMap<>();
  private final Map<String, StandardInfo> standards = new LinkedHashMap<>();
  private final Map<String, Phrases> otherTile = new LinkedHashMap<>();
  private final List<SectionRole> sections = new ArrayList<>();
  private final Map<String, String> sectionTitles = new LinkedHashMap<>();
  private final Map<String, List<String>> covers = new LinkedHashMap<>();
  private final Map<String, Phrases> exposurePlaces = new LinkedHashMap<>();
  private final Map<String, Phrases> surfacePlaces = new LinkedHashMap<>();
  private final Map<String, Phrases> language = new LinkedHashMap<>();
  private final Map<String, Phrases> surfaceHeaders = new LinkedHashMap<>();
  private final HeaderWords headerWords;
  private final String placeLead;

  private Vocabulary(
      JsonNode attributes,
      JsonNode families,
      JsonNode materials,
      JsonNode sections,
      JsonNode standards,
      JsonNode language,
      JsonNode schedules) {
    this.attributes = attributes(attributes.get("attributes"), language.get("groups"));
    this.attributes.forEach(a -> byId.put(a.id(), a));
    families
        .get("families")
        .properties()
        .forEach(e -> this.families.put(e.getKey(), phrases(e.getValue())));
    materials
        .get("otherTile")
        .properties()
        .forEach(e -> otherTile.put(e.getKey(), phrases(e.getValue())));
    for (String list : List.of("glassTile", "glassAlone", "notTile"))
      this.language.put(list, phrases(materials.get(list)));
    for (JsonNode s : sections.get("sections")) {
      this.sections.add(
          new SectionRole(
              s.get("number").asText(),
              s.get("scope").asText().equals("article"),
              strings(s.get("families")),
              strings(s.get("only"))));
    }
    for (JsonNode t : sections.get("titles"))
      sectionTitles.put(t.get("title").asText(), t.get("as").asText());
    for (JsonNode s : standards.get("standards")) {
      StandardInfo info = standard(s);
      this.standards.put(info.designation(), info);
    }
    language
        .get("negation")
        .properties()
        .forEach(e -> this.language.put("negation." + e.getKey(), phrases(e.getValue())));
    for (String list : List.of("open", "vague", "empty", "ditto", "references", "except"))
      this.language.put(list, phrases(language.get(list)));
    for (String list :
        List.of("tag", "material", "roomNumber", "filler", "elsewhere", "besideFigures"))
      this.language.put("schedule." + list, phrases(schedules.get(list)));
    schedules
        .get("surfaces")
        .properties()
        .forEach(e -> surfaceHeaders.put(e.getKey(), phrases(e.getValue())));
    headerWords =
        new HeaderWords(schedules.get("abbreviations"), attributes.get("attributes"), byId);
    JsonNode places = language.get("places");
    placeLead = places.get("lead").asText();
    places
        .get("exposure")
        .properties()
        .forEach(e -> exposurePlaces.put(e.getKey(), phrases(e.getValue())));
    places
        .get("surface")
        .properties()
        .forEach(e -> surfacePlaces.put(e.getKey(), phrases(e.getValue())));
    language.get("covers").properties().forEach(e -> covers.put(e.getKey(), strings(e.getValue())));
  }

  /**
   * Reads the vocabulary that ships with the tool, or the edited one beside the installed program.
   *
   * @throws IOException naming the file and the reason, when one cannot be read or understood
   */
  public static Vocabulary standard() throws IOException {
    List<JsonNode> trees = new ArrayList<>();
    for (String file : FILES) trees.add(tree(StandardFiles.open(file)));
    try {
      return new Vocabulary(
          trees.get(0),
          trees.get(1),
          trees.get(2),
          trees.get(3),
          trees.get(4),
          trees.get(5),
          trees.get(6));
    } catch (NullPointerException | IllegalArgumentException e) {
      String why =
          e instanceof PatternSyntaxException p
              ? "pattern not understood: " + p.getPattern()
              : String.valueOf(e.getMessage());
      throw new IOException("rulesets/vocabulary: " + why, e);
    }
  }

  private static JsonNode tree(StandardFiles.Source source) throws IOException {
    JsonNode prepared = PreparedTree.of(source);
    if (prepared != null) return prepared;
    try {
      return new ObjectMapper(new YAMLFactory()).readTree(source.bytes());
    } catch (com.fasterxml.jackson.core.JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      throw new IOException(
          source.name() + ":" + line + ": " + e.getOriginalMessage().lines().findFirst().orElse(""),
          e);
    }
  }

  public List<Attribute> attributes() {
    return attributes;
  }

  /** The attribute of that name, or empty. */
  public Optional<Attribute> attribute(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The label of an attribute; its name when the vocabulary has none. */
  public String label(String id) {
    Attribute attribute = byId.get(id);
    return attribute == null ? id : attribute.label();
  }

  public Optional<StandardInfo> standardOf(String designation) {
    StandardInfo info = standards.get(designation);
    // EN 12004-1 unlisted as a part is still EN 12004; so with BS and ISO.
    if (info == null && designation.matches("(?:EN|BS|ISO) \\d+-\\d+")) {
      info = standards.get(designation.substring(0, designation.indexOf('-')));
    }
    return Optional.ofNullable(info);
  }

  /** True when the words limited to {@code place} hold at {@code exposure}. */
  public boolean covers(String place, String exposure) {
    return covers.getOrDefault(place, List.of(place)).contains(exposure);
  }

  /** True when the text speaks of glass tile. */
  public boolean speaksOfGlassTile(String text) {
    return list("glassTile").in(list("notTile").without(PlainText.of(text)));
  }

  /** True when glass tile is the first tile that the text speaks of. */
  public boolean describesGlassTile(String text) {
    String plain = list("notTile").without(PlainText.of(text));
    Phrases.Hit glass = list("glassTile").first(plain);
    return glass != null
        && otherTile.values().stream()
            .map(other -> other.first(plain))
            .allMatch(hit -> hit == null || hit.start() > glass.start());
  }

  Map<String, Phrases> families() {
    return families;
  }

  Map<String, Phrases> otherTile() {
    return otherTile;
  }

  Map<String, Phrases> exposurePlaces() {
    return exposurePlaces;
  }

  Map<String, Phrases> surfacePlaces() {
    return surfacePlaces;
  }

  Map<String, Phrases> surfaceHeaders() {
    return surfaceHeaders;
  }

  HeaderWords headerWords() {
    return headerWords;
  }

  String placeLead() {
    return placeLead;
  }

  /** A list of {@code language.yaml} or {@code materials.yaml}. */
  Phrases list(String name) {
    return language.get(name);
  }

  /** What a section of that number may say; by title where there is no number. */
  Optional<SectionRole> role(String number, String title) {
    String n = number.isEmpty() ? byTitle(title) : number;
    if (n.isEmpty()) return Optional.empty();
    SectionRole best = null;
    for (SectionRole role : sections) {
      if (n.startsWith(role.number())
          && (best == null || role.number().length() > best.number().length())) best = role;
    }
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

  private List<Attribute> attributes(JsonNode nodes, JsonNode groups) {
    List<Attribute> out = new ArrayList<>();
    for (JsonNode n : nodes) {
      Map<String, Phrases> terms = new LinkedHashMap<>();
      if (n.has("terms"))
        n.get("terms").properties().forEach(e -> terms.put(e.getKey(), phrases(e.getValue())));
      Dimension dimension =
          n.has("dimension")
              ? Dimension.valueOf(n.get("dimension").asText().toUpperCase(Locale.ROOT))
              : null;
      out.add(
          new Attribute(
              n.get("id").asText(),
              n.get("label").asText(),
              n.get("family").asText(),
              Attribute.Kind.valueOf(n.get("kind").asText().toUpperCase(Locale.ROOT)),
              n.path("single").asBoolean(),
              n.has("needs"),
              n.path("alone").asBoolean(),
              dimension,
              plausible(n, dimension),
              new Attribute.Words(
                  phrases(n.get("headers")),
                  phrases(n.get("cues")),
                  together(n.path("together"), groups),
                  phrases(n.get("not")),
                  terms)));
    }
    return List.copyOf(out);
  }

  /** Each a map of groups: words, or the name of a group of {@code language.yaml}. */
  private Together together(JsonNode nodes, JsonNode shared) {
    List<Together.Set> sets = new ArrayList<>();
    for (JsonNode set : nodes) {
      List<Phrases> groups = new ArrayList<>();
      Phrases without = new Phrases(List.of(), wordsHeld);
      for (Map.Entry<String, JsonNode> group : set.properties()) {
        Phrases words = group(group.getValue(), shared);
        if (group.getKey().equals("without")) without = words;
        else groups.add(words);
      }
      sets.add(new Together.Set(groups, without));
    }
    return new Together(sets);
  }

  private Phrases group(JsonNode node, JsonNode shared) {
    if (!node.isTextual()) return phrases(node);
    JsonNode named = shared.get(node.asText());
    if (named == null) throw new IllegalArgumentException("no group " + node.asText());
    return phrases(named);
  }

  private static Content.Amount plausible(JsonNode node, Dimension dimension) {
    if (!node.has("plausible")) return null;
    String[] ends = node.get("plausible").asText().split(" to ");
    Content.Amount low =
        Quantities.parse(ends[0], dimension)
            .orElseThrow(() -> new IllegalArgumentException("plausible: " + node.get("plausible")));
    Content.Amount high =
        Quantities.parse(ends[1], dimension)
            .orElseThrow(() -> new IllegalArgumentException("plausible: " + node.get("plausible")));
    return new Content.Amount(low.low(), high.high(), clearbed.model.Bound.EXACT);
  }

  private static StandardInfo standard(JsonNode n) {
    return new StandardInfo(
        n.get("designation").asText(),
        n.get("subject").asText(),
        strings(n.get("states")),
        strings(n.get("families")),
        n.get("status").asText(),
        n.path("successor").asText(""),
        n.get("mark").asText());
  }

  private Phrases phrases(JsonNode node) {
    return new Phrases(strings(node), wordsHeld);
  }

  private static List<String> strings(JsonNode node) {
    List<String> out = new ArrayList<>();
    if (node != null) node.forEach(item -> out.add(item.asText()));
    return out;
  }
}
