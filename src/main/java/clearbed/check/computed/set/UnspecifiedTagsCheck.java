package clearbed.check.computed.set;

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
import clearbed.recognise.statement.limit.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** A section that speaks of glass tile by tag speaks of all that are scheduled. */
public final class UnspecifiedTagsCheck implements SetComputation {
  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    if (scene.project().glass().isEmpty()) return out;
    Section section = TagsInUse.specifying(scene);
    if (section == null) return out;
    Set<String> named = new TreeSet<>();
    for (Clause clause : section.clauses()) {
      clause.limits().tags().forEach(tag -> named.add(Tags.key(tag)));
      // "These notes apply to F-04, W-07 and W-08."
      TagFinder.tags(clause.text()).forEach(tag -> named.add(Tags.key(tag)));
      for (Statement s : clause.statements())
        s.limits().tags().forEach(tag -> named.add(Tags.key(tag)));
    }
    if (!TagsInUse.specifiedByTag(scene, section)) return out;
    List<Entry> entries = TagsInUse.tagged(scene);
    Set<String> elsewhere = elsewhere(scene, section);
    for (Entry e : entries) {
      if (named.contains(Tags.key(e.tag())) || elsewhere.contains(Tags.key(e.tag()))) continue;
      String said =
          "{tag} is scheduled, and "
              + section.name()
              + " specifies other glass tile by tag but not this one.";
      Origin where = section.origin();
      out.add(
          TagsInUse.missing(
              rule, scene, e.tag(), e.origin(), List.of(where), said, "a product clause"));
    }
    passedOver(rule, scene, section, out);
    return out;
  }

  /** Tags of the same letters that rooms use and nothing specifies or schedules. */
  private static void passedOver(Rule rule, Scene scene, Section section, List<Finding> out) {
    Set<String> known = new TreeSet<>(scene.project().glassKeys());
    known.addAll(scene.project().components());
    Set<String> prefixes = TagsInUse.prefixes(scene.project().glassKeys());
    for (Facts f : scene.project().facts())
      f.rows().stream().filter(ScheduleRow::decided).forEach(r -> known.add(Tags.key(r.tag())));
    Map<String, Origin> strangers = new LinkedHashMap<>();
    for (RoomUse use : scene.project().rooms())
      TagsInUse.stranger(strangers, known, prefixes, use.tag(), use.origin());
    String said =
        "{tag} is used in a room, and "
            + section.name()
            + " specifies other glass tile by tag but not this one.";
    Origin where = section.origin();
    strangers.forEach(
        (tag, origin) ->
            out.add(
                TagsInUse.missing(
                    rule, scene, tag, origin, List.of(where), said, "a product clause")));
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
}
