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
  /**
   * Documents finished ahead of their turn are kept; this many per job bounds the memory. While a
   * long one has its turn, the other jobs go on with as many short ones.
   */
  private static final int AHEAD_PER_JOB = 16;

  private final ReadOptions options;
  private final ArchiveLimits archiveLimits;
  private final IsolatingReader.Means means;

  /** Also sets the limits of the office libraries, which are common to the whole process. */
  public DocumentReader(ReadOptions options) {
    this(options, ArchiveLimits.standard(), IsolatingReader.Means.STANDARD);
  }

  DocumentReader(ReadOptions options, ArchiveLimits archiveLimits, IsolatingReader.Means means) {
    this.options = options;
    this.archiveLimits = archiveLimits;
    this.means = means;
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
   * then path order. A path that does not exist gives one unreadable document. A sink that runs out
   * of memory is handed the same document again, and then an unreadable one in its stead.
   *
   * @throws IllegalStateException when the calling thread is interrupted
   */
  public void read(List<Path> paths, Consumer<Document> sink) {
    read(paths, document -> document, sink);
  }

  /**
   * Hands on what comes of every document, in the same order; the sink is called on the calling
   * thread.
   *
   * @throws IllegalStateException when the calling thread is interrupted
   */
  public <T> void read(List<Path> paths, Treatment<T> treatment, Consumer<T> sink) {
    ExecutorService pool = Executors.newFixedThreadPool(options.jobs(), DocumentReader::daemon);
    try (Inputs inputs = new Inputs(paths, options.ownOutputs(), archiveLimits);
        IsolatingReader reader = new IsolatingReader(options, means, inputs.expected())) {
      Deque<Future<Ready<T>>> ahead = new ArrayDeque<>();
      while (inputs.hasNext() || !ahead.isEmpty()) {
        while (ahead.size() < options.jobs() * AHEAD_PER_JOB && inputs.hasNext()) {
          Input input = inputs.next();
          ahead.add(pool.submit(() -> ready(reader, input, treatment)));
        }
        hand(ahead.remove().get(), ahead, treatment, sink);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("reading was interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException failure) throw failure;
      throw new IllegalStateException(e.getCause());
    } finally {
      pool.shutdownNow();
    }
  }

  private static <T> Ready<T> ready(IsolatingReader reader, Input input, Treatment<T> treatment)
      throws InterruptedException {
    if (!(input instanceof Input.Unread unread)) {
      return Ready.of(reader.read(input), treatment);
    }
    Source source = unread.source();
    Treatment.Memory<T> memory = treatment.memory(source.path(), source.named(), source.file());
    T known = memory.recalled();
    if (known != null) {
      if (source.temporary()) IsolatingReader.delete(source);
      return new Ready<>(source.path(), source.extension(), known, null);
    }
    Ready<T> ready = Ready.of(reader.read(input), treatment);
    if (ready.pending() != null) return ready;
    return new Ready<>(ready.path(), ready.format(), memory.keep(ready.result()), null);
  }

  /**
   * A sink without memory may be so for what is read meanwhile in this process, so that it is asked
   * once more when that is done.
   */
  private static <T> void hand(
      Ready<T> ready, Deque<Future<Ready<T>>> ahead, Treatment<T> treatment, Consumer<T> sink)
      throws InterruptedException, ExecutionException {
    try {
      sink.accept(ready.result(treatment));
      return;
    } catch (OutOfMemoryError e) {
      for (Future<Ready<T>> other : ahead) other.get();
    }
    try {
      sink.accept(ready.result(treatment));
    } catch (OutOfMemoryError e) {
      sink.accept(ready.lost(treatment));
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "read");
    thread.setDaemon(true);
    return thread;
  }
}
