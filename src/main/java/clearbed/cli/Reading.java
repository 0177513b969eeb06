package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.base.codec.DamagedRecord;
import clearbed.cache.Cache;
import clearbed.cache.Known;
import clearbed.model.Document;
import clearbed.read.DocumentReader;
import clearbed.read.ReadOptions;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** The documents of a batch, each by itself: read, or known from an earlier run. */
final class Reading {
  /** Files named in the message when none is a document. */
  private static final int NAMED = 3;

  private final List<Path> paths;
  private final ReadOptions options;
  private final Rulebook.Coming rulebook;
  private final Cache cache;
  private List<Known> known;

  private Reading(List<Path> paths, ReadOptions options, Rulebook.Coming rulebook, Cache cache) {
    this.paths = paths;
    this.options = options;
    this.rulebook = rulebook;
    this.cache = cache;
  }

  /**
   * Reads a batch; every document is let go once its facts are taken.
   *
   * @param cache may be null
   */
  static Reading of(
      List<Path> paths,
      ReadOptions options,
      Rulebook.Coming rulebook,
      Cache cache,
      Consumer<String> progress) {
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
    Reading reading = new Reading(paths, options, rulebook, cache);
    reading.read(progress);
    reading.requireDocument();
    return reading;
  }

  /** A run that looked at nothing must not end like one that found nothing. */
  private void requireDocument() {
    List<Document> documents = documents();
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

  private void read(Consumer<String> progress) {
    known = new ArrayList<>();
    new DocumentReader(options)
        .read(
            paths,
            new Recognition(rulebook, cache),
            one -> {
              // Wrong rules are refused with the first document, not after the last.
              rulebook.get();
              known.add(one);
              progress.accept(one.document().path());
            });
  }

  List<Known> known() {
    return known;
  }

  List<Document> documents() {
    return known.stream().map(Known::document).toList();
  }

  /** Joins what the documents say; to be asked for once. */
  Understanding understood() {
    try {
      return Understanding.of(known, rulebook.get());
    } catch (DamagedRecord e) {
      // What has come through the checksum and is wrong all the same is not to be trusted further.
      cache.readings().distrust();
      read(path -> {});
    }
    try {
      return Understanding.of(known, rulebook.get());
    } catch (DamagedRecord e) {
      throw new IllegalStateException(e);
    }
  }
}
