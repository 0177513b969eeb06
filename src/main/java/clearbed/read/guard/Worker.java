package clearbed.read.guard;

import clearbed.base.Waits;
import clearbed.base.codec.DamagedRecord;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.ParserLimits;
import clearbed.read.source.ReadingLimits;
import java.io.BufferedInputStream;
import java.io.DataInputStream;
import java.io.EOFException;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.logging.LogManager;

/**
 * A process that reads documents for another and sends them back. It may be killed at any time and
 * ends by itself when the other is gone.
 */
public final class Worker {
  private final GuardedReader reader;
  private final WorkerChannel channel;

  private Worker(GuardedReader reader, WorkerChannel channel) {
    this.reader = reader;
    this.channel = channel;
  }

  /**
   * @param arguments as {@link WorkerCommand} writes them
   */
  public static void run(String[] arguments, Function<Format, FormatReader> readers) {
    // The channel is what was the standard output; a parser that prints must not write into it.
    OutputStream out = new FileOutputStream(FileDescriptor.out);
    System.setOut(new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8));
    System.setErr(System.out);
    LogManager.getLogManager().reset();
    ParserLimits.apply();
    int jobs = Integer.parseInt(arguments[0]);
    Duration timeout = Duration.ofMillis(Long.parseLong(arguments[1]));
    ReadingLimits limits = new ReadingLimits(timeout, Long.parseLong(arguments[2]), new Waits());
    WorkerChannel channel =
        new WorkerChannel(new DataInputStream(new BufferedInputStream(System.in)), out);
    new Worker(new GuardedReader(limits, readers), channel).serve(jobs);
    Runtime.getRuntime().halt(0);
  }

  private void serve(int jobs) {
    ExecutorService pool = Executors.newFixedThreadPool(jobs);
    try {
      channel.greet();
      while (true) {
        WorkerChannel.Request request = channel.request();
        pool.execute(() -> answer(request));
      }
    } catch (EOFException e) {
      // The other process is done or gone.
    } catch (IOException | DamagedRecord e) {
      // Nobody is left to tell.
    }
  }

  private void answer(WorkerChannel.Request request) {
    try {
      reply(request, reader.read(request.source()));
    } catch (Throwable t) {
      // Without an answer the other would wait for the time limit; the end of this tells it at
      // once.
      Runtime.getRuntime().halt(1);
    }
  }

  private void reply(WorkerChannel.Request request, ReadOutcome outcome) throws IOException {
    try {
      channel.reply(request.id(), outcome);
    } catch (OutOfMemoryError e) {
      // It could be read and not be written down.
      channel.reply(request.id(), ReadOutcome.outOfMemory(request.source()));
    }
  }
}
