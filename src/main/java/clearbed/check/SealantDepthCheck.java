package clearbed.check;

import clearbed.calc.Given;
import clearbed.calc.SealantDepth;
import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/** The depth of the sealant is half the joint's width and not under 1/8 in. */
final class SealantDepthCheck implements Computation {
  // Half a width is seldom a round figure; a third of a millimetre or an eighth part either way is
  // the same depth.
  private static final double SLACK = 0.13;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> byRule = entry.governing("sealant.depthRule");
    if (!byRule.isEmpty()) return Judge.satisfied(byRule);
    List<Value> values =
        entry.governing(rule.attribute()).stream()
            .filter(v -> v.content() instanceof Content.Amount)
            .toList();
    if (values.isEmpty()) return new Judgement.Missing();
    Quantity depth = ((Content.Amount) values.get(0).content()).low();
    Optional<Given> width = new MovementJoint(entry).width();
    boolean thin = depth.in(Unit.MILLIMETRE) < SealantDepth.LEAST.in(Unit.MILLIMETRE) * 0.94;
    boolean off =
        width.isPresent()
            && Math.abs(depth.in(Unit.INCH) - width.get().low().in(Unit.INCH) / 2)
                > Math.max(width.get().low().in(Unit.INCH) * SLACK, 0.02);
    boolean least =
        depth.compareTo(SealantDepth.LEAST) <= 0
            && width.isPresent()
            && width.get().low().in(Unit.INCH) <= 0.25;
    if (!thin && (!off || least)) return Judge.satisfied(values);
    String expected =
        width.map(w -> "half of " + w.low() + ", not under 1/8 in").orElse("not under 1/8 in");
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        depth.toString(),
        expected,
        values.get(0).origin(),
        List.of(),
        List.of(),
        List.of());
  }
}
