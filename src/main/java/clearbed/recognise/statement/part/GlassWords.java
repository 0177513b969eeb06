package clearbed.recognise.statement.part;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;

/** Whether words say that there is glass tile, or only name it. */
public final class GlassWords {
  /** A denial stands this close before glass tile, in characters: "do not use any glass tile". */
  private static final int DENIED_BEFORE = 12;

  /** And this close behind it: "glass mosaic on floors is not permitted". */
  private static final int DENIED_AFTER = 30;

  private final Vocabulary vocabulary;

  public GlassWords(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** True when the text says that there is glass tile, not only names it. */
  public boolean areIn(String text) {
    return asserted(text) != null;
  }

  /**
   * Where glass tile is first asserted, in plain form; null where it is not. Titles of
   * publications, prohibitions, exceptions and conditions assert nothing.
   */
  public String asserted(String text) {
    String plain = PlainText.of(text);
    if (!named(plain)) return null;
    for (Parts.Part part : Parts.of(plain, vocabulary.list("except"))) {
      // "Was there glass tile in the lobby?" asks.
      boolean asks = part.text().endsWith("?");
      if (!part.exception() && !asks && asserts(part.text())) return part.text();
    }
    return null;
  }

  private boolean named(String plain) {
    return vocabulary.list("glassTile").in(plain) || vocabulary.list("glassTileAbroad").in(plain);
  }

  private boolean asserts(String part) {
    String rest = vocabulary.list("notTile").without(part);
    rest = vocabulary.list("namedOnly").without(rest);
    for (String list : List.of("glassTile", "glassTileAbroad")) {
      for (Phrases.Hit hit : vocabulary.list(list).all(rest)) {
        if (!denied(rest, hit)) return true;
      }
    }
    return false;
  }

  private boolean denied(String part, Phrases.Hit glass) {
    for (Phrases.Hit hit : vocabulary.list("negation.before").all(part)) {
      if (hit.end() <= glass.start() && glass.start() - hit.end() <= DENIED_BEFORE) return true;
    }
    for (Phrases.Hit hit : vocabulary.list("negation.after").all(part)) {
      if (hit.start() >= glass.end() && hit.start() - glass.end() <= DENIED_AFTER) return true;
    }
    return false;
  }
}
