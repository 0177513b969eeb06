package clearbed.read;

import clearbed.model.Document;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReadWriteLock;
import java.util.concurrent.locks.ReentrantReadWriteLock;
import java.util.function.Function;

/**
 * Reads one document on a thread of its own, so that nothing a parser does (throw, hang, use up the
 * memory or the stack) reaches the rest of the batch.
 */
final class GuardedReader {
  /** Times the limit that a document may take on the clock while it waits for a processor. */
  private static final int PATIENCE = 3;

  private final Duration timeout;

  /**
   * Shared by documents read side by side; held alone by one that ran out of memory beside others.
   */
  private final ReadWriteLock memory = new ReentrantReadWriteLock();

  private final Function<Format, FormatReader> readers;

  GuardedReader(Duration timeout) {
    this(timeout, Format::reader);
  }

  GuardedReader(Duration timeout, Function<Format, FormatReader> readers) {
    this.timeout = timeout;
    this.readers = readers;
  }

  Document read(Input input) {
    if (input instanceof Input.Known known) return known.document();
    Source source = ((Input.Unread) input).source();
    try {
      Outcome first = attempt(source, memory.readLock());
      // Alone it may fit; and the result must not hang on what else was being read.
      if (first.outOfMemory()) return attempt(source, memory.writeLock()).document();
      return first.document();
    } finally {
      if (source.temporary()) delete(source);
    }
  }

  private record Outcome(Document document, boolean outOfMemory) {}

  private Outcome attempt(Source source, Lock share) {
    share.lock();
    try {
      return onOwnThread(source);
    } finally {
      share.unlock();
    }
  }

  private Outcome onOwnThread(Source source) {
    FutureTask<Outcome> task = new FutureTask<>(() -> readAnything(source));
    Thread thread = new Thread(task, "read " + source.path());
    thread.setDaemon(true);
    try {
      thread.start();
      return awaited(task, thread);
    } catch (TimeoutException e) {
      thread.interrupt();
      String reason = "not read within " + timeout.toSeconds() + " s; open and save it again";
      return failed(source, reason, false);
    } catch (InterruptedException e) {
      thread.interrupt();
      Thread.currentThread().interrupt();
      return failed(source, "reading was interrupted", false);
    } catch (ExecutionException | OutOfMemoryError e) {
      return failed(source, Reasons.of(e, null), true);
    }
  }

  private Outcome awaited(FutureTask<Outcome> task, Thread thread)
      throws InterruptedException, ExecutionException, TimeoutException {
    long limit = timeout.toMillis();
    try {
      return task.get(limit, TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      // On a busy machine the time may have gone to others; what counts is this document's own.
      for (long waited = limit; waited < PATIENCE * limit; waited += limit) {
        if (processorMillis(thread) >= limit) throw e;
        if (isDone(task, limit)) break;
      }
      return task.get(0, TimeUnit.MILLISECONDS);
    }
  }

  private static boolean isDone(FutureTask<Outcome> task, long millis)
      throws InterruptedException, ExecutionException {
    try {
      task.get(millis, TimeUnit.MILLISECONDS);
      return true;
    } catch (TimeoutException e) {
      return false;
    }
  }

  /** Processor time that a thread has used, or the longest there is when that is not known. */
  private static long processorMillis(Thread thread) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    if (!threads.isThreadCpuTimeSupported() || !threads.isThreadCpuTimeEnabled()) {
      return Long.MAX_VALUE;
    }
    return Math.max(0, threads.getThreadCpuTime(thread.getId())) / 1_000_000;
  }

  private Outcome readAnything(Source source) {
    Format format = null;
    try {
      Detection detection = FormatDetector.detect(source);
      format = detection.format();
      Document document = format == null ? verdict(source, detection) : read(source, format);
      return new Outcome(document, false);
    } catch (Throwable t) {
      // Parsers of damaged files throw everything, errors included; each ends as one line.
      return failed(source, format, Reasons.of(t, format), t instanceof OutOfMemoryError);
    }
  }

  private Document read(Source source, Format format) throws Exception {
    Document read = readers.apply(format).read(source);
    boolean silent = read.blocks().isEmpty() && read.reason().isEmpty();
    return silent
        ? new Document(
            read.path(), read.format(), read.status(), "holds no text", List.of(), read.gaps())
        : read;
  }

  private static Document verdict(Source source, Detection detection) {
    return detection.ignored()
        ? Document.ignored(source.path(), source.extension(), detection.reason())
        : Document.unreadable(source.path(), source.extension(), detection.reason());
  }

  private static Outcome failed(Source source, String reason, boolean outOfMemory) {
    return failed(source, null, reason, outOfMemory);
  }

  private static Outcome failed(Source source, Format format, String reason, boolean outOfMemory) {
    String name = format == null ? source.extension() : format.shortName();
    return new Outcome(Document.unreadable(source.path(), name, reason), outOfMemory);
  }

  private static void delete(Source source) {
    try {
      Files.deleteIfExists(source.file());
    } catch (IOException e) {
      // An abandoned thread may still hold it; the folder is cleared at the end of the run.
    }
  }
}
