package clearbed.check.rules;

import clearbed.calc.figure.CalculationSubject;
import clearbed.calc.figure.Measure;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.takeoff.TakeoffInputs;
import clearbed.model.report.Finding;
import clearbed.model.report.ProjectNames;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.resolve.NationalPractice;
import clearbed.resolve.ProjectFact;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The checks of a run: a standard set with the layers laid over it.
 *
 * @param digest SHA-256 over the files, in order; hexadecimal
 * @param layers titles of the rule files laid over the set
 * @param guideline of movement joints
 * @param national the same where the practice of a country has its own
 * @param units that figures of the set itself are written in
 * @param yields of materials and work, as an office gives them, else as they are common
 * @param names that layers give the project and its people
 * @param changes what the layers change of the checks, in words
 * @param vocabulary the words of the trade that the checks look for
 */
public record RuleSet(
    String name,
    String title,
    String digest,
    List<String> layers,
    List<Rule> rules,
    List<Suppression> suppressions,
    List<ProjectFact> facts,
    List<ProjectFact> assumptions,
    MovementGuideline guideline,
    Map<NationalPractice, MovementGuideline> national,
    Measure units,
    TakeoffInputs.Yields yields,
    ProjectNames names,
    List<String> changes,
    Vocabulary vocabulary) {
  public RuleSet {
    layers = List.copyOf(layers);
    rules = List.copyOf(rules);
    suppressions = List.copyOf(suppressions);
    facts = List.copyOf(facts);
    assumptions = List.copyOf(assumptions);
    national = Map.copyOf(national);
    changes = List.copyOf(changes);
  }

  /**
   * A finding that the project has decided to live with.
   *
   * @param check or empty when the id says it
   * @param tag or empty for all entries
   */
  public record Suppression(String check, String id, String tag, String reason, String file) {
    public boolean hits(Finding finding) {
      return (id.isEmpty() || id.equals(finding.id()))
          && (check.isEmpty() || check.equals(finding.check()))
          && (tag.isEmpty() || finding.tags().equals(List.of(tag)));
    }

    /** What it is meant for, in words. */
    public String aim() {
      String what = id.isEmpty() ? check : id;
      return (tag.isEmpty() ? what : what + ", " + tag) + " (" + file + ")";
    }
  }

  /** The guideline of movement joints that documents of a country are held to. */
  public MovementGuideline guideline(NationalPractice practice) {
    return national.getOrDefault(practice, guideline);
  }

  /** What a calculation of a rule for an entry is made for. */
  public CalculationSubject subject(String check, String tag) {
    return new CalculationSubject(check, tag, units.alone());
  }

  public Optional<Rule> rule(String id) {
    return rules.stream().filter(r -> r.id().equals(id)).findFirst();
  }
}
