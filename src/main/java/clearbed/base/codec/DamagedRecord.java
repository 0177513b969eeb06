package clearbed.base.codec;

/** Bytes that should hold records do not; the message says in what way. */
public final class DamagedRecord extends Exception {
  private static final long serialVersionUID = 1L;

  public DamagedRecord(String reason) {
    super(reason);
  }
}
