package clearbed.recognise.vocabulary;

import java.util.List;

/**
 * Words that mean something only when they stand together in one sentence, in any order: who,
 * agrees, to what.
 */
final class Together {

  /**
   * @param groups one word of each must be there
   * @param without none of these may be there
   */
  record Set(List<Phrases> groups, Phrases without) {
    boolean in(String sentence) {
      for (Phrases group : groups) if (!group.in(sentence)) return false;
      return !without.in(sentence);
    }
  }

  private final List<Set> sets;

  Together(List<Set> sets) {
    this.sets = List.copyOf(sets);
  }

  List<Set> sets() {
    return sets;
  }

  /**
   * @param sentence in plain form
   */
  boolean in(String sentence) {
    for (Set set : sets) if (set.in(sentence)) return true;
    return false;
  }
}
