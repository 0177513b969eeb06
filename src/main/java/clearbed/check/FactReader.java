package clearbed.check;

import clearbed.model.Content;
import clearbed.recognise.Attribute;
import clearbed.recognise.Quantities;
import clearbed.recognise.Vocabulary;
import clearbed.resolve.ProjectFact;
import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Reads what a rule file states or assumes of the project, documents apart. */
final class FactReader {
  private final Vocabulary vocabulary;

  FactReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param list {@code facts} or {@code assumptions}
   * @throws RuleFileException naming file, line and reason
   */
  List<ProjectFact> read(RuleFile file, String list) throws RuleFileException {
    List<ProjectFact> out = new ArrayList<>();
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
                + String.join(", ", new TreeSet<>(Assumptions.ATTRIBUTES)));
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
              RuleReader.strings(f.get("tag")),
              RuleReader.strings(f.get("room")),
              RuleReader.strings(f.get("exposure")),
              words,
              file.name()));
    }
    return out;
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
}
