package clearbed.check;

import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;

/** Flatness by the longest side: 15 in is where ANSI A108.02 (from memory) tightens. */
final class FlatnessCheck implements Computation {
  private static final Quantity LARGE = Quantity.of(15, Unit.INCH);
  // A metric figure for 1/4 in in 10 ft is written 6 mm in 3 m.
  private static final double ROUNDING = 1.06;

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Judgement.Missing();
    boolean large = longestSide(entry).compareTo(LARGE) >= 0;
    double perFoot = large ? 0.125 / 10 : 0.25 / 10;
    boolean met =
        values.stream()
            .anyMatch(
                v ->
                    v.content() instanceof Content.Flatness f
                        && f.deviations().stream()
                            .anyMatch(d -> overLongEdge(d) && slope(d) <= perFoot * ROUNDING));
    if (met) return Judge.satisfied(values);
    String expected =
        large
            ? "1/8 in in 10 ft and 1/16 in in 24 in (3 mm in 3 m)"
            : "1/4 in in 10 ft and 1/16 in in 12 in (6 mm in 3 m)";
    return new Judgement.Failed(
        Kind.INADEQUATE,
        "",
        Judge.found(values),
        expected,
        values.get(0).origin(),
        List.of(),
        List.of(),
        List.of());
  }

  /** The long straightedge is what the two grades differ by; 1/16 in 12 in is met by either. */
  private static boolean overLongEdge(Content.Deviation d) {
    return d.over().compareTo(Quantity.of(4, Unit.FOOT)) >= 0;
  }

  private static double slope(Content.Deviation d) {
    return d.deviation().in(Unit.INCH) / d.over().in(Unit.FOOT);
  }

  private static Quantity longestSide(Entry entry) {
    Quantity longest = Quantity.of(0, Unit.INCH);
    for (Value v : entry.governing("tile.size")) {
      if (!(v.content() instanceof Content.Size size)) continue;
      for (Quantity side : size.sides()) longest = side.compareTo(longest) > 0 ? side : longest;
    }
    return longest;
  }
}
