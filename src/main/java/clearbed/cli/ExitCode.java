package clearbed.cli;

/** What the process ends with. */
final class ExitCode {
  /** Nothing open at or above the level asked for. */
  static final int CLEAN = 0;

  /** Something is. */
  static final int FINDINGS = 1;

  /** The command line or a rule file is wrong; nothing was done. */
  static final int USAGE = 2;

  /** A document could not be read or an output not be written; all else was done. */
  static final int FAULT = 3;

  private ExitCode() {}
}
