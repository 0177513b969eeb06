package clearbed.check.judge;

import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.value.Entry;
import clearbed.resolve.Project;

/**
 * A check of one entry that takes arithmetic. A pure function: entries are judged in parallel, and
 * one of a long schedule is judged again when its calculation is to be shown.
 */
public interface Computation {
  Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules);
}
