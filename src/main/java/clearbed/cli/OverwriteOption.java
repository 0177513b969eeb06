package clearbed.cli;

import picocli.CommandLine.Option;

/** Whether files of others may be replaced. */
final class OverwriteOption {
  @Option(
      names = "--overwrite",
      description = "Replace existing files that are no untouched earlier output (never an input).")
  boolean overwrite;
}
