package clearbed.check.computed.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.guideline.Exposure;
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
import clearbed.model.document.Origin;
import clearbed.model.report.Calculation;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The stated width is at least the guideline's and the computed one, whichever is larger. */
public final class MovementWidthCheck implements Computation {
  private static final SealantClass COMMON = SealantClass.of("25").orElseThrow();

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    MovementJoint joint = new MovementJoint(entry, project, rules);
    if (joint.width().isEmpty()) return new Stated(entry).openOrMissing(rule.attribute());
    Judgement judgement = judge(rule, entry, joint, joint.exposure());
    if (!(judgement instanceof Judgement.Satisfied) || !joint.poolAnywhere()) return judgement;
    Optional<Exposure> outdoors = Optional.of(Exposure.EXTERIOR);
    return judge(rule, entry, joint, outdoors) instanceof Judgement.Failed f
        ? dependsOnThePool(f)
        : judgement;
  }

  /** Wide enough inside, too narrow in the sun: the documents have to say which. */
  private static Judgement dependsOnThePool(Judgement.Failed f) {
    return new Judgement.Failed(
        FindingKind.UNRESOLVED,
        new FindingWords(
            "Whether a joint of {found} is wide enough for {tag} depends on whether the pool is out of"
                + " doors.",
            f.words().found(),
            f.words().expected(),
            f.words().steps(),
            "Is the pool of {tag} out of doors? Then its movement joints need {expected}."),
        f.at(),
        f.calculations());
  }

  private Judgement judge(
      Rule rule, Entry entry, MovementJoint joint, Optional<Exposure> exposure) {
    List<Value> values = entry.governing(rule.attribute());
    Origin origin = joint.width().get().origin();
    MovementDesign design = joint.design(rule.id(), capability(joint), exposure);
    List<Calculation> calculations = List.of(design.calculation());
    if (design.widthFit() == Fit.MEETS)
      return new Judgement.Satisfied(Judge.found(values), origin, calculations);
    boolean depends = design.widthFit() == Fit.DEPENDS;
    MovementQuestion question = new MovementQuestion(entry, design);
    String message =
        depends
            ? "Whether a joint of {found} is wide enough for {tag} depends on "
                + question.dependsOn()
                + "."
            : "The movement joint of {tag} is {found}; it needs {expected}.";
    return new Judgement.Failed(
        depends ? FindingKind.UNRESOLVED : FindingKind.INADEQUATE,
        new FindingWords(
            message,
            Judge.found(values),
            expected(design, joint.measure()),
            Steps.of(design.calculation()),
            depends ? question.text() : ""),
        FoundAt.at(origin),
        calculations);
  }

  /** A sealant too weak for tile work at all is its own fault (movement-class), not the joint's. */
  private static Optional<Given> capability(MovementJoint joint) {
    return joint
        .sealant()
        .map(
            stated ->
                stated.sealantClass().capability().compareTo(COMMON.capability()) < 0
                    ? Given.assumed(
                        COMMON.capability(),
                        "Class 25, the least in tile work; "
                            + stated.sealantClass().words()
                            + " is stated")
                    : stated.capability());
  }

  /** Both ways out: a wider joint, or closer joints. */
  private static String expected(MovementDesign design, Measure measure) {
    String wider = design.wider(measure);
    if (!design.requiredWidth().isExact())
      wider = Rounding.width(design.leastWidth().low(), measure) + " to " + wider;
    if (design.widthFit() == Fit.DEPENDS) return wider;
    return wider
        + design
            .closer(measure)
            .map(closer -> ", or joints no farther apart than " + closer)
            .orElse("; closer joints do not make the stated width enough");
  }
}
