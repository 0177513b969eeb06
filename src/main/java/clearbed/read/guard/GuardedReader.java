package clearbed.read.guard;

import clearbed.mark.OwnContent;
import clearbed.model.document.Document;
import clearbed.model.document.Document.Status;
import clearbed.read.detect.Detection;
import clearbed.read.detect.FormatDetector;
import clearbed.read.guard.ReadOutcome.ReadEnding;
import clearbed.read.source.Checksums;
import clearbed.read.source.Format;
import clearbed.read.source.FormatReader;
import clearbed.read.source.ReadingLimits;
import clearbed.read.source.Reasons;
import clearbed.read.source.Source;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeoutException;
import java.util.function.Function;

/**
 * Reads one document on a thread of its own, so that nothing a parser does (throw, hang, use up the
 * memory or the stack) reaches the rest of the batch in this process. Only a call to {@code exit}
 * would; of the libraries none calls it but from a main program.
 */
final class GuardedReader {
  private static final int DEEPEST_CAUSE = 50;

  private final OwnThread ownThread;
  private final Function<Format, FormatReader> readers;
  private volatile boolean harmed;

  GuardedReader(ReadingLimits limits, Function<Format, FormatReader> readers) {
    this.ownThread = new OwnThread(limits);
    this.readers = readers;
  }

  /** True once something happened after which this process should read nothing more. */
  boolean isHarmed() {
    return harmed;
  }

  ReadOutcome read(Source source) {
    ReadOutcome outcome = onOwnThread(source);
    if (outcome.ending().harms()) harmed = true;
    boolean refused = outcome.document().status() == Status.UNREADABLE;
    // Whether the fault is the document's own cannot be told in a process that has lost its
    // footing.
    return harmed && refused && outcome.ending() == ReadEnding.DONE
        ? new ReadOutcome(ReadEnding.BROKEN, outcome.document())
        : outcome;
  }

  private ReadOutcome onOwnThread(Source source) {
    ReadOutcome noMemory = ReadOutcome.outOfMemory(source);
    try {
      return ownThread.run("read " + source.path(), () -> readAnything(source), noMemory);
    } catch (TimeoutException e) {
      String reason = "not read within " + ownThread.seconds() + " s; open and save it again";
      return ReadOutcome.unreadable(ReadEnding.TIMED_OUT, source, reason);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return ReadOutcome.interrupted(source);
    } catch (ExecutionException e) {
      throw new IllegalStateException(e);
    }
  }

  private ReadOutcome readAnything(Source source) {
    Format format = null;
    try {
      Detection detection = FormatDetector.detect(source);
      format = detection.format();
      return ReadOutcome.done(format == null ? verdict(source, detection) : read(source, format));
    } catch (Throwable t) {
      // Parsers of damaged files throw everything, errors included; each ends as one line.
      return failed(source, format, t);
    }
  }

  private Document read(Source source, Format format) throws Exception {
    if (format.isZipped()) Checksums.require(source.file());
    Document read = OwnContent.leftOut(readers.apply(format).read(source));
    boolean silent =
        read.status() != Status.IGNORED && read.blocks().isEmpty() && read.reason().isEmpty();
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

  private static ReadOutcome failed(Source source, Format format, Throwable failure) {
    String name = format == null ? source.extension() : format.shortName();
    String reason = Reasons.of(failure, format);
    return new ReadOutcome(ending(failure), Document.unreadable(source.path(), name, reason));
  }

  /** Libraries wrap errors in exceptions of their own. */
  private static ReadEnding ending(Throwable failure) {
    int depth = 0;
    for (Throwable t = failure; t != null && depth < DEEPEST_CAUSE; t = t.getCause(), depth++) {
      if (t instanceof OutOfMemoryError) return ReadEnding.OUT_OF_MEMORY;
      if (t instanceof StackOverflowError) return ReadEnding.TOO_DEEP;
      if (t instanceof LinkageError || t instanceof VirtualMachineError) return ReadEnding.BROKEN;
    }
    return ReadEnding.DONE;
  }
}
