package clearbed.corpus;

import java.util.Set;

/**
 * A finding that must be reported.
 *
 * @param tags entries it must name; empty when the finding is about the set or names no certain one
 */
record Expected(String check, Set<String> tags) {
  Expected {
    tags = Set.copyOf(tags);
  }
}
