package clearbed.base;

import java.time.Duration;

/**
 * The moment after which a run begins nothing more.
 *
 * @param nanos of the clock of {@link System#nanoTime()}
 * @param limit the time that the run was given
 */
public record Deadline(long nanos, Duration limit) {
  public static Deadline in(Duration limit) {
    return new Deadline(System.nanoTime() + limit.toNanos(), limit);
  }

  public boolean isPast() {
    return System.nanoTime() - nanos > 0;
  }
}
