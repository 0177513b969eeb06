package clearbed.check.computed.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.guideline.Exposure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.JointLayout;
import clearbed.calc.joint.SpacingLimit;
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
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The stated spacing is no wider than the guideline allows in the exposure. */
public final class MovementSpacingCheck implements Computation {
  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    MovementJoint joint = new MovementJoint(entry, project, rules);
    if (joint.spacing().isEmpty()) return new Stated(entry).openOrMissing(rule.attribute());
    Optional<Exposure> exposure = joint.exposure();
    Optional<MovementGuideline.ExposureRule> limits = exposure.flatMap(joint.figures()::rule);
    if (limits.isEmpty())
      return new Judgement.Undecided("depends on the exposure, which is not stated", null);
    Given spacing = joint.spacing().get();
    SpacingLimit limit =
        SpacingLimit.of(
            rules.subject(rule.id(), entry.tag()), joint.measure(), spacing, limits.get());
    List<Value> values = entry.governing(rule.attribute());
    Optional<JointLayout> layout = layout(entry, joint, limit, rules);
    if (limit.fit() == Fit.MEETS) {
      List<Calculation> shown =
          layout.map(JointLayout::calculation).map(List::of).orElse(List.of());
      return new Judgement.Satisfied(Judge.found(values), values.get(0).origin(), shown);
    }
    boolean depends = limit.fit() == Fit.DEPENDS;
    List<Calculation> calculations = new ArrayList<>(List.of(limit.calculation()));
    layout.map(JointLayout::calculation).ifPresent(calculations::add);
    return new Judgement.Failed(
        depends ? FindingKind.UNRESOLVED : FindingKind.INADEQUATE,
        new FindingWords(
            depends
                ? "The movement joints of {tag} may be built {found} apart; wanted: {expected}."
                : "",
            Judge.found(values),
            expected(limit, exposure.get(), joint.measure(), layout),
            calculations.stream().flatMap(c -> Steps.of(c).stream()).toList(),
            depends
                ? "At which spacing of {found} are the movement joints of {tag} built? No wider than"
                    + " {expected} goes."
                : ""),
        FoundAt.at(spacing.origin()),
        calculations);
  }

  private static String expected(
      SpacingLimit limit, Exposure exposure, Measure measure, Optional<JointLayout> layout) {
    String fields =
        layout.map(l -> "; " + l.fields() + " equal fields in the run of that length").orElse("");
    return "no wider than "
        + Rounding.spacing(limit.widest(), measure)
        + " ("
        + exposure.label()
        + ")"
        + fields;
  }

  /** Equal fields along the run, where its length is known. */
  private static Optional<JointLayout> layout(
      Entry entry, MovementJoint joint, SpacingLimit limit, RuleSet rules) {
    return joint
        .run()
        .map(
            run ->
                JointLayout.of(
                    rules.subject("movement-layout", entry.tag()),
                    joint.measure(),
                    run,
                    buildable(joint.spacing().orElseThrow(), limit.widest())));
  }

  private static Given buildable(Given spacing, Quantity widest) {
    return spacing.high().compareTo(widest) <= 0
        ? spacing
        : Given.assumed(widest, "the widest that the guideline gives");
  }
}
