package clearbed.check.computed.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.joint.MovementDesign;
import clearbed.calc.joint.SealantClass;
import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.Steps;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The class of the sealant carries the strain that the movement makes in the stated width. */
public final class MovementClassCheck implements Computation {
  private static final double LEAST_FOR_TILE = 25;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    MovementJoint joint = new MovementJoint(entry, project, rules);
    Optional<MovementJoint.Sealant> stated = joint.sealant();
    if (stated.isEmpty()) return new Stated(entry).openOrMissing(rule.attribute());
    List<Value> values = entry.governing(rule.attribute());
    Value weakest = stated.get().value();
    boolean tooWeak = stated.get().sealantClass().capability().number() < LEAST_FOR_TILE;
    if (joint.width().isEmpty() || joint.exposure().isEmpty()) {
      return tooWeak ? failed(stated.get(), "", null) : Judge.satisfied(values);
    }
    MovementDesign design = joint.design(rule.id(), Optional.of(stated.get().capability()));
    if (tooWeak) return failed(stated.get(), "", design);
    if (design.widthFit() == Fit.FALLS_SHORT)
      return new Judgement.Undecided("the width of the joint comes first", weakest.origin());
    if (design.strainFit() == Fit.FALLS_SHORT)
      return failed(stated.get(), ", or a joint of " + design.wider(joint.measure()), design);
    return Judge.satisfied(values);
  }

  private static Judgement failed(
      MovementJoint.Sealant stated, String wider, MovementDesign design) {
    SealantClass sealant = stated.sealantClass();
    boolean tooWeak = sealant.capability().number() < LEAST_FOR_TILE;
    String expected =
        tooWeak ? "Class 25 or better in tile work" : "a class that carries the movement" + wider;
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        new FindingWords(
            "",
            sealant.words(),
            expected,
            design == null ? List.of() : Steps.of(design.calculation()),
            ""),
        FoundAt.at(stated.value().origin()),
        design == null ? List.of() : List.of(design.calculation()));
  }
}
