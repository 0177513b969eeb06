package clearbed.check.computed.joint;

import clearbed.calc.figure.BothUnits;
import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.figure.Measure;
import clearbed.calc.joint.SealantDepth;
import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.Steps;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.report.Calculation;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The sealant is from half as deep as the joint is wide up to as deep, or 1/4 in deep. */
public final class SealantDepthCheck implements Computation {

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> reversed = entry.governing("sealant.depthReversed");
    if (!reversed.isEmpty()) return tooDeep(reversed.get(0));
    List<Value> byRule = entry.governing("sealant.depthRule");
    if (!byRule.isEmpty()) return Judge.satisfied(byRule);
    Optional<Given> depth =
        new Stated(entry)
            .smallest(rule.attribute(), Dimension.LENGTH)
            .filter(given -> given.low().number() > 0);
    if (depth.isEmpty()) return new Judgement.Missing();
    MovementJoint joint = new MovementJoint(entry, project, rules);
    if (joint.width().isEmpty()) return byItself(depth.get(), joint.measure());
    SealantDepth design =
        SealantDepth.of(
            rules.subject(rule.id(), entry.tag()),
            joint.measure(),
            joint.width().get(),
            Optional.of(depth.get()));
    return against(design, depth.get(), joint);
  }

  /** "Depth: twice the width" tears the sealant off, whatever the width is. */
  private static Judgement tooDeep(Value stated) {
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        FindingWords.of(
            "", "more than the width", "half of the width, and never more than the width"),
        FoundAt.at(stated.origin()));
  }

  private static Judgement byItself(Given depth, Measure measure) {
    return SealantDepth.tooThin(depth.low())
        ? failed(FindingKind.INADEQUATE, depth, "not under " + least(measure), null)
        : new Judgement.Satisfied(depth.amount().toString(), depth.origin());
  }

  private static Judgement against(SealantDepth design, Given depth, MovementJoint joint) {
    String found = depth.amount().toString();
    List<Calculation> calculations = List.of(design.calculation());
    if (design.fit() == Fit.MEETS)
      return new Judgement.Satisfied(found, depth.origin(), calculations);
    Interval width = joint.width().orElseThrow().amount();
    Quantity deepest = SealantDepth.deepest(width.high(), joint.measure());
    String expected =
        "from "
            + BothUnits.of(design.depth(), joint.measure())
            + ", half of "
            + BothUnits.of(width, joint.measure())
            + " and not under "
            + least(joint.measure())
            + ", to "
            + BothUnits.of(deepest, joint.measure());
    FindingKind kind =
        design.fit() == Fit.DEPENDS ? FindingKind.UNRESOLVED : FindingKind.INADEQUATE;
    return failed(kind, depth, expected, design.calculation());
  }

  private static String least(Measure measure) {
    return BothUnits.of(SealantDepth.least(measure), measure);
  }

  private static Judgement failed(
      FindingKind kind, Given depth, String expected, Calculation calculation) {
    return new Judgement.Failed(
        kind,
        new FindingWords(
            "",
            depth.amount().toString(),
            expected,
            calculation == null ? List.of() : Steps.of(calculation),
            ""),
        FoundAt.at(depth.origin()),
        calculation == null ? List.of() : List.of(calculation));
  }
}
