package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.TilePlace;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Origin;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Content;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What may not carry glass tile, in wet places or anywhere (building codes, as reported). */
public final class SubstratePlaceCheck implements Computation {
  private static final Set<String> WET = Set.of("wet", "steam", "submerged");
  private static final Set<String> NOWHERE = Set.of("plywood", "single-coat bed", "green concrete");

  /** What is plastered before tile goes on it. */
  private static final Set<String> CARRIERS = Set.of("masonry", "concrete");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    List<Value> values =
        entry.governing(rule.attribute()).stream()
            .filter(v -> v.content() instanceof Content.Term)
            .toList();
    values = values.stream().filter(uncovered(values)).toList();
    if (values.isEmpty()) return new Judgement.NotApplicable("the substrate is not understood");
    boolean wet = TilePlace.terms(entry, "location.exposure").stream().anyMatch(WET::contains);
    List<Value> unfit = values.stream().filter(v -> unfit(v, wet, rules.vocabulary())).toList();
    // "Cement board over plywood" is set on the board; of two rooms each may have its own.
    if (unfit.isEmpty() || unfit.size() < values.size()) return Judge.satisfied(values);
    List<Value> layers =
        Stream.of("membrane.standard", "membrane.crackIsolation", "membrane.layer")
            .flatMap(attribute -> entry.governing(attribute).stream())
            .toList();
    boolean board = unfit.stream().noneMatch(v -> NOWHERE.contains(v.content().text()));
    boolean wood = unfit.stream().allMatch(v -> v.content().text().equals("plywood"));
    return failed(unfit, board, !layers.isEmpty() && (board || wood));
  }

  /** "Blockwork, gypsum plaster": the tile lies on the coat, and the coat on what carries it. */
  private static Predicate<Value> uncovered(List<Value> all) {
    return v ->
        !CARRIERS.contains(v.content().text())
            || all.stream()
                .noneMatch(
                    coat ->
                        coat.content().text().equals("plaster")
                            && coat.origin().equals(v.origin()));
  }

  private static boolean unfit(Value v, boolean wet, Vocabulary vocabulary) {
    String what = v.content().text();
    boolean gypsum =
        what.equals("gypsum board")
            || what.equals("plaster") && vocabulary.list("checks.gypsum").in(v.asWritten());
    return NOWHERE.contains(what) || wet && gypsum;
  }

  /**
   * @param covered true when a membrane may lie between: some are made for that
   */
  private static Judgement failed(List<Value> unfit, boolean board, boolean covered) {
    String found = Judge.found(unfit) + (board ? " in a wet place" : "");
    Value first = unfit.get(0);
    List<Origin> others = new ArrayList<>();
    unfit.stream().skip(1).map(Value::origin).distinct().forEach(others::add);
    String expected =
        board
            ? "cement, fibre-cement or coated glass-mat backer board, or a mortar bed"
            : unfit.stream()
                .map(v -> instead(v.content().text()))
                .distinct()
                .collect(Collectors.joining("; "));
    // Paper-faced gypsum is refused in wet areas, whatever lies over it (IBC 2509.2).
    FindingKind kind = covered && !board ? FindingKind.UNRESOLVED : FindingKind.INCOMPATIBLE;
    String message =
        covered ? "{tag} is set over {found}, with a membrane that may lie between." : "";
    String question =
        covered
            ? "Is the membrane of {tag} made to be laid on {found} and to carry tile there, by its"
                + " maker's word and the building code?"
            : "";
    return new Judgement.Failed(
        kind,
        new FindingWords(message, found, expected, List.of(), question),
        new FoundAt(first.origin(), others));
  }

  private static String instead(String what) {
    if (what.equals("plywood")) return "a backer board, a mortar bed or a membrane over the wood";
    return what.equals("green concrete")
        ? "concrete that has cured for 28 days"
        : "a scratch coat and a mortar bed over it";
  }
}
