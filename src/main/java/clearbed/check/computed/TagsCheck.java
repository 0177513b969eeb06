package clearbed.check.computed;

import clearbed.base.Memo;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.rules.Rule;
import clearbed.model.Entry;
import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.model.Origin;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.RoomUse;
import clearbed.recognise.schedule.ScheduleRow;
import clearbed.recognise.section.Clause;
import clearbed.recognise.section.Section;
import clearbed.recognise.statement.LimitFinder;
import clearbed.recognise.statement.Statement;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.text.PlainText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Tags of glass tile stand in the schedule and in the section. */
public final class TagsCheck implements SetComputation {
  /** Of a range of so many more marks than are written some may be room for more. */
  private static final int ROOM = 2;

  private final boolean scheduled;

  /**
   * @param scheduled true to look for glass tags that no schedule has, false for scheduled ones
   *     that the section passes over
   */
  public TagsCheck(boolean scheduled) {
    this.scheduled = scheduled;
  }

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    if (scene.project().glass().isEmpty()) return List.of();
    return scheduled ? unscheduled(rule, scene) : unspecified(rule, scene);
  }

  private static List<Finding> unscheduled(Rule rule, Scene scene) {
    Set<String> rows = new TreeSet<>();
    Set<String> schedules = new TreeSet<>();
    Map<String, Origin> undecided = new LinkedHashMap<>();
    for (Facts f : scene.project().facts()) {
      for (ScheduleRow row : f.rows()) {
        if (row.decided()) rows.add(Tags.key(row.tag()));
        if (row.decided()) schedules.add(table(row.origin()));
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
    // "GL9 to the niche": of letters that only glass tiles have, it needs no word of glass.
    GlassLetters letters = new GlassLetters(glass, rows);
    // Tiles of whose letters the schedules have several are missing there.
    glass.stream().filter(key -> !letters.several(key)).forEach(rows::add);
    rows.addAll(scene.project().components());
    Set<String> prefixes = prefixes(glass);
    Map<String, Origin> strangers = new LinkedHashMap<>();
    // Issue after issue says the same words.
    Memo<String, Boolean> speaking = Memo.ofTexts();
    Memo<String, Set<String>> opening = Memo.ofTexts();
    Memo<String, Set<String>> named = Memo.ofTexts();
    // Where clauses specify the tiles by tag, what a room alone uses is one that they pass over.
    if (!scene.project().rooms().isEmpty() && !specifiedByTag(scene, specifying(scene)))
      for (RoomUse use : scene.project().rooms())
        stranger(strangers, rows, prefixes, use.tag(), use.origin());
    for (Section section : scene.project().sections()) {
      for (Clause clause : section.clauses()) {
        String text = clause.text();
        Set<String> each = letters.isEmpty() ? Set.of() : named.get(text, () -> namedEach(text));
        boolean ofOthers = clause.limits().otherTileOnly();
        for (String tag : each)
          if ((letters.onlyGlass(tag) || !ofOthers && letters.areOfTileIn(tag, text))
              && !dropped(scene, text)) stranger(strangers, rows, prefixes, tag, clause.origin());
        Set<String> opens = opening.get(text, () -> Tags.inOpening(text));
        if (opens.isEmpty() && clause.limits().tags().isEmpty()) continue;
        boolean speaks =
            section.article()
                || clause.limits().glass()
                || speaking.get(text, () -> scene.vocabulary().speaksOfGlassTile(text));
        if (!speaks) continue;
        if (dropped(scene, text)) continue;
        for (String tag : clause.limits().tags())
          stranger(strangers, rows, prefixes, tag, clause.origin());
        for (String tag : opens) stranger(strangers, rows, prefixes, tag, clause.origin());
      }
    }
    undecided.forEach((tag, origin) -> stranger(strangers, rows, prefixes, tag, origin));
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
          out.add(missing(rule, scene, tag, origin, List.of(), said, "a row in the schedule"));
        });
    unused(rule, scene, out);
    return out;
  }

  /** Tags that a text names one by one: "G-10 to G-54" are room for more. */
  private static Set<String> namedEach(String text) {
    Set<String> written = new TreeSet<>();
    for (String tag : LimitFinder.written(PlainText.of(text))) written.add(Tags.key(tag));
    Set<String> spread = LimitFinder.tags(text);
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
      out.add(missing(rule, scene, e.tag(), e.origin(), List.of(), said, "a room that uses it"));
    }
  }

  private static String table(Origin origin) {
    return origin.document() + "\n" + origin.sheet();
  }

  private static Finding missing(
      Rule rule,
      Scene scene,
      String tag,
      Origin origin,
      List<Origin> also,
      String said,
      String expected) {
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                Tags.key(tag),
                "",
                Kind.MISSING,
                rule.level(),
                List.of(tag),
                origin,
                also,
                said,
                tag,
                expected,
                List.of()));
  }

  private static void stranger(
      Map<String, Origin> out, Set<String> rows, Set<String> prefixes, String tag, Origin origin) {
    String key = Tags.key(tag);
    if (!rows.contains(key) && prefixes.contains(Tags.prefix(key))) out.putIfAbsent(key, origin);
  }

  /** The tags that a clause specifies as tiles: it opens with them, or says what they are like. */
  private static Set<String> products(Clause clause) {
    Set<String> out = new TreeSet<>();
    if (clause.subject().specified() && clause.subject().own())
      clause.subject().tags().forEach(tag -> out.add(Tags.key(tag)));
    clause.statements().stream()
        .filter(s -> s.attribute().startsWith("tile.standard") || s.attribute().equals("tile.size"))
        .forEach(s -> s.limits().tags().forEach(tag -> out.add(Tags.key(tag))));
    return out;
  }

  /** The tile section; without one, the notes or narrative that name most glass tiles by tag. */
  private static Section specifying(Scene scene) {
    Section section = scene.project().tileSection();
    if (section != null) return section;
    Set<String> glass = scene.project().glassKeys();
    long most = 1;
    for (Section other : scene.project().sections()) {
      long named =
          other.clauses().stream()
              .flatMap(c -> products(c).stream())
              .filter(glass::contains)
              .distinct()
              .count();
      if (named > most) {
        most = named;
        section = other;
      }
    }
    return section;
  }

  /** The tags of which clauses outside a section state more than one thing. */
  private static Set<String> elsewhere(Scene scene, Section section) {
    Map<String, Set<String>> stated = new LinkedHashMap<>();
    for (Section other : scene.project().sections()) {
      if (other == section) continue;
      for (Clause clause : other.clauses())
        for (Statement s : clause.statements())
          for (String tag : s.limits().tags())
            stated.computeIfAbsent(Tags.key(tag), key -> new TreeSet<>()).add(s.attribute());
    }
    stated.values().removeIf(attributes -> attributes.size() < 2);
    return stated.keySet();
  }

  /** Where the section speaks of glass tile by tag, it should speak of all of them. */
  private static List<Finding> unspecified(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    Section section = specifying(scene);
    if (section == null) return out;
    Set<String> named = new TreeSet<>();
    for (Clause clause : section.clauses()) {
      clause.limits().tags().forEach(tag -> named.add(Tags.key(tag)));
      // "These notes apply to F-04, W-07 and W-08."
      LimitFinder.tags(clause.text()).forEach(tag -> named.add(Tags.key(tag)));
      for (Statement s : clause.statements())
        s.limits().tags().forEach(tag -> named.add(Tags.key(tag)));
    }
    if (!specifiedByTag(scene, section)) return out;
    List<Entry> entries = tagged(scene);
    Set<String> elsewhere = elsewhere(scene, section);
    for (Entry e : entries) {
      if (named.contains(Tags.key(e.tag())) || elsewhere.contains(Tags.key(e.tag()))) continue;
      String said =
          "{tag} is scheduled, and "
              + section.name()
              + " specifies other glass tile by tag but not this one.";
      Origin where = section.origin();
      out.add(missing(rule, scene, e.tag(), e.origin(), List.of(where), said, "a product clause"));
    }
    passedOver(rule, scene, section, out);
    return out;
  }

  /** Tags of the same letters that rooms use and nothing specifies or schedules. */
  private static void passedOver(Rule rule, Scene scene, Section section, List<Finding> out) {
    Set<String> known = new TreeSet<>(scene.project().glassKeys());
    known.addAll(scene.project().components());
    Set<String> prefixes = prefixes(scene.project().glassKeys());
    for (Facts f : scene.project().facts())
      f.rows().stream().filter(ScheduleRow::decided).forEach(r -> known.add(Tags.key(r.tag())));
    Map<String, Origin> strangers = new LinkedHashMap<>();
    for (RoomUse use : scene.project().rooms())
      stranger(strangers, known, prefixes, use.tag(), use.origin());
    String said =
        "{tag} is used in a room, and "
            + section.name()
            + " specifies other glass tile by tag but not this one.";
    Origin where = section.origin();
    strangers.forEach(
        (tag, origin) ->
            out.add(missing(rule, scene, tag, origin, List.of(where), said, "a product clause")));
  }

  private static Set<String> prefixes(Set<String> keys) {
    return keys.stream().map(Tags::prefix).filter(p -> !p.isEmpty()).collect(Collectors.toSet());
  }

  private static List<Entry> tagged(Scene scene) {
    return scene.project().glass().stream()
        .filter(e -> !Tags.prefix(Tags.key(e.tag())).isEmpty())
        .toList();
  }

  /** True where a section specifies half of the glass tiles or more by their tags. */
  private static boolean specifiedByTag(Scene scene, Section section) {
    if (section == null) return false;
    Set<String> products = new TreeSet<>();
    for (Clause clause : section.clauses()) {
      products.addAll(products(clause));
      boolean atLarge =
          clause.statements().stream()
              .anyMatch(
                  s ->
                      s.attribute().equals("tile.standard")
                          && s.limits().glass()
                          && s.limits().tags().isEmpty());
      if (atLarge) return false;
    }
    List<Entry> entries = tagged(scene);
    return !entries.isEmpty()
        && entries.stream().filter(e -> products.contains(Tags.key(e.tag()))).count() * 2
            >= entries.size();
  }
}
