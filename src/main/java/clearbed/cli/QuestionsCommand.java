package clearbed.cli;

import clearbed.report.letter.Letter;
import clearbed.report.letter.LetterDocx;
import clearbed.report.letter.LetterMarkdown;
import clearbed.track.OpenQuestions;
import clearbed.track.RefusedWorkbook;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Writes the open questions of a findings workbook as a letter. */
@Command(
    name = "questions",
    mixinStandardHelpOptions = true,
    description =
        "Write the open questions of a findings workbook as a list that is ready to send.",
    footer = {
      "",
      "Examples:",
      "  clearbed questions clearbed-findings.xlsx -o questions.docx",
      "  clearbed questions clearbed-findings.xlsx --format md"
    })
public final class QuestionsCommand implements Callable<Integer> {
  private static final int FAILED = 3;

  /** How the list is written. */
  enum Format {
    DOCX,
    MD
  }

  @Spec private CommandSpec spec;

  @Parameters(index = "0", paramLabel = "WORKBOOK", description = "findings workbook")
  private Path workbook;

  @Option(
      names = "--format",
      paramLabel = "docx|md",
      description = "Word or Markdown (default: by the name of FILE, else md)")
  private String format;

  @Option(
      names = {"-o", "--output"},
      paramLabel = "FILE",
      description = "where to write (default for md: the terminal)")
  private Path output;

  @Option(names = "--all", description = "also what is answered or dropped, marked so")
  private boolean all;

  @Mixin private OverwriteOption overwriteOption;

  @Override
  public Integer call() {
    Format chosen = chosen();
    if (chosen == Format.DOCX && output == null) {
      throw new ParameterException(
          spec.commandLine(), "A Word file needs a name: add -o questions.docx");
    }
    PrintWriter err = spec.commandLine().getErr();
    try {
      new Outputs(overwriteOption.overwrite)
          .reads("WORKBOOK", workbook)
          .writes("--output", output)
          .requireFree();
      Letter letter = OpenQuestions.read(workbook, all);
      write(letter, chosen);
      if (letter.questions().isEmpty()) err.println("No question is open in " + workbook + ".");
      return 0;
    } catch (UsageFailure inTheWay) {
      err.println("clearbed: " + inTheWay.getMessage());
      return ExitCode.USAGE;
    } catch (RefusedWorkbook | IOException wrong) {
      err.println("clearbed: " + wrong.getMessage());
      return FAILED;
    }
  }

  private void write(Letter letter, Format chosen) throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (output == null) {
      out.print(LetterMarkdown.text(letter));
      out.flush();
    } else if (chosen == Format.DOCX) {
      LetterDocx.write(letter, output);
    } else {
      LetterMarkdown.write(letter, output);
    }
  }

  private Format chosen() {
    if (format == null) {
      boolean word = output != null && output.toString().toLowerCase(Locale.ROOT).endsWith(".docx");
      return word ? Format.DOCX : Format.MD;
    }
    return switch (format.toLowerCase(Locale.ROOT)) {
      case "docx" -> Format.DOCX;
      case "md" -> Format.MD;
      default ->
          throw new ParameterException(
              spec.commandLine(), "--format is docx or md, not '" + format + "'");
    };
  }
}
