package clearbed.recognise.statement.part;

import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Finds the properties of the tile that a text supposes: "behind translucent glass: ...". */
final class TileProperties {
  /** Offsets are of the text. */
  record PropertyHit(int start, int end, String attribute, String term) {}

  private static final List<String> ATTRIBUTES =
      List.of("tile.translucency", "tile.backing", "tile.mounting");

  /** Of any tile it may be said that it has none. */
  private static final List<String> SUPPOSES_NOTHING = List.of("none", "loose");

  private final Vocabulary vocabulary;

  TileProperties(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  List<PropertyHit> in(String text) {
    List<PropertyHit> out = new ArrayList<>();
    for (String id : ATTRIBUTES) {
      Map<String, Phrases> terms =
          new LinkedHashMap<>(vocabulary.attribute(id).orElseThrow().words().terms());
      terms.keySet().removeAll(SUPPOSES_NOTHING);
      terms.forEach(
          (term, phrases) -> {
            for (Phrases.Hit hit : phrases.all(text)) {
              if (supposed(text, hit)) out.add(new PropertyHit(hit.start(), hit.end(), id, term));
            }
          });
    }
    vocabulary
        .supposed()
        .forEach(
            (name, phrases) -> {
              String[] of = name.split(" ");
              for (Phrases.Hit hit : phrases.all(text))
                out.add(new PropertyHit(hit.start(), hit.end(), of[0], of[1]));
            });
    return out;
  }

  private boolean supposed(String text, Phrases.Hit hit) {
    return vocabulary.list("clause.property").in(text.substring(hit.start(), hit.end()))
        || vocabulary.list("clause.ofTile").startsAt(text, hit.end());
  }
}
