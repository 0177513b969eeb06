package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;

/**
 * 95 % where wet or exterior (ANSI A108.5, from memory); all of it behind see-through tile (common
 * practice).
 */
public final class CoverageCheck implements Computation {
  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    boolean seeThrough =
        entry.governing("tile.translucency").stream()
            .anyMatch(v -> v.content() instanceof Content.Term t && !t.text().equals("opaque"));
    double percent = seeThrough ? 100 : 95;
    Content.Amount wanted =
        new Content.Amount(
            Quantity.of(percent, Unit.PERCENT), Quantity.of(percent, Unit.PERCENT), Bound.AT_LEAST);
    List<Value> values = entry.governing(rule.attribute());
    List<Value> voidFree = entry.governing("mortar.voidFree");
    boolean met = values.stream().anyMatch(v -> Judge.guarantees(v.content(), wanted));
    // "95 percent, no voids" behind see-through glass: what matters there is that nothing shows.
    boolean full =
        voidFree.stream()
            .anyMatch(v -> rules.vocabulary().list("checks.fullBed").in(v.asWritten()));
    boolean byWords =
        seeThrough
            && !voidFree.isEmpty()
            && (values.isEmpty() && full
                || values.stream().anyMatch(v -> Judge.guarantees(v.content(), atLeast(95))));
    if (met) return Judge.satisfied(values);
    if (byWords) return Judge.satisfied(voidFree);
    if (values.isEmpty()) {
      Value open =
          entry.values(rule.attribute()).stream().filter(Value::open).findFirst().orElse(null);
      return open == null
          ? new Judgement.Missing()
          : new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    }
    String expected =
        seeThrough ? "100 % without voids, since it can be seen through" : "95 % or more";
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        FindingWords.of("", Judge.found(values), expected),
        FoundAt.at(values.get(0).origin()));
  }

  private static Content.Amount atLeast(double percent) {
    return new Content.Amount(
        Quantity.of(percent, Unit.PERCENT), Quantity.of(percent, Unit.PERCENT), Bound.AT_LEAST);
  }
}
