package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.WordsHeld;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * Reads lists of words out of the files of the vocabulary.
 *
 * @param held the words of all lists, so that one look at a text tells which may be in it
 */
record ListReader(WordsHeld held) {
  Phrases phrases(ConfigNode list) throws ConfigException {
    return Phrases.of(list, held);
  }

  Phrases phrases(List<String> written) {
    return new Phrases(written, held);
  }

  Map<String, Phrases> byName(ConfigNode map) throws ConfigException {
    Map<String, Phrases> out = new LinkedHashMap<>();
    for (ConfigNode list : map.entries()) out.put(list.key(), phrases(list));
    return out;
  }

  /** The regular expression that a node is; refused where it is none. */
  static String regex(ConfigNode node) throws ConfigException {
    try {
      return Pattern.compile(node.text()).pattern();
    } catch (PatternSyntaxException e) {
      throw node.fault("not a regular expression: " + e.getDescription());
    }
  }
}
