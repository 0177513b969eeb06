package clearbed.check.computed.joint;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The area grouted at once, about 10 to 12 sq ft (common practice, no source; how much can be
 * cleaned in time hangs on the hands at work, so that only what is twice as much is blamed): of
 * grout that sets or must be cleaned quickly. Other grout leaves more time, and has twice as much.
 */
public final class GroutReachCheck implements Computation {
  private static final Set<String> QUICK = Set.of("rapid", "epoxy", "urethane");

  private static final Quantity MOST = Quantity.of(24, Unit.SQUARE_FOOT);
  private static final Quantity MOST_OF_CEMENT = Quantity.of(50, Unit.SQUARE_FOOT);

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> types = entry.governing("grout.type");
    List<Value> classes = entry.governing("grout.isoClass");
    boolean quick =
        types.stream()
            .anyMatch(v -> v.content() instanceof Content.Term t && QUICK.contains(t.text()));
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty() && quick) return new Judgement.Missing();
    if (values.isEmpty()) {
      if (types.isEmpty() && classes.isEmpty())
        return new Judgement.Undecided("depends on the type of grout, which is not stated", null);
      return new Judgement.NotApplicable(
          "type of grout: " + Judge.found(types.isEmpty() ? classes : types));
    }
    if (within(values, quick ? MOST : MOST_OF_CEMENT)) return Judge.satisfied(values);
    Value first = values.get(0);
    return new Judgement.Failed(
        rule.kind(), FindingWords.of("", Judge.found(values), ""), FoundAt.at(first.origin()));
  }

  /** "2 m² with RG grout and 4 m² with CG2": the tile's own is one of them. */
  private static boolean within(List<Value> values, Quantity limit) {
    Content.Amount most = new Content.Amount(limit, limit, Bound.AT_MOST);
    return !values.stream()
        .collect(Collectors.toMap(Value::asWritten, v -> within(v, most), Boolean::logicalOr))
        .containsValue(false);
  }

  /** An area given as a maximum, or plainly. */
  private static boolean within(Value v, Content.Amount most) {
    return v.content() instanceof Content.Amount said && said.high().compareTo(most.high()) <= 0;
  }
}
