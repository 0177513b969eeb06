package clearbed.read.guard;

import clearbed.base.codec.DamagedRecord;
import clearbed.read.guard.ReadOutcome.ReadEnding;
import clearbed.read.source.ReadingLimits;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** A running worker as seen by the process that it reads for. */
final class WorkerProcess implements AutoCloseable {
  /** Beyond the worker's own limit, for its start and for a document on its way. */
  private static final long GRACE_MILLIS = 20_000;

  /** A process that is ended by force is gone within moments. */
  private static final int END_SECONDS = 5;

  private final Process process;
  private final WorkerChannel channel;
  private final ReadingLimits limits;
  private final Map<Integer, CompletableFuture<WorkerChannel.WorkerReply>> pending =
      new HashMap<>();
  private int asked;
  private boolean retired;

  private WorkerProcess(Process process, ReadingLimits limits) {
    this.process = process;
    this.limits = limits;
    DataInputStream in = new DataInputStream(new BufferedInputStream(process.getInputStream()));
    OutputStream out = process.getOutputStream();
    this.channel = new WorkerChannel(in, out);
  }

  /**
   * @throws IOException when no such process can be started
   */
  static WorkerProcess start(WorkerCommand command, int jobs, ReadingLimits limits, Path folder)
      throws IOException {
    WorkerProcess worker = new WorkerProcess(command.start(jobs, limits, folder), limits);
    try {
      worker.channel.awaitGreeting();
    } catch (IOException e) {
      worker.close();
      throw e;
    }
    Thread listener = new Thread(worker::listen, "worker");
    listener.setDaemon(true);
    listener.start();
    return worker;
  }

  /** True while it may be asked; what it was asked before then is still answered. */
  synchronized boolean isFit() {
    return !retired;
  }

  /** The outcome, or null when it was not asked because it is not fit. */
  ReadOutcome read(Source source) throws InterruptedException {
    CompletableFuture<WorkerChannel.WorkerReply> reply = new CompletableFuture<>();
    int id;
    synchronized (this) {
      if (retired) return null;
      id = ++asked;
      pending.put(id, reply);
    }
    long start = System.nanoTime();
    try {
      channel.ask(new WorkerChannel.Request(id, source));
      ReadOutcome outcome = reply.get(patienceMillis(), TimeUnit.MILLISECONDS).outcome();
      if (outcome.ending().harms()) retire();
      if (outcome.ending() == ReadEnding.TIMED_OUT) limits.waits().addSince(start);
      return outcome;
    } catch (TimeoutException e) {
      limits.waits().addSince(start);
      close();
      return ReadOutcome.unreadable(
          ReadEnding.ENDED, source, "not read in time; open and save it again");
    } catch (IOException | ExecutionException e) {
      close();
      return ReadOutcome.unreadable(ReadEnding.ENDED, source, Reasons.ENDED);
    } finally {
      settled(id);
    }
  }

  private long patienceMillis() {
    return ReadingLimits.PATIENCE * limits.timeout().toMillis() + GRACE_MILLIS;
  }

  private synchronized void retire() {
    retired = true;
  }

  /** A worker past its work is ended once the last document is off its hands. */
  private synchronized void settled(int id) {
    pending.remove(id);
    if (retired && pending.isEmpty()) process.destroyForcibly();
  }

  private void listen() {
    try {
      while (true) {
        WorkerChannel.WorkerReply reply = channel.reply();
        synchronized (this) {
          CompletableFuture<WorkerChannel.WorkerReply> waiting = pending.get(reply.id());
          if (waiting != null) waiting.complete(reply);
        }
      }
    } catch (IOException | DamagedRecord | RuntimeException | OutOfMemoryError e) {
      synchronized (this) {
        retired = true;
        pending.values().forEach(waiting -> waiting.completeExceptionally(e));
      }
      process.destroyForcibly();
    }
  }

  /** Ends it; it writes nothing more then. */
  @Override
  public void close() {
    synchronized (this) {
      retired = true;
    }
    try {
      process.destroyForcibly().waitFor(END_SECONDS, TimeUnit.SECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
