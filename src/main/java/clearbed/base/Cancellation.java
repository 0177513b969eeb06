package clearbed.base;

import java.util.concurrent.CancellationException;

/**
 * Cooperative cancellation. Java stops no thread from outside: work that was given up is
 * interrupted and ends at its next check.
 */
public final class Cancellation {
  private Cancellation() {}

  /**
   * To be called for each piece of work that is begun.
   *
   * @throws CancellationException when the thread was interrupted
   */
  public static void check() {
    if (Thread.currentThread().isInterrupted()) throw new CancellationException("given up");
  }
}
