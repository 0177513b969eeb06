package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** The standards that are known, of {@code standards.yaml}. */
public final class StandardList {
  private static final Pattern NUMBERED_PART = Pattern.compile("(?:EN|BS|ISO|DIN|AS) \\d+-\\d+");

  private final Map<String, StandardInfo> byDesignation = new LinkedHashMap<>();

  StandardList(ConfigNode standards, Families families, Attributes attributes)
      throws ConfigException {
    for (ConfigNode n : standards.items()) {
      for (ConfigNode id : n.get("states").items()) attributes.require(id, id.text());
      for (ConfigNode family : n.get("families").items()) families.require(family);
      StandardInfo info = read(n);
      if (byDesignation.put(info.designation(), info) != null)
        throw n.get("designation").fault(info.designation() + " stands twice in this file");
    }
  }

  private static StandardInfo read(ConfigNode n) throws ConfigException {
    return new StandardInfo(
        n.get("designation").text(),
        n.get("subject").text(),
        n.get("states").texts(),
        n.get("families").texts(),
        n.get("status").text(),
        n.get("successor").text(),
        n.get("edition").text(),
        n.get("mark").text(),
        n.has("codes") ? ListReader.regex(n.get("codes")) : "",
        n.has("undated"));
  }

  /** What is known of a standard, or empty. */
  public Optional<StandardInfo> of(String designation) {
    StandardInfo info = byDesignation.get(designation);
    // EN 12004-1 unlisted as a part is still EN 12004; so with BS and ISO.
    if (info == null && NUMBERED_PART.matcher(designation).matches()) {
      info = byDesignation.get(designation.substring(0, designation.indexOf('-')));
    }
    return Optional.ofNullable(info);
  }

  /** The standard that a class is of, or empty. */
  public Optional<StandardInfo> ofCode(String code) {
    return byDesignation.values().stream()
        .filter(info -> !info.codes().isEmpty() && code.matches(info.codes()))
        .findFirst();
  }

  /** True where naming the standard states that attribute. */
  public boolean states(String designation, String attribute) {
    return of(designation).filter(i -> i.states().contains(attribute)).isPresent();
  }
}
