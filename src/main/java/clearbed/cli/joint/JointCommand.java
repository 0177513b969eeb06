package clearbed.cli.joint;

import clearbed.base.config.StandardFiles;
import clearbed.calc.figure.Fit;
import clearbed.calc.guideline.Expansions;
import clearbed.calc.guideline.MovementGuideline;
import clearbed.calc.joint.MovementDesign;
import clearbed.cli.terminal.ExitCode;
import clearbed.cli.terminal.Failures;
import clearbed.cli.terminal.UsageFailure;
import clearbed.cli.terminal.Version;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The movement-joint arithmetic by itself, with every step shown. */
@Command(
    name = "joint",
    description = {
      "Work out a movement joint in tile, with every step shown.",
      "Figures carry their unit: 12ft, 3/8in, 3.6m, 10mm, 130F, 70K; a range of figures is 8to12ft."
          + " The temperature range is the difference between hottest and coldest tile surface."
    },
    footer = {
      "",
      "Examples:",
      "  clearbed joint --spacing 12ft --range 130F --class 25 --exposure exterior",
      "  clearbed joint --run 12m --spacing 3.6m --range 70K --class 25 --exposure exterior"
          + " --width 10mm",
      "  clearbed joint --width 1/2in --range 100F --class 25 --exposure exterior"
    },
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:The joint is worked out; what is stated of it is enough or may be.",
      "1:The stated width, class or spacing is not enough.",
      "2:The options make no sense; nothing was worked out."
    },
    sortOptions = false,
    mixinStandardHelpOptions = true,
    versionProvider = Version.class)
public final class JointCommand implements Callable<Integer> {

  @Spec CommandSpec spec;

  @Mixin JointOptions options;

  @Option(
      names = "--guideline",
      paramLabel = "FILE",
      description = "Guideline figures of your own instead of rulesets/guidelines/ej171.yaml.")
  Path guideline;

  @Option(names = "--json", description = "Print the answer as JSON.")
  boolean json;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    JointAnswer answer = request().answer();
    if (json) {
      out.println(JointJson.of(answer));
    } else {
      new JointText(out).print(answer);
    }
    out.flush();
    return fallsShort(answer.design()) ? ExitCode.FINDINGS : ExitCode.CLEAN;
  }

  private static boolean fallsShort(MovementDesign design) {
    return design.widthFit() == Fit.FALLS_SHORT
        || design.strainFit() == Fit.FALLS_SHORT
        || design.spacingFit() == Fit.FALLS_SHORT;
  }

  private JointRequest request() {
    try {
      return new JointRequest(options, Expansions.standard(), guideline());
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }

  private MovementGuideline guideline() throws IOException {
    if (guideline == null) return MovementGuideline.standard();
    if (Files.isDirectory(guideline)) {
      throw new UsageFailure("--guideline: " + guideline + " is a folder; give a file");
    }
    return MovementGuideline.read(StandardFiles.given(guideline));
  }
}
