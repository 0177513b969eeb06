package clearbed.cli.option;

import clearbed.check.rules.RuleSet;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.UsageFailure;
import clearbed.project.RuleChoice;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.taught.Lessons;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Which rules hold. */
public final class RuleOptions {
  @Option(
      names = "--set",
      paramLabel = "NAME",
      description =
          "Set of rules to check by: north-america or iso-en (default: iso-en where the documents plainly"
              + " cite ISO and EN standards, else north-america).")
  String set;

  @Option(
      names = "--rules",
      paramLabel = "FILE",
      description = "Rule file laid over the set; repeatable, the later over the earlier.")
  public List<Path> layers = new ArrayList<>();

  public RuleChoice choice() {
    return new RuleChoice(set, layers);
  }

  /** The shipped words and those that the layers teach. */
  public Vocabulary vocabulary() {
    return vocabulary(Lessons.NOTHING);
  }

  /** The same, with what a set teaches itself. */
  Vocabulary vocabulary(Lessons lessons) {
    try {
      return choice().vocabulary(lessons);
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }

  /** The set that was named, or the one that holds where nothing says which. */
  public RuleSet load(Vocabulary vocabulary) {
    return load(vocabulary, choice().first());
  }

  RuleSet load(Vocabulary vocabulary, String name) {
    try {
      return choice().load(vocabulary, name);
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }
}
