package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;

/** The size is stated and could be read as lengths. */
public final class TileSizeCheck implements Computation {
  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) {
      Value open =
          entry.values(rule.attribute()).stream().filter(Value::open).findFirst().orElse(null);
      return open == null
          ? new Judgement.Missing()
          : new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    }
    Value first = values.get(0);
    if (first.content() instanceof Content.Words)
      return new Judgement.Failed(
          FindingKind.INADEQUATE,
          FindingWords.of("", first.asWritten(), ""),
          FoundAt.at(first.origin()));
    return Judge.satisfied(values);
  }
}
