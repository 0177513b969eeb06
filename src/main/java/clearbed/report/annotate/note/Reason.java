package clearbed.report.annotate.note;

/** Says in one line why a file could not be made. */
public final class Reason {
  private Reason() {}

  public static String of(Throwable wrong) {
    if (wrong instanceof OutOfMemoryError || wrong instanceof StackOverflowError) {
      return "too large for the memory; give the program more";
    }
    Throwable cause = wrong.getCause();
    if (cause instanceof MarkedCopy.CannotMark) return cause.getMessage();
    // What a library throws over a file it does not understand: its words help nobody.
    if (cause instanceof RuntimeException) return unknown(cause);
    if (wrong instanceof RuntimeException) return unknown(wrong);
    String message = wrong.getMessage();
    return message == null
        ? wrong.getClass().getSimpleName()
        : message.lines().findFirst().orElse("");
  }

  private static String unknown(Throwable wrong) {
    return "its content could not be marked ("
        + wrong.getClass().getSimpleName()
        + "); open and save it again";
  }
}
