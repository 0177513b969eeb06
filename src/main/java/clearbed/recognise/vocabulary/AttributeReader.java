package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Dimension;
import clearbed.recognise.text.Quantities;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.phrase.Together;
import clearbed.recognise.vocabulary.phrase.WordsHeld;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Reads an attribute as {@code attributes.yaml} writes it. */
final class AttributeReader {
  private static final String WITHOUT = "without";

  private final Map<String, Phrases> groups;
  private final WordsHeld words;
  private final Taught taught;

  /**
   * @param groups of words that attributes share
   */
  AttributeReader(Map<String, Phrases> groups, WordsHeld words, Taught taught) {
    this.groups = groups;
    this.words = words;
    this.taught = taught;
  }

  Attribute read(ConfigNode n) throws ConfigException {
    Attribute.Kind kind = n.get("kind").oneOf(Attribute.Kind.values());
    if (kind == Attribute.Kind.AMOUNT && !n.has("dimension"))
      throw n.fault("an amount needs its 'dimension'");
    if (kind == Attribute.Kind.TERM && !n.has("terms")) throw n.fault("a term needs its 'terms'");
    Map<String, Phrases> terms = new LinkedHashMap<>();
    String id = n.get("id").text();
    for (ConfigNode term : n.get("terms").entries()) {
      Phrases known = phrases(term).and(taught.of(Taught.Kind.TERM, id, term.key()), words);
      terms.put(term.key(), known.and(taught.of(Taught.Kind.PLACE, id, term.key()), words));
    }
    Dimension dimension = n.has("dimension") ? n.get("dimension").oneOf(Dimension.values()) : null;
    return new Attribute(
        id,
        n.get("label").text(),
        n.get("family").text(),
        kind,
        n.get("single").isTrue(),
        Set.copyOf(n.get("alongside").texts()),
        Set.copyOf(n.get("alike").texts()),
        n.has("needs"),
        n.get("alone").isTrue(),
        dimension,
        n.has("plausible") ? plausible(n.get("plausible"), dimension) : null,
        new Attribute.Words(
            phrases(n.get("headers")),
            phrases(n.get("cues")).and(taught.of(Taught.Kind.TERM, id, ""), words),
            together(n.get("together")),
            phrases(n.get("not")),
            terms,
            Phrases.ofAll(terms.values(), words)));
  }

  private Phrases phrases(ConfigNode list) throws ConfigException {
    return Phrases.of(list, words);
  }

  /** Each a map of groups: words, or the name of a group of {@code language.yaml}. */
  private Together together(ConfigNode list) throws ConfigException {
    List<Together.Set> sets = new ArrayList<>();
    for (ConfigNode set : list.items()) {
      List<Phrases> all = new ArrayList<>();
      for (ConfigNode group : set.entries()) {
        group.refuseIfLike(WITHOUT);
        if (!group.key().equals(WITHOUT)) all.add(group(group));
      }
      sets.add(
          new Together.Set(
              all, set.has(WITHOUT) ? group(set.get(WITHOUT)) : new Phrases(List.of(), words)));
    }
    return new Together(sets);
  }

  private Phrases group(ConfigNode node) throws ConfigException {
    if (!node.isText()) return phrases(node);
    Phrases shared = groups.get(node.text());
    if (shared != null) return shared;
    throw node.unknown(node.text(), "no group of words named " + node.text(), groups.keySet());
  }

  private static Content.Amount plausible(ConfigNode node, Dimension dimension)
      throws ConfigException {
    String[] ends = node.text().split(" to ", 2);
    Content.Amount low = end(node, ends[0], dimension);
    Content.Amount high = end(node, ends[1], dimension);
    return new Content.Amount(low.low(), high.high(), Bound.EXACT);
  }

  private static Content.Amount end(ConfigNode node, String written, Dimension dimension)
      throws ConfigException {
    if (dimension == null) throw node.fault("plausible figures need a 'dimension' beside them");
    return Quantities.parse(written, dimension)
        .orElseThrow(
            () ->
                node.fault(
                    "plausible: '"
                        + written
                        + "' is no figure with a unit of the dimension "
                        + dimension.name().toLowerCase(Locale.ROOT)));
  }
}
