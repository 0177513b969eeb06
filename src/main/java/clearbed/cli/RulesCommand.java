package clearbed.cli;

import clearbed.check.Checker;
import clearbed.check.rules.RuleSet;
import clearbed.cli.option.RuleOptions;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.Version;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Validates rule files. */
@Command(
    name = "rules",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "Look rule files over; what is wrong with one is said with file, line and reason.")
final class RulesCommand implements Callable<Integer> {
  @Spec CommandSpec spec;

  @Parameters(arity = "1..*", paramLabel = "FILE", description = "Rule files (YAML).")
  List<Path> files;

  @Option(
      names = "--set",
      paramLabel = "NAME",
      defaultValue = "north-america",
      description = "The set that a layer is tried over (default: ${DEFAULT-VALUE}).")
  String set;

  @Override
  public Integer call() {
    new RuleOptions().vocabulary();
    int code = ExitCode.CLEAN;
    for (Path file : files) {
      try {
        Vocabulary vocabulary = Vocabulary.standard(List.of(file));
        RuleSet rules = Checker.ruleSets(vocabulary).validate(file, set);
        spec.commandLine()
            .getOut()
            .println(
                file
                    + ": valid, "
                    + rules.rules().size()
                    + " checks in force over "
                    + rules.name());
      } catch (IOException e) {
        spec.commandLine().getErr().println(Failures.oneLine(e));
        code = ExitCode.USAGE;
      }
    }
    spec.commandLine().getOut().flush();
    return code;
  }
}
