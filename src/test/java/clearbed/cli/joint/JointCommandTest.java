package clearbed.cli.joint;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.terminal.UsageFailure;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class JointCommandTest {

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @Test
  void showsGivenAssumedStepsAndResult() {
    int code =
        run("--run 40ft --spacing 12ft --range 130F --class 25 --exposure exterior --width 3/8in");

    assertThat(code).as("what is stated is not enough").isEqualTo(1);
    assertThat(err.toString()).isEmpty();
    assertThat(out.toString())
        .contains("Temperature range of the tile surface: 130 °F (72.2 K)")
        .contains("Thermal expansion of the tile: 9e-6/K (5e-6/°F)")
        .contains("EN 572-1")
        .contains("Movement into the joint: 0.094 in (2.38 mm)")
        .contains("Required width: 5/8 in (16 mm); the guideline governs")
        .contains(
            "Stated width: not enough; make it 5/8 in (16 mm); closer joints do not make it enough")
        .contains("Layout: 4 fields of 10 ft (3.05 m), 3 joints between them")
        .contains("Joints at: 10 ft (3.05 m), 20 ft (6.1 m), 30 ft (9.14 m)");
  }

  @Test
  void worksInMetric() {
    int code =
        run("--run 12m --spacing 3.6m --range 70K --class 25LM --exposure exterior --width 18mm");

    assertThat(code).isZero();
    assertThat(out.toString())
        .contains("Joint spacing: 3.6 m (11.8 ft)")
        .contains("Temperature range of the tile surface: 70 K (126 °F)")
        .contains("Required width: 16 mm (5/8 in)")
        .contains("Stated width: enough")
        .contains("Stated spacing: within the guideline's 3.7 m (12 ft")
        .contains("Layout: 4 fields of 3 m");
  }

  @ParameterizedTest
  @CsvSource({"130F", "130°F", "'130 °F'"})
  void aRangeIsADifference(String range) throws IOException {
    run("--spacing", "12ft", "--exposure", "exterior", "--class", "25", "--json", "--range", range);

    JsonNode input = input("range");
    assertThat(input.get("number").asDouble()).isEqualTo(130);
    // 9e-6 × 144 in × 130 × 5/9; as a temperature it would be four times as much.
    assertThat(step("movement")).isBetween(0.0935, 0.0937);
  }

  @Test
  void aMakersExpansionWins() throws IOException {
    run("--spacing 12ft --range 100F --expansion 6e-6/F --class 25 --exposure exterior --json");

    assertThat(input("expansion").get("assumed").asBoolean()).isFalse();
    assertThat(step("movement")).isBetween(0.08639, 0.08641);
  }

  @Test
  void saysWhatIsNotGivenAndWhetherItMatters() {
    run("--spacing 12ft --width 3/8in --exposure exterior");

    assertThat(out.toString())
        .contains("Not given: temperature range: reckoned with 60 °F to 160 °F")
        .contains("the verdict on the stated width does not turn on it");
  }

  @Test
  void movementAgainstTheSubstrateIsShown() {
    run("--spacing 12ft --range 100F --substrate concrete --class 25");

    assertThat(out.toString())
        .contains("Against the substrate")
        .contains("Only the tile heated: 0.072 in (1.83 mm)")
        .contains("Both heated: 0.008 in (0.203 mm)");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--range -10F --spacing 12ft                 |--range: -10F is not above zero",
        "--range 0K --spacing 12ft                   |--range: 0K is not above zero",
        "--range -10to150F --spacing 12ft            |--range: -10to150F reads as two temperatures",
        "--range 130 --spacing 12ft                  |--range: '130' is not understood",
        "--range 12ft --spacing 12ft                 |--range: '12ft' is not understood",
        "--range 2000F --spacing 12ft                |--range: 2000F is no weather",
        "--class 0 --spacing 12ft                    |--class: '0' is no class",
        "--class 40 --spacing 12ft                   |--class: '40' is no class",
        "--spacing 12                                |--spacing: '12' is not understood",
        "--spacing -12ft                             |--spacing: -12ft is not above zero",
        "--spacing 0ft                               |--spacing: 0ft is not above zero",
        "--spacing 1/0ft                             |--spacing: '1/0ft'",
        "--spacing 99999999ft                        |--spacing: 99999999ft is longer than any",
        "--spacing 50ft --run 40ft                   |--spacing: 50ft is longer than the run of 40ft",
        "--spacing 12ft --width 13ft                 |--width: 13ft is not narrower",
        "--spacing 12ft --width 0in                  |--width: 0in is not above zero",
        "--spacing 12ft --width 1/4in --tolerance 1/4in|--tolerance: 1/4in leaves nothing",
        "--spacing 12ft --tolerance -1mm             |--tolerance: -1mm is negative",
        "--spacing 12ft --exposure moon              |--exposure: 'moon' is not known; give interior,",
        "--spacing 12ft --material cheese            |--material: 'cheese' is not in the table",
        "--spacing 12ft --expansion 9e-6             |--expansion: '9e-6' is not understood",
        "--spacing 12ft --expansion 9/K              |--expansion: 9/K is no building material",
        "--spacing 12ft --expansion 9e-6/K --material glass|--expansion: stands beside --material",
        "--spacing 12ft --substrate concrete         |--substrate: needs --spacing and --range",
        "--range 100F                                |--spacing: not given",
        "--run 9000m --spacing 1mm                   |--spacing: a run of 9000 m",
        "--spacing 12ft --least 13ft                 |--least: 13ft is not narrower than",
        "--spacing 12ft --other 5ft                  |--other: 5ft is more than any tile joint",
        "--spacing 12ft --tolerance 5in              |--tolerance: 5in is more than any tile joint",
        "--spacing 12ft --range 90F --substrate=     |--substrate: '' is not in the table",
        "--spacing 12ft --least 0mm                  |--least: 0mm is not above zero",
        "--spacing 12ft --coldest 0F                 |--coldest: needs --hottest as well",
        "--spacing 12ft --hottest 90F                |--hottest: needs --coldest as well",
        "--spacing 12ft --coldest 90F --hottest 20F  |--hottest: 20F is not above the coldest, 90F",
        "--spacing 12ft --coldest -300F --hottest 20F|--coldest: -300F is no temperature of tile",
        "--spacing 12ft --range 50F --coldest 0F --hottest 90F|--range: 50F is not what lies between",
        "--spacing 12ft --sealed 50F                 |--sealed: needs --coldest, --hottest",
        "--spacing 12ft --class 25 --coldest 0F --hottest 90F --sealed 99F|--sealed: the sealing",
        "--spacing 12ft --substrate-range 20F        |--substrate-range: needs --substrate as well",
        "--spacing 12ft --range 90F --substrate 9/K  |--substrate: 9/K is no building material",
        "--spacing 12ft --guideline nowhere.yaml     |nowhere.yaml: no such file",
        "--spacing 12ft --guideline src              |--guideline: src is a folder",
        "--spacing 12ft --guideline pom.xml          |pom.xml:",
      })
  void nonsenseIsRefusedInOneLine(String arguments, String message) {
    int code = run(arguments.strip());

    assertThat(code).isEqualTo(2);
    assertThat(out.toString()).isEmpty();
    assertThat(err.toString().strip()).startsWith(message).doesNotContain("\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "--spacing 12ft --range 100F --class 25 --exposure exterior                   |0",
        "--spacing 12ft --range 100F --class 25 --exposure exterior --width 1/2in     |0",
        "--spacing 12ft --range 100F --class 25 --exposure exterior --width 3/8in     |1",
        "--spacing 12ft --range 100F --class 25 --exposure exterior --width 3/8to5/8in|0",
        "--spacing 20ft --range 100F --class 25 --exposure exterior                   |1",
        "--spacing 10to14ft --range 100F --class 25 --exposure exterior               |0",
        "--spacing 12ft --range 100F --class 7.5 --exposure exterior --width 1/2in    |1",
      })
  void whatIsStatedAndSurelyNotEnoughExitsWithOne(String arguments, int code) {
    assertThat(run(arguments.strip())).isEqualTo(code);
  }

  @Test
  void aWidthAloneGetsTheLargestSpacingForIt() {
    int code = run("--width 1/2in --range 115F --class 25 --exposure exterior --run 45ft");

    assertThat(code).isZero();
    // 1/2 in less the 1/16 in for 115 °F is the guideline's width at 10 ft.
    assertThat(out.toString())
        .contains("Largest spacing for the stated width: 10 ft (3.04 m)")
        .contains("by movement 18 ft 1 in (5.52 m), by the guideline 10 ft (3.04 m)")
        .contains("Layout: 5 fields of 9 ft (2.74 m), 4 joints between them");
  }

  @Test
  void metricAndInchFiguresMix() {
    run("--spacing 3.6576m --range 130F --class 25 --exposure exterior --width 5/8in");

    assertThat(out.toString())
        .contains("Joint width as stated: 5/8 in (15.9 mm)")
        .contains("Required width: 16 mm (5/8 in)")
        .contains("Stated width: enough");
  }

  @Test
  void theLeastWidthOfTheSealantsMakerGoverns() {
    run("--spacing 20ft --range 30F --class 25 --exposure interior --least 3/8in --width 1/4in");

    assertThat(out.toString())
        .contains("Required width: 3/8 in (10 mm); the sealant maker's least width governs")
        .contains("Stated width: not enough; make it 3/8 in (10 mm); closer joints do not");
  }

  @Test
  void openingAndClosingAreReckonedApartFromTheSealingTemperature() {
    run(
        "--spacing 12ft --coldest -10F --hottest 150F --sealed 40to80F --class 100/50 --exposure"
            + " exterior");

    assertThat(out.toString())
        .contains("Temperature range of the tile surface: 160 °F (88.9 K)")
        .contains("Opening of the joint: 0.065 in (1.65 mm)")
        .contains("Closing of the joint: 0.079 in (2.01 mm)")
        .contains("movement needs 3/16 in (5 mm), for closing");
  }

  @Test
  void aSubstrateMayBeGivenByItsExpansionAndItsOwnRange() {
    run("--spacing 12ft --range 100F --substrate 6.5e-6/F --substrate-range 20F --class 25");

    // 5e-6 × 144 in × 100 less 6.5e-6 × 144 in × 20.
    assertThat(out.toString()).contains("Both heated: 0.053 in (1.35 mm)");
  }

  @Test
  void aGuidelineOfTheProjectsOwnIsUsed(@TempDir Path folder) throws IOException {
    Path own = folder.resolve("own.yaml");
    String standard = Files.readString(Path.of("rulesets/guidelines/ej171.yaml"));
    Files.writeString(own, standard.replace("width: 1/2 in }", "width: 7/8 in }"));

    run(
        "--spacing",
        "12ft",
        "--range",
        "90F",
        "--class",
        "25",
        "--exposure",
        "exterior",
        "--guideline",
        own.toString());

    assertThat(out.toString()).contains("Required width: 7/8 in");
  }

  private int run(String arguments) {
    return run(arguments.split(" +"));
  }

  private int run(String... arguments) {
    return new CommandLine(new JointCommand())
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(err))
        .setExecutionExceptionHandler(
            (e, command, result) -> {
              command.getErr().println(e.getMessage());
              command.getErr().flush();
              return e instanceof UsageFailure ? 2 : 3;
            })
        .execute(arguments);
  }

  private JsonNode input(String name) throws IOException {
    return named("inputs", name);
  }

  private double step(String name) throws IOException {
    return named("steps", name).get("number").asDouble();
  }

  private JsonNode named(String list, String name) throws IOException {
    for (JsonNode node : new ObjectMapper().readTree(out.toString()).get(list)) {
      if (node.get("name").asText().equals(name)) return node;
    }
    throw new AssertionError(name);
  }
}
