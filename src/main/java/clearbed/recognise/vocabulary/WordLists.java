package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Lists of words by their names, those of a group as {@code group.list}. */
final class WordLists {
  private static final String GLASS_TILE = "glassTile";

  private static final List<String> OF_MATERIALS =
      List.of(
          GLASS_TILE,
          "glassTileAbroad",
          "glassAlone",
          "behindGlass",
          "notTile",
          "namedOnly",
          "notGlassTitle",
          "otherFinish");

  private static final List<String> OF_LANGUAGE =
      List.of(
          "open",
          "empty",
          "ditto",
          "sameAs",
          "blanksRepeat",
          "references",
          "ofStandards",
          "publication",
          "finite",
          "except",
          "amending");

  private static final List<String> OF_SCHEDULES =
      List.of(
          "tag",
          "material",
          "roomNumber",
          "looks",
          "sides",
          "measured",
          "questioned",
          "answered",
          "filler",
          "others",
          "former",
          "latest",
          "unchanged",
          "calling",
          "struck",
          "elsewhere",
          "passed",
          "denied",
          "besideFigures",
          "ofJoints");

  private static final List<String> OF_PLACES =
      List.of(
          "notAlone",
          "otherwise",
          "usual",
          "temperature",
          "denied",
          "never",
          "beside",
          "structures",
          "labels",
          "conditions");

  private static final List<String> OF_FLATNESS = List.of("over", "edge", "ofAThing");

  /** All of whose lists are read. */
  private static final List<String> WHOLE =
      List.of("negation", "clause", "vague", "checks", "resolves");

  private final Map<String, Phrases> byName = new HashMap<>();

  /**
   * @param taught has names of glass tile that an office has
   */
  WordLists(
      ConfigNode language,
      ConfigNode schedules,
      ConfigNode materials,
      ListReader words,
      Taught taught)
      throws ConfigException {
    for (String group : WHOLE)
      for (ConfigNode list : language.get(group).entries())
        byName.put(group + "." + list.key(), words.phrases(list));
    some("", materials, OF_MATERIALS, words);
    some("", language, OF_LANGUAGE, words);
    some("schedule.", schedules, OF_SCHEDULES, words);
    some("places.", language.get("places"), OF_PLACES, words);
    some("flatness.", language.get("flatness"), OF_FLATNESS, words);
    byName.computeIfPresent(GLASS_TILE, (list, known) -> known.and(taught.glass(), words.held()));
  }

  private void some(String group, ConfigNode map, List<String> names, ListReader words)
      throws ConfigException {
    for (String name : names) byName.put(group + name, words.phrases(map.get(name)));
  }

  /** The list of that name; null for none. */
  Phrases of(String name) {
    return byName.get(name);
  }
}
