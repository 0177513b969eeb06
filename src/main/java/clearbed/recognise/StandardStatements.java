package clearbed.recognise;

import java.util.List;
import java.util.regex.Pattern;

/** The standards that a text requires, by the attribute they state. */
final class StandardStatements {
  private static final Pattern TESTED =
      Pattern.compile(
          "(?:tested|test(?:ing)?|determined|measured|method)\\b[^.;,]{0,40}$",
          Pattern.CASE_INSENSITIVE);

  private final Vocabulary vocabulary;

  StandardStatements(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  void addTo(List<Statement> out, Passage p) {
    for (Citations.Found found : Citations.find(p.text)) {
      StandardInfo info = vocabulary.standardOf(found.standard().designation()).orElse(null);
      String id = info == null ? "" : statedBy(p, info, found);
      if (info == null && p.context.attribute().endsWith(".standard")) id = p.context.attribute();
      Attribute attribute = vocabulary.attribute(id).orElse(null);
      if (attribute == null) continue;
      if (TESTED.matcher(p.text.substring(0, found.start())).find()
          && attribute.id().equals("mortar.standard")) continue;
      p.add(out, attribute, found.standard(), p.negated(found.start(), found.end()));
    }
  }

  private String statedBy(Passage p, StandardInfo info, Citations.Found found) {
    if (info.states().isEmpty()) return "";
    if (info.states().size() == 1) return info.states().get(0);
    String family = p.familyNear(found.start(), found.end());
    int i = info.families().indexOf(family);
    return info.states().get(Math.max(0, i));
  }
}
