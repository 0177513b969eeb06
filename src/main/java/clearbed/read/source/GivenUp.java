package clearbed.read.source;

/**
 * Ends the thread of a document that was given up. Java stops no thread from outside; what a parser
 * does between two pieces that it hands over is out of reach.
 */
public final class GivenUp extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private GivenUp() {
    super("given up", null, false, false);
  }

  /** To be called for each piece that is taken over from a parser. */
  public static void check() {
    if (Thread.currentThread().isInterrupted()) throw new GivenUp();
  }
}
