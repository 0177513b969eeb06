package clearbed.check.computed.reference;

import clearbed.check.judge.FindingWriter;
import clearbed.check.judge.SetComputation;
import clearbed.check.judge.Subjects;
import clearbed.check.rules.FindingWords;
import clearbed.check.rules.FoundAt;
import clearbed.check.rules.Rule;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.recognise.statement.code.Citation;
import clearbed.recognise.vocabulary.StandardInfo;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** A standard that has been withdrawn or superseded is cited. */
public final class WithdrawnStandardCheck implements SetComputation {
  @Override
  public List<Finding> find(Rule rule, Scene scene) {
    List<Finding> out = new ArrayList<>();
    if (scene.project().glass().isEmpty()) return out;
    Set<String> told = new HashSet<>();
    // An edition tells more than a number alone, and where it is asked for more than a list.
    List<Citation> all = new ArrayList<>(scene.project().citations());
    all.sort(
        Comparator.comparing((Citation c) -> c.standard().edition().isEmpty())
            .thenComparing(Citation::listed));
    for (Citation c : all) {
      StandardInfo info =
          scene.vocabulary().standards().of(c.standard().designation()).orElse(null);
      if (info == null
          || info.current() && !info.replaces(c.standard().edition())
          || !told.add(c.standard().designation() + c.origin().document())) continue;
      String successor =
          info.successor().isEmpty() ? "" : "; " + info.successor() + " has taken its place";
      if (info.current()) {
        out.add(
            finding(
                rule,
                scene,
                c,
                rule.level(),
                c.asWritten()
                    + " is an earlier edition; "
                    + info.designation()
                    + ":"
                    + info.edition()
                    + " has taken its place.",
                info.designation() + ":" + info.edition()));
        continue;
      }
      String message =
          c.asWritten() + " (" + info.subject() + ") is " + info.status() + successor + ".";
      String expected = info.successor().isEmpty() ? "a standard in force" : info.successor();
      boolean inUse = info.undatedInUse() && c.standard().edition().isEmpty();
      out.add(finding(rule, scene, c, inUse ? Level.NOTE : rule.level(), message, expected));
    }
    return out;
  }

  private static Finding finding(
      Rule rule, Scene scene, Citation c, Level level, String message, String expected) {
    return scene
        .writer()
        .write(
            rule,
            new FindingWriter.Case(
                c.standard().designation() + " " + Subjects.document(c.origin()),
                "",
                FindingKind.INADEQUATE,
                level,
                List.of(),
                FoundAt.at(c.origin()),
                FindingWords.of(message, c.asWritten(), expected)));
  }
}
