package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.regex.Pattern;

/** A water action class (DIN 18534, DIN 18535) stands with the membrane or with the place. */
public final class WaterClassCheck implements Computation {
  private static final Pattern CLASS =
      Pattern.compile("(?<![A-Za-z0-9])W ?[0-3] ?- ?[IB](?![A-Za-z0-9])");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (!values.isEmpty()) return Judge.satisfied(values);
    List<Value> places =
        entry.values("location.exposure").stream()
            .filter(v -> !v.excluded() && CLASS.matcher(v.asWritten()).find())
            .toList();
    return places.isEmpty()
        ? new Stated(entry).openOrMissing(rule.attribute())
        : Judge.satisfied(places);
  }
}
