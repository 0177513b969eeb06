package clearbed.corpus;

import java.util.List;
import java.util.Set;

/**
 * A set with one defect in it.
 *
 * @param expected every finding that the defect must cause
 * @param aside checks that may speak of it too, without being right or wrong to
 * @param strangers tags that the operator added, of which anything may be said
 */
record Mutant(DraftSet set, List<Expected> expected, Set<String> aside, Set<String> strangers) {
  Mutant {
    expected = List.copyOf(expected);
    aside = Set.copyOf(aside);
    strangers = Set.copyOf(strangers);
  }
}
