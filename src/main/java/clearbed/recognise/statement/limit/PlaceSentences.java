package clearbed.recognise.statement.limit;

import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.phrase.Phrases;
import java.util.List;
import java.util.regex.Pattern;

/** Words that say of a tile where it is and nothing else: "Permanently under water". */
public final class PlaceSentences {
  private static final String EXPOSURE = "location.exposure";
  private static final int LONGEST = 90;

  /** So many words beside those of places may stand in it. */
  private static final int MOST_OTHER = 2;

  private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
  private static final Pattern FIGURE = Pattern.compile("\\d");
  private static final Pattern BLANKS = Pattern.compile(" {2,}");

  private static final Pattern STOPS =
      Pattern.compile("[,;]\\s+|\\.\\s+(?=\\p{Lu})|\\s[-\u2013\u2014]\\s");

  private final Vocabulary vocabulary;
  private final Attribute exposure;

  public PlaceSentences(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    this.exposure = vocabulary.attribute(EXPOSURE).orElse(null);
  }

  /** What of a description says where: "Glass mosaic, pool tank walls, permanently under water". */
  public List<String> in(String description) {
    return STOPS.splitAsStream(description.strip()).map(String::strip).filter(this::isOne).toList();
  }

  /**
   * @param words in plain form
   */
  public boolean isOne(String words) {
    String text = withoutTemperature(words);
    boolean other =
        exposure == null
            || text.length() > LONGEST
            || FIGURE.matcher(text).find()
            || vocabulary.list("places.otherwise").in(text)
            || !vocabulary.isVerbless(text)
            || !vocabulary.family(text).isEmpty()
            || Citations.mayCite(text) && !Citations.find(text).isEmpty();
    if (other) return false;
    String rest = text;
    for (Phrases phrases : exposure.words().terms().values()) rest = phrases.without(rest);
    if (rest.equals(text)) return false;
    String unusual = vocabulary.list("places.usual").without(rest);
    return WORD.matcher(unusual).results().count() <= MOST_OTHER;
  }

  private String withoutTemperature(String words) {
    String without = vocabulary.list("places.temperature").without(words);
    return without.equals(words) ? words : BLANKS.matcher(without).replaceAll(" ");
  }
}
