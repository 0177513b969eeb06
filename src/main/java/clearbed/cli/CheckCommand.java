package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.cache.Cache;
import clearbed.cache.ResultCache;
import clearbed.model.Document;
import clearbed.model.Finding;
import clearbed.model.Level;
import clearbed.model.QuestionLog;
import clearbed.model.Report;
import clearbed.read.ReadOptions;
import clearbed.report.ConsoleSummary;
import clearbed.report.FindingsJson;
import clearbed.report.FindingsSarif;
import clearbed.report.annotate.AnnotatedCopies;
import clearbed.track.Carry;
import clearbed.track.EarlierLog;
import clearbed.track.RefusedWorkbook;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Reads, checks and reports: the main job. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = "Read documents, check every glass tile entry, write the findings workbook.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:nothing open at or above the level of --fail-on",
      "1:something is",
      "2:command line or rule file wrong; nothing was done",
      "3:a document could not be read or an output not be written; all else was done"
    })
final class CheckCommand implements Callable<Integer> {
  enum FailOn {
    ERROR,
    WARNING,
    NOTE,
    NEVER
  }

  @Spec CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "PATH", description = "Documents, folders or zip files.")
  List<Path> paths;

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
      names = "--annotate",
      paramLabel = "DIR",
      description = "Copies of the documents with the findings written at their places.")
  Path annotate;

  @Option(
      names = "--carry",
      paramLabel = "FILE.xlsx",
      description = "An earlier findings workbook: its answers, states and columns are kept.")
  Path carry;

  @Option(
      names = "--fail-on",
      paramLabel = "LEVEL",
      defaultValue = "error",
      description =
          "Exit 1 when a finding of this level or worse is open: error (default), warning, note, never.")
  FailOn failOn;

  @Option(
      names = "--jobs",
      paramLabel = "N",
      description = "Documents read at a time (default: one for each processor).")
  Integer jobs;

  @Option(
      names = "--document-timeout",
      paramLabel = "SECONDS",
      defaultValue = "60",
      description =
          "A document that takes longer is given up as unreadable (default: ${DEFAULT-VALUE}).")
  int timeout;

  @Option(
      names = "--date",
      paramLabel = "YYYY-MM-DD",
      description = "Date of this issue, shown in the workbook (default: today).")
  LocalDate date;

  @Option(names = "--quiet", description = "No summary and no progress.")
  boolean quiet;

  @Option(
      names = "--color",
      paramLabel = "WHEN",
      defaultValue = "auto",
      description = "auto (default), always or never.")
  String color;

  @Mixin RuleOptions ruleOptions;

  @Mixin CacheOption cacheOption;

  @Override
  public Integer call() {
    requireSense();
    Instant started = Instant.now();
    Rulebook.Coming rulebook = new Rulebook.Coming(ruleOptions);
    EarlierLog earlier = earlier();
    Cache cache = cacheOption.open();
    List<Reading> read = new ArrayList<>();
    Terminal.progress(
        !quiet, progress -> read.add(Reading.of(paths, options(), rulebook, cache, progress)));
    ResultCache results = cache == null ? null : cache.results();
    ResultCache.Outcome outcome =
        Result.of(read.get(0), rulebook.get(), results, day(), started, whole());
    Report found = outcome.report();
    List<Document> documents = read.get(0).documents();
    Carry carried = earlier == null ? null : earlier.into(found);
    Report report = carried == null ? found : carried.report();
    QuestionLog log = carried == null ? QuestionLog.first(report) : carried.log();
    boolean written = write(report, log, new WorkbookOutput(results, outcome, ruleOptions.layers));
    cacheOption.close(cache, err());
    if (!quiet) summary(report, written);
    List<Document> unreadable =
        documents.stream().filter(d -> d.status() == Document.Status.UNREADABLE).toList();
    unreadable.forEach(
        d ->
            err()
                .println(
                    "clearbed: " + DisplayText.path(d.path()) + ": " + DisplayText.of(d.reason())));
    err().flush();
    if (!written || !unreadable.isEmpty()) return ExitCode.FAULT;
    return fails(report) ? ExitCode.FINDINGS : ExitCode.CLEAN;
  }

  private void requireSense() {
    if (jobs != null && jobs < 1) throw new UsageFailure("--jobs " + jobs + ": give 1 or more");
    if (timeout < 1)
      throw new UsageFailure("--document-timeout " + timeout + ": give 1 second or more");
    if (!List.of("auto", "always", "never").contains(color))
      throw new UsageFailure("--color " + color + ": give auto, always or never");
    if (!output.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx"))
      throw new UsageFailure(
          "--output " + output + ": the findings workbook is an .xlsx file; name it so");
    for (Path input : paths) {
      if (input.toAbsolutePath().normalize().equals(output.toAbsolutePath().normalize()))
        throw new UsageFailure(
            "--output " + output + ": is one of the documents to check; name another file");
    }
  }

  private EarlierLog earlier() {
    if (carry == null) return null;
    try {
      return EarlierLog.read(carry);
    } catch (RefusedWorkbook e) {
      throw new UsageFailure("--carry " + e.getMessage());
    }
  }

  private ReadOptions options() {
    Set<Path> own = new HashSet<>();
    own.add(output.toAbsolutePath().normalize());
    for (Path file : new Path[] {json, sarif, carry, annotate, cacheOption.folder}) {
      if (file != null) own.add(file.toAbsolutePath().normalize());
    }
    ReadOptions options =
        ReadOptions.defaults().withOwnOutputs(own).withDocumentTimeout(Duration.ofSeconds(timeout));
    return jobs == null ? options : options.withJobs(jobs);
  }

  private LocalDate day() {
    return date == null ? LocalDate.now() : date;
  }

  /** True when an output tells all that is stated of every entry. */
  private boolean whole() {
    return json != null || annotate != null;
  }

  private boolean write(Report report, QuestionLog log, WorkbookOutput workbook) {
    Sources sources = new Sources(paths);
    boolean all = attempt(output, () -> workbook.write(report, log, sources, output));
    if (json != null) all &= attempt(json, () -> FindingsJson.write(report, json));
    if (sarif != null) all &= attempt(sarif, () -> FindingsSarif.write(report, sarif));
    return annotate == null ? all : all & annotated(report, sources);
  }

  private boolean annotated(Report report, Sources sources) {
    AnnotatedCopies.Result result = AnnotatedCopies.write(report, sources::of, annotate);
    result.failures().forEach(f -> err().println("clearbed: " + DisplayText.of(f)));
    return result.failures().isEmpty();
  }

  private interface Writing {
    void run() throws IOException;
  }

  private boolean attempt(Path file, Writing writing) {
    try {
      writing.run();
      return true;
    } catch (IOException e) {
      err().println("clearbed: " + file + ": not written: " + Failures.oneLine(e));
      return false;
    }
  }

  private boolean fails(Report report) {
    if (failOn == FailOn.NEVER) return false;
    Level level = Level.valueOf(failOn.name());
    return report.findings().stream().anyMatch(f -> open(f) && f.level().atLeast(level));
  }

  private static boolean open(Finding f) {
    return f.suppressed().isEmpty() && f.state().isOpen();
  }

  private void summary(Report report, boolean written) {
    PrintWriter out = spec.commandLine().getOut();
    String next =
        written
            ? "Findings workbook: "
                + output
                + "; send its Questions sheet, and give the file to --carry with the next issue."
            : "";
    out.print(
        ConsoleSummary.text(
            report, Terminal.width(), Terminal.height(), Terminal.colour(color), next));
    out.flush();
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }
}
