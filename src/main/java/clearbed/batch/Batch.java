package clearbed.batch;

import clearbed.cache.FactStore;
import clearbed.model.document.Document;
import clearbed.read.DocumentReader;
import clearbed.read.guard.OwnThread;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import clearbed.recognise.Facts;
import clearbed.recognise.Recogniser;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeoutException;

/**
 * What each document of a batch says, in argument order, then path order; documents are read ahead,
 * several at a time, and let go once their facts are taken. To be asked by one thread.
 */
public final class Batch implements Iterator<Facts>, AutoCloseable {
  /**
   * Facts that are taken ahead of their turn are kept; this many per job bounds the memory. While a
   * long document has its turn, the other jobs go on with as many short ones.
   */
  private static final int AHEAD_PER_JOB = 16;

  private final DocumentReader reader;
  private final OwnThread ownThread;
  private final FactStore store;
  private final CompletableFuture<Recogniser> recogniser;
  private final ExecutorService pool;
  private final int most;
  private final Iterator<Source> sources;
  private final Deque<Pending> ahead = new ArrayDeque<>();

  /**
   * @param facts null when the memory did not suffice beside other documents
   */
  private record Pending(Source source, Future<Facts> facts) {}

  /**
   * Begins to read.
   *
   * @param reader closed with this
   * @param jobs documents read at a time, 1 or more; the result is the same for every number
   * @param recogniser may still be loading
   */
  public Batch(
      DocumentReader reader, int jobs, FactStore store, CompletableFuture<Recogniser> recogniser) {
    this.reader = reader;
    this.ownThread = new OwnThread(reader.limits());
    this.store = store;
    this.recogniser = recogniser;
    this.pool = Executors.newFixedThreadPool(jobs, Batch::daemon);
    this.most = jobs * AHEAD_PER_JOB;
    this.sources = reader.sources();
    readAhead();
  }

  @Override
  public boolean hasNext() {
    return !ahead.isEmpty();
  }

  /**
   * The facts of the next document; none of one that could not be read.
   *
   * @throws IllegalStateException when the calling thread is interrupted
   */
  @Override
  public Facts next() {
    Pending next = ahead.remove();
    Facts facts = finished(next);
    if (facts == null) facts = alone(next.source);
    next.source.discard();
    readAhead();
    return facts;
  }

  private void readAhead() {
    while (ahead.size() < most && sources.hasNext()) {
      Source source = sources.next();
      ahead.add(new Pending(source, pool.submit(() -> beside(source))));
    }
  }

  private Facts facts(Source source) {
    return store.facts(source, () -> taken(source));
  }

  private Facts taken(Source source) {
    // The first are read while the vocabulary is loading.
    Document document = reader.read(source);
    return understood(source, document, recogniser.join());
  }

  private Facts understood(Source source, Document document, Recogniser known) {
    String reason;
    try {
      Facts facts = ownThread.run("read " + source.path(), () -> known.facts(document), null);
      if (facts == null) throw new OutOfMemoryError(source.path());
      return facts;
    } catch (TimeoutException e) {
      reason =
          "its words could not be made out within "
              + ownThread.seconds()
              + " s; split it, or give more by --document-timeout";
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("reading was interrupted", e);
    } catch (ExecutionException e) {
      reason = Reasons.ofWords(e.getCause());
    }
    return known.facts(Document.unreadable(document.path(), document.format(), reason));
  }

  private Facts beside(Source source) {
    try {
      return facts(source);
    } catch (OutOfMemoryError e) {
      return null;
    }
  }

  /** Once more, when nothing is read beside it that may have taken the memory. */
  private Facts alone(Source source) {
    ahead.forEach(Batch::finished);
    try {
      return facts(source);
    } catch (OutOfMemoryError e) {
      return recogniser.join().facts(DocumentReader.outOfMemory(source));
    }
  }

  private static Facts finished(Pending pending) {
    try {
      return pending.facts.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException("reading was interrupted", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException failure) throw failure;
      throw new IllegalStateException(e.getCause());
    }
  }

  private static Thread daemon(Runnable work) {
    Thread thread = new Thread(work, "read");
    thread.setDaemon(true);
    return thread;
  }

  @Override
  public void close() {
    pool.shutdownNow();
    reader.close();
  }
}
