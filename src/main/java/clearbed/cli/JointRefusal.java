package clearbed.cli;

/** Input that makes no sense; the message is one line that says what, where and what to do. */
final class JointRefusal extends Exception {
  private static final long serialVersionUID = 1L;

  JointRefusal(String option, String problem) {
    super(option + ": " + problem);
  }

  JointRefusal(String message) {
    super(message);
  }
}
