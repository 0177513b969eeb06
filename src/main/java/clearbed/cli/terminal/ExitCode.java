package clearbed.cli.terminal;

/** What the process ends with. */
public final class ExitCode {
  /** Nothing open at or above the level asked for. */
  public static final int CLEAN = 0;

  /** Something is. */
  public static final int FINDINGS = 1;

  /** The command line or a rule file is wrong; nothing was done. */
  public static final int USAGE = 2;

  /** A document could not be read or an output not be written; all else was done. */
  public static final int FAULT = 3;

  private ExitCode() {}

  /** Ends the program from another thread, as when somebody stops it. */
  public static void end(int code) {
    System.exit(code);
  }
}
