package clearbed.recognise;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Decides whether the words of a schedule's material or description are on glass tile. Of glass and
 * a noun behind it the noun tells what the thing is: glass chips, glass textile and glass
 * reinforced sheet are none.
 */
final class GlassTest {
  private static final Pattern NEXT_WORD = Pattern.compile("[ -]+([\\p{L}']+)");

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
    if (names("glassTile", rest)) return new Result(true, true);
    boolean other =
        vocabulary.otherTile().values().stream().anyMatch(p -> p.in(plain))
            || vocabulary.list("otherFinish").in(plain);
    if (other || notTile) return new Result(false, true);
    if (names("glassAlone", rest)) return new Result(true, true);
    return new Result(false, vocabulary.list("glassAlone").in(rest));
  }

  private boolean names(String list, String text) {
    return vocabulary.list(list).all(text).stream().anyMatch(hit -> !isPartOfAnother(text, hit));
  }

  /** "Recycled glass chips": the glass found is what something else is made of. */
  private boolean isPartOfAnother(String text, Phrases.Hit hit) {
    if (!text.substring(hit.start(), hit.end()).toLowerCase(Locale.ROOT).endsWith("glass"))
      return false;
    Matcher next = NEXT_WORD.matcher(text).region(hit.end(), text.length());
    if (!next.lookingAt()) return false;
    String word = next.group(1).toLowerCase(Locale.ROOT);
    return word.length() > 3
        && !word.endsWith("ed")
        && !word.endsWith("ing")
        && !vocabulary.list("behindGlass").matches(word)
        && !TileWords.tileWork(word);
  }
}
