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
import clearbed.resolve.NationalPractice;
import clearbed.resolve.Project;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * The wet pendulum value, or the class of a ramp or pendulum test, that the place of a floor wants.
 *
 * <p>Sources: 36 for the pendulum, HSE's guidance on floors; R classes and R10 with V4 outside,
 * DGUV rule 108-003 as its insurers report it; A, B and C, DGUV information 207-006 (table 1); P
 * classes, HB 198:2014 with AS 4586, as Australian test houses report it.
 */
public final class SlipClassCheck implements Computation {
  private static final Content.Amount PENDULUM = atLeast(36);

  /**
   * What a place wants.
   *
   * @param shod least class of the ramp in shoes, by its number
   * @param displaced true where R10 serves with V4 only
   * @param barefoot classes of the ramp without shoes that serve; empty where shoes are worn
   * @param pendulumClass least P class, by its number
   * @param friction least wet coefficient of friction
   * @param words in which a finding asks for it
   */
  private record Want(
      int shod,
      boolean displaced,
      List<String> barefoot,
      int pendulumClass,
      double friction,
      String words) {}

  private static final Want INTO_WATER =
      new Want(11, false, List.of("C"), 5, 0.5, "barefoot class C on steps and slopes into water");
  private static final Want POOLSIDE =
      new Want(10, false, List.of("B", "C"), 4, 0.5, "barefoot class B or C");
  private static final Want BATHROOM =
      new Want(10, false, List.of("B", "C"), 2, 0.42, "barefoot class B or C");
  private static final Want OUTSIDE =
      new Want(11, true, List.of(), 4, 0.55, "class R11, or R10 with V4, outside");
  private static final Want WET =
      new Want(10, false, List.of(), 3, 0.42, "class R10 or higher where it is wet");
  private static final Want DRY =
      new Want(9, false, List.of(), 1, 0.42, "class R9 or higher where it stays dry");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    Underfoot foot = Underfoot.of(entry, rules.vocabulary());
    if (foot.idle()) return new Judgement.NotApplicable("in a tank that nobody walks into");
    Want want = want(foot);
    Judgement judgement = judge(rule, entry, want, expected(want, project.practice()));
    if (foot.tank() && !(judgement instanceof Judgement.Satisfied))
      return Underfoot.ofTheTank(
          entry,
          judgement,
          "slip resistance",
          "barefoot class C on steps and slopes into water, B in shallow water",
          "which barefoot class or wet pendulum value has it?");
    boolean water = foot.wet() || foot.steam() || foot.outside();
    boolean oilOnly = water && measured(entry, "tile.pendulum").isEmpty() && !foot.barefoot();
    List<Value> shod = measured(entry, "tile.rampShod");
    return judgement instanceof Judgement.Satisfied
            && project.practice() == NationalPractice.BRITISH
            && oilOnly
            && !shod.isEmpty()
        ? pendulumAsked(shod)
        : judgement;
  }

  private static Want want(Underfoot foot) {
    boolean water = foot.wet() || foot.steam();
    if (foot.barefoot() && (water || foot.outside())) {
      if (foot.sloped() && water) return INTO_WATER;
      return foot.muchWater() || foot.outside() || !foot.atHome() ? POOLSIDE : BATHROOM;
    }
    if (foot.outside()) return OUTSIDE;
    return water ? WET : DRY;
  }

  /** In the terms of the country, pendulum first where that is what is asked for there. */
  private static String expected(Want want, NationalPractice practice) {
    String slider = want.barefoot.isEmpty() ? "slider 96" : "slider 55 or 57";
    String pendulum = "a wet pendulum test value of 36 or more with " + slider;
    return switch (practice) {
      case BRITISH -> pendulum;
      case GERMAN -> want.words;
      case AUSTRALIAN -> "class P" + want.pendulumClass + " or higher, or " + want.words;
      case OTHER -> pendulum + ", or " + want.words;
    };
  }

  private static Judgement judge(Rule rule, Entry entry, Want want, String expected) {
    List<Value> barefoot = measured(entry, "tile.rampBarefoot");
    List<Value> pendulum = measured(entry, "tile.pendulum");
    List<Value> classes = measured(entry, "tile.pendulumClass");
    List<Value> shod = measured(entry, "tile.rampShod");
    if (!want.barefoot.isEmpty() && !all(barefoot, v -> want.barefoot.contains(text(v))))
      return failed(barefoot, "barefoot class ", expected);
    if (!all(pendulum, v -> Judge.guarantees(v.content(), PENDULUM)))
      return failed(pendulum, "wet pendulum value ", expected);
    if (!all(classes, v -> number(v) >= want.pendulumClass))
      return failed(classes, "class ", expected);
    List<Value> better = Stream.of(barefoot, pendulum, classes).flatMap(List::stream).toList();
    if (!better.isEmpty()) return Judge.satisfied(better);
    if (!shod.isEmpty()) return inShoes(entry, shod, want, expected);
    List<Value> friction = entry.governing("tile.slip");
    if (!friction.isEmpty())
      return all(friction, v -> Judge.guarantees(v.content(), atLeast(want.friction)))
          ? Judge.satisfied(friction)
          : failed(friction, "", expected);
    List<Value> tests = entry.governing("tile.slipTest");
    return tests.isEmpty()
        ? new Stated(entry).openOrMissing(rule.attribute())
        : failed(
            tests,
            "A slip test is named for {tag} ({found}), but neither the value nor the class that the"
                + " tile is to reach.",
            "",
            expected);
  }

  private static Judgement inShoes(Entry entry, List<Value> shod, Want want, String expected) {
    if (!want.barefoot.isEmpty())
      return failed(
          shod,
          "{tag} is walked on barefoot and wet; class {found} is of the ramp test in shoes and says"
              + " nothing of that.",
          "",
          expected);
    boolean displaces = !measured(entry, "tile.displacement").isEmpty();
    return all(shod, v -> number(v) >= want.shod || want.displaced && displaces && number(v) == 10)
        ? Judge.satisfied(shod)
        : failed(shod, "class ", expected);
  }

  private static Judgement pendulumAsked(List<Value> shod) {
    return new Judgement.Failed(
        FindingKind.UNRESOLVED,
        new FindingWords(
            "The slip resistance of {tag} is stated by a ramp test with oil ({found}); of water that says"
                + " little.",
            Judge.found(shod),
            "a wet pendulum test value of 36 or more with slider 96",
            List.of(),
            "What is the wet pendulum test value of {tag}, with slider 96?"),
        FoundAt.at(shod.get(0).origin()));
  }

  private static Judgement failed(List<Value> values, String named, String expected) {
    return failed(values, "", named, expected);
  }

  private static Judgement failed(
      List<Value> values, String message, String named, String expected) {
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        FindingWords.of(message, named + Judge.found(values), expected),
        FoundAt.at(values.get(0).origin()));
  }

  private static boolean all(List<Value> values, Predicate<Value> good) {
    return values.stream().allMatch(good);
  }

  private static String text(Value value) {
    return value.content().text();
  }

  /** Of R11 or P4. */
  private static int number(Value value) {
    return Integer.parseInt(text(value).substring(1));
  }

  /** What governs and is understood. */
  private static List<Value> measured(Entry entry, String attribute) {
    return entry.governing(attribute).stream()
        .filter(v -> v.content() instanceof Content.Term || v.content() instanceof Content.Amount)
        .toList();
  }

  private static Content.Amount atLeast(double number) {
    Quantity figure = Quantity.of(number, Unit.ONE);
    return new Content.Amount(figure, figure, Bound.AT_LEAST);
  }
}
