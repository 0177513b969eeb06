package clearbed.recognise.statement;

import clearbed.recognise.vocabulary.Attribute;
import clearbed.recognise.vocabulary.Phrases;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.List;
import java.util.regex.Pattern;

/** Words that say of a tile where it is and nothing else: "Permanently under water". */
public final class PlaceSentences {
  private static final String EXPOSURE = "location.exposure";
  private static final int LONGEST = 90;

  /** So many words beside those of places may stand in it. */
  private static final int MOST_OTHER = 2;

  private static final Pattern WORD = Pattern.compile("\\p{L}{2,}");
  private static final Pattern TEMPERATURE = Pattern.compile("\\b(?:at|to|of) [-+]?\\d+ ?°[CF]\\b");

  /** Not of a place: of a test, a wait, or a protection. */
  private static final Pattern OTHERWISE =
      Pattern.compile(
          "(?i)\\d|\\b(?:not?|never|without|against|before|after|until|during|while|if|when|from|kept|fit"
              + "|resist\\w*|suit\\w*|rated|approved|tested|tests?|proof\\w*|report\\w*|for|cycles|colou?rs?)\\b");

  private static final Pattern USUAL =
      Pattern.compile(
          "(?i)\\b(?:and|or|in|on|at|to|the|of|by|all|always|permanent\\w*|continuous\\w*|constant\\w*"
              + "|full\\w*|partly|open|exposed|subject|level|walked|barefoot|shod|daily|walls?|floors?"
              + "|fronts?|north|south|east|west|facing|area|areas|side|room|rooms|use|both)\\b");

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
    String text = TEMPERATURE.matcher(words).replaceAll(" ");
    boolean other =
        exposure == null
            || text.length() > LONGEST
            || OTHERWISE.matcher(text).find()
            || !vocabulary.isVerbless(text)
            || !vocabulary.family(text).isEmpty()
            || Citations.mayCite(text) && !Citations.find(text).isEmpty();
    if (other) return false;
    String rest = text;
    for (Phrases phrases : exposure.words().terms().values()) rest = phrases.without(rest);
    if (rest.equals(text)) return false;
    String unusual = USUAL.matcher(rest).replaceAll(" ");
    return WORD.matcher(unusual).results().count() <= MOST_OTHER;
  }
}
