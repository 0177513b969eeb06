package clearbed.check;

import clearbed.check.rules.Rule;
import clearbed.model.report.Level;
import clearbed.model.value.Entry;
import clearbed.model.value.Scope;
import java.util.List;

/**
 * What the documents say of the other glass tile of the set: where they give most of it a value of
 * its own, they ask for one themselves, and the tile without stands out.
 *
 * @param having how many glass tiles have such a value
 */
record OtherTile(int having, int all) {
  /** More tiles without are a habit of the office, no slip. */
  private static final int FEW = 2;

  private static final OtherTile NOT_ASKED = new OtherTile(0, 0);

  /** Only of a rule that asks: of a long schedule it takes as long as the rule itself. */
  static OtherTile of(Rule rule, List<Entry> glass) {
    boolean asks = rule.whereOthersHaveIt() || rule.unlikeOthersLevel() != rule.missingLevel();
    if (!asks) return NOT_ASKED;
    int having = 0;
    for (Entry entry : glass) if (has(rule.attribute(), entry)) having++;
    return new OtherTile(having, glass.size());
  }

  private static boolean has(String attribute, Entry entry) {
    return entry.governing(attribute).stream().anyMatch(v -> v.scope() == Scope.ENTRY);
  }

  /** True where two tiles at least have it, more than are without, and those are few. */
  private boolean most() {
    int without = all - having;
    return having > 1 && having > without && without <= FEW;
  }

  /** Of what is missing under a rule. */
  Level missing(Rule rule) {
    return most() ? rule.unlikeOthersLevel() : rule.missingLevel();
  }

  /**
   * False where a rule asks only what the documents ask of another tile, and they ask it of none.
   */
  boolean concerns(Rule rule, Entry entry) {
    if (!rule.whereOthersHaveIt()) return true;
    return having > (has(rule.attribute(), entry) ? 1 : 0);
  }
}
