package clearbed.project;

import clearbed.model.document.Document;
import clearbed.model.report.Report;
import clearbed.model.value.Entry;
import clearbed.recognise.Facts;
import clearbed.recognise.schedule.row.ScheduleRow;
import clearbed.recognise.statement.code.Tags;
import clearbed.resolve.Project;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;

/** What a report says of each document: how it was read, and how many entries it holds. */
public final class Summaries {
  private Summaries() {}

  /** Of every document, in the order in which they were given. */
  public static List<Report.DocumentSummary> of(Project project) {
    List<Report.DocumentSummary> out = new ArrayList<>();
    Set<String> glass = project.glassKeys();
    Map<String, Set<String>> origins = new HashMap<>();
    for (Entry e : project.glass()) {
      origins.computeIfAbsent(e.origin().document(), d -> new TreeSet<>()).add(Tags.key(e.tag()));
    }
    for (Facts facts : project.facts()) {
      Document d = facts.document();
      Set<String> here = new TreeSet<>(origins.getOrDefault(d.path(), Set.of()));
      Set<String> other = new TreeSet<>();
      for (ScheduleRow row : facts.rows()) {
        String key = Tags.key(row.tag());
        (glass.contains(key) ? here : other).add(key);
      }
      out.add(
          new Report.DocumentSummary(
              d.path(), d.format(), d.status(), d.reason(), here.size(), other.size(), d.gaps()));
    }
    return out;
  }
}
