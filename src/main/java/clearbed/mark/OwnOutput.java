package clearbed.mark;

/**
 * A file that this program wrote.
 *
 * @param untouched true when it is as it was written; false when it was changed or saved since
 */
public record OwnOutput(OutputKind kind, boolean untouched) {
  /** What is said of an output that lies among the documents. */
  public static final String NOT_READ = "own output, not read";

  /** The same of a workbook in which people are at work. */
  public static final String IN_WORK = NOT_READ + ": findings workbook";
}
