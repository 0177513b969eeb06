package clearbed.resolve;

import clearbed.model.document.Origin;
import clearbed.model.value.Content;
import clearbed.model.value.Scope;
import clearbed.model.value.Value;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.entry.Draft;

/** Says of a tag that one place makes a glass tile and another some other tile what each says. */
final class Materials {
  private static final String ATTRIBUTE = "tile.material";

  private final Vocabulary vocabulary;

  Materials(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** Adds both to the values of a glass tile, which then contradict each other. */
  void contradictions(Draft draft) {
    Value other = other(draft);
    if (other == null) return;
    draft.add(glass(draft));
    draft.add(other);
  }

  private static Value glass(Draft draft) {
    for (ScheduleRow row : draft.rows) {
      if (row.glass()) return value("glass tile", row.evidence(), row.origin());
    }
    if (!draft.asGlass.isEmpty()) return ofClause("glass tile", draft.asGlass.get(0));
    return value("glass tile", draft.evidence, draft.origin);
  }

  private Value other(Draft draft) {
    for (ScheduleRow row : draft.rows) {
      if (row.decided() && !row.glass() && isOther(row.evidence())) {
        return value(kind(row.evidence()), row.evidence(), row.origin());
      }
    }
    for (Clause clause : draft.asOther)
      if (isOther(clause.text())) return ofClause(kind(clause.text()), clause);
    return null;
  }

  /**
   * Other tile, or a finish that is none. "Kiln-cast glass slabs" does not say tile, and nothing
   * against it; "Concrete block, mortar bed" says what is behind it.
   */
  private boolean isOther(String words) {
    if (vocabulary.glass().describesOtherTile(words).isPresent()) return true;
    boolean ground =
        vocabulary.attribute("substrate.type").orElseThrow().words().anyTerm().in(words);
    return !ground && vocabulary.list("otherFinish").in(words);
  }

  private String kind(String words) {
    return vocabulary
        .glass()
        .describesOtherTile(words)
        .map(kind -> kind + " tile")
        .orElse("no glass tile");
  }

  private static Value ofClause(String kind, Clause clause) {
    return value(kind, clause.text(), clause.origin());
  }

  private static Value value(String kind, String words, Origin origin) {
    return new Value(
        ATTRIBUTE, new Content.Term(kind), false, words, origin.withText(words), Scope.ENTRY);
  }
}
