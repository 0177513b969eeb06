package clearbed.check.computed.set;

import clearbed.base.DisplayText;
import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Statement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Places where a value belongs and stands open: one finding for each entry and each article, and
 * one alone for a section that is a guide with its choices still to be made.
 */
public final class UnresolvedCheck implements SetComputation {
  /** A section with more open places is a guide whose choices are still to be made. */
  private static final int GUIDE = 12;

  private static final int QUOTED = 3;
  private static final int LONGEST = 80;

  /**
   * @param article title that it stands under, or empty
   * @param tags of the entries whose value it is
   */
  private record OpenPlace(
      String attribute, String words, Origin origin, String article, Set<String> tags) {}

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    if (scene.project().glass().isEmpty()) return List.of();
    Map<String, OpenPlace> ofEntries = ofEntries(scene);
    List<Finding> findings = new ArrayList<>();
    for (Section section : scene.project().sections()) {
      List<OpenPlace> open = inSection(scene, section, ofEntries);
      if (open.size() > GUIDE) findings.add(guide(rule, scene, section, open));
      else byArticle(open).values().forEach(group -> findings.add(finding(rule, scene, group)));
    }
    byEntry(ofEntries.values()).values().forEach(g -> findings.add(finding(rule, scene, g)));
    return findings;
  }

  /** What values of glass entries leave open, by place. */
  private static Map<String, OpenPlace> ofEntries(Scene scene) {
    Map<String, OpenPlace> open = new LinkedHashMap<>();
    for (Entry entry : scene.project().glass()) {
      for (Value v : entry.values()) {
        if (!v.open() || required(entry, v, scene)) continue;
        open.computeIfAbsent(
                key(v.origin(), v.content().text()),
                key ->
                    new OpenPlace(
                        v.attribute(), v.content().text(), v.origin(), "", new LinkedHashSet<>()))
            .tags()
            .add(entry.tag());
      }
    }
    return open;
  }

  /**
   * "Build a mock-up. Whether it may stay is left to the trade": what is required is not open, but
   * for a choice or a blank that stands in it.
   */
  private static boolean required(Entry entry, Value open, Scene scene) {
    return !scene.vocabulary().list("open").in(open.content().text())
        && entry.governing(open.attribute()).stream()
            .anyMatch(v -> v.content() instanceof Content.Required);
  }

  /**
   * Open places of a section that governs glass tile, with the entries whose values they are; these
   * are taken from the others.
   */
  private static List<OpenPlace> inSection(
      Scene scene, Section section, Map<String, OpenPlace> ofEntries) {
    Set<String> glass = scene.project().glassKeys();
    List<OpenPlace> open = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    for (Clause clause : section.clauses()) {
      for (Statement s : clause.statements()) {
        if (!(s.content() instanceof Content.Open)) continue;
        Set<String> named = new LinkedHashSet<>();
        for (String tag : s.limits().tags()) if (glass.contains(Tags.key(tag))) named.add(tag);
        boolean tile = section.article() || s.limits().glass();
        boolean bears = !named.isEmpty() || tile && !s.limits().otherTileOnly();
        String key = key(s.origin(), s.content().text());
        OpenPlace known = ofEntries.remove(key);
        if (known == null && (!bears || !foundBare(s))) continue;
        if (!seen.add(key)) continue;
        open.add(
            new OpenPlace(
                known == null ? "" : known.attribute(),
                s.content().text(),
                s.origin(),
                clause.heading(),
                known == null ? named : known.tags()));
      }
    }
    return open;
  }

  /** Open words that no attribute could be told for. */
  private static boolean foundBare(Statement s) {
    return s.attribute().equals("text");
  }

  private static String key(Origin origin, String words) {
    return origin.document()
        + origin.sheet()
        + origin.cell()
        + origin.heading()
        + origin.paragraph()
        + words;
  }

  private static Map<String, List<OpenPlace>> byArticle(List<OpenPlace> open) {
    return open.stream()
        .collect(
            Collectors.groupingBy(
                o -> o.article().isEmpty() ? key(o.origin(), o.words()) : o.article(),
                LinkedHashMap::new,
                Collectors.toList()));
  }

  private static Map<String, List<OpenPlace>> byEntry(Iterable<OpenPlace> open) {
    Map<String, List<OpenPlace>> groups = new LinkedHashMap<>();
    for (OpenPlace o : open)
      groups.computeIfAbsent(Subjects.tags(o.tags()), tags -> new ArrayList<>()).add(o);
    return groups;
  }

  private static Finding finding(Rule rule, Scene scene, List<OpenPlace> group) {
    OpenPlace first = group.get(0);
    Set<String> tags = new LinkedHashSet<>();
    group.forEach(o -> tags.addAll(o.tags()));
    String whom = tags.isEmpty() ? "" : " of {tag}";
    String message =
        group.size() == 1
            ? label(scene, first, "A requirement") + whom + " is left open: " + brief(first) + "."
            : group.size() + " places" + whom + " are left open: " + listed(scene, group) + ".";
    boolean row = first.origin().cell() != null && first.tags().size() == 1;
    String subject =
        row
            ? Subjects.tags(first.tags())
            : Subjects.document(first.origin())
                + " "
                + first.words()
                + " "
                + clause(first.origin());
    String attribute = group.size() == 1 ? first.attribute() : "";
    return write(rule, scene, subject, attribute, tags, group, message, first.words());
  }

  /** "86 choices of section 09 30 10 are left open; ..." */
  private static Finding guide(Rule rule, Scene scene, Section section, List<OpenPlace> open) {
    List<OpenPlace> deciding =
        open.stream().filter(o -> scene.vocabulary().list("checks.ofGlass").in(o.words())).toList();
    Set<String> tags = new LinkedHashSet<>();
    open.forEach(o -> tags.addAll(o.tags()));
    String message = open.size() + " choices of " + section.name() + " are left open";
    if (!deciding.isEmpty())
      message +=
          "; "
              + deciding.size()
              + (deciding.size() == 1 ? " decides" : " decide")
              + " about glass: "
              + listed(scene, deciding);
    String subject = Subjects.document(section.origin()) + " " + section.name();
    List<OpenPlace> places = deciding.isEmpty() ? open : deciding;
    return write(rule, scene, subject, "", tags, places, message + ".", open.get(0).words());
  }

  private static String listed(Scene scene, List<OpenPlace> group) {
    String quoted =
        group.stream()
            .limit(QUOTED)
            .map(o -> label(scene, o, "") + " '" + brief(o) + "'")
            .map(String::strip)
            .collect(Collectors.joining(", "));
    int more = group.size() - QUOTED;
    return more > 0 ? quoted + " and " + more + " more" : quoted;
  }

  private static String label(Scene scene, OpenPlace o, String otherwise) {
    boolean any = o.attribute().isEmpty() || o.attribute().equals("text");
    return any ? otherwise : scene.vocabulary().label(o.attribute());
  }

  private static String brief(OpenPlace o) {
    return DisplayText.shortened(o.words(), LONGEST);
  }

  private static Finding write(
      Rule rule,
      Scene scene,
      String subject,
      String attribute,
      Set<String> tags,
      List<OpenPlace> group,
      String message,
      String found) {
    List<Origin> others = group.stream().skip(1).map(OpenPlace::origin).toList();
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                subject,
                attribute,
                FindingKind.UNRESOLVED,
                rule.level(),
                List.copyOf(tags),
                new FoundAt(group.get(0).origin(), others),
                FindingWords.of(message, found, "a decision")));
  }

  /** The clause in its own words: numbers change when a clause is put in before it. */
  private static String clause(Origin origin) {
    String text = origin.text() == null ? "" : origin.text();
    return text.length() > 40 ? text.substring(0, 40) : text;
  }
}
