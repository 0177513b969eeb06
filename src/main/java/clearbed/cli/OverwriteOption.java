package clearbed.cli;

import picocli.CommandLine.Option;

/** Whether files of others may be replaced. */
final class OverwriteOption {
  @Option(
      names = "--overwrite",
      description =
          "Replace files that are there already, even if people worked in them (never an input).")
  boolean overwrite;
}
