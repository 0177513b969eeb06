package clearbed.check.computed;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.Bound;
import clearbed.model.Content;
import clearbed.model.Entry;
import clearbed.model.Kind;
import clearbed.model.Quantity;
import clearbed.model.Unit;
import clearbed.model.Value;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;

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

  private static final Pattern MUCH_WATER =
      words("pool|natatorium|locker|changing|public|communal|gang|team|spa|hammam|splash");
  private static final Pattern SHOWER = words("shower|wet ?room");
  private static final Pattern AT_HOME =
      words("guest|suite|private|en-?suite|residen\\w*|apartment|dwelling|bath|bathroom|primary");
  private static final Pattern WALKED =
      words("steps?|stairs?|treads?|beach|zero|ramp|ledge|shelf|walk-in|entry|wading|splash");
  private static final Pattern NOT_ENTERED =
      words("fountain|reflecting|basin|water ?feature|weir|channel|surge|balance");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    Set<String> surfaces = Place.terms(entry, "location.surface");
    String place = Place.words(entry);
    boolean sloped = surfaces.contains("stair") || surfaces.contains("ramp");
    boolean tank = surfaces.contains("pool") && !sloped && !WALKED.matcher(place).find();
    if (tank && NOT_ENTERED.matcher(place).find())
      return new Judgement.NotApplicable("in a tank that nobody walks into");
    Judgement judgement = onFloor(rule, entry, floor(entry, place), place);
    return tank && !(judgement instanceof Judgement.Satisfied)
        ? ofTheTank(entry, judgement)
        : judgement;
  }

  private static Floor floor(Entry entry, String place) {
    Set<String> exposures = Place.terms(entry, "location.exposure");
    if (exposures.contains("exterior") || exposures.contains("exterior-freeze"))
      return Floor.EXTERIOR_WET;
    boolean much =
        (exposures.contains("wet") || exposures.contains("submerged"))
            && MUCH_WATER.matcher(place).find();
    return exposures.contains("steam") || much ? Floor.WET_PLUS : Floor.INTERIOR_WET;
  }

  private static Judgement onFloor(Rule rule, Entry entry, Floor floor, String place) {
    List<Value> declared =
        entry.governing("tile.slipUse").stream()
            .filter(v -> floor.uses.contains(v.content().text()))
            .toList();
    if (!declared.isEmpty()) return Judge.satisfied(declared);
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Stated(entry).openOrMissing(rule.attribute());
    if (!all(values, floor)) return failed(Kind.INADEQUATE, values, floor.expected(), "", "");
    boolean either = SHOWER.matcher(place).find() && !AT_HOME.matcher(place).find();
    if (floor == Floor.INTERIOR_WET && either && !all(values, Floor.WET_PLUS))
      return failed(
          Kind.UNRESOLVED,
          values,
          "0.50 or more where the shower is public",
          "Whether a wet DCOF of {found} is enough for {tag} depends on who uses the shower.",
          "Is the shower of {tag} public, which wants a wet DCOF of 0.50 or more by ANSI A326.3?");
    return Judge.satisfied(values);
  }

  private static boolean all(List<Value> values, Floor floor) {
    return values.stream().allMatch(v -> Judge.guarantees(v.content(), floor.wanted()));
  }

  /** Feet in deep water carry no weight; on shallow floors and ledges they do. */
  private static Judgement ofTheTank(Entry entry, Judgement onFloor) {
    if (onFloor instanceof Judgement.Undecided) return onFloor;
    String found = onFloor instanceof Judgement.Failed f ? f.found() : "not stated";
    return new Judgement.Failed(
        Kind.UNRESOLVED,
        "{tag} is on the floor of a pool; its wet DCOF is {found}.",
        found,
        "the maker's declaration where people walk",
        entry.origin(),
        List.of(),
        List.of(),
        List.of(),
        "Do people walk on {tag}, in shallow water, on ledges, steps or a beach entry, and does its"
            + " maker declare it for that?");
  }

  private static Judgement failed(
      Kind kind, List<Value> values, String expected, String message, String question) {
    return new Judgement.Failed(
        kind,
        message,
        Judge.found(values),
        expected,
        values.get(0).origin(),
        List.of(),
        List.of(),
        List.of(),
        question);
  }

  private static Pattern words(String any) {
    return Pattern.compile("\\b(?:" + any + ")s?\\b", Pattern.CASE_INSENSITIVE);
  }
}
