package clearbed.read;

/** Bytes that should hold a document do not; the message says in what way. */
public final class DamagedDocument extends Exception {
  private static final long serialVersionUID = 1L;

  public DamagedDocument(String reason) {
    super(reason);
  }
}
