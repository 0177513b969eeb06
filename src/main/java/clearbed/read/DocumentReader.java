package clearbed.read;

import clearbed.model.Document;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;

/** Reads files, folders and archives into documents; a file that cannot be read says why. */
public final class DocumentReader {
  /** Documents finished ahead of their turn are kept; this many per job bounds the memory. */
  private static final int AHEAD_PER_JOB = 2;

  private final ReadOptions options;
  private final ArchiveLimits archiveLimits;

  /** Also sets the limits of the office libraries, which are common to the whole process. */
  public DocumentReader(ReadOptions options) {
    this(options, ArchiveLimits.standard());
  }

  DocumentReader(ReadOptions options, ArchiveLimits archiveLimits) {
    this.options = options;
    this.archiveLimits = archiveLimits;
    ParserLimits.apply();
  }

  /** Every document under the paths, in argument order, then path order. */
  public List<Document> read(List<Path> paths) {
    List<Document> documents = new ArrayList<>();
    read(paths, documents::add);
    return documents;
  }

  /**
   * Hands every document under the paths to the sink, on the calling thread, in argument order,
   * then path order. A path that does not exist gives one unreadable document.
   *
   * @throws IllegalStateException when the calling thread is interrupted
   */
  public void read(List<Path> paths, Consumer<Document> sink) {
    ExecutorService pool = Executors.newFixedThreadPool(options.jobs(), DocumentReader::daemon);
    GuardedReader reader = new GuardedReader(options.documentTimeout());
    try (Inputs inputs = new Inputs(paths, options.ownOutputs(), archiveLimits)) {
      Deque<Future<Document>> ahead = new ArrayDeque<>();
      while (inputs.hasNext() || !ahead.isEmpty()) {
        while (ahead.size() < options.jobs() * AHEAD_PER_JOB && inputs.hasNext()) {
          Input input = inputs.next();
          ahead.add(pool.submit(() -> reader.read(input)));
        }
        sink.accept(ahead.remove().get());
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("reading was interrupted", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "read");
    thread.setDaemon(true);
    return thread;
  }
}
