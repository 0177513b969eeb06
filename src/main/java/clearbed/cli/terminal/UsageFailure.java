package clearbed.cli.terminal;

/** The command line or a rule file is wrong. The message says what, where and what to do. */
public final class UsageFailure extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public UsageFailure(String message) {
    super(message);
  }
}
