package clearbed.recognise.vocabulary.phrase;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Words that mean something only when they stand together in one sentence, in any order: who,
 * agrees, to what.
 */
public final class Together {
  private static final Pattern ITEM = Pattern.compile("[,;] (?:and |or )?");

  /** What stands before the verb of a whole list. */
  private static final Pattern PREDICATE =
      Pattern.compile("\\b(?:is|are|be|been)(?: [\\w-]+ly)? $", Pattern.CASE_INSENSITIVE);

  /** So many items are a list. */
  private static final int LIST = 3;

  /**
   * @param groups one word of each must be there
   * @param without none of these may be there
   */
  public record Set(List<Phrases> groups, Phrases without) {
    public boolean in(String sentence) {
      if (!all(sentence)) return false;
      if (!without.in(sentence)) return true;
      if (deniesAll(sentence)) return false;
      // "Data sheets, samples, and the maker's letter accepting ..." asks for each by itself.
      String[] items = ITEM.split(sentence);
      if (items.length < LIST) return false;
      for (String item : items) {
        if (!without.in(item) && all(item)) return true;
      }
      return false;
    }

    /** What is left of a sentence without what takes the sense away; empty where nothing is. */
    public String allowed(String sentence) {
      if (!without.in(sentence)) return sentence;
      String[] items = ITEM.split(sentence);
      if (items.length < LIST) return "";
      return Arrays.stream(items).filter(i -> !without.in(i)).collect(Collectors.joining(", "));
    }

    /**
     * "Acids, acid-based cleaners, and abrasive pads are prohibited": none of them is asked for.
     */
    private boolean deniesAll(String sentence) {
      for (Phrases.Hit hit : without.all(sentence))
        if (PREDICATE.matcher(sentence.substring(0, hit.start())).find()) return true;
      return false;
    }

    private boolean all(String words) {
      for (Phrases group : groups) if (!group.in(words)) return false;
      return true;
    }
  }

  private final List<Set> sets;

  public Together(List<Set> sets) {
    this.sets = List.copyOf(sets);
  }

  public List<Set> sets() {
    return sets;
  }

  /**
   * @param sentence in plain form
   */
  public boolean in(String sentence) {
    for (Set set : sets) if (set.in(sentence)) return true;
    return false;
  }
}
