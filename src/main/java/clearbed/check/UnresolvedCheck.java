package clearbed.check;

import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Finding;
import clearbed.model.Kind;
import clearbed.model.Origin;
import clearbed.model.Value;
import clearbed.recognise.Clause;
import clearbed.recognise.Section;
import clearbed.recognise.Statement;
import clearbed.recognise.Tags;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Places where a value belongs and stands open. */
final class UnresolvedCheck implements SetComputation {

  private record Open(String attribute, String words, Origin origin, Set<String> tags) {}

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    Map<String, Open> open = new LinkedHashMap<>();
    for (Entry entry : scene.project().glass()) {
      for (Value v : entry.values()) {
        if (v.open()) add(open, v.attribute(), v.content().text(), v.origin(), entry.tag());
      }
    }
    if (!scene.project().glass().isEmpty()) unassigned(scene, open);
    return open.values().stream().map(o -> finding(rule, scene, o)).toList();
  }

  /**
   * Open words that no attribute could be told for, in the tile section or wherever glass tile is
   * named.
   */
  private static void unassigned(Scene scene, Map<String, Open> open) {
    Set<String> glass = scene.project().glassKeys();
    for (Section section : scene.project().sections()) {
      for (Clause clause : section.clauses()) {
        for (Statement s : clause.statements()) {
          if (!s.attribute().equals("text") || !(s.content() instanceof Content.Open)) continue;
          boolean tile =
              section.article()
                  || s.limits().glass()
                  || s.limits().tags().stream().map(Tags::key).anyMatch(glass::contains);
          if (tile && !s.limits().otherTileOnly())
            add(open, "", s.content().text(), s.origin(), null);
        }
      }
    }
  }

  private static void add(
      Map<String, Open> open, String attribute, String words, Origin origin, String tag) {
    String key =
        origin.document()
            + origin.sheet()
            + origin.cell()
            + origin.heading()
            + origin.paragraph()
            + words;
    Open known =
        open.computeIfAbsent(key, k -> new Open(attribute, words, origin, new LinkedHashSet<>()));
    if (tag != null) known.tags().add(tag);
  }

  private static Finding finding(Rule rule, Scene scene, Open o) {
    boolean row = o.origin().cell() != null && o.tags().size() == 1;
    String subject =
        row
            ? Subjects.tags(o.tags())
            : Subjects.document(o.origin()) + " " + o.words() + " " + clause(o.origin());
    boolean any = o.attribute().isEmpty() || o.attribute().equals("text");
    String label = any ? "A requirement" : scene.vocabulary().label(o.attribute());
    String whom = o.tags().isEmpty() ? "" : " of {tag}";
    String message = label + whom + " is left open: " + o.words().replaceAll("\\s+", " ") + ".";
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                subject,
                o.attribute(),
                Kind.UNRESOLVED,
                rule.level(),
                List.copyOf(o.tags()),
                o.origin(),
                List.of(),
                message,
                o.words(),
                "a decision",
                List.of()));
  }

  /** The clause in its own words: numbers change when a clause is put in before it. */
  private static String clause(Origin origin) {
    String text = origin.text() == null ? "" : origin.text();
    return text.length() > 40 ? text.substring(0, 40) : text;
  }
}
