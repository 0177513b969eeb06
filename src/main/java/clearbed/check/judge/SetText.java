package clearbed.check.judge;

import clearbed.model.document.Origin;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.statement.limit.Limits;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;

/**
 * The words of the set that bear on glass tile: clauses of tile sections and notes, schedule cells
 * of glass entries.
 */
public final class SetText {
  /** So many clauses that state something, and half of all, make a section one on tile work. */
  private static final int GOVERNING = 8;

  /**
   * Some words and where they stand.
   *
   * @param tag of the entry in whose row they stand; empty for a clause
   * @param tags of the entries that they speak of, as the documents write them; empty for all
   */
  public record TextPiece(String text, Origin origin, String tag, List<String> tags) {

    /** What the words belong to, for an id. */
    public String subject() {
      return tag.isEmpty() ? Subjects.document(origin) : tag;
    }
  }

  /** Words that matter. */
  public interface Sieve {
    /**
     * @param cell true for words in a cell
     */
    boolean passes(String text, boolean cell);
  }

  private final Project project;

  public SetText(Project project) {
    this.project = project;
  }

  /** Gives every piece that passes once, in order; of a long set they are too many to hold. */
  public void each(Sieve sieve, Consumer<TextPiece> taker) {
    SeenPlaces seen = new SeenPlaces();
    if (project.glass().isEmpty()) return;
    Set<String> glass = project.glassKeys();
    for (Section section : project.sections()) {
      boolean governs = section.article() || governs(section);
      for (Clause clause : section.clauses()) {
        boolean bears =
            (governs || !clause.statements().isEmpty() || names(clause, glass))
                && !clause.limits().otherTileOnly()
                && !otherOnly(clause);
        if (bears
            && sieve.passes(clause.text(), clause.origin().cell() != null)
            && seen.isNew(clause.origin()))
          taker.accept(new TextPiece(clause.text(), clause.origin(), "", limited(clause)));
      }
    }
    for (Entry entry : project.glass()) {
      String tag = Tags.key(entry.tag());
      for (Value v : entry.valuesInCells(v -> passes(sieve, v.origin().text()))) {
        if (seen.isNew(v.origin()))
          taker.accept(new TextPiece(v.origin().text(), v.origin(), tag, List.of(entry.tag())));
      }
    }
  }

  /** The glass entries that a clause is limited to. */
  private List<String> limited(Clause clause) {
    Set<String> tags = clause.limits().tags();
    if (tags.isEmpty()) return List.of();
    return project.glass().stream()
        .map(Entry::tag)
        .filter(tag -> tags.contains(Tags.key(tag)))
        .toList();
  }

  /** Remarks that state much of tile work bear on it where they state nothing as well. */
  private static boolean governs(Section section) {
    long stating = section.clauses().stream().filter(c -> !c.statements().isEmpty()).count();
    return stating >= GOVERNING && stating * 2 >= section.clauses().size();
  }

  /** "GT-3: a suitable membrane" states nothing and bears on glass all the same. */
  private static boolean names(Clause clause, Set<String> glass) {
    return clause.limits().tags().stream().map(Tags::key).anyMatch(glass::contains);
  }

  private static boolean passes(Sieve sieve, String text) {
    return text != null && sieve.passes(text, true);
  }

  private static boolean otherOnly(Clause clause) {
    return !clause.statements().isEmpty()
        && clause.statements().stream().allMatch(s -> otherTile(s.limits()));
  }

  private static boolean otherTile(Limits limits) {
    return limits.otherTileOnly();
  }
}
