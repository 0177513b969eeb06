package clearbed.cli;

import clearbed.check.Checker;
import clearbed.check.rules.RuleSet;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Which rules hold. */
final class RuleOptions {
  @Option(
      names = "--set",
      paramLabel = "NAME",
      defaultValue = "north-america",
      description = "Bundled rule set: north-america (default) or iso-en.")
  String set;

  @Option(
      names = "--rules",
      paramLabel = "FILE",
      description = "Rule file laid over the set; repeatable, the later over the earlier.")
  List<Path> layers = new ArrayList<>();

  /** The shipped words and those that the layers teach. */
  Vocabulary vocabulary() {
    try {
      return Vocabulary.standard(layers);
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }

  RuleSet load(Vocabulary vocabulary) {
    try {
      return Checker.ruleSets(vocabulary).load(set, layers);
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }
}
