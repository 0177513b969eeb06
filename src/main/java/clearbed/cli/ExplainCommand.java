package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.base.config.Spelling;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.cli.option.RuleOptions;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Explains the checks. */
@Command(
    name = "explain",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description =
        "List the checks, or explain one: what, when, why, source, how to answer it, suggested clause.")
final class ExplainCommand implements Callable<Integer> {
  @Spec CommandSpec spec;

  @Parameters(
      arity = "0..1",
      paramLabel = "CHECK",
      description = "Name of a check, such as mortar-class.")
  String check;

  @Mixin RuleOptions ruleOptions;

  @Override
  public Integer call() {
    Vocabulary vocabulary = ruleOptions.vocabulary();
    RuleSet rules = ruleOptions.load(vocabulary);
    PrintWriter out = spec.commandLine().getOut();
    if (check == null) {
      list(out, rules);
    } else {
      Rule rule = rules.rule(check).orElseThrow(() -> new UsageFailure(unknown(rules)));
      page(out, vocabulary, rule);
    }
    out.flush();
    return ExitCode.CLEAN;
  }

  private String unknown(RuleSet rules) {
    String near = Spelling.nearest(check, rules.rules().stream().map(Rule::id).toList());
    return "no check named "
        + DisplayText.of(check)
        + (near.isEmpty() ? "" : "; did you mean '" + near + "'?")
        + " (clearbed explain lists them)";
  }

  private static void list(PrintWriter out, RuleSet rules) {
    out.println(rules.title());
    int width = rules.rules().stream().mapToInt(r -> r.id().length()).max().orElse(0);
    for (Rule r : rules.rules()) {
      out.println(
          "  "
              + r.id()
              + " ".repeat(width - r.id().length())
              + "  "
              + (r.off() ? "off    " : String.format("%-7s", r.level().word()))
              + "  "
              + r.title());
    }
  }

  private static void page(PrintWriter out, Vocabulary vocabulary, Rule r) {
    Rule.RuleWording w = r.wording();
    out.println(r.id() + ": " + r.title());
    line(
        out,
        "level",
        r.level().word()
            + (r.missingLevel() == r.level()
                ? ""
                : ", " + r.missingLevel().word() + " when missing")
            + (r.emptyCellLevel() == r.missingLevel()
                ? ""
                : ", " + r.emptyCellLevel().word() + " for an empty cell")
            + (r.unlikeOthersLevel() == r.missingLevel()
                ? ""
                : ", "
                    + r.unlikeOthersLevel().word()
                    + " when missing where most other glass tile has it")
            + (r.off() ? " (switched off)" : ""));
    if (!r.attribute().isEmpty())
      line(out, "looks at", vocabulary.label(r.attribute()) + " (" + r.attribute() + ")");
    line(out, "applies", applies(vocabulary, r));
    line(out, "wanted", w.expected().isEmpty() ? r.expectation().words() : w.expected());
    line(out, "why", w.why());
    line(out, "source", r.sourceWithMark());
    line(out, "question", w.question());
    line(out, "answer", w.answer());
    line(out, "clause", w.clause());
  }

  private static void line(PrintWriter out, String name, String text) {
    if (!text.isEmpty()) out.println("  " + String.format("%-9s", name) + " " + text);
  }

  private static String applies(Vocabulary vocabulary, Rule r) {
    String when =
        r.when().isEmpty()
            ? (r.ofTheSet() ? "to the whole set" : "to every glass tile")
            : conditions(vocabulary, r.when());
    if (r.whereOthersHaveIt()) when += ", if another glass tile has it stated";
    return r.unless().isEmpty() ? when : when + "; not where " + conditions(vocabulary, r.unless());
  }

  private static String conditions(Vocabulary vocabulary, List<Map<String, List<String>>> ways) {
    return ways.stream()
        .map(
            way ->
                way.entrySet().stream()
                    .map(
                        c ->
                            vocabulary.label(c.getKey()).toLowerCase(Locale.ROOT)
                                + " is "
                                + String.join(" or ", c.getValue()))
                    .collect(Collectors.joining(" and ")))
        .collect(Collectors.joining("; or "));
  }
}
