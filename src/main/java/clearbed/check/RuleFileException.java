package clearbed.check;

/** A rule file that cannot be used. The message names file, line and reason, one line a fault. */
public final class RuleFileException extends Exception {
  private static final long serialVersionUID = 1L;

  public RuleFileException(String message) {
    super(message);
  }
}
