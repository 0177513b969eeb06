package clearbed.cli;

import clearbed.cli.output.Outputs;
import clearbed.cli.terminal.UsageFailure;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.report.FindingsJson;
import clearbed.report.FindingsSarif;
import clearbed.report.workbook.FindingsWorkbook;
import java.nio.file.Path;
import java.util.Locale;
import java.util.function.UnaryOperator;
import picocli.CommandLine.Option;

/** What a check writes, each by its option. */
final class OutputOptions {
  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE.xlsx",
      defaultValue = "clearbed-findings.xlsx",
      description = "Findings workbook (default: ${DEFAULT-VALUE} here).")
  Path output;

  @Option(names = "--json", paramLabel = "FILE", description = "The same findings for programs.")
  Path json;

  @Option(names = "--sarif", paramLabel = "FILE", description = "The same findings as SARIF 2.1.0.")
  Path sarif;

  @Option(
      names = "--view",
      paramLabel = "FILE.html",
      description =
          "One page: the documents, what was read of them, the findings beside the words.")
  Path view;

  @Option(
      names = "--annotate",
      paramLabel = "DIR",
      description = "Copies of the documents with the findings written at their places.")
  Path annotate;

  /** Writes one file, if that is still free; true when it was written. */
  interface Attempt {
    boolean of(Path file, Outputs.Writing writing);
  }

  void requireSense() {
    if (!output.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx"))
      throw new UsageFailure(
          "--output " + output + ": the findings workbook is an .xlsx file; name it so");
  }

  /** Names all of them to what sees to it that none is in the way. */
  void nameTo(Outputs outputs) {
    outputs
        .writes("--output", output)
        .writes("--json", json)
        .writes("--sarif", sarif)
        .writes("--view", view)
        .fillsWithCopies("--annotate", annotate);
  }

  /** All of them; null for what nobody asked for. */
  Path[] written() {
    return new Path[] {output, json, sarif, annotate, view};
  }

  /**
   * Writes those that the report alone gives.
   *
   * @param links from a document's path to its path from the workbook
   * @return true when all were written
   */
  boolean write(Report report, QuestionLog log, UnaryOperator<String> links, Attempt attempt) {
    boolean all = attempt.of(output, () -> FindingsWorkbook.write(report, log, links, output));
    if (json != null) all &= attempt.of(json, () -> FindingsJson.write(report, json));
    if (sarif != null) all &= attempt.of(sarif, () -> FindingsSarif.write(report, sarif));
    return all;
  }
}
