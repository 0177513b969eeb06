package clearbed.check.computed.set;

import clearbed.base.Memo;
import clearbed.check.judge.SetComputation;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.TagFinder;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** Tags of glass tile that clauses or rooms use stand in the schedule. */
public final class UnscheduledTagsCheck implements SetComputation {
  /** Of a range of so many more marks than are written some may be room for more. */
  private static final int ROOM = 2;

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    if (scene.project().glass().isEmpty()) return List.of();
    Set<String> rows = new TreeSet<>();
    Set<String> schedules = new TreeSet<>();
    Map<String, Origin> undecided = new LinkedHashMap<>();
    for (Facts f : scene.project().facts()) {
      for (ScheduleRow row : f.rows()) {
        if (!row.decided() || row.used()) continue;
        rows.add(Tags.key(row.tag()));
        schedules.add(table(row.origin()));
      }
    }
    // "F-03 oak flooring" among rows that say what they are is a row, too.
    for (Facts f : scene.project().facts()) {
      for (ScheduleRow row : f.rows()) {
        if (row.decided()) continue;
        if (schedules.contains(table(row.origin()))) rows.add(Tags.key(row.tag()));
        else undecided.putIfAbsent(row.tag(), row.origin());
      }
    }
    undecided.keySet().removeIf(tag -> rows.contains(Tags.key(tag)));
    // Without a schedule the tiles are those that clauses specify by tag. A table of joints or of
    // mortars that says nothing of what a tile is schedules none.
    Set<String> glass = scene.project().glassKeys();
    boolean scheduled = !rows.isEmpty();
    if (!scheduled) undecided.keySet().forEach(tag -> rows.add(Tags.key(tag)));
    Map<String, Origin> used = new LinkedHashMap<>();
    for (Facts f : scene.project().facts())
      for (ScheduleRow row : f.rows())
        if (row.used() && row.glass()) used.putIfAbsent(row.tag(), row.origin());
    if (!scheduled) used.keySet().forEach(tag -> rows.add(Tags.key(tag)));
    // "GL9 to the niche": of letters that only glass tiles have, it needs no word of glass.
    GlassLetters letters = new GlassLetters(glass, rows);
    // Tiles of whose letters the schedules have several are missing there.
    glass.stream().filter(key -> !letters.several(key)).forEach(rows::add);
    rows.addAll(scene.project().components());
    Set<String> prefixes = TagsInUse.prefixes(glass);
    Map<String, Origin> strangers = new LinkedHashMap<>();
    // Issue after issue says the same words.
    Memo<String, Boolean> speaking = Memo.ofTexts();
    Memo<String, Set<String>> opening = Memo.ofTexts();
    Memo<String, Set<String>> named = Memo.ofTexts();
    // Where clauses specify the tiles by tag, what a room alone uses is one that they pass over.
    if (!scene.project().rooms().isEmpty()
        && !TagsInUse.specifiedByTag(scene, TagsInUse.specifying(scene)))
      for (RoomUse use : scene.project().rooms())
        TagsInUse.stranger(strangers, rows, prefixes, use.tag(), use.origin());
    for (Section section : scene.project().sections()) {
      for (Clause clause : section.clauses()) {
        String text = clause.text();
        Set<String> each = letters.isEmpty() ? Set.of() : named.get(text, () -> namedEach(text));
        boolean ofOthers = clause.limits().otherTileOnly();
        for (String tag : each)
          if ((letters.onlyGlass(tag) || !ofOthers && letters.areOfTileIn(tag, text))
              && !dropped(scene, text))
            TagsInUse.stranger(strangers, rows, prefixes, tag, clause.origin());
        Set<String> opens = opening.get(text, () -> Tags.inOpening(text));
        if (opens.isEmpty() && clause.limits().tags().isEmpty()) continue;
        boolean speaks =
            section.article()
                || clause.limits().glass()
                || speaking.get(text, () -> scene.vocabulary().glass().speaksOfTile(text));
        if (!speaks) continue;
        if (dropped(scene, text)) continue;
        for (String tag : clause.limits().tags())
          TagsInUse.stranger(strangers, rows, prefixes, tag, clause.origin());
        for (String tag : opens)
          TagsInUse.stranger(strangers, rows, prefixes, tag, clause.origin());
      }
    }
    used.forEach((tag, origin) -> TagsInUse.stranger(strangers, rows, prefixes, tag, origin));
    undecided.forEach((tag, origin) -> TagsInUse.stranger(strangers, rows, prefixes, tag, origin));
    // "T-5x" stands for T-51 and T-52.
    strangers.keySet().removeIf(tag -> rows.containsAll(Tags.meant(Tags.key(tag), rows)));
    // "Schedule AQ-S" is the name of a document.
    strangers
        .keySet()
        .removeIf(tag -> scene.documents().stream().anyMatch(d -> d.path().contains(tag)));
    List<Finding> out = new ArrayList<>();
    strangers.forEach(
        (tag, origin) -> {
          String said = "{tag} is used but stands in no tile schedule.";
          out.add(
              TagsInUse.missing(
                  rule, scene, tag, origin, List.of(), said, "a row in the schedule"));
        });
    unused(rule, scene, out);
    return out;
  }

  /** Tags that a text names one by one: "G-10 to G-54" are room for more. */
  private static Set<String> namedEach(String text) {
    Set<String> written = new TreeSet<>();
    for (String tag : TagFinder.written(PlainText.of(text))) written.add(Tags.key(tag));
    Set<String> spread = TagFinder.tags(text);
    written.retainAll(spread);
    return spread.size() > written.size() + ROOM ? Set.of() : written;
  }

  private static boolean dropped(Scene scene, String text) {
    return scene.vocabulary().list("clause.dropped").in(text);
  }

  /** A tile that is specified, where the rooms use the others and nothing schedules this one. */
  private static void unused(Rule rule, Scene scene, List<Finding> out) {
    Set<String> used = new TreeSet<>();
    for (RoomUse use : scene.project().rooms()) used.add(Tags.key(use.tag()));
    Set<String> rows = new TreeSet<>();
    for (Facts f : scene.project().facts()) f.rows().forEach(row -> rows.add(Tags.key(row.tag())));
    List<Entry> glass = scene.project().glass();
    long placed = glass.stream().filter(e -> used.contains(Tags.key(e.tag()))).count();
    if (placed < 2 || placed * 2 < glass.size()) return;
    for (Entry e : glass) {
      String key = Tags.key(e.tag());
      if (used.contains(key) || rows.contains(key) || Tags.prefix(key).isEmpty()) continue;
      String said = "{tag} is specified, and the room schedule uses it nowhere.";
      out.add(
          TagsInUse.missing(
              rule, scene, e.tag(), e.origin(), List.of(), said, "a room that uses it"));
    }
  }

  private static String table(Origin origin) {
    return origin.document() + "\n" + origin.sheet();
  }
}
