package clearbed.corpus;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.regex.Pattern;

/** Which glass entries of a clean set are such that a check applies to them. */
final class Needs {
  private static final Pattern SEE_THROUGH = Pattern.compile("(?i)\\b(translucent|transparent)\\b");
  private static final Pattern WET =
      Pattern.compile("(?i)\\b(wet|steam|submerged|exterior|freez\\w*)\\b");
  private static final Pattern WET_INSIDE =
      Pattern.compile("(?i)\\b(wet|steam|submerged|immersed)\\b");
  private static final Pattern UNDER_WATER = Pattern.compile("(?i)\\b(submerged|immersed)\\b");
  private static final Pattern OUTSIDE_OR_UNDER_WATER =
      Pattern.compile("(?i)\\b(submerged|immersed|exterior|external|freez\\w*)\\b");
  private static final Pattern POOL = Pattern.compile("(?i)\\bpool\\b");
  private static final Pattern CEMENT = Pattern.compile("A118\\.(15|4)\\b|\\bC2");

  private Needs() {}

  static Set<String> seeThrough(DraftSet set) {
    Set<String> tags = where(set, "tile.translucency", SEE_THROUGH);
    // Where no schedule says it, the clause on ridges names the entries.
    if (set.statements("tile.translucency").isEmpty()) tags.addAll(set.tags("mortar.ridges"));
    return tags;
  }

  static Set<String> wet(DraftSet set) {
    Set<String> tags = where(set, "location.exposure", WET);
    tags.addAll(set.tags("membrane.standard"));
    return tags;
  }

  /** Wet, steamed or submerged; where no schedule says so, what the membrane clause names. */
  static Set<String> wetInside(DraftSet set) {
    Set<String> tags = where(set, "location.exposure", WET_INSIDE);
    return set.statements("location.exposure").isEmpty() ? set.tags("membrane.standard") : tags;
  }

  /** On walls, where the set says which surface a tile is on. */
  static Set<String> onWalls(DraftSet set) {
    return set.statements("location.surface").isEmpty()
        ? set.glass()
        : where(set, "location.surface", Pattern.compile("(?i)wall|front|facade|column|panel"));
  }

  /** On what has a span: no shell of a pool, nothing under water. */
  static Set<String> onSpans(DraftSet set) {
    Set<String> tags = new LinkedHashSet<>(set.glass());
    tags.removeAll(where(set, "location.exposure", UNDER_WATER));
    tags.removeAll(where(set, "location.surface", POOL));
    // Where no schedule says the place, the clause on underwater sealants names the entries.
    if (set.statements("location.exposure").isEmpty()) tags.removeAll(set.tags("sealant.use.I"));
    return tags;
  }

  /** Under water or outside, where no sanitary sealant holds. */
  static Set<String> notForSanitarySealant(DraftSet set) {
    return where(set, "location.exposure", OUTSIDE_OR_UNDER_WATER);
  }

  static Set<String> wetOrSeeThrough(DraftSet set) {
    Set<String> tags = seeThrough(set);
    tags.addAll(wet(set));
    return tags;
  }

  static Set<String> inCement(DraftSet set) {
    return where(set, "mortar.standard", CEMENT);
  }

  /** Entries of which a statement of the label has words that match. */
  static Set<String> where(DraftSet set, String label, Pattern words) {
    Set<String> tags = new LinkedHashSet<>();
    for (Statement statement : set.statements(label)) {
      if (words.matcher(statement.text()).find()) tags.addAll(statement.tags());
    }
    return tags;
  }
}
