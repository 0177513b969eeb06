package clearbed.cli;

import clearbed.base.DisplayText;
import clearbed.cli.option.NameOptions;
import clearbed.cli.option.OverwriteOption;
import clearbed.cli.output.Outputs;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.UsageFailure;
import clearbed.report.letter.Letter;
import clearbed.report.letter.LetterDocx;
import clearbed.report.letter.LetterMarkdown;
import clearbed.report.wording.Phrasing;
import clearbed.track.OpenQuestions;
import clearbed.track.RefusedWorkbook;
import clearbed.track.Replies;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the open questions of a findings workbook as a letter, and takes the answers back in. */
@Command(
    name = "questions",
    mixinStandardHelpOptions = true,
    description =
        "Write the open questions of a findings workbook as a letter that is ready to send, or take"
            + " the answers of a letter that came back into a new workbook.",
    footer = {
      "",
      "Examples:",
      "  clearbed questions clearbed-findings.xlsx -o questions.docx",
      "  clearbed questions clearbed-findings.xlsx --asked-of Engineer -o engineer.docx",
      "  clearbed questions clearbed-findings.xlsx --replies back.docx -o answered.xlsx"
    })
public final class QuestionsCommand implements Callable<Integer> {
  /** Of a text that could not be placed, as the terminal shows it; in characters. */
  private static final int LONGEST = 300;

  /** How the list is written. */
  enum LetterFormat {
    DOCX,
    MD
  }

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "WORKBOOK", description = "Findings workbook.")
  private Path workbook;

  @Option(
      names = "--format",
      paramLabel = "docx|md",
      description = "Word or Markdown (default: by the name of FILE, else md).")
  private String format;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description =
          "Where to write: .docx or .md (default for md: the terminal); with --replies .xlsx.")
  private Path output;

  @Option(names = "--all", description = "Also what is answered or dropped, marked so.")
  private boolean all;

  @Option(
      names = "--asked-of",
      paramLabel = "NAME",
      description = "Only the questions with this name in the column Asked of.")
  private String addressee;

  @Option(
      names = "--replies",
      paramLabel = "FILE",
      description =
          "The letter that came back (.docx, .md, .txt) or a workbook (.xlsx): its answers go by"
              + " number into a new workbook.")
  private Path replies;

  @Option(
      names = "--date",
      paramLabel = "YYYY-MM-DD",
      description = "Date of the letter (default: today).")
  private LocalDate date;

  @Mixin private NameOptions nameOptions;

  @Mixin private OverwriteOption overwriteOption;

  @Override
  public Integer call() {
    PrintWriter err = spec.commandLine().getErr();
    try {
      if (replies == null) letter();
      else replies();
      return ExitCode.CLEAN;
    } catch (UsageFailure inTheWay) {
      err.println("clearbed: " + inTheWay.getMessage());
      return ExitCode.USAGE;
    } catch (RefusedWorkbook | IOException wrong) {
      err.println("clearbed: " + wrong.getMessage());
      return ExitCode.FAULT;
    }
  }

  private LocalDate day() {
    return date == null ? LocalDate.now() : date;
  }

  private void letter() throws RefusedWorkbook, IOException {
    LetterFormat chosen = chosen();
    if (chosen == LetterFormat.DOCX && output == null)
      throw usage("a Word file needs a name: add -o questions.docx");
    new Outputs(overwriteOption.overwrite)
        .reads("WORKBOOK", workbook)
        .writes("--output", output)
        .requireFree();
    Letter letter = addressed(OpenQuestions.read(workbook, all));
    write(letter.dated(day().toString(), nameOptions.names()), chosen);
    if (letter.questions().isEmpty())
      spec.commandLine().getErr().println("No question is open in " + workbook + ".");
  }

  private Letter addressed(Letter letter) {
    if (addressee == null) return letter;
    Letter theirs = letter.to(addressee);
    if (!theirs.questions().isEmpty()) return theirs;
    String others = String.join(", ", letter.addressees());
    throw new UsageFailure(
        "--asked-of "
            + addressee
            + ": no question is put to this name; "
            + (others.isEmpty() ? "fill in the column Asked of first" : "there are " + others));
  }

  private void write(Letter letter, LetterFormat chosen) throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (output == null) {
      out.print(LetterMarkdown.text(letter));
      out.flush();
    } else if (chosen == LetterFormat.DOCX) {
      LetterDocx.write(letter, output);
    } else {
      LetterMarkdown.write(letter, output);
    }
  }

  private void replies() throws RefusedWorkbook, IOException {
    if (output == null || !ending(output).equals("xlsx"))
      throw usage("--replies needs a new workbook to write: add -o answered.xlsx");
    if (!Replies.ENDINGS.contains(ending(replies)))
      throw usage(
          "--replies "
              + replies
              + ": answers are taken from .docx, .xlsx, .md or .txt; save it so");
    new Outputs(overwriteOption.overwrite)
        .reads("WORKBOOK", workbook)
        .reads("--replies", replies)
        .writes("--output", output)
        .requireFree();
    Replies taken = Replies.read(workbook, replies);
    taken.write(output, day().toString());
    report(taken);
  }

  private void report(Replies taken) {
    PrintWriter out = spec.commandLine().getOut();
    out.println("Answers taken: " + numbers(taken.taken()) + ".");
    if (!taken.known().isEmpty())
      out.println("Answers that the workbook had already: " + numbers(taken.known()) + ".");
    List<String> unplaced = taken.unplaced();
    if (!unplaced.isEmpty()) {
      out.println(
          Phrasing.count(unplaced.size(), "text")
              + " could not be placed, and "
              + (unplaced.size() == 1 ? "is" : "are")
              + " on the sheet Set aside:");
      for (String each : unplaced)
        out.println("  " + DisplayText.shortened(DisplayText.of(each), LONGEST));
    }
    out.println(
        "New workbook: " + output + "; set Status to \"answered\" where an answer settles it.");
    out.flush();
  }

  private static String numbers(Set<Integer> numbers) {
    if (numbers.isEmpty()) return "none";
    return numbers.stream().map(String::valueOf).collect(Collectors.joining(", "));
  }

  private LetterFormat chosen() {
    String word = format == null ? "" : format.toLowerCase(Locale.ROOT);
    String ending = output == null ? "" : ending(output);
    if (!List.of("", "docx", "md").contains(word))
      throw usage("--format is docx or md, not '" + format + "'");
    // A file that says .pdf and holds something else helps nobody, unless it is asked for.
    if (word.isEmpty() && output != null && !List.of("docx", "md").contains(ending))
      throw usage("--output " + output + ": the letter is a .docx or .md file; name it so");
    String chosen = word.isEmpty() ? ending : word;
    return chosen.equals("docx") ? LetterFormat.DOCX : LetterFormat.MD;
  }

  private static String ending(Path file) {
    String name = file.getFileName() == null ? "" : file.getFileName().toString();
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  private ParameterException usage(String message) {
    return new ParameterException(spec.commandLine(), message);
  }
}
