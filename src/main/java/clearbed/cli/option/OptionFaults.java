package clearbed.cli.option;

import clearbed.base.DisplayText;
import clearbed.base.config.Spelling;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/** What is wrong with a command line, in plain words. */
public final class OptionFaults {
  private OptionFaults() {}

  public static String words(CommandLine.ParameterException wrong) {
    if (wrong instanceof CommandLine.UnmatchedArgumentException unmatched)
      return unknown(unmatched);
    if (wrong instanceof CommandLine.MissingParameterException missing) return lacking(missing);
    ArgSpec argument = wrong.getArgSpec();
    String value = wrong.getValue();
    boolean option = argument instanceof OptionSpec;
    if (option && value != null && argument.type() == LocalDate.class) {
      String name = ((OptionSpec) argument).longestName();
      return name + " " + DisplayText.of(value) + ": give year, month and day, such as 2026-03-31";
    }
    if (option && value != null && Number.class.isAssignableFrom(boxed(argument.type())))
      return ((OptionSpec) argument).longestName()
          + " "
          + DisplayText.of(value)
          + ": give a whole number";
    if (option && value != null && argument.type().isEnum())
      return ((OptionSpec) argument).longestName()
          + " "
          + DisplayText.of(value)
          + ": give one of "
          + words(argument.type());
    if (wrong.getMessage() != null && wrong.getMessage().startsWith("Missing required subcommand"))
      return "say what to do: " + String.join(", ", commands(wrong.getCommandLine()));
    String message = wrong.getMessage() == null ? wrong.toString() : wrong.getMessage();
    String line = message.strip().lines().map(DisplayText::of).collect(Collectors.joining("; "));
    return line.endsWith(".") ? line.substring(0, line.length() - 1) : line;
  }

  private static String lacking(CommandLine.MissingParameterException wrong) {
    return wrong.getMissing().stream()
        .map(
            each ->
                each instanceof OptionSpec option
                    ? option.longestName() + " needs " + option.paramLabel()
                    : each.paramLabel() + " is missing")
        .collect(Collectors.joining("; "));
  }

  private static String words(Class<?> type) {
    return Stream.of(type.getEnumConstants())
        .map(each -> each.toString().toLowerCase(Locale.ROOT))
        .collect(Collectors.joining(", "));
  }

  /** What the program does, without what only shows help or serves a shell. */
  private static List<String> commands(CommandLine line) {
    return line.getSubcommands().entrySet().stream()
        .filter(each -> !each.getValue().getCommandSpec().usageMessage().hidden())
        .filter(each -> !each.getValue().getCommandSpec().helpCommand())
        .map(Map.Entry::getKey)
        .toList();
  }

  private static Class<?> boxed(Class<?> type) {
    return type == int.class ? Integer.class : type;
  }

  private static String unknown(CommandLine.UnmatchedArgumentException wrong) {
    String word = wrong.getUnmatched().get(0);
    boolean option = word.startsWith("-");
    CommandLine line = wrong.getCommandLine();
    Collection<String> known =
        option ? line.getCommandSpec().optionsMap().keySet() : commands(line);
    // Of --vew=x the name alone is misspelt.
    String near = Spelling.nearest(word.split("=", 2)[0], known);
    String hint = near.isEmpty() ? "" : "; perhaps " + near;
    String what = option ? "option" : "argument";
    return "there is no " + what + " " + DisplayText.of(word) + " here" + hint;
  }
}
