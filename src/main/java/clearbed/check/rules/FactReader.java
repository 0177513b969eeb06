package clearbed.check.rules;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigFile;
import clearbed.base.config.ConfigNode;
import clearbed.model.value.Content;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.ProjectFact;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;

/** Reads what a rule file states or assumes of the project, documents apart. */
final class FactReader {
  private final Vocabulary vocabulary;

  FactReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  List<ProjectFact> facts(ConfigFile file) throws ConfigException {
    List<ProjectFact> out = new ArrayList<>();
    for (ConfigNode fact : file.root().get("facts").items())
      out.add(read(fact, vocabulary.places().known()));
    return out;
  }

  List<ProjectFact> assumptions(ConfigFile file) throws ConfigException {
    List<ProjectFact> out = new ArrayList<>();
    for (ConfigNode fact : file.root().get("assumptions").items()) {
      ConfigNode id = fact.get("attribute");
      vocabulary.attribute(id);
      if (!Assumptions.ATTRIBUTES.contains(id.text()))
        throw id.fault(
            id.text()
                + " cannot be assumed, only stated; what can be is "
                + String.join(", ", new TreeSet<>(Assumptions.ATTRIBUTES)));
      out.add(read(fact, vocabulary.attribute("location.exposure").orElseThrow().terms()));
    }
    return out;
  }

  private ProjectFact read(ConfigNode fact, Collection<String> exposures) throws ConfigException {
    Attribute attribute = vocabulary.attribute(fact.get("attribute"));
    ConfigNode value = fact.get("value");
    String written = value.text();
    Content content = content(attribute, written);
    if (content == null) throw wrong(value, attribute);
    for (ConfigNode exposure : fact.get("exposure").items()) {
      if (!exposures.contains(exposure.text()))
        throw exposure.unknown(exposure.text(), "no exposure named " + exposure.text(), exposures);
    }
    return new ProjectFact(
        attribute.id(),
        content,
        fact.get("tag").texts(),
        fact.get("room").texts(),
        fact.get("exposure").texts(),
        attribute.label() + " " + written + ": " + fact.get("reason").text(),
        fact.file().name());
  }

  private static ConfigException wrong(ConfigNode value, Attribute attribute) {
    return attribute.kind() == Attribute.Kind.TERM
        ? RuleReader.noTerm(value, attribute)
        : RuleReader.noFigure(value, attribute);
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
}
