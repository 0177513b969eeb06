package clearbed.check.computed.set;

import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation.Scene;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Entry;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Tags;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** Which tags of glass tile a set uses, and which section specifies tiles by them. */
final class TagsInUse {
  /** Articles of the third part of a section, on the work. */
  private static final String EXECUTION = "3.";

  private TagsInUse() {}

  static Finding missing(
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
                FindingKind.MISSING,
                rule.level(),
                List.of(tag),
                new FoundAt(origin, also),
                FindingWords.of(said, tag, expected)));
  }

  static void stranger(
      Map<String, Origin> out, Set<String> rows, Set<String> prefixes, String tag, Origin origin) {
    String key = Tags.key(tag);
    if (!rows.contains(key) && prefixes.contains(Tags.prefix(key))) out.putIfAbsent(key, origin);
  }

  /** The tags that a clause specifies as tiles: it opens with them, or says what they are like. */
  private static Set<String> products(Clause clause) {
    Set<String> out = new TreeSet<>();
    // "3.1 Behind GT-1 and GT-2 the whole wall is levelled" says how to work, and specifies none.
    boolean work = clause.article().startsWith(EXECUTION) && !statesTile(clause);
    if (clause.subject().specified() && clause.subject().own() && !work)
      clause.subject().tags().forEach(tag -> out.add(Tags.key(tag)));
    clause.statements().stream()
        .filter(s -> s.attribute().startsWith("tile.standard") || s.attribute().equals("tile.size"))
        .forEach(s -> s.limits().tags().forEach(tag -> out.add(Tags.key(tag))));
    return out;
  }

  /** The tile section; without one, the notes or narrative that name most glass tiles by tag. */
  static Section specifying(Scene scene) {
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

  /** True of a clause that says of tiles by their tags what they are like. */
  private static boolean describes(Clause clause) {
    return !products(clause).isEmpty() && statesTile(clause);
  }

  private static boolean statesTile(Clause clause) {
    return clause.statements().stream().anyMatch(s -> s.attribute().startsWith("tile."));
  }

  static Set<String> prefixes(Set<String> keys) {
    return keys.stream().map(Tags::prefix).filter(p -> !p.isEmpty()).collect(Collectors.toSet());
  }

  static List<Entry> tagged(Scene scene) {
    return scene.project().glass().stream()
        .filter(e -> !Tags.prefix(Tags.key(e.tag())).isEmpty())
        .toList();
  }

  /** True where a section specifies half of the glass tiles or more by their tags. */
  static boolean specifiedByTag(Scene scene, Section section) {
    if (section == null) return false;
    // Notes that name tiles and say nothing of what they are like specify none.
    if (section.notes() && section.clauses().stream().noneMatch(TagsInUse::describes)) return false;
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
