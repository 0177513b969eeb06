package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.batch.Batch;
import clearbed.cache.Cache;
import clearbed.cache.FactStore;
import clearbed.cli.option.ComingRulebook;
import clearbed.cli.terminal.Progress;
import clearbed.cli.terminal.UsageFailure;
import clearbed.model.document.Document;
import clearbed.project.Rulebook;
import clearbed.read.DocumentReader;
import clearbed.read.source.ReadOptions;
import clearbed.recognise.Facts;
import clearbed.recognise.LearnedMarks;
import clearbed.recognise.Recogniser;
import clearbed.recognise.vocabulary.taught.Lessons;
import clearbed.resolve.Project;
import clearbed.resolve.Resolver;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/**
 * The documents that a command is given.
 *
 * @param cache of earlier runs, or null
 */
record Documents(List<Path> paths, ReadOptions options, Cache cache) {
  /** Files named in the message when none is a document. */
  private static final int NAMED = 3;

  /**
   * Joins what all of them say; every document is let go once its facts are taken.
   *
   * @param progress told of each that is read
   */
  Project project(ComingRulebook rulebook, Progress progress) {
    requirePaths();
    FactStore store = cache == null ? FactStore.NONE : cache;
    List<Facts> facts = facts(store, rulebook.recogniser(), rulebook, progress);
    Lessons marks = LearnedMarks.in(facts, rulebook.get().vocabulary());
    if (!marks.isEmpty()) {
      progress.now("reading again by the marks of the schedules");
      CompletableFuture<Recogniser> learned =
          CompletableFuture.completedFuture(rulebook.learn(marks, facts));
      facts = facts(FactStore.NONE, learned, rulebook, progress);
    }
    requireDocument(facts.stream().map(Facts::document).toList());
    Rulebook chosen = rulebook.chooseFor(facts);
    progress.now("joining");
    return new Resolver(chosen.vocabulary()).resolve(facts, chosen.rules().facts());
  }

  private List<Facts> facts(
      FactStore store,
      CompletableFuture<Recogniser> recogniser,
      ComingRulebook rulebook,
      Progress progress) {
    DocumentReader reader = new DocumentReader(paths, options);
    progress.expect(reader.expected());
    List<Facts> facts = new ArrayList<>();
    try (Batch batch = new Batch(reader, options.jobs(), store, recogniser)) {
      // Wrong rules are refused while the first documents are read, not after the last.
      rulebook.get();
      while (batch.hasNext()) {
        Facts next = batch.next();
        facts.add(next);
        progress.read();
      }
    }
    return facts;
  }

  private void requirePaths() {
    for (Path path : paths) {
      // An empty variable of a script is not meant for the folder one stands in.
      if (path.toString().isBlank())
        throw new UsageFailure("an empty PATH; give the documents, folders or zip files to check");
    }
    if (paths.stream().noneMatch(Files::exists)) {
      throw new UsageFailure(
          paths.get(0)
              + ": no such file or folder; give the documents, folders or zip files to check");
    }
  }

  /** A run that looked at nothing must not end like one that found nothing. */
  private void requireDocument(List<Document> documents) {
    if (documents.stream().anyMatch(d -> d.status() != Document.Status.IGNORED)) return;
    String where =
        String.join(", ", paths.stream().map(p -> DisplayText.path(p.toString())).toList());
    throw new UsageFailure(
        "no document to read in "
            + where
            + passedOver(documents)
            + "; give schedules, sections or notes as spreadsheet, Word, PDF or text");
  }

  private static String passedOver(List<Document> documents) {
    if (documents.isEmpty()) return "";
    List<String> named =
        documents.stream()
            .limit(NAMED)
            .map(d -> DisplayText.path(d.path()) + ": " + DisplayText.of(d.reason()))
            .toList();
    String more = documents.size() > NAMED ? " and " + (documents.size() - NAMED) + " more" : "";
    return " (passed over: " + String.join("; ", named) + more + ")";
  }
}
