package clearbed.cli.option;

import picocli.CommandLine.Option;

/** Whether files of others may be replaced. */
public final class OverwriteOption {
  @Option(
      names = "--overwrite",
      description =
          "Replace files that are there already, even if people worked in them (never an input).")
  public boolean overwrite;
}
