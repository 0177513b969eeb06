package clearbed.read.guard;

import clearbed.base.Deadline;
import clearbed.base.io.TemporaryFolder;
import clearbed.model.document.Document;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.ReadingLimits;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import java.io.IOException;
import java.util.function.Function;

/**
 * Reads documents so that none can spoil the run: batches of usual length in this process, very
 * long ones in a worker process, and a document that brought down what it was read in once more,
 * alone.
 *
 * <p>A worker costs about a second of processor time for its start and half a millisecond for each
 * document after it (measured over 40, 150 and 600 small files), and what is read there has to be
 * handed over: of two thousand files a tenth more time by the clock (measured side by side). So
 * this process reads, and reads no more after something that Java does not promise to survive:
 * memory that ran out, classes that could not be loaded. The rest goes to the worker then.
 *
 * <p>A thread that hangs cannot be stopped in Java; a process can. So after a document that took
 * its time limit, too, the rest goes to the worker: this process bears no more hung threads than it
 * had jobs at that moment. A run of hours is worth a processor: it has the worker from the start,
 * where a hung document costs its time limit and a new worker.
 */
public final class IsolatingReader implements AutoCloseable {
  /** From so many documents on, a run takes long enough that something will hang. */
  public static final int MANY = 20_000;

  /** What to read with. */
  public record Means(Function<Format, FormatReader> readers, WorkerCommand worker, int many) {}

  private final int jobs;
  private final ReadingLimits limits;
  private final Deadline deadline;
  private final Means means;
  private final GuardedReader here;
  private final TemporaryFolder folder = new TemporaryFolder();
  private final Object turn = new Object();
  private boolean elsewhere;
  private boolean noWorker;
  private WorkerProcess shared;
  private WorkerProcess alone;

  /**
   * @param batch documents to come, roughly
   */
  public IsolatingReader(ReadOptions options, Means means, int batch) {
    this.jobs = options.jobs();
    this.limits = options.limits();
    this.deadline = options.deadline();
    this.means = means;
    this.here = new GuardedReader(limits, means.readers());
    this.noWorker = !means.worker().isThere();
    this.elsewhere = batch >= means.many();
  }

  public Document read(Source source) {
    if (source.known() != null) return source.known();
    if (deadline.isPast())
      return Document.unreadable(source.path(), source.extension(), Reasons.overdue(deadline));
    try {
      ReadOutcome first = beside(source);
      return first.ending().isSettled() ? first.document() : alone(source, first).document();
    } catch (OutOfMemoryError e) {
      return ReadOutcome.outOfMemory(source).document();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return ReadOutcome.interrupted(source).document();
    }
  }

  /** Beside other documents. */
  private ReadOutcome beside(Source source) throws InterruptedException {
    while (true) {
      WorkerProcess worker = here.isHarmed() ? sharedAfterHarm() : shared();
      if (worker == null) return here(source);
      ReadOutcome outcome = worker.read(source);
      if (outcome != null) return outcome;
    }
  }

  private ReadOutcome here(Source source) {
    ReadOutcome outcome = here.read(source);
    if (outcome.ending() == ReadOutcome.ReadEnding.TIMED_OUT) goElsewhere();
    return outcome;
  }

  private WorkerProcess sharedAfterHarm() {
    goElsewhere();
    return shared();
  }

  private synchronized void goElsewhere() {
    elsewhere = true;
  }

  /** The worker for documents at large, or null when they are read in this process. */
  private synchronized WorkerProcess shared() {
    if (!elsewhere || noWorker) return null;
    if (shared == null || !shared.isFit()) shared = start(jobs, limits);
    return shared;
  }

  /** The second try, one document at a time, so that none bears the blame of another. */
  private ReadOutcome alone(Source source, ReadOutcome first) throws InterruptedException {
    synchronized (turn) {
      while (!noWorker) {
        if (alone == null || !alone.isFit()) alone = start(1, limits.alone());
        ReadOutcome second = alone == null ? null : alone.read(source);
        if (second != null) return second;
      }
      return first;
    }
  }

  private synchronized WorkerProcess start(int threads, ReadingLimits own) {
    try {
      return WorkerProcess.start(means.worker(), threads, own, folder.path());
    } catch (IOException e) {
      noWorker = true;
      return null;
    }
  }

  @Override
  public synchronized void close() {
    if (shared != null) shared.close();
    if (alone != null) alone.close();
    folder.close();
  }
}
