package clearbed.check;

import clearbed.model.Entry;
import clearbed.model.Origin;
import clearbed.model.Value;
import clearbed.recognise.Clause;
import clearbed.recognise.Limits;
import clearbed.recognise.Section;
import clearbed.recognise.Tags;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/**
 * The words of the set that bear on glass tile: clauses of tile sections and notes, schedule cells
 * of glass entries.
 */
final class SetText {
  private static final int FEW = 100_000;

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

  private final Project project;

  /** Of a short set, for the next who asks; else null. */
  private List<Piece> held;

  SetText(Project project) {
    this.project = project;
  }

  /** Gives every piece once, in order; of a long set they are too many to hold. */
  void each(Consumer<Piece> taker) {
    if (isShort()) held().forEach(taker);
    else find(taker);
  }

  private boolean isShort() {
    long values = 0;
    for (Entry entry : project.glass()) values += entry.values().size();
    return values <= FEW;
  }

  private synchronized List<Piece> held() {
    if (held == null) {
      held = new ArrayList<>();
      find(held::add);
    }
    return held;
  }

  private void find(Consumer<Piece> taker) {
    SeenPlaces seen = new SeenPlaces();
    if (project.glass().isEmpty()) return;
    for (Section section : project.sections()) {
      for (Clause clause : section.clauses()) {
        boolean bears =
            (section.article() || !clause.statements().isEmpty())
                && !clause.limits().otherTileOnly()
                && !otherOnly(clause);
        if (bears && seen.isNew(clause.origin()))
          taker.accept(new Piece(clause.text(), clause.origin(), ""));
      }
    }
    for (Entry entry : project.glass()) {
      String tag = Tags.key(entry.tag());
      for (Value v : entry.values()) {
        boolean cell = v.origin().cell() != null && v.origin().text() != null;
        if (cell && seen.isNew(v.origin()))
          taker.accept(new Piece(v.origin().text(), v.origin(), tag));
      }
    }
  }

  private static boolean otherOnly(Clause clause) {
    return !clause.statements().isEmpty()
        && clause.statements().stream().allMatch(s -> otherTile(s.limits()));
  }

  private static boolean otherTile(Limits limits) {
    return limits.otherTileOnly();
  }
}
