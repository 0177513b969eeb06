package clearbed.cli;

import clearbed.cache.ReadingCache;
import clearbed.model.Document;
import clearbed.model.Entry;
import clearbed.model.Report;
import clearbed.read.DocumentReader;
import clearbed.read.ReadOptions;
import clearbed.recognise.Facts;
import clearbed.recognise.ScheduleRow;
import clearbed.recognise.Tags;
import clearbed.resolve.Project;
import clearbed.resolve.ProjectFact;
import clearbed.resolve.Resolver;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;

/**
 * What was read and understood of a batch, without the documents' text.
 *
 * @param documents each without its blocks
 */
record Understanding(
    Project project, List<Document> documents, List<Report.DocumentSummary> summaries) {

  /**
   * Reads and joins a batch; every document is let go once its facts are taken.
   *
   * @param cache may be null
   */
  static Understanding of(
      List<Path> paths,
      ReadOptions options,
      Rulebook.Coming rulebook,
      ReadingCache cache,
      Consumer<String> progress) {
    if (paths.stream().noneMatch(Files::exists)) {
      throw new UsageFailure(
          paths.get(0)
              + ": no such file or folder; give the documents, folders or zip files to check");
    }
    List<Document> documents = new ArrayList<>();
    List<Facts> facts = new ArrayList<>();
    new DocumentReader(options)
        .read(
            paths,
            new Recognition(rulebook, cache),
            recognised -> {
              // Wrong rules are refused with the first document, not after the last.
              rulebook.get();
              documents.add(recognised.document());
              if (recognised.facts() != null) facts.add(recognised.facts());
              progress.accept(recognised.document().path());
            });
    List<ProjectFact> known = rulebook.get().rules().facts();
    Project project = new Resolver(rulebook.get().vocabulary()).resolve(facts, known);
    return new Understanding(project, documents, summaries(documents, facts, project));
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
