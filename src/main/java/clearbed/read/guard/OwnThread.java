package clearbed.read.guard;

import clearbed.read.source.ReadingLimits;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** Work on one document, on a thread of its own and within the document's limits. */
public final class OwnThread {
  private final ReadingLimits limits;

  public OwnThread(ReadingLimits limits) {
    this.limits = limits;
  }

  /**
   * What the work gives. Work that takes longer than the limit is interrupted and ends at its next
   * {@link clearbed.base.Cancellation#check()}.
   *
   * @param noMemory given when the memory does not suffice even for putting the lack into words
   * @throws TimeoutException when the work has used the document's time
   * @throws InterruptedException when the caller is interrupted, which ends the work, too
   * @throws ExecutionException what the work has thrown
   */
  public <T> T run(String name, Callable<T> work, T noMemory)
      throws TimeoutException, InterruptedException, ExecutionException {
    CompletableFuture<T> result = new CompletableFuture<>();
    long start = System.nanoTime();
    Thread thread = new Thread(null, () -> work(work, result, noMemory), name, limits.stackBytes());
    thread.setDaemon(true);
    try {
      thread.start();
      return awaited(result, thread);
    } catch (TimeoutException e) {
      thread.interrupt();
      limits.waits().addSince(start);
      throw e;
    } catch (InterruptedException e) {
      thread.interrupt();
      throw e;
    } catch (OutOfMemoryError e) {
      return noMemory;
    }
  }

  /** The limit in words, whole seconds. */
  public String seconds() {
    return limits.timeout().toMillis() < 1000 ? "1" : "" + limits.timeout().toSeconds();
  }

  private static <T> void work(Callable<T> work, CompletableFuture<T> result, T noMemory) {
    try {
      result.complete(work.call());
    } catch (OutOfMemoryError e) {
      result.complete(noMemory);
    } catch (Exception | Error e) {
      result.completeExceptionally(e);
    } finally {
      // A second lack of memory, while the first is put into words, must leave nobody waiting.
      result.complete(noMemory);
    }
  }

  private <T> T awaited(CompletableFuture<T> result, Thread thread)
      throws InterruptedException, ExecutionException, TimeoutException {
    long limit = limits.timeout().toMillis();
    try {
      return result.get(limit, TimeUnit.MILLISECONDS);
    } catch (TimeoutException e) {
      // On a busy machine the time may have gone to others; what counts is this document's own.
      for (long waited = limit; waited < ReadingLimits.PATIENCE * limit; waited += limit) {
        if (processorMillis(thread) >= limit) throw e;
        if (isDone(result, limit)) break;
      }
      return result.get(0, TimeUnit.MILLISECONDS);
    }
  }

  private static boolean isDone(CompletableFuture<?> result, long millis)
      throws InterruptedException, ExecutionException {
    try {
      result.get(millis, TimeUnit.MILLISECONDS);
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
}
