package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.cache.Cache;
import clearbed.cli.option.CacheOption;
import clearbed.cli.option.ComingRulebook;
import clearbed.cli.option.LimitOptions;
import clearbed.cli.option.NameOptions;
import clearbed.cli.option.OverwriteOption;
import clearbed.cli.option.RuleOptions;
import clearbed.cli.output.Outputs;
import clearbed.cli.output.Stopped;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.Progress;
import clearbed.cli.terminal.Terminal;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import clearbed.model.document.Document;
import clearbed.model.report.Level;
import clearbed.model.report.QuestionLog;
import clearbed.model.report.Report;
import clearbed.project.ProjectReport;
import clearbed.read.source.ReadOptions;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.report.ConsoleSummary;
import clearbed.report.annotate.AnnotatedCopies;
import clearbed.report.view.View;
import clearbed.resolve.Project;
import clearbed.track.Carry;
import clearbed.track.EarlierLog;
import clearbed.track.RefusedWorkbook;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
    description = "Read documents, check every glass tile in them, write the findings workbook.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:nothing open at or above the level of --fail-on",
      "1:something is",
      "2:command line or rule file wrong, or an output in the way; nothing was done",
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
      names = "--carry",
      paramLabel = "FILE.xlsx",
      description = "An earlier findings workbook: its states and all that people typed are kept.")
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

  @Mixin OutputOptions files;

  @Mixin OverwriteOption overwriteOption;

  @Mixin RuleOptions ruleOptions;

  @Mixin CacheOption cacheOption;

  @Mixin NameOptions nameOptions;

  @Mixin LimitOptions limits;

  @Override
  public Integer call() {
    requireSense();
    Outputs outputs = outputs();
    outputs.requireFree();
    Thread watch = limits.watch();
    try (Stopped stopped = new Stopped(err(), files.written());
        Progress progress = Progress.on(!quiet)) {
      return run(outputs, stopped, progress);
    } finally {
      watch.interrupt();
    }
  }

  private int run(Outputs outputs, Stopped stopped, Progress progress) {
    Instant started = Instant.now();
    ComingRulebook rulebook = new ComingRulebook(ruleOptions);
    EarlierLog earlier = earlier();
    Cache cache = cacheOption.open(rulebook);
    ReadOptions options = options();
    Project project = new Documents(paths, options, cache).project(rulebook, progress);
    progress.now("checking");
    Report found =
        ProjectReport.of(
            project,
            rulebook.get(),
            day(),
            started,
            nameOptions.names(),
            Version.number(),
            limits.waited());
    Carry carried = earlier == null ? null : earlier.into(found);
    Report report = carried == null ? found : carried.report();
    QuestionLog log = carried == null ? QuestionLog.first(report) : carried.log();
    progress.now("writing");
    boolean written = write(report, log, outputs, stopped);
    if (files.view != null)
      written &=
          attempt(
              outputs,
              stopped,
              files.view,
              () -> view(report, options, rulebook.get().vocabulary()));
    progress.close();
    cacheOption.close(cache, err());
    if (!quiet) summary(report, written);
    List<Report.DocumentSummary> unreadable =
        found.documents().stream().filter(d -> d.status() == Document.Status.UNREADABLE).toList();
    unreadable.forEach(
        d ->
            err()
                .println(
                    "clearbed: " + DisplayText.path(d.path()) + ": " + DisplayText.of(d.reason())));
    limits.tellWaits(err());
    if (!written || !unreadable.isEmpty()) return ExitCode.FAULT;
    return fails(report) ? ExitCode.FINDINGS : ExitCode.CLEAN;
  }

  private void requireSense() {
    if (jobs != null && jobs < 1) throw new UsageFailure("--jobs " + jobs + ": give 1 or more");
    limits.requireSense();
    if (!List.of("auto", "always", "never").contains(color))
      throw new UsageFailure("--color " + color + ": give auto, always or never");
    files.requireSense();
  }

  private Outputs outputs() {
    Outputs outputs =
        new Outputs(overwriteOption.overwrite).documents(paths).reads("--carry", carry);
    files.nameTo(outputs);
    outputs.fills("--cache", cacheOption.folder);
    ruleOptions.layers.forEach(layer -> outputs.reads("--rules", layer));
    return outputs;
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
    ReadOptions options = limits.in(ReadOptions.defaults().withOwnOutputs(cacheOption.written()));
    return jobs == null ? options : options.withJobs(jobs);
  }

  private LocalDate day() {
    return date == null ? LocalDate.now() : date;
  }

  private boolean write(Report report, QuestionLog log, Outputs outputs, Stopped stopped) {
    Sources sources = new Sources(paths);
    boolean all =
        files.write(
            report,
            log,
            document -> sources.from(files.output, document),
            (file, writing) -> attempt(outputs, stopped, file, writing));
    if (files.annotate == null) return all;
    all &= annotated(report, sources);
    stopped.written(files.annotate);
    return all;
  }

  private void view(Report report, ReadOptions given, Vocabulary vocabulary) throws IOException {
    Set<Path> own = new HashSet<>(cacheOption.written());
    // What this run has written is none of its documents, wherever it lies.
    for (Path file : files.written()) if (file != null) own.add(file.toAbsolutePath().normalize());
    ReadOptions options = given.withOwnOutputs(own);
    Map<String, String> unreadable = new HashMap<>();
    for (Report.DocumentSummary d : report.documents())
      if (d.status() == Document.Status.UNREADABLE) unreadable.put(d.path(), d.reason());
    View.write(
        report,
        new ViewedDocuments(paths, options, vocabulary, unreadable),
        vocabulary::label,
        files.view);
  }

  private boolean annotated(Report report, Sources sources) {
    AnnotatedCopies.WrittenCopies result =
        AnnotatedCopies.write(
            report, sources::of, files.annotate, overwriteOption.overwrite, limits.ofOne());
    result.failures().forEach(f -> err().println("clearbed: " + DisplayText.of(f)));
    return result.failures().isEmpty();
  }

  private boolean attempt(Outputs outputs, Stopped stopped, Path file, Outputs.Writing writing) {
    boolean written = outputs.write(file, err(), writing);
    if (written) stopped.written(file);
    return written;
  }

  private boolean fails(Report report) {
    if (failOn == FailOn.NEVER) return false;
    Level level = Level.valueOf(failOn.name());
    return report.findings().stream().anyMatch(f -> f.isOpen() && f.level().atLeast(level));
  }

  private void summary(Report report, boolean written) {
    PrintWriter out = spec.commandLine().getOut();
    String next =
        written
            ? "Findings workbook: "
                + files.output
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
