package clearbed.check;

import clearbed.model.Entry;
import clearbed.resolve.Project;

/** A check of one entry that takes arithmetic. */
interface Computation {
  Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules);
}
