package clearbed.recognise;

/** Decides whether words describe glass tile. */
final class GlassTest {

  /**
   * @param glass true for glass tile
   * @param decided false when the words say nothing either way
   */
  record Result(boolean glass, boolean decided) {}

  private final Vocabulary vocabulary;

  GlassTest(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param words of the material or description
   */
  Result of(String words) {
    String plain = PlainText.of(words);
    boolean notTile = vocabulary.list("notTile").in(plain);
    String rest = vocabulary.list("notTile").without(plain);
    if (vocabulary.list("glassTile").in(rest)) return new Result(true, true);
    boolean other = vocabulary.otherTile().values().stream().anyMatch(p -> p.in(plain));
    if (other || notTile) return new Result(false, true);
    if (vocabulary.list("glassAlone").in(rest)) return new Result(true, true);
    return new Result(false, false);
  }
}
