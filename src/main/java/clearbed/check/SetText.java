package clearbed.check;

import clearbed.model.Entry;
import clearbed.model.Origin;
import clearbed.model.Value;
import clearbed.recognise.Clause;
import clearbed.recognise.Limits;
import clearbed.recognise.Section;
import clearbed.recognise.Tags;
import clearbed.resolve.Project;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The words of the set that bear on glass tile: clauses of tile sections and notes, schedule cells
 * of glass entries.
 */
final class SetText {

  /**
   * Some words and where they stand.
   *
   * @param tag of the entry in whose row they stand; empty for a clause
   */
  record Piece(String text, Origin origin, String tag) {

    /** What the words belong to, for an id. */
    String subject() {
      return tag.isEmpty() ? Subjects.document(origin) : tag;
    }
  }

  private SetText() {}

  static List<Piece> of(Project project) {
    Map<String, Piece> out = new LinkedHashMap<>();
    if (project.glass().isEmpty()) return List.of();
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        boolean bears =
            (section.article() || !clause.statements().isEmpty())
                && !clause.limits().otherTileOnly()
                && !otherOnly(clause);
        if (bears)
          out.putIfAbsent(key(clause.origin()), new Piece(clause.text(), clause.origin(), ""));
      }
    }
    for (Entry entry : project.glass()) {
      for (Value v : entry.values()) {
        if (v.origin().cell() != null && v.origin().text() != null)
          out.putIfAbsent(
              key(v.origin()), new Piece(v.origin().text(), v.origin(), Tags.key(entry.tag())));
      }
    }
    return List.copyOf(out.values());
  }

  private static boolean otherOnly(Clause clause) {
    return !clause.statements().isEmpty()
        && clause.statements().stream().allMatch(s -> otherTile(s.limits()));
  }

  private static boolean otherTile(Limits limits) {
    return limits.otherTileOnly();
  }

  private static String key(Origin o) {
    return o.document()
        + "|"
        + o.sheet()
        + "|"
        + o.cell()
        + "|"
        + o.page()
        + "|"
        + o.paragraph()
        + "|"
        + o.heading();
  }
}
