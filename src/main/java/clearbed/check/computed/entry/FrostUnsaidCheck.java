package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.TilePlace;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;

/** Outside, either a test for frost is stated or the words say that it does not freeze. */
public final class FrostUnsaidCheck implements Computation {
  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    if (rules.vocabulary().list("checks.noFrost").in(TilePlace.words(entry)))
      return new Judgement.NotApplicable("it does not freeze there");
    List<Value> values = entry.governing(rule.attribute());
    return values.isEmpty()
        ? new Stated(entry).openOrMissing(rule.attribute())
        : Judge.satisfied(values);
  }
}
