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
      return groups.stream().allMatch(g -> g.in(sentence)) && !without.in(sentence);
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
    return sets.stream().anyMatch(set -> set.in(sentence));
  }
}
