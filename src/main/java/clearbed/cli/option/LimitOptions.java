package clearbed.cli.option;

import clearbed.base.Deadline;
import clearbed.base.Waits;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.UsageFailure;
import clearbed.model.report.Report;
import clearbed.read.source.ReadOptions;
import clearbed.read.source.ReadingLimits;
import clearbed.report.wording.Phrasing;
import java.io.PrintWriter;
import java.time.Duration;
import picocli.CommandLine.Option;

/** How long one document and the run as a whole may take. */
public final class LimitOptions {
  @Option(
      names = "--document-timeout",
      paramLabel = "SECONDS",
      defaultValue = "60",
      description =
          "A document that takes longer is given up as unreadable (default: ${DEFAULT-VALUE}).")
  int document;

  @Option(
      names = "--timeout",
      paramLabel = "SECONDS",
      defaultValue = "3600",
      description =
          "After so long no further document is read; the rest may take as long again (default: ${DEFAULT-VALUE}).")
  int run;

  private final Waits waits = new Waits();

  public void requireSense() {
    require("--document-timeout", document);
    require("--timeout", run);
  }

  private static void require(String option, int seconds) {
    if (seconds < 1) throw new UsageFailure(option + " " + seconds + ": give 1 second or more");
  }

  public ReadOptions in(ReadOptions options) {
    return options
        .withDocumentTimeout(Duration.ofSeconds(document))
        .withDeadline(Deadline.in(Duration.ofSeconds(run)))
        .withWaits(waits);
  }

  /** Of all the work on one project of many. */
  public Duration ofProject() {
    return Duration.ofSeconds(run).multipliedBy(2);
  }

  /** Of the work on one document after it was read. */
  public ReadingLimits ofOne() {
    return ReadingLimits.of(Duration.ofSeconds(document), waits);
  }

  /** What the run has waited so far for documents that met their limit. */
  public Report.Waited waited() {
    return new Report.Waited(waits.times(), waits.seconds());
  }

  /** The same in a line, where any met it. */
  public void tellWaits(PrintWriter err) {
    if (waits.times() > 0)
      err.println(
          "clearbed: waited "
              + waits.seconds()
              + " s in all for documents that met their limit of "
              + document
              + " s (--document-timeout), "
              + Phrasing.count(waits.times(), "time"));
    err.flush();
  }

  /**
   * Ends the program when what comes after the reading takes as long again as the reading may. What
   * was and was not written is said as when somebody stops it. To be interrupted at the end.
   */
  public Thread watch() {
    Thread watch = new Thread(this::end, "time limit");
    watch.setDaemon(true);
    watch.start();
    return watch;
  }

  private void end() {
    try {
      Thread.sleep(Duration.ofSeconds(run).multipliedBy(2).toMillis());
    } catch (InterruptedException stopped) {
      return;
    }
    System.err.println(
        "clearbed: the run took twice its "
            + run
            + " s; give it more by --timeout, or fewer documents");
    ExitCode.end(ExitCode.FAULT);
  }
}
