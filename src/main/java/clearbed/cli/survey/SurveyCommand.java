package clearbed.cli.survey;

import clearbed.base.DisplayText;
import clearbed.cache.ResultCache;
import clearbed.cli.option.CacheOption;
import clearbed.cli.option.LimitOptions;
import clearbed.cli.option.OverwriteOption;
import clearbed.cli.option.RuleOptions;
import clearbed.cli.output.Outputs;
import clearbed.cli.output.RealPath;
import clearbed.cli.output.Stopped;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.Progress;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import clearbed.read.source.ReadOptions;
import clearbed.report.survey.SurveyTables;
import clearbed.report.survey.SurveyWorkbook;
import clearbed.report.wording.Phrasing;
import clearbed.survey.Groups;
import clearbed.survey.LocalArchive;
import clearbed.survey.Overview;
import clearbed.survey.ProjectFinder;
import clearbed.survey.SurveyRun;
import clearbed.survey.Surveyed;
import clearbed.survey.Surveyor;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
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

/** Checks many projects, each by itself, and adds up what fails again and again. */
@Command(
    name = "survey",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "Check many projects, each folder or zip file by itself; write what fails again and again,"
            + " and which are at risk.",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:every project was checked, whatever was found",
      "2:command line or rule file wrong, or an output in the way; nothing was done",
      "3:a project could not be checked, a document not be read or an output not be written; all else was done"
    })
public final class SurveyCommand implements Callable<Integer> {
  /** What a project of usual size takes while it is checked. */
  private static final long BYTES_PER_JOB = 256L << 20;

  @Spec CommandSpec spec;

  @Parameters(paramLabel = "ARCHIVE", description = "The folder that the projects lie below.")
  Path archive;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE.xlsx",
      defaultValue = "survey.xlsx",
      description = "Survey workbook (default: ${DEFAULT-VALUE} here).")
  Path output;

  @Option(
      names = "--csv",
      paramLabel = "DIR",
      description = "Projects, findings, entries and readings as tables for other programs.")
  Path csv;

  @Option(
      names = "--depth",
      paramLabel = "N",
      description =
          "Projects are the folders and zip files N folders below ARCHIVE (default: where documents stand).")
  Integer depth;

  @Option(
      names = "--levels",
      paramLabel = "NAMES",
      split = ",",
      description =
          "What the folders above a project are, the outermost first: --levels office,year.")
  List<String> levels = new ArrayList<>();

  @Option(
      names = "--jobs",
      paramLabel = "N",
      description =
          "Projects checked at a time (default: one for each processor, and no more than the memory takes).")
  Integer jobs;

  @Option(names = "--quiet", description = "No summary and no progress.")
  boolean quiet;

  @Mixin OverwriteOption overwriteOption;

  @Mixin RuleOptions ruleOptions;

  @Mixin CacheOption cacheOption;

  @Mixin LimitOptions limits;

  @Override
  public Integer call() throws IOException {
    requireSense();
    Outputs outputs = outputs();
    outputs.requireFree();
    Set<Path> own = own();
    Surveyor surveyor = surveyor(own);
    LocalArchive places = new LocalArchive(archive, own);
    ProjectFinder.FoundProjects found = ProjectFinder.find(places, depth == null ? 0 : depth);
    requireProject(found);
    try (Stopped stopped = new Stopped(err(), output, csv);
        ResultCache<Surveyed> cache = cache();
        Progress progress = Progress.on(!quiet, "Checking", "projects")) {
      SurveyRun run =
          new SurveyRun(surveyor, places, cache, surveyor.rules(), own, limits.ofProject());
      progress.expect(found.projects().size());
      try (SurveyRun.Done done = run.run(found.projects(), jobs(), progress::read)) {
        boolean whole = finish(found, done, outputs, stopped, progress);
        if (cache != null && cache.failed())
          err().println("clearbed: --cache " + cacheOption.folder + ": could not be written");
        err().flush();
        return whole ? ExitCode.CLEAN : ExitCode.FAULT;
      }
    }
  }

  /** Adds up and writes; true when nothing is missing. */
  private boolean finish(
      ProjectFinder.FoundProjects found,
      SurveyRun.Done done,
      Outputs outputs,
      Stopped stopped,
      Progress progress)
      throws IOException {
    progress.now("writing");
    int asked = depth == null ? 0 : depth;
    Groups groups = new Groups(levels);
    Overview overview = Overview.of(done.projects(), groups);
    String told = SurveyText.found(found, asked);
    boolean written = write(done.projects(), overview, groups, told, outputs, stopped);
    progress.close();
    if (!quiet) summary(overview, told, done, written);
    SurveyText.doubts(found, asked).forEach(line -> err().println("clearbed: " + line));
    List<String> missing = SurveyText.missing(overview);
    missing.forEach(line -> err().println("clearbed: " + line));
    return missing.isEmpty() && written;
  }

  private void requireSense() {
    if (jobs != null && jobs < 1) throw new UsageFailure("--jobs " + jobs + ": give 1 or more");
    if (depth != null && depth < 1)
      throw new UsageFailure("--depth " + depth + ": give 1 or more; the archive itself is 0");
    limits.requireSense();
    if (levels.stream().anyMatch(String::isBlank))
      throw new UsageFailure("--levels: a name is empty; give names such as office,year");
    if (!output.toString().toLowerCase(Locale.ROOT).endsWith(".xlsx"))
      throw new UsageFailure(
          "--output " + output + ": the survey workbook is an .xlsx file; name it so");
    if (archive.toString().isBlank() || !Files.exists(archive))
      throw new UsageFailure(
          DisplayText.path(archive.toString())
              + ": no such folder; give the folder that the projects lie below");
    if (!Files.isDirectory(archive))
      throw new UsageFailure(
          DisplayText.path(archive.toString())
              + ": is a file; give the folder that the projects lie below");
    if (csv != null && RealPath.of(csv).startsWith(RealPath.of(archive)))
      throw new UsageFailure(
          "--csv "
              + DisplayText.path(csv.toString())
              + ": lies within the archive; name a folder outside it");
  }

  private Outputs outputs() {
    Outputs outputs =
        new Outputs(overwriteOption.overwrite)
            .documents(List.of(archive))
            .writes("--output", output)
            .fills("--csv", csv)
            .fills("--cache", cacheOption.folder);
    if (csv != null) SurveyTables.files(csv).forEach(file -> outputs.writes("--csv", file));
    ruleOptions.layers.forEach(layer -> outputs.reads("--rules", layer));
    return outputs;
  }

  /** What this run writes is none of the documents. */
  private Set<Path> own() {
    Set<Path> own = new HashSet<>(cacheOption.written());
    own.add(output.toAbsolutePath().normalize());
    return own;
  }

  private Surveyor surveyor(Set<Path> own) {
    try {
      ReadOptions options = ReadOptions.defaults().withOwnOutputs(own);
      return new Surveyor(ruleOptions.choice(), () -> limits.in(options), Version.number());
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }

  private ResultCache<Surveyed> cache() {
    if (cacheOption.folder == null) return null;
    try {
      return SurveyRun.cache(cacheOption.folder);
    } catch (IOException e) {
      throw new UsageFailure("--cache " + cacheOption.folder + ": " + Failures.oneLine(e));
    }
  }

  private void requireProject(ProjectFinder.FoundProjects found) {
    if (!found.projects().isEmpty()) return;
    throw new UsageFailure(
        "no project in "
            + DisplayText.path(archive.toString())
            + (depth == null
                ? ": no folder or zip file with documents; give the folder that the projects lie below"
                : ": no folder or zip file at that depth; give another --depth"));
  }

  private int jobs() {
    if (jobs != null) return jobs;
    long most = Math.max(1, Runtime.getRuntime().maxMemory() / BYTES_PER_JOB);
    return (int) Math.min(most, Runtime.getRuntime().availableProcessors());
  }

  private boolean write(
      Surveys surveys,
      Overview overview,
      Groups groups,
      String found,
      Outputs outputs,
      Stopped stopped) {
    ArchiveLinks links = new ArchiveLinks(archive, output);
    Path name = archive.toAbsolutePath().normalize().getFileName();
    SurveyWorkbook.About about =
        new SurveyWorkbook.About(
            name == null ? archive.toString() : name.toString(), found, Version.number());
    boolean all =
        outputs.write(
            output,
            err(),
            () -> SurveyWorkbook.write(surveys, overview, groups, about, links::to, output));
    if (all) stopped.written(output);
    if (csv == null) return all;
    boolean free = true;
    for (Path file : SurveyTables.files(csv)) free &= outputs.write(file, err(), () -> {});
    if (!free
        || !outputs.write(csv, err(), () -> SurveyTables.write(surveys, groups, overview, csv)))
      return false;
    stopped.written(csv);
    return all;
  }

  private void summary(Overview overview, String found, SurveyRun.Done done, boolean written) {
    PrintWriter out = spec.commandLine().getOut();
    out.print(SurveyText.summary(overview, found));
    if (done.known() > 0)
      out.println(
          "\n" + Phrasing.count(done.known(), "project") + " as in an earlier run, unchanged.");
    if (written) {
      out.println("\nSurvey workbook: " + DisplayText.path(output.toString()));
      if (csv != null) out.println("Tables: " + DisplayText.path(csv.toString()));
    }
    out.flush();
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }
}
