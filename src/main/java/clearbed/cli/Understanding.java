package clearbed.cli;

import clearbed.base.Parallel;
import clearbed.base.codec.DamagedRecord;
import clearbed.cache.Known;
import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.Report;
import clearbed.recognise.Facts;
import clearbed.recognise.ScheduleRow;
import clearbed.recognise.Tags;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What was read and understood of a batch, without the documents' text.
 *
 * @param documents each without its blocks
 */
record Understanding(
    Project project, List<Document> documents, List<Report.DocumentSummary> summaries) {

  /**
   * Joins what the documents say.
   *
   * @throws DamagedRecord when what was kept of one is not what was written
   */
  static Understanding of(List<Known> known, Rulebook rulebook) throws DamagedRecord {
    List<Document> documents = known.stream().map(Known::document).toList();
    List<Facts> facts = facts(known);
    Project project = new Resolver(rulebook.vocabulary()).resolve(facts, rulebook.rules().facts());
    return new Understanding(project, documents, summaries(documents, facts, project));
  }

  private static List<Facts> facts(List<Known> known) throws DamagedRecord {
    List<DamagedRecord> damaged = Collections.synchronizedList(new ArrayList<>());
    List<Facts> facts =
        Parallel.map(
            known,
            one -> {
              try {
                return one.facts();
              } catch (DamagedRecord e) {
                damaged.add(e);
                return null;
              }
            });
    if (!damaged.isEmpty()) throw damaged.get(0);
    return facts.stream().filter(Objects::nonNull).toList();
  }

  private static List<Report.DocumentSummary> summaries(
      List<Document> documents, List<Facts> facts, Project project) {
    List<Report.DocumentSummary> out = new ArrayList<>();
    Set<String> glass = project.glassKeys();
    Map<String, Set<String>> origins = new HashMap<>();
    for (Entry e : project.glass()) {
      origins.computeIfAbsent(e.origin().document(), d -> new TreeSet<>()).add(Tags.key(e.tag()));
    }
    Map<String, List<Facts>> byPath =
        facts.stream().collect(Collectors.groupingBy(Facts::document));
    for (Document d : documents) {
      Set<String> here = new TreeSet<>(origins.getOrDefault(d.path(), Set.of()));
      Set<String> other = new TreeSet<>();
      for (Facts f : byPath.getOrDefault(d.path(), List.of())) {
        for (ScheduleRow row : f.rows()) {
          String key = Tags.key(row.tag());
          (glass.contains(key) ? here : other).add(key);
        }
      }
      out.add(
          new Report.DocumentSummary(
              d.path(), d.format(), d.status(), d.reason(), here.size(), other.size(), d.gaps()));
    }
    return out;
  }

  boolean anyUnreadable() {
    return documents.stream().anyMatch(d -> d.status() == Document.Status.UNREADABLE);
  }
}
