package clearbed.resolve;

import clearbed.model.value.Content;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.RoomUse;
import clearbed.recognise.schedule.row.RowReader;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Statement;
import clearbed.recognise.text.Quantities;
import clearbed.resolve.entry.Draft;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What schedules and lists of rooms say of each tag. */
final class ScheduledTiles {
  private static final Pattern SIZE_BEHIND =
      Pattern.compile(
          "(?:,? in)? ?\\(?(\\d[\\d.,/ -]{0,8}(?:mm|cm|in\\.?|\"|')? ?[x\u00d7] ?\\d[^;()]{0,24})");

  private ScheduledTiles() {}

  static void rows(List<Facts> facts, Map<String, Draft> drafts) {
    Map<ScheduleRow, Set<String>> notes = keynotes(facts);
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) {
        if (notes.containsKey(row)) continue;
        Draft draft =
            drafts.computeIfAbsent(
                Tags.key(row.tag()), key -> new Draft(row.tag(), key, row.origin()));
        draft.scheduled = true;
        draft.glass |= row.glass();
        if (draft.evidence.isEmpty() || row.glass() || row.decided())
          draft.evidence = row.evidence();
        draft.places.add(row.origin());
        draft.scheduledAt(row);
        draft.rows.add(row);
      }
    }
    notes.forEach(
        (row, keys) -> {
          for (String key : keys) {
            Draft draft = drafts.get(key);
            if (draft == null) continue;
            draft.rows.add(row);
            draft.glass |= row.glass();
            draft.places.add(row.origin());
          }
        });
  }

  /**
   * "A4 | Glass tile GT-104 at the showers" is a keynote on GT-104, which other rows schedule, and
   * A4 no tile.
   */
  private static Map<ScheduleRow, Set<String>> keynotes(List<Facts> facts) {
    Map<String, Integer> scheduled = new HashMap<>();
    Set<String> glass = new HashSet<>();
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) {
        scheduled.merge(Tags.key(row.tag()), 1, Integer::sum);
        if (row.glass()) glass.add(Tags.key(row.tag()));
      }
    }
    Map<ScheduleRow, Set<String>> notes = new LinkedHashMap<>();
    for (Facts f : facts) {
      for (ScheduleRow row : f.rows()) {
        if (!row.tagged() || !Tags.isMark(row.tag())) continue;
        String own = Tags.key(row.tag());
        // "GT-01 | SL3" in a table of joints calls a sealant and describes nothing; "K2 | GT-01" is
        // on the tile.
        String only = row.evidence().strip();
        boolean ofTile = glass.contains(Tags.key(only)) && !glass.contains(own);
        if (Tags.isMark(only) && !ofTile) continue;
        Set<String> named = new TreeSet<>();
        for (String tag : Tags.inOpening(row.evidence())) {
          String key = Tags.key(tag);
          boolean other = !Tags.prefix(key).equals(Tags.prefix(own));
          if (other && scheduled.containsKey(key)) named.add(key);
        }
        if (!named.isEmpty()) notes.put(row, named);
      }
    }
    return notes;
  }

  static void scheduled(Draft draft) {
    for (ScheduleRow row : draft.rows) {
      row.blanks().forEach(draft.blanks::putIfAbsent);
      for (Statement s : row.statements())
        if (!s.attribute().equals(RowReader.MARK)) draft.add(Resolver.value(s, Scope.ENTRY, true));
    }
  }

  static void rooms(List<Facts> facts, Map<String, Draft> drafts) {
    for (Facts f : facts) {
      for (RoomUse use : f.rooms()) {
        Draft draft = drafts.get(Tags.key(use.tag()));
        if (draft != null) draft.rooms.add(use);
      }
    }
  }

  static void placed(Draft draft) {
    for (RoomUse use : draft.rooms) {
      sized(draft, use);
      if (!use.room().isBlank())
        draft.add(
            new Value(
                "location.room",
                new Content.Words(use.room()),
                false,
                use.room(),
                use.origin(),
                Scope.ENTRY));
      if (!use.exposure().isBlank())
        draft.add(
            new Value(
                "location.exposure",
                new Content.Words(use.exposure()),
                false,
                use.exposure(),
                use.origin(),
                Scope.ENTRY));
      draft.add(
          new Value(
              "location.surface",
              new Content.Term(use.surface()),
              false,
              use.origin().text(),
              use.origin(),
              Scope.ENTRY));
    }
  }

  /** As the schedules and the lists of rooms name them. */
  static Set<String> roomsOfGlass(Map<String, Draft> drafts) {
    Set<String> out = new TreeSet<>();
    for (Draft draft : drafts.values()) {
      if (!draft.glass) continue;
      draft.rooms.forEach(use -> out.add(use.room()));
      for (ScheduleRow row : draft.rows)
        for (Statement s : row.statements())
          if (s.attribute().equals("location.room")) out.add(s.asWritten());
    }
    return out;
  }

  /** "GF-01 (100 x 250 mm) in shower": what a list of rooms says of the size of its tile. */
  private static void sized(Draft draft, RoomUse use) {
    String text = use.origin().text();
    int at = text == null ? -1 : text.indexOf(use.tag());
    if (at < 0) return;
    Matcher size = SIZE_BEHIND.matcher(text).region(at + use.tag().length(), text.length());
    if (!size.lookingAt()) return;
    Quantities.size(size.group(1), null)
        .filter(found -> found.sides().size() > 1)
        .ifPresent(
            found ->
                draft.add(new Value("tile.size", found, false, text, use.origin(), Scope.ENTRY)));
  }
}
