package clearbed.recognise.schedule.cell;

import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.TileWords;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Decides whether the words of a schedule's material or description are on glass tile. Of glass and
 * a noun behind it the noun tells what the thing is: glass chips, glass textile and glass
 * reinforced sheet are none.
 */
public final class GlassTest {
  private static final Pattern NEXT_WORD = Pattern.compile("[ -]+([\\p{L}']+)");

  /**
   * @param glass true for glass tile
   * @param decided false when the words say nothing either way
   * @param another true when they name something else, and not glass alone
   */
  public record Result(boolean glass, boolean decided, boolean another) {}

  private final Vocabulary vocabulary;

  public GlassTest(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /**
   * @param words of the material or description
   */
  public Result of(String words) {
    String plain = PlainText.of(words);
    boolean notTile = namesWhatIsNone(plain);
    String rest = notTile ? vocabulary.list("notTile").without(plain) : plain;
    List<Phrases.Hit> hits = vocabulary.list("glassTile").all(rest);
    if (hits.stream().anyMatch(hit -> !endsInGlass(rest, hit)))
      return new Result(true, true, false);
    // Of a row abroad the columns tell the rest; of running text nobody could.
    if (vocabulary.list("glassTileAbroad").in(rest)) return new Result(true, true, false);
    boolean other =
        vocabulary.glass().namesOtherTile(plain) || vocabulary.list("otherFinish").in(plain);
    if (other || notTile) return new Result(false, true, true);
    List<Phrases.Hit> alone = vocabulary.list("glassAlone").all(rest);
    // "Mosaic of cast glass chips" is a mosaic, whatever its pieces are called.
    boolean work = !alone.isEmpty() && TileWords.tile(rest);
    boolean glass =
        work
            || Stream.concat(hits.stream(), alone.stream())
                .anyMatch(hit -> !isPartOfAnother(rest, hit));
    return new Result(glass, glass || !alone.isEmpty(), false);
  }

  /** "Sheet glass" is no tile; within "fused sheet glass" it tells how one is made. */
  private boolean namesWhatIsNone(String text) {
    List<Phrases.Hit> none = vocabulary.list("notTile").all(text);
    if (none.isEmpty()) return false;
    List<Phrases.Hit> made = vocabulary.list("glassTile").all(text);
    return none.stream()
        .anyMatch(n -> made.stream().noneMatch(m -> m.start() < n.start() && n.end() <= m.end()));
  }

  private static boolean endsInGlass(String text, Phrases.Hit hit) {
    return text.substring(hit.start(), hit.end()).toLowerCase(Locale.ROOT).endsWith("glass");
  }

  /** "Recycled glass chips": the glass found is what something else is made of. */
  private boolean isPartOfAnother(String text, Phrases.Hit hit) {
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
