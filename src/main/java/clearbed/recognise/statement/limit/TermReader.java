package clearbed.recognise.statement.limit;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Finds the terms of one attribute in a text; longer phrases win over the shorter ones inside them.
 */
public final class TermReader {
  private static final String SURFACE = "location.surface";

  private static final String DRY = "dry";

  /** The wall of a pool is a wall and of a pool. */
  private static final String POOL = "pool";

  /** "Roof deck shower wall" is a wall: the last word of a name says what it names. */
  private static final Pattern SAME_NAME =
      Pattern.compile(
          "(?i)(?: (?!(?:and|or|to|at|of|with|on|in|above|below|by|near|from|plus|behind|under|over|around|facing|beside|against|between|along)\\b)[a-z]+){0,3} ");

  private final Vocabulary vocabulary;
  private final LimitFinder limitFinder;

  public TermReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.limitFinder = new LimitFinder(vocabulary);
  }

  /**
   * The terms of {@code location.exposure} or {@code location.surface} that running text names as
   * places ({@code for the exterior wall}); what it is tested for or suited to is no place.
   */
  public Set<String> places(String attribute, String text) {
    Limits limits = limitFinder.of(PlainText.of(text), false);
    Set<String> out = new LinkedHashSet<>();
    if (attribute.equals(SURFACE)) out.addAll(limits.surfaces());
    else limits.exposures().forEach(place -> out.add(place.kind()));
    out.removeIf(term -> !vocabulary.attribute(attribute).orElseThrow().hasTerm(term));
    return out;
  }

  /** The terms found, in the order of the text; what is denied is not among them. */
  public Set<String> in(String attribute, String text) {
    String plain = PlainText.of(text);
    List<Map.Entry<Phrases.Hit, String>> hits = new ArrayList<>();
    vocabulary
        .attribute(attribute)
        .orElseThrow()
        .words()
        .terms()
        .forEach((term, phrases) -> phrases.all(plain).forEach(h -> hits.add(Map.entry(h, term))));
    // "No frost at this site", "out of the sun": named to say that it is not so.
    hits.removeIf(hit -> vocabulary.list("places.denied").endsAt(plain, hit.getKey().start()));
    // "Frost does not occur at this site."
    hits.removeIf(hit -> vocabulary.list("places.never").startsAt(plain, hit.getKey().end()));
    // "Rest room beside the sauna garden; interior, dry".
    if (hits.stream().anyMatch(hit -> hit.getValue().equals(DRY)))
      hits.removeIf(hit -> vocabulary.list("places.beside").endsAt(plain, hit.getKey().start()));
    hits.sort(
        (a, b) ->
            (b.getKey().end() - b.getKey().start()) - (a.getKey().end() - a.getKey().start()));
    List<Map.Entry<Phrases.Hit, String>> kept = new ArrayList<>();
    for (Map.Entry<Phrases.Hit, String> h : hits) {
      boolean covered =
          kept.stream()
              .anyMatch(
                  k ->
                      h.getKey().start() < k.getKey().end()
                          && k.getKey().start() < h.getKey().end());
      if (!covered) kept.add(h);
    }
    kept.sort((a, b) -> a.getKey().start() - b.getKey().start());
    Set<String> out = new LinkedHashSet<>();
    for (int i = 0; i < kept.size(); i++) {
      boolean last = i + 1 == kept.size();
      boolean surface = attribute.equals(SURFACE) && !kept.get(i).getValue().equals(POOL);
      String behind =
          last ? "" : plain.substring(kept.get(i).getKey().end(), kept.get(i + 1).getKey().start());
      if (!surface || last || !SAME_NAME.matcher(behind).matches()) out.add(kept.get(i).getValue());
    }
    return out;
  }
}
