package clearbed.check.computed;

import clearbed.calc.Deflection;
import clearbed.calc.Fit;
import clearbed.calc.Given;
import clearbed.calc.Interval;
import clearbed.calc.Measure;
import clearbed.calc.Subject;
import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.Calculation;
import clearbed.model.Dimension;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/**
 * L/360 is the floor for all tile (ANSI A108.01, from memory), L/480 the wish for glass (common
 * practice).
 */
public final class DeflectionCheck implements Computation {
  private static final double FOR_GLASS = 480;
  private static final double FOR_TILE = 360;
  private static final Given SPAN =
      Given.assumed(
          Quantity.of(10, Unit.FOOT), "an example of a span, to show what the ratio comes to");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Judgement.Missing();
    Optional<Given> stated =
        new Stated(entry)
            .largest(rule.attribute(), Dimension.RATIO)
            .filter(n -> n.low().number() > 0);
    if (stated.isEmpty()) return failed(Judge.found(values), FOR_GLASS, values.get(0), null);
    Deflection glass = deflection(rule, entry, stated.get(), FOR_GLASS);
    String found = words(stated.get().amount());
    if (glass.fit() == Fit.MEETS) return new Judgement.Satisfied(found, stated.get().origin());
    Value first = values.get(0);
    boolean underTile = stated.get().low().number() < FOR_TILE;
    return failed(found, underTile ? FOR_TILE : FOR_GLASS, first, glass.calculation());
  }

  private static Deflection deflection(Rule rule, Entry entry, Given n, double limit) {
    Given asked =
        Given.assumed(Quantity.of(limit, Unit.ONE), "L/480 for glass: common practice, no source");
    return Deflection.of(new Subject(rule.id(), entry.tag()), Measure.INCH, SPAN, n, asked);
  }

  private static String words(Interval n) {
    String low = "L/" + Quantity.figure(n.low().number());
    return n.isExact() ? low : low + " to L/" + Quantity.figure(n.high().number());
  }

  private static Judgement failed(
      String found, double missed, Value first, Calculation calculation) {
    String expected =
        missed == FOR_TILE
            ? "L/360 at the least, L/480 for glass"
            : "L/480 for glass (L/360 is for tile at large)";
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        found,
        expected,
        first.origin(),
        List.of(),
        calculation == null ? List.of() : Steps.of(calculation),
        calculation == null ? List.of() : List.of(calculation));
  }
}
