package clearbed.check.computed.joint;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Measure;
import clearbed.calc.figure.Rounding;
import clearbed.calc.joint.GroutWidth;
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
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The grout joint is stated, and three times the size variation at least where that is known. */
public final class GroutWidthCheck implements Computation {

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    Stated stated = new Stated(entry);
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return stated.openOrMissing(rule.attribute());
    Optional<Given> width =
        stated
            .smallest(rule.attribute(), Dimension.LENGTH)
            .filter(given -> given.low().number() > 0);
    Optional<Given> variation = stated.largest("tile.sizeVariation", Dimension.LENGTH);
    if (width.isEmpty()) return Judge.satisfied(values);
    List<Value> unread = entry.unread("tile.sizeVariation");
    if (!unread.isEmpty())
      return Judgement.Failed.unread("Size variation of the tile", unread.get(0));
    Measure measure = rules.units().alone() ? rules.units() : Measure.of(width.get().low().unit());
    GroutWidth grout =
        GroutWidth.of(rules.subject(rule.id(), entry.tag()), measure, variation, width);
    List<Calculation> calculations =
        variation.isPresent() || grout.fit() != Fit.MEETS
            ? List.of(grout.calculation())
            : List.of();
    if (grout.fit() == Fit.MEETS)
      return new Judgement.Satisfied(Judge.found(values), width.get().origin(), calculations);
    List<Origin> places = variation.map(Given::origin).stream().toList();
    return new Judgement.Failed(
        grout.fit() == Fit.DEPENDS ? FindingKind.UNRESOLVED : FindingKind.INADEQUATE,
        new FindingWords(
            "",
            width.get().amount().toString(),
            "at least " + Rounding.width(grout.least().high(), measure),
            Steps.of(grout.calculation()),
            ""),
        new FoundAt(width.get().origin(), places),
        calculations);
  }
}
