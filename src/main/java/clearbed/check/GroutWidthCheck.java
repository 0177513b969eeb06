package clearbed.check;

import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Quantity;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;

/** The grout joint is stated, and three times the size variation at least where that is known. */
final class GroutWidthCheck implements Computation {
  private static final int TIMES = 3;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) {
      Value open =
          entry.values(rule.attribute()).stream().filter(Value::open).findFirst().orElse(null);
      return open == null
          ? new Judgement.Missing()
          : new Judgement.Undecided("left open: " + open.content().text(), open.origin());
    }
    Quantity width = amount(values);
    List<Value> variations = entry.governing("tile.sizeVariation");
    Quantity variation = amount(variations);
    if (width == null || variation == null) return Judge.satisfied(values);
    Quantity least = variation.times(TIMES).to(width.unit());
    if (width.compareTo(least) >= 0) return Judge.satisfied(values);
    List<String> steps =
        List.of(
            "size variation " + variation + " x 3 = " + least,
            "stated joint " + width + " is narrower");
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        width.toString(),
        "at least " + least,
        values.get(0).origin(),
        List.of(variations.get(0).origin()),
        steps,
        List.of());
  }

  private static Quantity amount(List<Value> values) {
    return values.stream()
        .filter(v -> v.content() instanceof Content.Amount)
        .map(v -> ((Content.Amount) v.content()).low())
        .findFirst()
        .orElse(null);
  }
}
