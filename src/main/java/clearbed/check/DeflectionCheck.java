package clearbed.check;

import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;

/**
 * L/360 is the floor for all tile (ANSI A108.01, from memory), L/480 the wish for glass (common
 * practice).
 */
final class DeflectionCheck implements Computation {
  private static final double FOR_GLASS = 480;
  private static final double FOR_TILE = 360;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Judgement.Missing();
    double n =
        values.stream()
            .filter(v -> v.content() instanceof Content.Amount)
            .mapToDouble(v -> ((Content.Amount) v.content()).low().number())
            .max()
            .orElse(0);
    if (n >= FOR_GLASS) return new Judgement.Satisfied("L/" + (int) n, values.get(0).origin());
    String expected =
        n < FOR_TILE
            ? "L/360 at the least, L/480 for glass"
            : "L/480 for glass (L/360 is for tile at large)";
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        n == 0 ? Judge.found(values) : "L/" + (int) n,
        expected,
        values.get(0).origin(),
        List.of(),
        List.of(),
        List.of());
  }
}
