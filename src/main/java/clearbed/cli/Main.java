package clearbed.cli;

import clearbed.base.io.RunFolder;
import clearbed.cli.joint.JointCommand;
import clearbed.cli.option.OptionFaults;
import clearbed.cli.survey.SurveyCommand;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import java.util.Arrays;
import java.util.List;
import java.util.logging.LogManager;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.HelpCommand;

/** Starts the command line. */
@Command(
    name = "clearbed",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "Check project documents for glass tile work: what is missing, inadequate, incompatible,"
            + " conflicting or left open.",
    footerHeading = "%nExamples:%n",
    footer = {
      "  clearbed check tender/                    findings, in clearbed-findings.xlsx",
      "  clearbed check tender/ -o log.xlsx --json log.json --fail-on warning",
      "  clearbed read schedule.xlsx               what was understood, and where it is",
      "  clearbed survey archive/ -o survey.xlsx   what fails in many projects",
      "  clearbed explain mortar-class             what a check asks for, and why"
    })
public final class Main {
  private static final List<Class<?>> COMMANDS =
      List.of(
          CheckCommand.class,
          ReadCommand.class,
          ExplainCommand.class,
          JointCommand.class,
          QuestionsCommand.class,
          SurveyCommand.class,
          RulesCommand.class);

  private Main() {}

  public static void main(String[] args) {
    // PDFBox and POI log through java.util.logging when nothing else takes it; the tool says itself
    // what matters.
    LogManager.getLogManager().reset();
    RunFolder temporary = RunFolder.begin();
    int code = runOrSayWhy(args);
    System.out.flush();
    temporary.close();
    // Parser threads given up after the time limit must not keep the program alive.
    Runtime.getRuntime().halt(code);
  }

  /** Exit code 1 speaks of findings; Java's own way to end on an error would give it, too. */
  private static int runOrSayWhy(String[] args) {
    try {
      return run(args);
    } catch (OutOfMemoryError | StackOverflowError e) {
      System.err.println("clearbed: " + Failures.oneLine(e));
      return ExitCode.FAULT;
    }
  }

  /** Runs the command line in this process and returns its exit code. */
  public static int run(String... args) {
    CommandLine line = line(args.length == 0 ? "" : args[0]);
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.setColorScheme(CommandLine.Help.defaultColorScheme(colour(args)));
    line.setExecutionExceptionHandler(
        (e, command, result) -> {
          command.getErr().println("clearbed: " + Failures.oneLine(e));
          return e instanceof UsageFailure ? ExitCode.USAGE : ExitCode.FAULT;
        });
    line.setParameterExceptionHandler(Main::sayWhatIsWrong);
    return line.execute(args);
  }

  /** One line, and where the help is; the help itself only when it is asked for. */
  private static int sayWhatIsWrong(CommandLine.ParameterException wrong, String[] args) {
    CommandLine command = wrong.getCommandLine();
    String help = command.getCommandSpec().qualifiedName() + " --help";
    command
        .getErr()
        .println("clearbed: " + OptionFaults.words(wrong) + " (" + help + " lists the options)");
    return ExitCode.USAGE;
  }

  /**
   * With one command where that is named, else with all: to set up all takes as long as reading a
   * small document.
   */
  static CommandLine line(String first) {
    CommandLine line = new CommandLine(new Main());
    if (first.equals("check")) return line.addSubcommand(CheckCommand.class);
    COMMANDS.forEach(line::addSubcommand);
    line.addSubcommand(HelpCommand.class);
    CommandLine completion = new CommandLine(AutoComplete.GenerateCompletion.class);
    completion.getCommandSpec().usageMessage().hidden(true);
    return line.addSubcommand(completion);
  }

  private static CommandLine.Help.Ansi colour(String[] args) {
    if (System.getenv("NO_COLOR") != null) return CommandLine.Help.Ansi.OFF;
    return Arrays.asList(args).contains("--color=never")
        ? CommandLine.Help.Ansi.OFF
        : CommandLine.Help.Ansi.AUTO;
  }
}
