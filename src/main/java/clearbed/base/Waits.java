package clearbed.base;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;

/** How long a run has waited for work that was given up; any thread may add to it. */
public final class Waits {
  private final AtomicInteger times = new AtomicInteger();
  private final AtomicLong nanos = new AtomicLong();

  /**
   * Adds what was waited since a moment.
   *
   * @param start of the clock of {@link System#nanoTime()}
   */
  public void addSince(long start) {
    nanos.addAndGet(System.nanoTime() - start);
    times.incrementAndGet();
  }

  public int times() {
    return times.get();
  }

  /** On the clock, of all jobs together, in whole seconds, rounded up. */
  public long seconds() {
    return (nanos.get() + 999_999_999) / 1_000_000_000;
  }
}
