package clearbed.docs;

import clearbed.cli.Main;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The console blocks of a page: each is one command and what it prints. */
final class Transcripts {
  private static final Pattern BLOCK =
      Pattern.compile("```console\n\\$ clearbed ([^\n]*)\n(.*?)```", Pattern.DOTALL);
  private static final Pattern HEAD = Pattern.compile("(.*) \\| head -(\\d+)");

  private Transcripts() {}

  /** The page with every output as the command prints it today. */
  static String run(String page) {
    return BLOCK.matcher(page).replaceAll(found -> Matcher.quoteReplacement(transcript(found)));
  }

  private static String transcript(MatchResult found) {
    return "```console\n$ clearbed " + found.group(1) + "\n" + output(found.group(1)) + "```";
  }

  private static String output(String command) {
    Matcher head = HEAD.matcher(command);
    if (!head.matches()) return printed(command);
    List<String> lines = printed(head.group(1)).lines().toList();
    int wanted = Math.min(lines.size(), Integer.parseInt(head.group(2)));
    return String.join("\n", lines.subList(0, wanted)) + "\n";
  }

  private static String printed(String command) {
    PrintStream before = System.out;
    ByteArrayOutputStream printed = new ByteArrayOutputStream();
    System.setOut(new PrintStream(printed, true, StandardCharsets.UTF_8));
    try {
      Main.run(command.split(" "));
    } finally {
      System.out.flush();
      System.setOut(before);
    }
    return printed.toString(StandardCharsets.UTF_8).replace(System.lineSeparator(), "\n");
  }
}
