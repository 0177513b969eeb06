package clearbed.read;

import clearbed.model.document.Document;
import clearbed.read.source.ReadOptions;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Reads whole documents for tests to look at: all of a batch, in its order. */
public final class ReadAll {
  private ReadAll() {}

  public static List<Document> of(Path... paths) {
    return by(ReadOptions.defaults(), paths);
  }

  public static List<Document> by(ReadOptions options, Path... paths) {
    return by(new DocumentReader(List.of(paths), options), options.jobs());
  }

  static List<Document> by(DocumentReader all, int jobs) {
    ExecutorService pool = Executors.newFixedThreadPool(jobs);
    List<Document> documents = new ArrayList<>();
    try (DocumentReader reader = all) {
      List<Future<Document>> reading = new ArrayList<>();
      reader.sources().forEachRemaining(s -> reading.add(pool.submit(() -> reader.read(s))));
      for (Future<Document> each : reading) documents.add(each.get());
    } catch (InterruptedException | ExecutionException e) {
      throw new AssertionError(e);
    } finally {
      pool.shutdownNow();
    }
    return documents;
  }
}
