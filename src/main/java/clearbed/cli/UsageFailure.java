package clearbed.cli;

/** The command line or a rule file is wrong. The message says what, where and what to do. */
final class UsageFailure extends RuntimeException {
  private static final long serialVersionUID = 1L;

  UsageFailure(String message) {
    super(message);
  }
}
