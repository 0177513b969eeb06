package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.WordsHeld;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a glass tile can be said to have, of {@code attributes.yaml}, by name. */
final class Attributes {
  private final Map<String, Attribute> byId = new LinkedHashMap<>();
  private final List<Attribute> all;
  private final ListReader words;

  /**
   * @param headers learn the headings of each
   */
  Attributes(
      ConfigNode list,
      ConfigNode shared,
      ListReader words,
      Families families,
      Taught taught,
      HeaderWords headers)
      throws ConfigException {
    this.words = words;
    AttributeReader reader = new AttributeReader(words.byName(shared), words.held(), taught);
    for (ConfigNode n : list.items()) {
      Attribute attribute = reader.read(n);
      families.require(n.get("family"));
      headers.add(attribute, n.get("headers").texts());
      if (byId.put(attribute.id(), attribute) != null)
        throw n.get("id").fault(attribute.id() + " stands twice in this file");
    }
    this.all = List.copyOf(byId.values());
  }

  List<Attribute> all() {
    return all;
  }

  Optional<Attribute> find(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The attribute of a name that a file gives. */
  Attribute require(ConfigNode place, String id) throws ConfigException {
    Attribute attribute = byId.get(id);
    if (attribute == null) throw place.unknown(id, "no attribute named " + id, byId.keySet());
    return attribute;
  }

  /** Refuses a word that is no term of the attribute. */
  void requireTerm(ConfigNode place, String word, String attribute) throws ConfigException {
    Attribute of = require(place, attribute);
    if (!of.hasTerm(word))
      throw place.unknown(word, "'" + word + "' is not a term of " + attribute, of.terms());
  }

  /** Words for each of some terms of an attribute. */
  Map<String, Phrases> byTerm(ConfigNode map, String attribute) throws ConfigException {
    for (ConfigNode list : map.entries()) requireTerm(list, list.key(), attribute);
    return words.byName(map);
  }

  /** Those whose headings may be in a text, found by one look at it. */
  List<Attribute> mayHead(String text) {
    WordsHeld.Text held = words.held().in(text);
    List<Attribute> out = new ArrayList<>();
    for (Attribute a : all) if (a.words().headers().mayBeIn(held)) out.add(a);
    return out;
  }
}
