package clearbed.recognise.vocabulary;

import clearbed.base.config.ConfigException;
import clearbed.base.config.ConfigNode;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.recognise.vocabulary.taught.Taught;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Words for the places that a clause is limited to, and which place lies in which. */
public final class PlaceWords {
  private static final String EXPOSURE = "location.exposure";
  private static final String SURFACE = "location.surface";

  private final Map<String, List<String>> covers = new LinkedHashMap<>();
  private final Map<String, Phrases> exposures;
  private final Map<String, Phrases> surfaces;
  private final String lead;
  private final String suited;
  private final Set<String> known;

  /**
   * @param places the words of {@code language.yaml} for places
   * @param covers which exposures a place covers
   */
  PlaceWords(
      ConfigNode places, ConfigNode covers, ListReader words, Attributes attributes, Taught taught)
      throws ConfigException {
    lead = ListReader.regex(places.get("lead"));
    suited = ListReader.regex(places.get("suited"));
    surfaces =
        withTaught(attributes.byTerm(places.get("surface"), SURFACE), SURFACE, words, taught);
    Map<String, Phrases> rooms = words.byName(places.get("exposure"));
    // Of some kinds of places the rooms as well.
    for (ConfigNode kind : places.get("rooms").items()) {
      attributes.requireTerm(kind, kind.text(), EXPOSURE);
      Phrases of = attributes.require(kind, EXPOSURE).words().terms().get(kind.text());
      rooms.merge(kind.text(), of, Phrases::and);
    }
    exposures = withTaught(rooms, EXPOSURE, words, taught);
    covered(covers, places.get("exposure"), attributes);
    known = new TreeSet<>(attributes.require(places, EXPOSURE).terms());
    known.addAll(this.covers.keySet());
  }

  private static Map<String, Phrases> withTaught(
      Map<String, Phrases> places, String attribute, ListReader words, Taught taught) {
    Map<String, Phrases> out = new LinkedHashMap<>(places);
    for (Taught.Word word : taught.words()) {
      if (word.kind() != Taught.Kind.PLACE || !word.meaning().equals(attribute)) continue;
      out.merge(word.term(), words.phrases(List.of(word.words())), Phrases::and);
    }
    return out;
  }

  private void covered(ConfigNode map, ConfigNode places, Attributes attributes)
      throws ConfigException {
    for (ConfigNode place : places.entries()) {
      if (!map.has(place.key())) attributes.requireTerm(place, place.key(), EXPOSURE);
    }
    for (ConfigNode place : map.entries()) {
      if (!places.has(place.key()))
        throw place.unknown(place.key(), "no place named " + place.key(), exposures.keySet());
      for (ConfigNode term : place.items()) attributes.requireTerm(term, term.text(), EXPOSURE);
      covers.put(place.key(), place.texts());
    }
  }

  /** Words for an exposure, or for a place that covers some. */
  public Map<String, Phrases> exposures() {
    return exposures;
  }

  public Map<String, Phrases> surfaces() {
    return surfaces;
  }

  /** What a fact may be limited to: exposures, and places that cover some. */
  public Set<String> known() {
    return known;
  }

  /** What may stand before a place that limits something, as an expression. */
  public String lead() {
    return lead;
  }

  /** Words before a place that say what a thing is fit for, so that it limits nothing. */
  public String suited() {
    return suited;
  }

  /** True when the words limited to {@code place} hold at {@code exposure}. */
  public boolean covers(String place, String exposure) {
    return covers.getOrDefault(place, List.of(place)).contains(exposure);
  }

  /** True when all that is at {@code place} is at {@code wide}. */
  public boolean coversAll(String wide, String place) {
    List<String> all = covers.get(wide);
    return all != null && all.containsAll(covers.getOrDefault(place, List.of(place)));
  }
}
