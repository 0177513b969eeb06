package clearbed.check;

import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Dimension;
import clearbed.model.Kind;
import clearbed.model.Level;
import clearbed.recognise.Attribute;
import clearbed.recognise.Quantities;
import clearbed.recognise.Vocabulary;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Reads a check as a rule file writes it. */
final class RuleReader {
  private final Vocabulary vocabulary;

  RuleReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Where a check stands, for what is wrong with it. */
  record Place(RuleFile file, String pointer) {
    RuleFileException fault(String key, String reason) {
      return file.fault(pointer + "/" + key, reason);
    }
  }

  /**
   * @throws RuleFileException naming file, line and reason
   */
  Rule read(ObjectNode n, Place place) throws RuleFileException {
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

  static List<String> strings(JsonNode node) {
    List<String> out = new ArrayList<>();
    if (node == null) return out;
    if (node.isArray()) node.forEach(i -> out.add(i.asText()));
    else out.add(node.asText());
    return out;
  }
}
