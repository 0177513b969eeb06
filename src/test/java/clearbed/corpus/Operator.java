package clearbed.corpus;

import java.util.Optional;
import java.util.function.Function;

/**
 * A small edit that puts one defect into a clean set.
 *
 * @param id of the operator, in words joined by hyphens
 * @param what it does
 * @param defect gives the set with the defect, or nothing when the operator does not fit the set
 */
record Operator(String id, String what, Function<DraftSet, Optional<Mutant>> defect) {

  boolean heldBack() {
    return HeldBack.of(id);
  }

  Optional<Mutant> on(DraftSet set) {
    return defect.apply(set);
  }
}
