package clearbed.check.computed.entry;

import clearbed.calc.figure.Fit;
import clearbed.calc.figure.Given;
import clearbed.calc.figure.Interval;
import clearbed.calc.surface.Deflection;
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
import clearbed.model.document.Origin;
import clearbed.model.report.Calculation;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Dimension;
import clearbed.model.value.Entry;
import clearbed.model.value.Quantity;
import clearbed.model.value.Unit;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.List;
import java.util.Optional;

/**
 * L/360 is the limit for tile on floors and stud walls (a tile contractors' manual, as reported).
 * No source gives one for glass; the tile maker may ask for more.
 */
public final class DeflectionCheck implements Computation {
  private static final double FOR_TILE = 360;

  /** From here on it is stiffer than tile at large asks for, and the question answers itself. */
  private static final double STIFFER = 480;

  private static final String EXAMPLE = "an example of a span, to show what the ratio comes to";

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    if (TilePlace.onGrade(entry, rules.vocabulary()))
      return new Judgement.NotApplicable("a slab on the ground spans nothing");
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty())
      return TilePlace.isSolid(entry, rules.vocabulary())
          ? new Judgement.NotApplicable("concrete and masonry have the limits of their structure")
          : new Judgement.Missing();
    Optional<Given> stated =
        new Stated(entry)
            .largest(rule.attribute(), Dimension.RATIO)
            .filter(n -> n.low().number() > 0);
    if (stated.isEmpty()) return failed(Judge.found(values), values.get(0), null);
    Deflection tile = deflection(rule, entry, rules, stated.get());
    String found = words(stated.get().amount());
    if (tile.fit() != Fit.MEETS) return failed(found, values.get(0), tile.calculation());
    return stated.get().low().number() >= STIFFER || makersWord(entry, rules.vocabulary())
        ? new Judgement.Satisfied(found, stated.get().origin())
        : asked(found, stated.get().origin(), tile.calculation());
  }

  /** A limit that the words leave to the tile maker, or take from one. */
  private static boolean makersWord(Entry entry, Vocabulary vocabulary) {
    return entry.governing("substrate.deflection").stream()
        .anyMatch(v -> vocabulary.list("checks.maker").in(v.asWritten()));
  }

  private static Deflection deflection(Rule rule, Entry entry, RuleSet rules, Given n) {
    Given asked =
        Given.assumed(
            Quantity.of(FOR_TILE, Unit.ONE),
            "L/360 for tile at large, as a tile contractors' manual reports it");
    boolean metric = rules.units().alone();
    Quantity span = metric ? Quantity.of(3, Unit.METRE) : Quantity.of(10, Unit.FOOT);
    return Deflection.of(
        rules.subject(rule.id(), entry.tag()),
        rules.units(),
        Given.assumed(span, EXAMPLE),
        n,
        asked);
  }

  private static String words(Interval n) {
    String low = "L/" + Quantity.figure(n.low().number());
    return n.isExact() ? low : low + " to L/" + Quantity.figure(n.high().number());
  }

  private static Judgement failed(String found, Value first, Calculation calculation) {
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        new FindingWords(
            "",
            found,
            "L/360 at the least, and stiffer where the tile maker asks for it",
            calculation == null ? List.of() : Steps.of(calculation),
            ""),
        FoundAt.at(first.origin()),
        calculation == null ? List.of() : List.of(calculation));
  }

  private static Judgement asked(String found, Origin origin, Calculation calculation) {
    return new Judgement.Failed(
        FindingKind.UNRESOLVED,
        new FindingWords(
            "The deflection limit of {tag}, {found}, is that of tile at large; glass tile makers may ask"
                + " for more.",
            found,
            "the tile maker's own limit, where there is one",
            List.of(),
            "Which deflection limit does the maker of {tag} ask for? Some ask for L/480 or L/600."),
        FoundAt.at(origin),
        List.of(calculation));
  }
}
