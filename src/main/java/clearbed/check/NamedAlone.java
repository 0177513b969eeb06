package clearbed.check;

import clearbed.model.report.Finding;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * Tiles that one place of the set names and hardly more, where the others are scheduled and
 * specified: a tile in the bill alone, or in a product clause alone. That it is missing where the
 * others stand is one finding; what is missing with it is no other.
 *
 * @param tags as entries have them
 */
record NamedAlone(Set<String> tags) {
  static final NamedAlone NONE = new NamedAlone(Set.of());

  /** The rules that find such tiles. */
  static final Set<String> FOUND_BY = Set.of("unscheduled-tag", "unspecified-tag");

  /** So much is said of the others, in attributes of the tile's own. */
  private static final int SAID_OF_OTHERS = 9;

  /** The first tell: of long schedules the others would take time. */
  private static final int LOOKED_AT = 200;

  /** And of this one so many times less. */
  private static final int LESS = 3;

  static NamedAlone in(Project project, List<Finding> found) {
    Set<String> tags = new TreeSet<>();
    for (Finding f : found) tags.addAll(f.tags());
    if (tags.isEmpty()) return NONE;
    List<Entry> others = project.glass().stream().filter(e -> !tags.contains(e.tag())).toList();
    if (others.isEmpty()) return NONE;
    List<Integer> said = others.stream().limit(LOOKED_AT).map(NamedAlone::said).sorted().toList();
    int usual = said.get(said.size() / 2);
    if (usual < SAID_OF_OTHERS) return NONE;
    for (Entry e : project.glass())
      if (tags.contains(e.tag()) && said(e) * LESS > usual) tags.remove(e.tag());
    return tags.isEmpty() ? NONE : new NamedAlone(Set.copyOf(tags));
  }

  private static int said(Entry entry) {
    return (int)
        entry.values().stream()
            .filter(v -> v.scope() == Scope.ENTRY && !v.excluded())
            .map(v -> v.attribute())
            .distinct()
            .count();
  }

  boolean has(Entry entry) {
    return tags.contains(entry.tag());
  }
}
