package clearbed.check.rules;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads a check as rule files write it. */
final class RuleReader {
  private final Vocabulary vocabulary;
  private final Set<String> computations;

  /**
   * @param computations names of what a rule may ask to have computed
   */
  RuleReader(Vocabulary vocabulary, Set<String> computations) {
    this.vocabulary = vocabulary;
    this.computations = computations;
  }

  /**
   * @param checks all of them, by id; a layer may have meant another than it says
   * @throws ConfigException naming file, line and reason
   */
  Rule read(LayeredCheck n, Map<String, LayeredCheck> checks) throws ConfigException {
    String id = n.text("id");
    for (String needed : List.of("title", "group", "expect", "level", "why", "mark")) {
      if (n.has(needed)) continue;
      List<String> others = checks.keySet().stream().filter(other -> !other.equals(id)).toList();
      // A layer's word that is near a check's is that check; another is a check of its own.
      throw n.get("id")
          .perhaps(id, "no check named " + id, others, "check " + id + " lacks '" + needed + "'");
    }
    Attribute attribute = n.has("attribute") ? vocabulary.attribute(n.get("attribute")) : null;
    for (ConfigNode instead : n.get("instead").items()) vocabulary.attribute(instead);
    Level level = n.get("level").oneOf(Level.values());
    Level missing = n.has("missingLevel") ? n.get("missingLevel").oneOf(Level.values()) : level;
    Level unlikeOthers =
        n.has("unlikeOthersLevel") ? n.get("unlikeOthersLevel").oneOf(Level.values()) : missing;
    String family = attribute == null ? "" : attribute.family();
    return new Rule(
        id,
        n.get("off").isTrue(),
        n.wording("title"),
        n.text("group"),
        n.text("attribute"),
        conditions(n.get("when")),
        conditions(n.get("unless")),
        expectation(n.get("expect").entries().get(0), attribute),
        n.get("instead").texts(),
        n.has("mistaken") && n.get("mistaken").has("message") ? mistaken(n.get("mistaken")) : null,
        level,
        missing,
        n.has("emptyCellLevel") ? n.get("emptyCellLevel").oneOf(Level.values()) : missing,
        unlikeOthers,
        n.get("whereOthersHaveIt").isTrue(),
        n.has("kind") ? n.get("kind").oneOf(FindingKind.values()) : FindingKind.INADEQUATE,
        n.has("statedIn")
            ? n.text("statedIn").equals("section")
            : !List.of("tile", "location").contains(family),
        n.get("silentWhenMissing").isTrue(),
        n.get("everywhere").isTrue(),
        n.get("emptyCellIsMissing").isTrue(),
        n.text("partOf"),
        n.has("partOf") && !sameAttribute(n, checks),
        new Rule.RuleWording(
            n.wording("missing"),
            n.wording("inadequate"),
            n.wording("expected"),
            n.text("why"),
            n.text("source"),
            n.text("mark"),
            n.wording("question"),
            n.wording("clause"),
            n.wording("answer")));
  }

  private static boolean sameAttribute(LayeredCheck part, Map<String, LayeredCheck> checks) {
    LayeredCheck whole = checks.get(part.text("partOf"));
    return whole != null && whole.text("attribute").equals(part.text("attribute"));
  }

  private Rule.Mistaken mistaken(ConfigNode node) throws ConfigException {
    String attribute = vocabulary.attribute(node.get("attribute")).id();
    return new Rule.Mistaken(attribute, node.get("message").text());
  }

  private List<Map<String, List<String>>> conditions(ConfigNode node) throws ConfigException {
    List<Map<String, List<String>>> out = new ArrayList<>();
    for (ConfigNode one : node.items()) {
      Map<String, List<String>> condition = new LinkedHashMap<>();
      for (ConfigNode terms : one.entries()) {
        Attribute attribute = vocabulary.attribute(terms, terms.key());
        for (ConfigNode term : terms.items()) {
          if (!term.text().equals("stated")) checkTerm(term, attribute);
        }
        condition.put(attribute.id(), terms.texts());
      }
      out.add(condition);
    }
    return out;
  }

  private Expectation expectation(ConfigNode n, Attribute attribute) throws ConfigException {
    return switch (n.key()) {
      case "stated" -> new Expectation.AnyStatement();
      case "anyOf" -> new Expectation.AnyOf(accepted(n, attribute));
      case "allOf" -> new Expectation.AllOf(accepted(n, attribute));
      case "noneOf" -> new Expectation.NoneOf(accepted(n, attribute));
      case "above" -> new Expectation.Limit(amount(n, attribute, Bound.ABOVE));
      case "atLeast" -> new Expectation.Limit(amount(n, attribute, Bound.AT_LEAST));
      case "atMost" -> new Expectation.Limit(amount(n, attribute, Bound.AT_MOST));
      case "within" -> new Expectation.Within(amount(n, attribute, Bound.EXACT));
      case "agreesWith" -> new Expectation.AgreesWith(vocabulary.attribute(n).id());
      default -> computed(n);
    };
  }

  private Expectation computed(ConfigNode name) throws ConfigException {
    String word = name.text();
    if (!computations.contains(word))
      throw name.unknown(word, "nothing is computed under the name " + word, computations);
    return new Expectation.Computed(word);
  }

  private static List<String> accepted(ConfigNode values, Attribute attribute)
      throws ConfigException {
    for (ConfigNode value : values.items()) {
      if (attribute != null) checkTerm(value, attribute);
    }
    return values.texts();
  }

  private static void checkTerm(ConfigNode term, Attribute attribute) throws ConfigException {
    if (attribute.kind() == Attribute.Kind.TERM && !attribute.hasTerm(term.text()))
      throw noTerm(term, attribute);
  }

  private static Content.Amount amount(ConfigNode written, Attribute attribute, Bound bound)
      throws ConfigException {
    Dimension dimension = attribute == null ? null : attribute.dimension();
    Content.Amount amount =
        dimension == null ? null : Quantities.parse(written.text(), dimension).orElse(null);
    if (amount == null) throw noFigure(written, attribute);
    return new Content.Amount(amount.low(), amount.high(), bound);
  }

  static ConfigException noTerm(ConfigNode term, Attribute attribute) {
    String word = term.text();
    return term.unknown(
        word, "'" + word + "' is not a term of " + attribute.id(), attribute.terms());
  }

  static ConfigException noFigure(ConfigNode written, Attribute attribute) {
    return written.fault(
        "'"
            + written.key()
            + "' wants a quantity such as '"
            + (attribute == null ? "400 psi" : example(attribute))
            + "', found "
            + written.text());
  }

  /** A figure of the kind that an attribute has. */
  private static String example(Attribute attribute) {
    return switch (attribute.dimension()) {
      case LENGTH -> "1/8 in";
      case AREA -> "10 sq ft";
      case PRESSURE -> "450 psi";
      case TEMPERATURE -> "50 °F";
      case TEMPERATURE_DIFFERENCE -> "100 °F";
      case RATIO -> "95 %";
      case PERMEANCE -> "0.5 perm";
      case EXPANSION -> "9e-6/K";
      case VOLUME -> "300 ml";
      case MASS -> "25 lb";
      case TIME -> "28 days";
      case COUNT -> "2";
    };
  }
}
