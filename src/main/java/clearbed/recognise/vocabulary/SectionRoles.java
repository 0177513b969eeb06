package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What sections may say of glass tile, of {@code sections.yaml}, by their numbers and titles. */
public final class SectionRoles {

  private final List<SectionRole> roles = new ArrayList<>();
  private final Map<String, String> titles = new LinkedHashMap<>();

  SectionRoles(ConfigNode file, Families families, Attributes attributes) throws ConfigException {
    for (ConfigNode s : file.get("sections").items()) {
      for (ConfigNode family : s.get("families").items()) families.require(family);
      for (ConfigNode id : s.get("only").items()) attributes.require(id, id.text());
      roles.add(
          new SectionRole(
              s.get("number").text(),
              s.get("scope").text().equals("article"),
              s.get("families").texts(),
              s.get("only").texts()));
    }
    for (ConfigNode t : file.get("titles").items()) {
      if (of(t.get("as").text(), "").isEmpty())
        throw t.get("as").fault("'" + t.get("as").text() + "' is no section of this file");
      titles.put(t.get("title").text(), t.get("as").text());
    }
  }

  /** What a section of that number may say; by title where there is none, or none of the list. */
  public Optional<SectionRole> of(String number, String title) {
    String n = number.isEmpty() ? byTitle(title) : number;
    if (n.isEmpty()) return Optional.empty();
    SectionRole best = null;
    for (SectionRole role : roles) {
      if (n.startsWith(role.number())
          && (best == null || role.number().length() > best.number().length())) best = role;
    }
    if (best == null && !number.isEmpty()) return of("", title);
    return Optional.ofNullable(best);
  }

  private String byTitle(String title) {
    String lower = title.toLowerCase(Locale.ROOT);
    return titles.entrySet().stream()
        .filter(e -> lower.contains(e.getKey()))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElse("");
  }
}
