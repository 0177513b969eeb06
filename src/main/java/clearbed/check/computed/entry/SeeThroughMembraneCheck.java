package clearbed.check.computed.entry;

import clearbed.check.judge.Computation;
import clearbed.check.judge.Judge;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Judgement;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.model.document.Origin;
import clearbed.model.report.FindingKind;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * See-through glass bonded to a membrane is a conflict until the tile maker accepts it or a bed
 * lies between (TCNA Handbook, as reported).
 */
public final class SeeThroughMembraneCheck implements Computation {
  private static final List<String> LAYERS =
      List.of("membrane.standard", "membrane.crackIsolation", "membrane.layer");

  @Override
  public Judgement judge(Rule rule, Entry entry, Project project, RuleSet rules) {
    for (String settled : List.of(rule.attribute(), "membrane.behindBed")) {
      List<Value> values = entry.governing(settled);
      if (!values.isEmpty()) return Judge.satisfied(values);
    }
    List<Value> layers = LAYERS.stream().flatMap(layer -> entry.governing(layer).stream()).toList();
    List<Origin> places = new ArrayList<>();
    Stream.concat(layers.stream().skip(1), entry.governing("tile.translucency").stream())
        .map(Value::origin)
        .distinct()
        .forEach(places::add);
    return new Judgement.Failed(
        FindingKind.INCOMPATIBLE,
        FindingWords.of("", Judge.found(layers), ""),
        new FoundAt(layers.get(0).origin(), places));
  }
}
