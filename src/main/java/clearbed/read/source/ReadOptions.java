package clearbed.read.source;

import clearbed.base.Deadline;
import clearbed.base.Waits;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Set;

/**
 * How a batch is read.
 *
 * @param ownOutputs files that this run writes, and folders that it writes into; never read as
 *     input
 * @param jobs documents read at a time, 1 or more; the result is the same for every number
 * @param documentTimeout after which a document is given up as unreadable: processor time of its
 *     own, or three times that on the clock
 * @param deadline after which no document is begun; those left are unreadable
 * @param waits told of each document that is given up
 */
public record ReadOptions(
    Set<Path> ownOutputs, int jobs, Duration documentTimeout, Deadline deadline, Waits waits) {
  private static final Duration LONGEST = Duration.ofHours(1);

  public ReadOptions {
    ownOutputs = Set.copyOf(ownOutputs);
    if (jobs < 1) throw new IllegalArgumentException("jobs must be 1 or more, not " + jobs);
    if (documentTimeout.isNegative() || documentTimeout.isZero()) {
      throw new IllegalArgumentException("the time limit of a document must be above zero");
    }
  }

  /** No outputs to leave out, one job per processor, 60 seconds a document, an hour from now. */
  public static ReadOptions defaults() {
    int processors = Runtime.getRuntime().availableProcessors();
    return new ReadOptions(
        Set.of(), processors, Duration.ofSeconds(60), Deadline.in(LONGEST), new Waits());
  }

  public ReadOptions withOwnOutputs(Set<Path> outputs) {
    return new ReadOptions(outputs, jobs, documentTimeout, deadline, waits);
  }

  public ReadOptions withJobs(int number) {
    return new ReadOptions(ownOutputs, number, documentTimeout, deadline, waits);
  }

  public ReadOptions withDocumentTimeout(Duration limit) {
    return new ReadOptions(ownOutputs, jobs, limit, deadline, waits);
  }

  public ReadOptions withDeadline(Deadline end) {
    return new ReadOptions(ownOutputs, jobs, documentTimeout, end, waits);
  }

  public ReadOptions withWaits(Waits own) {
    return new ReadOptions(ownOutputs, jobs, documentTimeout, deadline, own);
  }

  /** Of one document beside others. */
  public ReadingLimits limits() {
    return ReadingLimits.of(documentTimeout, waits);
  }
}
