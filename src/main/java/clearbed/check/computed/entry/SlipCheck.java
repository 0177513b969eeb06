package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Bound;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The wet friction of the place, or the use that the maker declares (ANSI A326.3, as reported). */
public final class SlipCheck implements Computation {
  /** A kind of floor: its least wet DCOF and the uses that the maker may declare for it. */
  private enum Floor {
    INTERIOR_WET(
        0.42, "level and inside", Set.of("interior wet", "interior wet plus", "exterior wet")),
    WET_PLUS(
        0.50,
        "a public shower, steam room, locker room or indoor pool deck",
        Set.of("interior wet plus", "exterior wet")),
    EXTERIOR_WET(0.55, "outside", Set.of("exterior wet"));

    private final double least;
    private final String words;
    private final Set<String> uses;

    Floor(double least, String words, Set<String> uses) {
      this.least = least;
      this.words = words;
      this.uses = uses;
    }

    Content.Amount wanted() {
      Quantity figure = Quantity.of(least, Unit.ONE);
      return new Content.Amount(figure, figure, Bound.AT_LEAST);
    }

    String expected() {
      return String.format(Locale.ROOT, "%.2f or more, as it is %s", least, words);
    }
  }

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    Underfoot foot = Underfoot.of(entry, rules.vocabulary());
    if (foot.idle()) return new Judgement.NotApplicable("in a tank that nobody walks into");
    Judgement judgement = onFloor(rule, entry, floor(foot), foot);
    return foot.tank() && !(judgement instanceof Judgement.Satisfied)
        ? Underfoot.ofTheTank(
            entry,
            judgement,
            "wet DCOF",
            "the maker's declaration where people walk",
            "does its maker declare it for that?")
        : judgement;
  }

  /** ASTM C1028 measures how tile holds what stands, not what walks; it is withdrawn. */
  private static boolean isStatic(Content test) {
    return test instanceof Content.Standard standard && standard.designation().equals("ASTM C1028");
  }

  private static Floor floor(Underfoot foot) {
    if (foot.outside()) return Floor.EXTERIOR_WET;
    return foot.steam() || foot.muchWater() ? Floor.WET_PLUS : Floor.INTERIOR_WET;
  }

  private static Judgement onFloor(Rule rule, Entry entry, Floor floor, Underfoot foot) {
    List<Value> declared =
        entry.governing("tile.slipUse").stream()
            .filter(v -> floor.uses.contains(v.content().text()))
            .toList();
    if (!declared.isEmpty()) return Judge.satisfied(declared);
    List<Value> tests = entry.governing("tile.slipTest");
    boolean still = !tests.isEmpty() && tests.stream().allMatch(v -> isStatic(v.content()));
    if (still)
      return failed(
          FindingKind.INADEQUATE,
          tests,
          floor.expected(),
          "For {tag} a static test is named, {found}; it says nothing of walking.",
          "");
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Stated(entry).openOrMissing(rule.attribute());
    if (!all(values, floor))
      return failed(FindingKind.INADEQUATE, values, floor.expected(), "", "");
    boolean either = foot.shower() && !foot.atHome();
    if (floor == Floor.INTERIOR_WET && either && !all(values, Floor.WET_PLUS))
      return failed(
          FindingKind.INADEQUATE,
          values,
          "0.50 or more where the shower is public",
          "The wet DCOF of {tag} is {found}, which is too little unless its shower is private.",
          "Is the shower of {tag} public, which wants a wet DCOF of 0.50 or more by ANSI A326.3?");
    return Judge.satisfied(values);
  }

  private static boolean all(List<Value> values, Floor floor) {
    return values.stream().allMatch(v -> Judge.guarantees(v.content(), floor.wanted()));
  }

  private static Judgement failed(
      FindingKind kind, List<Value> values, String expected, String message, String question) {
    return new Judgement.Failed(
        kind,
        new FindingWords(message, Judge.found(values), expected, List.of(), question),
        FoundAt.at(values.get(0).origin()));
  }
}
