package clearbed.check.computed.set;

import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.document.Origin;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.recognise.Facts;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Glass tile is named, and no entry could be made of it: nothing was checked. */
public final class NoEntryCheck implements SetComputation {
  private static final int QUOTED = 5;

  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    if (!scene.project().glass().isEmpty()) return List.of();
    List<Origin> places = quoted(scene.project().facts());
    if (places.isEmpty()) return List.of();
    String found =
        places.stream()
            .map(p -> "\"" + p.text() + "\" (" + p.place() + ")")
            .collect(Collectors.joining("; "));
    return List.of(
        scene
            .writer()
            .write(
                rule,
                new FindingWriter.Case(
                    "set",
                    "",
                    FindingKind.UNREAD,
                    rule.level(),
                    List.of(),
                    new FoundAt(places.get(0), places.subList(1, places.size())),
                    FindingWords.of(
                        rule.wording().missing().replace("{found}", found), found, ""))));
  }

  /** One place of each document first, then the rest, as long as there is room. */
  private static List<Origin> quoted(List<Facts> facts) {
    List<Origin> out = new ArrayList<>();
    for (int round = 0; round < QUOTED; round++) {
      for (Facts f : facts) {
        if (round < f.glassNamed().size() && out.size() < QUOTED) {
          out.add(f.glassNamed().get(round));
        }
      }
    }
    return out;
  }
}
