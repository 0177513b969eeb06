package clearbed.check.computed.entry;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.surface.Evenness;
import clearbed.calc.surface.SubstrateFlatness;
import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.Steps;
import clearbed.check.judge.TilePlace;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.check.rules.Stated;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.phrase.Phrases;
import clearbed.resolve.NationalPractice;
import clearbed.resolve.Project;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Flatness by the longest side: 15 in is where ANSI A108.02 (from memory) tightens. */
public final class FlatnessCheck implements Computation {
  private static final Given ANY_SIZE =
      Given.assumed(
          new Interval(Quantity.of(1, Unit.INCH), Quantity.of(48, Unit.INCH)),
          "the size of the tile is not stated");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Judgement.Missing();
    if (rules.units().alone()) return evenness(rule, entry, project, rules);
    boolean unread = !entry.unread("tile.size").isEmpty();
    Given edge = unread ? unreadSize(entry) : longestEdge(entry).orElse(ANY_SIZE);
    values = forSize(values, edge, rules);
    SubstrateFlatness flatness =
        SubstrateFlatness.of(
            rules.subject(rule.id(), entry.tag()), edge, Optional.of(stated(values)));
    Value first = values.get(0);
    if (flatness.fit() == Fit.MEETS)
      return new Judgement.Satisfied(Judge.found(values), first.origin());
    if (flatness.fit() == Fit.DEPENDS && edge.assumed())
      return new Judgement.Undecided(
          "depends on the size of the tile, which is not " + (unread ? "understood" : "stated"),
          first.origin());
    boolean depends = flatness.fit() == Fit.DEPENDS;
    return new Judgement.Failed(
        depends ? FindingKind.UNRESOLVED : FindingKind.INADEQUATE,
        new FindingWords(
            "", Judge.found(values), expected(edge), Steps.of(flatness.calculation()), ""),
        FoundAt.at(first.origin()),
        List.of(flatness.calculation()));
  }

  /** In millimetres under a straightedge, by the rules of the country. */
  private static Judgement evenness(Rule rule, Entry entry, Project project, RuleSet rules) {
    Optional<Given> edge = longestEdge(entry);
    List<Value> values = entry.governing(rule.attribute());
    if (edge.isPresent()) values = forSize(values, edge.get(), rules);
    Content.Flatness stated = stated(values);
    Value first = values.get(0);
    if (stated.deviations().isEmpty())
      return new Judgement.Satisfied(Judge.found(values), first.origin());
    Evenness.EvennessStandard standard = standard(entry, project);
    boolean large = edge.isPresent() && isLarge(edge.get());
    Evenness even = Evenness.of(rules.subject(rule.id(), entry.tag()), standard, large, stated);
    if (even.fit() == Fit.MEETS)
      return new Judgement.Satisfied(Judge.found(values), first.origin());
    return new Judgement.Failed(
        even.fit() == Fit.DEPENDS ? FindingKind.UNRESOLVED : FindingKind.INADEQUATE,
        new FindingWords(
            "", Judge.found(values), standard.words(), Steps.of(even.calculation()), ""),
        FoundAt.at(first.origin()),
        List.of(even.calculation()));
  }

  private static Evenness.EvennessStandard standard(Entry entry, Project project) {
    if (project.practice() != NationalPractice.GERMAN)
      return Evenness.EvennessStandard.STRAIGHTEDGE;
    return TilePlace.terms(entry, "location.surface").contains("floor")
        ? Evenness.EvennessStandard.DIN_FLOOR
        : Evenness.EvennessStandard.DIN_WALL;
  }

  private static Given unreadSize(Entry entry) {
    return Given.assumed(
        ANY_SIZE.amount(), "the size of the tile is " + Stated.unread(entry, "tile.size"));
  }

  private static boolean isLarge(Given edge) {
    return edge.high().compareTo(SubstrateFlatness.LONG_EDGE) >= 0;
  }

  /** What is said for tile over 15 in does not hold for tile under it, nor the other way round. */
  private static List<Value> forSize(List<Value> values, Given edge, RuleSet rules) {
    if (edge.assumed()) return values;
    Phrases others =
        rules.vocabulary().list(isLarge(edge) ? "checks.smallTileAlone" : "checks.largeTileAlone");
    // Issue after issue says the same words.
    Map<String, Boolean> known = new HashMap<>();
    List<Value> fitting =
        values.stream().filter(v -> !known.computeIfAbsent(v.asWritten(), others::in)).toList();
    return fitting.isEmpty() ? values : fitting;
  }

  /** Of several clauses any may hold for this size. */
  private static Content.Flatness stated(List<Value> values) {
    return new Content.Flatness(
        values.stream()
            .filter(v -> v.content() instanceof Content.Flatness)
            .flatMap(v -> ((Content.Flatness) v.content()).deviations().stream())
            .filter(d -> d.over().number() > 0)
            .toList());
  }

  private static String expected(Given edge) {
    boolean large =
        SubstrateFlatness.allowance(edge.high())
            .equals(SubstrateFlatness.allowance(SubstrateFlatness.LONG_EDGE));
    return large
        ? "1/8 in in 10 ft and 1/16 in in 24 in (3 mm in 3 m)"
        : "1/4 in in 10 ft and 1/16 in in 12 in (6 mm in 3 m)";
  }

  private static Optional<Given> longestEdge(Entry entry) {
    Value longest = null;
    Quantity most = Quantity.of(0, Unit.INCH);
    for (Value v : entry.governing("tile.size")) {
      if (!(v.content() instanceof Content.Size size)) continue;
      for (Quantity side : size.sides()) {
        if (side.compareTo(most) <= 0) continue;
        most = side;
        longest = v;
      }
    }
    return longest == null
        ? Optional.empty()
        : Optional.of(Stated.given(longest, Interval.of(most)));
  }
}
