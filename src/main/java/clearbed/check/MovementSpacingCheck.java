package clearbed.check;

import clearbed.calc.Fit;
import clearbed.calc.MovementDesign;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The stated spacing is no wider than the guideline allows in the exposure. */
final class MovementSpacingCheck implements Computation {
  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    MovementJoint joint = new MovementJoint(entry);
    List<Value> values = entry.governing(rule.attribute());
    if (joint.spacing().isEmpty()) {
      Value open =
          entry.values(rule.attribute()).stream().filter(Value::open).findFirst().orElse(null);
      return open == null
          ? new Judgement.Missing()
          : new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    }
    if (joint.exposure().isEmpty())
      return new Judgement.Undecided("depends on the exposure, which is not stated", null);
    MovementDesign design = joint.design(rule.id(), rules.guideline(), Optional.empty());
    if (design.spacingFit() != Fit.FALLS_SHORT) return Judge.satisfied(values);
    String widest =
        rules.guideline().rules().get(joint.exposure().get()).spacing().high().toString();
    String expected = "no wider than " + widest + " (" + joint.exposure().get().label() + ")";
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        Judge.found(values),
        expected,
        values.get(0).origin(),
        List.of(),
        List.of(),
        List.of());
  }
}
