package clearbed.check;

import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Kind;
import clearbed.model.Level;
import clearbed.recognise.Attribute;
import clearbed.recognise.Quantities;
import clearbed.recognise.StandardFiles;
import clearbed.recognise.Vocabulary;
import clearbed.resolve.ProjectFact;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Loads a standard rule set and lays rule files over it. */
public final class RuleSets {
  private final Vocabulary vocabulary;

  public RuleSets(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param set name of a bundled set, such as {@code north-america}
   * @param layers rule files, the later over the earlier
   * @throws RuleFileException naming file, line and reason
   */
  public RuleSet load(String set, List<Path> layers) throws RuleFileException {
    List<RuleFile> files = new ArrayList<>();
    files.addAll(withBase(bundled(set)));
    for (Path layer : layers) files.add(layer(layer));
    return merge(files);
  }

  /**
   * Validates one file by itself; a layer is tried over its own or the standard set.
   *
   * @throws RuleFileException naming file, line and reason
   */
  public RuleSet validate(Path path, String set) throws RuleFileException {
    RuleFile file = layer(path);
    return merge(file.tree().has("ruleSet") ? withBase(file) : over(set, file));
  }

  private static List<RuleFile> over(String set, RuleFile layer) throws RuleFileException {
    List<RuleFile> files = new ArrayList<>(withBase(bundled(set)));
    files.add(layer);
    return files;
  }

  /** A set may build on another one and say only what differs. */
  private static List<RuleFile> withBase(RuleFile file) throws RuleFileException {
    return file.tree().has("over")
        ? List.of(bundled(file.tree().get("over").asText()), file)
        : List.of(file);
  }

  private static RuleFile bundled(String set) throws RuleFileException {
    if (!set.matches("[a-z0-9-]+"))
      throw new RuleFileException(
          "no rule set named " + set + "; there are north-america and iso-en");
    try {
      StandardFiles.Source source = StandardFiles.open(set + ".yaml");
      return source.edited()
          ? RuleFile.parse(source.name(), source.bytes())
          : RuleFile.unchecked(source.name(), source.bytes());
    } catch (IOException e) {
      throw new RuleFileException(
          "no rule set named " + set + "; there are north-america and iso-en");
    }
  }

  private static RuleFile layer(Path path) throws RuleFileException {
    try {
      return RuleFile.parse(path.toString(), Files.readAllBytes(path));
    } catch (NoSuchFileException e) {
      throw new RuleFileException(path + ": no such rule file; check the path");
    } catch (IOException e) {
      throw new RuleFileException(path + ": cannot be read: " + e.getMessage());
    }
  }

  private RuleSet merge(List<RuleFile> files) throws RuleFileException {
    Map<String, ObjectNode> checks = new LinkedHashMap<>();
    Map<String, Place> places = new LinkedHashMap<>();
    List<RuleSet.Suppression> suppressions = new ArrayList<>();
    List<ProjectFact> facts = new ArrayList<>();
    List<ProjectFact> assumptions = new ArrayList<>();
    String guideline = "";
    for (RuleFile file : files) {
      int i = 0;
      for (JsonNode check : file.tree().path("checks")) {
        String id = check.get("id").asText();
        Place place = new Place(file, "/checks/" + i++);
        boolean twice = places.containsKey(id) && places.get(id).file() == file;
        if (twice) throw file.fault(place.pointer(), "check " + id + " stands twice in this file");
        if (checks.containsKey(id)) checks.get(id).setAll((ObjectNode) check);
        else checks.put(id, ((ObjectNode) check).deepCopy());
        places.put(id, place);
      }
      suppressions(file, suppressions);
      facts(file, "facts", facts);
      facts(file, "assumptions", assumptions);
      if (file.tree().has("guideline")) guideline = file.tree().get("guideline").asText();
    }
    List<Rule> rules = new ArrayList<>();
    for (Map.Entry<String, ObjectNode> e : checks.entrySet())
      rules.add(rule(e.getValue(), places.get(e.getKey())));
    known(suppressions, checks, files);
    JsonNode base =
        files.stream()
            .filter(f -> f.tree().has("ruleSet"))
            .reduce((a, b) -> b)
            .orElseThrow()
            .tree();
    List<String> layers =
        files.stream()
            .filter(f -> f.tree().has("layer"))
            .map(f -> f.tree().get("layer").asText() + " (" + f.name() + ")")
            .toList();
    return new RuleSet(
        base.get("ruleSet").asText(),
        base.path("title").asText(""),
        digest(files),
        layers,
        rules,
        suppressions,
        facts,
        assumptions,
        Guidelines.load(guideline));
  }

  private record Place(RuleFile file, String pointer) {
    RuleFileException fault(String key, String reason) {
      return file.fault(pointer + "/" + key, reason);
    }
  }

  private static void known(
      List<RuleSet.Suppression> suppressions, Map<String, ObjectNode> checks, List<RuleFile> files)
      throws RuleFileException {
    for (RuleSet.Suppression s : suppressions) {
      if (!s.check().isEmpty() && !checks.containsKey(s.check())) {
        throw new RuleFileException(
            s.file()
                + ": suppresses the check "
                + s.check()
                + ", which does not exist; see clearbed explain");
      }
    }
  }

  private static void suppressions(RuleFile file, List<RuleSet.Suppression> out) {
    for (JsonNode s : file.tree().path("suppress")) {
      out.add(
          new RuleSet.Suppression(
              s.path("check").asText(""),
              s.path("id").asText(""),
              s.path("tag").asText(""),
              s.get("reason").asText(),
              file.name()));
    }
  }

  private void facts(RuleFile file, String list, List<ProjectFact> out) throws RuleFileException {
    int i = 0;
    for (JsonNode f : file.tree().path(list)) {
      String pointer = "/" + list + "/" + i++;
      String id = f.get("attribute").asText();
      Attribute attribute =
          vocabulary
              .attribute(id)
              .orElseThrow(() -> file.fault(pointer + "/attribute", "no attribute named " + id));
      if (list.equals("assumptions") && !Assumptions.ATTRIBUTES.contains(id))
        throw file.fault(
            pointer + "/attribute",
            id
                + " cannot be assumed, only stated; what can be is "
                + String.join(", ", new java.util.TreeSet<>(Assumptions.ATTRIBUTES)));
      String written = f.get("value").asText();
      Content content = content(attribute, written);
      if (content == null)
        throw file.fault(
            pointer + "/value",
            "'" + written + "' is not a value of " + id + ": " + form(attribute));
      String words = vocabulary.label(id) + " " + written + ": " + f.get("reason").asText();
      out.add(
          new ProjectFact(
              id,
              content,
              strings(f.get("tag")),
              strings(f.get("room")),
              strings(f.get("exposure")),
              words,
              file.name()));
    }
  }

  private static String form(Attribute attribute) {
    return switch (attribute.kind()) {
      case AMOUNT -> "a figure with a unit is wanted, such as 400 psi";
      case TERM -> "not one of its terms";
      default -> "not understood";
    };
  }

  private static Content content(Attribute attribute, String written) {
    return switch (attribute.kind()) {
      case AMOUNT -> Quantities.parse(written, attribute.dimension()).orElse(null);
      case TERM -> attribute.hasTerm(written) ? new Content.Term(written) : null;
      case STANDARD -> new Content.Standard(written, "");
      case REQUIRED -> new Content.Required();
      default -> new Content.Words(written);
    };
  }

  private Rule rule(ObjectNode n, Place place) throws RuleFileException {
    String attribute = n.path("attribute").asText("");
    if (!attribute.isEmpty() && vocabulary.attribute(attribute).isEmpty())
      throw place.fault("attribute", "no attribute named " + attribute);
    for (String needed : List.of("title", "group", "expect", "level", "why", "mark")) {
      if (!n.has(needed))
        throw place.fault("id", "check " + n.get("id").asText() + " lacks '" + needed + "'");
    }
    for (String list : List.of("instead")) {
      for (String id : strings(n.get(list))) {
        if (vocabulary.attribute(id).isEmpty()) throw place.fault(list, "no attribute named " + id);
      }
    }
    Level level = level(n.get("level").asText());
    Level missing = n.has("missingLevel") ? level(n.get("missingLevel").asText()) : level;
    Kind kind =
        n.has("kind")
            ? Kind.valueOf(n.get("kind").asText().toUpperCase(Locale.ROOT))
            : Kind.INADEQUATE;
    String family = vocabulary.attribute(attribute).map(Attribute::family).orElse("");
    boolean bySection =
        n.has("statedIn")
            ? n.get("statedIn").asText().equals("section")
            : !List.of("tile", "location").contains(family);
    Rule.Mistaken mistaken =
        n.has("mistaken")
            ? new Rule.Mistaken(
                n.get("mistaken").get("attribute").asText(),
                n.get("mistaken").get("message").asText())
            : null;
    return new Rule(
        n.get("id").asText(),
        n.path("off").asBoolean(),
        text(n, "title"),
        text(n, "group"),
        attribute,
        conditions(n.get("when"), place, "when"),
        conditions(n.get("unless"), place, "unless"),
        expectation(n.get("expect"), attribute, place),
        strings(n.get("instead")),
        mistaken,
        level,
        missing,
        kind,
        bySection,
        n.path("silentWhenMissing").asBoolean(),
        n.path("everywhere").asBoolean(),
        n.path("emptyCellIsMissing").asBoolean(),
        text(n, "partOf"),
        wording(n));
  }

  private static Rule.Wording wording(ObjectNode n) {
    return new Rule.Wording(
        text(n, "missing"),
        text(n, "inadequate"),
        text(n, "expected"),
        text(n, "why"),
        text(n, "source"),
        text(n, "mark"),
        text(n, "question"),
        text(n, "clause"),
        text(n, "answer"));
  }

  private List<Map<String, List<String>>> conditions(JsonNode node, Place place, String key)
      throws RuleFileException {
    List<Map<String, List<String>>> out = new ArrayList<>();
    if (node == null) return out;
    for (JsonNode one : node.isArray() ? node : List.of(node)) {
      Map<String, List<String>> condition = new LinkedHashMap<>();
      for (Map.Entry<String, JsonNode> e : one.properties()) {
        Attribute attribute = vocabulary.attribute(e.getKey()).orElse(null);
        if (attribute == null) throw place.fault(key, "no attribute named " + e.getKey());
        List<String> terms = strings(e.getValue());
        for (String term : terms) {
          if (attribute.kind() == Attribute.Kind.TERM
              && !attribute.hasTerm(term)
              && !term.equals("stated"))
            throw place.fault(key, "'" + term + "' is not a term of " + e.getKey());
        }
        condition.put(e.getKey(), terms);
      }
      out.add(condition);
    }
    return out;
  }

  private Expectation expectation(JsonNode n, String id, Place place) throws RuleFileException {
    Map.Entry<String, JsonNode> e = n.properties().iterator().next();
    Attribute attribute = vocabulary.attribute(id).orElse(null);
    return switch (e.getKey()) {
      case "stated" -> new Expectation.Stated();
      case "anyOf" -> new Expectation.AnyOf(accepted(attribute, e.getValue(), place));
      case "allOf" -> new Expectation.AllOf(accepted(attribute, e.getValue(), place));
      case "noneOf" -> new Expectation.NoneOf(accepted(attribute, e.getValue(), place));
      case "above" ->
          new Expectation.Limit(amount(attribute, e.getValue().asText(), Bound.ABOVE, place));
      case "atLeast" ->
          new Expectation.Limit(amount(attribute, e.getValue().asText(), Bound.AT_LEAST, place));
      case "atMost" ->
          new Expectation.Limit(amount(attribute, e.getValue().asText(), Bound.AT_MOST, place));
      case "within" ->
          new Expectation.Within(amount(attribute, e.getValue().asText(), Bound.EXACT, place));
      case "agreesWith" -> new Expectation.AgreesWith(e.getValue().asText());
      default -> computed(e.getValue().asText(), place);
    };
  }

  private static Expectation computed(String name, Place place) throws RuleFileException {
    if (!Computations.names().contains(name))
      throw place.fault(
          "expect",
          "nothing is computed under the name "
              + name
              + "; there are "
              + String.join(", ", Computations.names()));
    return new Expectation.Computed(name);
  }

  private static List<String> accepted(Attribute attribute, JsonNode node, Place place)
      throws RuleFileException {
    List<String> values = strings(node);
    if (attribute != null && attribute.kind() == Attribute.Kind.TERM) {
      for (String v : values) {
        if (!attribute.hasTerm(v))
          throw place.fault("expect", "'" + v + "' is not a term of " + attribute.id());
      }
    }
    return values;
  }

  private static Content.Amount amount(
      Attribute attribute, String written, Bound bound, Place place) throws RuleFileException {
    Dimension dimension = attribute == null ? null : attribute.dimension();
    Content.Amount amount =
        dimension == null ? null : Quantities.parse(written, dimension).orElse(null);
    if (amount == null)
      throw place.fault(
          "expect",
          "'"
              + written
              + "' is not a figure for "
              + (attribute == null ? "this check" : attribute.id())
              + "; write number and unit, such as 400 psi");
    return new Content.Amount(amount.low(), amount.high(), bound);
  }

  private static Level level(String word) {
    return Level.valueOf(word.toUpperCase(Locale.ROOT));
  }

  private static String text(JsonNode n, String key) {
    return n.path(key).asText("").trim().replaceAll("\\s+", " ");
  }

  private static List<String> strings(JsonNode node) {
    List<String> out = new ArrayList<>();
    if (node == null) return out;
    if (node.isArray()) node.forEach(i -> out.add(i.asText()));
    else out.add(node.asText());
    return out;
  }

  private static String digest(List<RuleFile> files) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      for (RuleFile file : files) sha.update(file.text().getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
