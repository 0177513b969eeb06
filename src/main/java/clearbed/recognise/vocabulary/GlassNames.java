package clearbed.recognise.vocabulary;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.Map;
import java.util.Optional;

/** Tells glass tile from other tile, and from other things of glass, by their names. */
public final class GlassNames {
  private final Phrases glassTile;
  private final Phrases abroad;
  private final Phrases glass;
  private final Phrases notTile;
  private final Map<String, Phrases> otherTile;

  /**
   * @param abroad names of glass tile in other languages
   * @param glass names of the material alone
   * @param notTile names of things of glass that are no tile
   * @param otherTile names of other tile, by kind
   */
  GlassNames(
      Phrases glassTile,
      Phrases abroad,
      Phrases glass,
      Phrases notTile,
      Map<String, Phrases> otherTile) {
    this.glassTile = glassTile;
    this.abroad = abroad;
    this.glass = glass;
    this.notTile = notTile;
    this.otherTile = otherTile;
  }

  /** Names of tile that is not of glass, by kind. */
  public Map<String, Phrases> otherTile() {
    return otherTile;
  }

  /** True when the text speaks of glass tile. */
  public boolean speaksOfTile(String text) {
    return glassTile.in(notTile.without(PlainText.of(text)));
  }

  /** True when the text may speak of glass or of glass tile: asked before what takes long. */
  public boolean mayBeNamed(String text) {
    return glassTile.mayBeIn(text) || glass.mayBeIn(text) || abroad.mayBeIn(text);
  }

  /** True when the text describes glass tile, in English or as it is called abroad. */
  public boolean describesTileAnywhere(String text) {
    return describesTile(text) || abroad.in(text);
  }

  /** True when glass tile is the first tile that the text speaks of. */
  public boolean describesTile(String text) {
    String whole = PlainText.of(text);
    if (!glassTile.mayBeIn(whole)) return false;
    String plain = notTile.without(whole);
    Phrases.Hit hit = glassTile.first(plain);
    return hit != null
        && otherTile.values().stream()
            .map(other -> other.first(plain))
            .allMatch(other -> other == null || other.start() > hit.start());
  }

  /** True when the text names a tile that is not of glass, whatever else it names. */
  public boolean namesOtherTile(String text) {
    return otherTile.values().stream().anyMatch(kind -> kind.in(text));
  }

  /** True when the text speaks of glass, and of no thing of glass that is not tile. */
  public boolean isNamed(String text) {
    return glass.mayBeIn(text) && glass.in(notTile.without(text));
  }

  /** The other kind of tile that the text speaks of, before any glass tile; empty when none. */
  public Optional<String> describesOtherTile(String text) {
    String plain = notTile.without(PlainText.of(text));
    if (glassTile.in(plain)) return Optional.empty();
    return otherTile.entrySet().stream()
        .filter(e -> e.getValue().in(plain))
        .map(Map.Entry::getKey)
        .findFirst();
  }
}
