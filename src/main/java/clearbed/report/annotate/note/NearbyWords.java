package clearbed.report.annotate.note;

import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.Report;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/**
 * Words known to stand in the same paragraph or table row as a place: they tell which of several
 * like words on a page are meant.
 */
public final class NearbyWords {
  private final Map<Origin, Set<String>> words = new HashMap<>();

  public static NearbyWords of(Report report) {
    NearbyWords all = new NearbyWords();
    for (Entry entry : report.entries()) {
      all.add(entry.origin());
      entry.places().forEach(all::add);
      for (Value value : entry.values()) all.add(value.origin());
    }
    for (Finding finding : report.findings()) FindingNote.places(finding).forEach(all::add);
    return all;
  }

  /** Other words of the same paragraph or row. */
  public Set<String> of(Origin origin) {
    Set<String> near = new LinkedHashSet<>(words.getOrDefault(key(origin), Set.of()));
    near.remove(origin.text());
    return near;
  }

  private void add(Origin origin) {
    if (origin == null || origin.page() == null || origin.text() == null) return;
    words.computeIfAbsent(key(origin), k -> new LinkedHashSet<>()).add(origin.text());
  }

  /** The place without its column and words. */
  private static Origin key(Origin o) {
    String row = o.cell() == null ? null : o.cell().replaceAll("[A-Z]+", "");
    return new Origin(o.document(), null, row, o.page(), o.paragraph(), null, null);
  }
}
