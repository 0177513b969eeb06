package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Origin;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;

/** What must not be prescribed at all is prescribed, wherever that stands. */
public final class AbsentCheck implements Computation {
  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> all = entry.values(rule.attribute());
    List<Value> asked = all.stream().filter(v -> !v.excluded() && !v.open()).toList();
    if (asked.isEmpty()) return notAsked(rule, entry);
    List<Origin> others = asked.stream().skip(1).map(Value::origin).distinct().toList();
    return new Judgement.Failed(
        rule.kind(),
        FindingWords.of("", Judge.found(asked), ""),
        new FoundAt(asked.get(0).origin(), others));
  }

  private static Judgement notAsked(Rule rule, Entry entry) {
    return rule.instead().stream()
        .map(entry::governing)
        .filter(values -> !values.isEmpty())
        .findFirst()
        .<Judgement>map(Judge::satisfied)
        .orElse(new Judgement.NotApplicable("not spoken of"));
  }
}
