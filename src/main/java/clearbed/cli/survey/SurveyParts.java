package clearbed.cli.survey;

import clearbed.base.codec.DamagedRecord;
import clearbed.base.io.RunFolder;
import clearbed.cache.ResultCache;
import clearbed.cli.option.LimitOptions;
import clearbed.cli.option.OptionFaults;
import clearbed.cli.option.RuleOptions;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import clearbed.read.source.ReadOptions;
import clearbed.report.survey.SurveyTables;
import clearbed.report.survey.SurveyWorkbook;
import clearbed.survey.Groups;
import clearbed.survey.Overview;
import clearbed.survey.ProjectFinder;
import clearbed.survey.Spool;
import clearbed.survey.Surveyed;
import clearbed.survey.SurveyedBytes;
import clearbed.survey.Surveyor;
import clearbed.survey.Surveys;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import java.util.logging.LogManager;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/**
 * A survey in pieces, for a program that spreads them over machines; it may load these classes
 * beside its own, so that all that goes in and out is of Java's own types. Safe for several
 * threads.
 */
public final class SurveyParts {
  private static final ClassLoader OURS = SurveyParts.class.getClassLoader();

  private final Options options = new Options();
  private final Surveyor surveyor;
  private ProjectFinder.FoundProjects found;

  /** What {@code survey} takes, but for the places. */
  @Command(name = "survey")
  static final class Options {
    @Option(names = "--depth")
    int depth;

    @Option(names = "--levels", split = ",")
    List<String> levels = new ArrayList<>();

    @Mixin RuleOptions rules;
    @Mixin LimitOptions limits;
  }

  /**
   * Also sends temporary files of this process into a private folder.
   *
   * @param words options as on the command line
   * @throws IllegalArgumentException with one line when one is wrong
   * @throws IOException naming file, line and reason when a rule file is wrong
   */
  public SurveyParts(List<String> words) throws IOException {
    LogManager.getLogManager().reset();
    RunFolder.begin();
    try {
      new CommandLine(options).parseArgs(words.toArray(String[]::new));
      options.limits.requireSense();
    } catch (CommandLine.ParameterException wrong) {
      throw new IllegalArgumentException(OptionFaults.words(wrong), wrong);
    } catch (UsageFailure wrong) {
      throw new IllegalArgumentException(wrong.getMessage(), wrong);
    }
    surveyor =
        under(
            OURS,
            () ->
                new Surveyor(
                    options.rules.choice(),
                    () -> options.limits.in(ReadOptions.defaults()),
                    Version.number()));
  }

  /** What decides the result of a project beside its files: a digest, SHA-256 in hexadecimal. */
  public String rules() throws IOException {
    List<String> words = new ArrayList<>(surveyor.rules());
    words.add(ResultCache.program());
    return ResultCache.key(words, List.of());
  }

  /**
   * Paths of the projects below the archive, in order.
   *
   * @param names of what lies in a folder, given by its path, those of folders with {@code /} at
   *     their end
   */
  public List<String> projects(Function<String, List<String>> names) throws IOException {
    found = ProjectFinder.find(names::apply, options.depth);
    return found.projects().stream().map(ProjectFinder.FoundProject::name).toList();
  }

  /** Checks a project; what goes wrong with it is in the result. */
  public byte[] check(String name, Path place) throws IOException {
    Duration limit = options.limits.ofProject();
    return under(OURS, () -> SurveyedBytes.of(surveyor.checkWithin(limit, name, place)));
  }

  /** The result of a project that could not be checked, and why. */
  public byte[] notChecked(String name, String why) {
    return SurveyedBytes.of(Surveyed.notChecked(name, why));
  }

  /** True for a result that may be kept for another run. */
  public boolean isLasting(byte[] result) throws IOException {
    return read(result).isLasting();
  }

  /**
   * Writes workbook and tables once {@link #projects} has said which there are.
   *
   * @param results by number, in the order of the projects; each is asked for once
   * @param archive its name
   * @param folder for {@code survey.xlsx} and the folder {@code tables}
   * @return the summary for people
   */
  public String write(IntFunction<byte[]> results, String archive, Path folder) throws IOException {
    try (Spool spool = new Spool(found.projects().size())) {
      for (int i = 0; i < spool.size(); i++) spool.put(i, read(results.apply(i)));
      return under(OURS, () -> write(spool, archive, folder));
    }
  }

  private static Surveyed read(byte[] result) throws IOException {
    try {
      return SurveyedBytes.read(result);
    } catch (DamagedRecord e) {
      throw new IOException("the result of a project " + e.getMessage(), e);
    }
  }

  private String write(Surveys surveys, String archive, Path folder) throws IOException {
    Groups groups = new Groups(options.levels);
    Overview overview = Overview.of(surveys, groups);
    String told = SurveyText.found(found, options.depth);
    SurveyWorkbook.About about = new SurveyWorkbook.About(archive, told, Version.number());
    // From another file system no link leads to the documents.
    SurveyWorkbook.write(
        surveys, overview, groups, about, below -> null, folder.resolve("survey.xlsx"));
    SurveyTables.write(surveys, groups, overview, folder.resolve("tables"));
    StringBuilder out = new StringBuilder(SurveyText.summary(overview, told));
    SurveyText.doubts(found, options.depth).forEach(line -> out.append(line).append('\n'));
    return out.toString();
  }

  private interface Work<T> {
    T done() throws IOException;
  }

  /** Libraries look for their parts where the thread says; the caller's are to be left alone. */
  private static <T> T under(ClassLoader loader, Work<T> work) throws IOException {
    Thread thread = Thread.currentThread();
    ClassLoader before = thread.getContextClassLoader();
    thread.setContextClassLoader(loader);
    try {
      return work.done();
    } finally {
      thread.setContextClassLoader(before);
    }
  }
}
