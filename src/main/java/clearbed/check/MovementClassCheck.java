package clearbed.check;

import clearbed.calc.Fit;
import clearbed.calc.Given;
import clearbed.calc.MovementDesign;
import clearbed.calc.SealantClass;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The class of the sealant carries the strain that the movement makes in the stated width. */
final class MovementClassCheck implements Computation {
  private static final double LEAST_FOR_TILE = 25;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    MovementJoint joint = new MovementJoint(entry);
    List<Value> values = entry.governing(rule.attribute());
    Optional<SealantClass> stated = joint.sealantClass();
    if (stated.isEmpty()) {
      Value open =
          entry.values(rule.attribute()).stream().filter(Value::open).findFirst().orElse(null);
      return open == null
          ? new Judgement.Missing()
          : new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    }
    Value weakest =
        values.stream()
            .filter(v -> SealantClass.of(v.content().text()).equals(stated))
            .findFirst()
            .orElse(values.get(0));
    if (stated.get().capability().number() < LEAST_FOR_TILE) {
      return failed("Class 25 or better in tile work", stated.get(), weakest, null);
    }
    if (joint.width().isEmpty() || joint.exposure().isEmpty()) return Judge.satisfied(values);
    Given capability = Given.stated(stated.get(), weakest.origin(), weakest.asWritten());
    MovementDesign design = joint.design(rule.id(), rules.guideline(), Optional.of(capability));
    if (design.widthFit() == Fit.FALLS_SHORT)
      return new Judgement.Undecided("the width of the joint comes first", weakest.origin());
    if (design.strainFit() == Fit.FALLS_SHORT)
      return failed(
          "a class that carries the movement, or a wider joint", stated.get(), weakest, design);
    return Judge.satisfied(values);
  }

  private static Judgement failed(
      String expected, SealantClass stated, Value v, MovementDesign design) {
    List<String> steps =
        design == null ? List.of() : MovementWidthCheck.steps(design.calculation());
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        stated.words(),
        expected,
        v.origin(),
        List.of(),
        steps,
        design == null ? List.of() : List.of(design.calculation()));
  }
}
