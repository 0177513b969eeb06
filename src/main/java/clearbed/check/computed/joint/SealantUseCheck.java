package clearbed.check.computed.joint;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.judge.TilePlace;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Use T where people walk, use I where water stands (ASTM C920 uses, from memory). */
public final class SealantUseCheck implements Computation {
  private static final Map<String, String> DECLARED =
      Map.of(
          "T",
          "foot traffic",
          "NT",
          "joints that are not walked on",
          "I",
          "permanent immersion",
          "G",
          "glass");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    Set<String> surfaces = TilePlace.terms(entry, "location.surface");
    boolean water = TilePlace.terms(entry, "location.exposure").contains("submerged");
    List<String> wanted = new ArrayList<>();
    if (surfaces.contains("floor") && !water) wanted.add("T");
    if (water) wanted.add("I");
    if (wanted.isEmpty()) return new Judgement.NotApplicable("neither floor nor under water");
    List<Value> values = entry.governing(rule.attribute());
    if (values.isEmpty()) return new Judgement.Missing();
    Set<String> uses = values.stream().map(v -> v.content().text()).collect(Collectors.toSet());
    List<String> lacking = wanted.stream().filter(w -> !uses.contains(w)).toList();
    if (lacking.isEmpty()) return Judge.satisfied(values);
    String expected = words(wanted, " and ", rules);
    return new Judgement.Failed(
        FindingKind.INADEQUATE,
        FindingWords.of("", words(uses.stream().sorted().toList(), ", ", rules), expected),
        FoundAt.at(values.get(0).origin()));
  }

  /** The letters are those of one country; elsewhere a sealant is declared for what it bears. */
  private static String words(List<String> uses, String joined, RuleSet rules) {
    if (!rules.units().alone()) return "use " + String.join(joined, uses);
    return uses.stream()
        .map(use -> DECLARED.getOrDefault(use, "other uses"))
        .distinct()
        .collect(Collectors.joining(joined));
  }
}
