package clearbed.recognise;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Finds the terms of one attribute in a text; longer phrases win over the shorter ones inside them.
 */
public final class TermReader {
  private final Vocabulary vocabulary;

  public TermReader(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The terms found, in the order of the text. */
  public Set<String> in(String attribute, String text) {
    String plain = PlainText.of(text);
    List<Map.Entry<Phrases.Hit, String>> hits = new ArrayList<>();
    vocabulary
        .attribute(attribute)
        .orElseThrow()
        .words()
        .terms()
        .forEach((term, phrases) -> phrases.all(plain).forEach(h -> hits.add(Map.entry(h, term))));
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
    kept.forEach(k -> out.add(k.getValue()));
    return out;
  }
}
