package clearbed.read.source;

import clearbed.base.Waits;
import java.time.Duration;

/**
 * What the reading of one document may use up.
 *
 * @param timeout as in {@link ReadOptions#documentTimeout()}
 * @param stackBytes of the thread that reads it
 * @param waits told of each time that the limit is met
 */
public record ReadingLimits(Duration timeout, long stackBytes, Waits waits) {
  /** Times the limit that a document may take on the clock while it waits for a processor. */
  public static final int PATIENCE = 3;

  private static final long STACK = 8L << 20;
  private static final long STACK_ALONE = 64L << 20;

  public static ReadingLimits of(Duration timeout) {
    return of(timeout, new Waits());
  }

  public static ReadingLimits of(Duration timeout, Waits waits) {
    return new ReadingLimits(timeout, STACK, waits);
  }

  /** For a document that has a process to itself. */
  public ReadingLimits alone() {
    return new ReadingLimits(timeout, STACK_ALONE, waits);
  }
}
