package clearbed.check.computed.joint;

import clearbed.calc.figure.Given;
import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Unsanded grout for joints up to 1/8 in, sanded from there up (grout makers' pages, as reported).
 */
public final class GroutFillCheck implements Computation {
  /** 1/8 in, and 3 mm as it is written in metric documents. */
  private static final double EIGHTH_MM = 3.175;

  private static final double ROUNDED_MM = 0.2;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    Set<String> types = values.stream().map(v -> v.content().text()).collect(Collectors.toSet());
    boolean sanded = types.contains("sanded");
    // Both are named where each has its own joints.
    if (sanded == types.contains("unsanded")) return Judge.satisfied(values);
    Optional<Given> width = new Stated(entry).smallest("grout.width", Dimension.LENGTH);
    if (width.isEmpty())
      return new Judgement.Undecided("depends on the grout joint, which is not stated", null);
    double narrow = width.get().low().in(Unit.MILLIMETRE);
    double wide = width.get().high().in(Unit.MILLIMETRE);
    boolean wrong = sanded ? wide < EIGHTH_MM - ROUNDED_MM : narrow > EIGHTH_MM + ROUNDED_MM;
    if (!wrong) return Judge.satisfied(values);
    Value first =
        values.stream().filter(v -> v.content().text().endsWith("sanded")).findFirst().get();
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        FindingWords.of(
            "",
            (sanded ? "sanded" : "unsanded") + " in joints of " + width.get().amount(),
            (sanded ? "unsanded grout under " : "sanded grout over ")
                + (rules.units().alone() ? "3 mm" : "1/8 in")),
        new FoundAt(first.origin(), List.of(width.get().origin())));
  }
}
