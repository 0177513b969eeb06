package clearbed.report.survey;

import clearbed.model.Origin;
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
  /** Of one check; more are no longer read. */
  private static final int MOST_SHOWN = 3;

  /** Wordings of one check that are counted; the first that are met. */
  private static final int MOST_COUNTED = 2_000;

  private final Map<String, Map<String, Words>> found = new HashMap<>();

  /**
   * @param projects how many have the very words
   * @param project the first of them
   */
  record Words(String text, int projects, String project, String tag, Origin origin) {}

  /** Looked for where somebody may want them: for checks that some project does not satisfy. */
  static RightElsewhere of(Surveys surveys, Overview overview) throws IOException {
    RightElsewhere right = new RightElsewhere();
    for (Overview.CheckLine check : overview.checks())
      if (!check.fails().isEmpty() || !check.unread().isEmpty())
        right.found.put(check.check(), new LinkedHashMap<>());
    for (int i = 0; i < surveys.size(); i++) {
      Surveyed project = surveys.get(i);
      for (Surveyed.RightWords words : project.right()) right.add(project.name(), words);
    }
    return right;
  }

  private void add(String project, Surveyed.RightWords words) {
    Map<String, Words> of = found.get(words.check());
    if (of == null) return;
    Words known = of.get(words.words());
    if (known == null && of.size() >= MOST_COUNTED) return;
    of.put(
        words.words(),
        known == null
            ? new Words(words.words(), 1, project, words.tag(), words.origin())
            : new Words(known.text, known.projects + 1, known.project, known.tag, known.origin));
  }

  /** Clauses before cells, which say little by themselves; the most used first. */
  List<Words> of(String check) {
    return found.getOrDefault(check, Map.of()).values().stream()
        .sorted(
            Comparator.comparing((Words words) -> words.origin.heading() == null)
                .thenComparing(words -> -words.projects)
                .thenComparing(Words::text))
        .limit(MOST_SHOWN)
        .toList();
  }
}
