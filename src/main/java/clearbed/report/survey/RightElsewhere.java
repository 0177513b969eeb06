package clearbed.report.survey;

import clearbed.model.document.Origin;
import clearbed.survey.Overview;
import clearbed.survey.Surveyed;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Words of projects that satisfy a check, for those that fail it. */
final class RightElsewhere {
  /** Of one check and rule set; more are no longer read. */
  private static final int MOST_SHOWN = 3;

  /** Wordings of one check that are counted; the first that are met. */
  private static final int MOST_COUNTED = 2_000;

  private final Map<String, Map<String, SatisfyingWords>> found = new HashMap<>();

  /**
   * @param ruleSet that they satisfy; the same check may want other standards in another
   * @param projects how many have the very words
   * @param project the first of them
   */
  record SatisfyingWords(
      String text, String ruleSet, int projects, String project, String tag, Origin origin) {}

  /** Looked for where somebody may want them: for checks that some project does not satisfy. */
  static RightElsewhere of(Surveys surveys, Overview overview) throws IOException {
    RightElsewhere right = new RightElsewhere();
    for (Overview.CheckLine check : overview.checks())
      if (!check.fails().isEmpty() || !check.unread().isEmpty())
        right.found.put(check.check(), new LinkedHashMap<>());
    for (int i = 0; i < surveys.size(); i++) {
      Surveyed project = surveys.get(i);
      for (Surveyed.RightWords words : project.right()) right.add(project, words);
    }
    return right;
  }

  private void add(Surveyed project, Surveyed.RightWords words) {
    Map<String, SatisfyingWords> of = found.get(words.check());
    if (of == null) return;
    String key = project.ruleSet() + "\n" + words.words();
    SatisfyingWords known = of.get(key);
    if (known == null && of.size() >= MOST_COUNTED) return;
    int projects = known == null ? 1 : known.projects + 1;
    SatisfyingWords first =
        known != null
            ? known
            : new SatisfyingWords(
                words.words(), project.ruleSet(), 1, project.name(), words.tag(), words.origin());
    of.put(
        key,
        new SatisfyingWords(
            first.text, first.ruleSet, projects, first.project, first.tag, first.origin));
  }

  /**
   * By rule set; clauses before cells, which say little by themselves, then the most used first.
   */
  List<SatisfyingWords> of(String check) {
    Map<String, Integer> shown = new HashMap<>();
    return found.getOrDefault(check, Map.of()).values().stream()
        .sorted(
            Comparator.comparing(SatisfyingWords::ruleSet)
                .thenComparing(words -> words.origin.heading() == null)
                .thenComparing(words -> -words.projects)
                .thenComparing(SatisfyingWords::text))
        .filter(words -> shown.merge(words.ruleSet, 1, Integer::sum) <= MOST_SHOWN)
        .toList();
  }
}
