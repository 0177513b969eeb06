package clearbed.read;

/** A document cannot be read; the message says why and what to do. */
final class Unreadable extends Exception {
  private static final long serialVersionUID = 1L;

  Unreadable(String reason) {
    super(reason);
  }
}
