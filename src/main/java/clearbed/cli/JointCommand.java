package clearbed.cli;

import clearbed.calc.Expansions;
import clearbed.calc.MovementGuideline;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** The movement-joint arithmetic by itself, with every step shown. */
@Command(
    name = "joint",
    description = {
      "Works out a movement joint in tile, with every step shown.",
      "Figures carry their unit: 12ft, 3/8in, 3.6m, 10mm, 130F, 70K. A range is the temperature"
          + " difference between hottest and coldest tile surface."
    },
    footer = {
      "",
      "Examples:",
      "  clearbed joint --spacing 12ft --range 130F --class 25 --exposure exterior",
      "  clearbed joint --run 12m --spacing 3.6m --range 70K --class 25 --exposure exterior"
          + " --width 10mm"
    },
    sortOptions = false,
    mixinStandardHelpOptions = true,
    versionProvider = Version.class)
final class JointCommand implements Callable<Integer> {

  @Spec CommandSpec spec;

  @Option(
      names = "--run",
      paramLabel = "LENGTH",
      description = "Longest unbroken run, for a layout.")
  String run;

  @Option(names = "--spacing", paramLabel = "LENGTH", description = "Spacing of the joints.")
  String spacing;

  @Option(
      names = "--range",
      paramLabel = "DIFFERENCE",
      description = "Temperature range of the tile surface, summer high less winter low.")
  String range;

  @Option(
      names = "--class",
      paramLabel = "CLASS",
      description = "Sealant class of ASTM C920 or ISO 11600: 25, 50, 100/50, 25LM.")
  String sealant;

  @Option(
      names = "--exposure",
      paramLabel = "WHERE",
      description =
          "interior, interior-sun-or-moisture, exterior, exterior-cold-deck (open to the sky, cold"
              + " region).")
  String exposure;

  @Option(names = "--width", paramLabel = "LENGTH", description = "A joint width to judge.")
  String width;

  @Option(
      names = "--material",
      paramLabel = "NAME",
      description = "What the tile is made of; default glass.")
  String material;

  @Option(
      names = "--expansion",
      paramLabel = "COEFFICIENT",
      description = "The maker's expansion instead: 9e-6/K, 5e-6/F.")
  String expansion;

  @Option(
      names = "--substrate",
      paramLabel = "NAME",
      description = "Show the movement against this substrate too: concrete, steel, ...")
  String substrate;

  @Option(names = "--tolerance", paramLabel = "LENGTH", description = "Construction tolerance.")
  String tolerance;

  @Option(
      names = "--other",
      paramLabel = "LENGTH",
      description = "Movement other than by temperature, such as moisture or deflection.")
  String other;

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
    JointRequest.Answer answer = request().answer();
    if (json) {
      out.println(JointJson.of(answer));
    } else {
      new JointText(out).print(answer);
    }
    out.flush();
    return ExitCode.CLEAN;
  }

  private JointRequest request() {
    JointRequest.Typed typed =
        new JointRequest.Typed(
            run, spacing, range, sealant, exposure, width, material, expansion, substrate,
            tolerance, other);
    try {
      return new JointRequest(typed, Expansions.standard(), guideline());
    } catch (IOException e) {
      throw new UsageFailure(Failures.oneLine(e));
    }
  }

  private MovementGuideline guideline() throws IOException {
    if (guideline == null) return MovementGuideline.standard();
    if (Files.isDirectory(guideline)) {
      throw new UsageFailure("--guideline: " + guideline + " is a folder; give a file");
    }
    return MovementGuideline.read(guideline.toString(), Files.readAllBytes(guideline));
  }
}
