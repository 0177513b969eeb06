package clearbed.read.source;

/** A document cannot be read; the message says why and what to do. */
public final class Unreadable extends Exception {
  private static final long serialVersionUID = 1L;

  public Unreadable(String reason) {
    super(reason);
  }
}
