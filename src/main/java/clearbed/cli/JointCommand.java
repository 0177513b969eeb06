package clearbed.cli;

import clearbed.calc.Expansions;
import clearbed.calc.MovementGuideline;
import clearbed.calc.QuantityReader;
import clearbed.recognise.Quantities;
import clearbed.recognise.StandardFiles;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
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
    mixinStandardHelpOptions = true)
public final class JointCommand implements Callable<Integer> {

  private static final int USAGE = 2;
  private static final String GUIDELINE = "guidelines/ej171.yaml";
  private static final String EXPANSION = "guidelines/expansion.yaml";

  @Spec private CommandSpec spec;

  @Option(
      names = "--run",
      paramLabel = "LENGTH",
      description = "Longest unbroken run, for a layout.")
  private String run;

  @Option(names = "--spacing", paramLabel = "LENGTH", description = "Spacing of the joints.")
  private String spacing;

  @Option(
      names = "--range",
      paramLabel = "DIFFERENCE",
      description = "Temperature range of the tile surface, summer high less winter low.")
  private String range;

  @Option(
      names = "--class",
      paramLabel = "CLASS",
      description = "Sealant class of ASTM C920 or ISO 11600: 25, 50, 100/50, 25LM.")
  private String sealant;

  @Option(
      names = "--exposure",
      paramLabel = "WHERE",
      description =
          "interior, interior-sun-or-moisture, exterior, exterior-cold-deck (open to the sky, cold"
              + " region).")
  private String exposure;

  @Option(names = "--width", paramLabel = "LENGTH", description = "A joint width to judge.")
  private String width;

  @Option(
      names = "--material",
      paramLabel = "NAME",
      description = "What the tile is made of; default glass.")
  private String material;

  @Option(
      names = "--expansion",
      paramLabel = "COEFFICIENT",
      description = "The maker's expansion instead: 9e-6/K, 5e-6/F.")
  private String expansion;

  @Option(
      names = "--substrate",
      paramLabel = "NAME",
      description = "Show the movement against this substrate too: concrete, steel, ...")
  private String substrate;

  @Option(names = "--tolerance", paramLabel = "LENGTH", description = "Construction tolerance.")
  private String tolerance;

  @Option(
      names = "--other",
      paramLabel = "LENGTH",
      description = "Movement other than by temperature, such as moisture or deflection.")
  private String other;

  @Option(
      names = "--guideline",
      paramLabel = "FILE",
      description = "Guideline figures of your own instead of rulesets/guidelines/ej171.yaml.")
  private Path guideline;

  @Option(names = "--json", description = "Print the answer as JSON.")
  private boolean json;

  /** Opens a file by its path under {@code rulesets/}. */
  @FunctionalInterface
  public interface RuleFiles {
    byte[] open(String path) throws IOException;
  }

  private final QuantityReader reader;
  private final RuleFiles files;

  /** With the project's quantity parser and the rule files that ship with the tool. */
  public JointCommand() {
    this(Quantities::parse, path -> StandardFiles.open(path).bytes());
  }

  /** With the project's own quantity parser and rule files. */
  public JointCommand(QuantityReader reader, RuleFiles files) {
    this.reader = reader;
    this.files = files;
  }

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    try {
      JointRequest.Answer answer = request().answer();
      if (json) {
        out.println(JointJson.of(answer));
        out.flush();
      } else {
        new JointText(out).print(answer);
      }
      return 0;
    } catch (JointRefusal | IOException e) {
      PrintWriter err = spec.commandLine().getErr();
      err.println("clearbed joint: " + e.getMessage());
      err.flush();
      return USAGE;
    }
  }

  private JointRequest request() throws IOException {
    JointRequest.Typed typed =
        new JointRequest.Typed(
            run, spacing, range, sealant, exposure, width, material, expansion, substrate,
            tolerance, other);
    Expansions materials = Expansions.read(EXPANSION, files.open(EXPANSION), reader);
    return new JointRequest(typed, reader, materials, guideline());
  }

  private MovementGuideline guideline() throws IOException {
    if (guideline == null) {
      return MovementGuideline.read(GUIDELINE, files.open(GUIDELINE), reader);
    }
    try {
      return MovementGuideline.read(guideline.toString(), Files.readAllBytes(guideline), reader);
    } catch (NoSuchFileException e) {
      throw new IOException("--guideline: " + guideline + ": no such file", e);
    }
  }
}
