package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Calculation;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Movement joints as documents state them: sure faults, sure passes, and what becomes a question.
 */
class MovementFindingsTest {
  private static final String HEADER =
      "Tag,Material,Room,Exposure,Movement joint width,Movement joint spacing,Temperature range,"
          + "Sealant,Longest run\n";
  private static final String CLASS_25 = "\"ASTM C920, Class 25, Use NT\"";

  @TempDir Path folder;

  @Test
  void aJointThatIsTooNarrowSaysBothWaysOutRoundedToWhatCanBeBuilt() throws IOException {
    Finding finding = only("movement-width", row("1/2 in", "12 ft", "115 °F", CLASS_25));

    // EJ171 at 12 ft and 115 °F: 1/2 + 1/16 in; 1/2 in less the 1/16 in is the width at 10 ft.
    assertThat(finding.kind()).isEqualTo(FindingKind.INADEQUATE);
    assertThat(finding.message())
        .isEqualTo(
            "The movement joint of GT-1 is 1/2 in; it needs 9/16 in (15 mm), or joints no farther"
                + " apart than 10 ft (3.04 m).");
  }

  @Test
  void metricDocumentsGetMetricAnswersFirst() throws IOException {
    Finding finding = only("movement-width", row("10 mm", "3 m", "50 K", CLASS_25));

    // Between 9.525 mm at 2438.4 mm and 12.7 mm at 3657.6 mm: 10.99 mm at 3 m, 10 mm at 2.62 m.
    assertThat(finding.expected())
        .isEqualTo("11 mm (7/16 in), or joints no farther apart than 2.62 m (8 ft 7 in)");
  }

  @Test
  void theStepsShowPlacesAssumptionsFormulasAndBothSystems() throws IOException {
    List<String> steps = only("movement-width", row("1/2 in", "12 ft", "115 °F", CLASS_25)).steps();

    assertThat(steps)
        .contains("Joint spacing 12 ft (3.66 m), stated: 12 ft [schedule.csv, cell F2]")
        .anyMatch(step -> step.contains("9e-6/K (5e-6/°F); assumed: soda-lime glass, EN 572-1"))
        .anyMatch(step -> step.startsWith("Movement capability of the sealant 25 %, stated: "))
        .anyMatch(step -> step.contains("expansion × spacing × temperature range"))
        .contains(
            "Required joint width: the larger of computed and guideline width, rounded up to the"
                + " next 1/16 in = 9/16 in (14.3 mm)");
  }

  @Test
  void aRangeOfWidthsThatIsEnoughThroughoutPasses() throws IOException {
    assertThat(findings("movement-width", row("3/8 to 1/2 in", "8 ft", "100 °F", CLASS_25)))
        .isEmpty();
  }

  @Test
  void aRangeOfWidthsThatIsTooNarrowThroughoutIsASureFault() throws IOException {
    assertThat(
            only("movement-width", row("1/8 to 1/4 in", "10 to 12 ft", "100 to 130 °F", CLASS_25))
                .kind())
        .isEqualTo(FindingKind.INADEQUATE);
  }

  @Test
  void aRangeOfWidthsThatIsEnoughInPartIsAQuestion() throws IOException {
    Finding finding = only("movement-width", row("3/8 to 1/2 in", "8 ft", "115 °F", CLASS_25));

    assertThat(finding.kind()).isEqualTo(FindingKind.UNRESOLVED);
    assertThat(finding.level()).isEqualTo(Level.NOTE);
    assertThat(finding.message()).contains("depends on where in the stated ranges it falls");
    assertThat(finding.question())
        .isEqualTo(
            "Which figure of the stated ranges is to be built for GT-1? The joint is stated as"
                + " 3/8 in to 1/2 in; it needs 7/16 in (12 mm).");
  }

  @Test
  void aWidthThatIsOnlyBoundAboveIsNotTakenForItsUpperEnd() throws IOException {
    Finding open = only("movement-width", row("1/2 in max.", "8 ft", "100 °F", CLASS_25));
    Finding never = only("movement-width", row("1/4 in max.", "8 ft", "100 °F", CLASS_25));

    assertThat(open.kind()).isEqualTo(FindingKind.UNRESOLVED);
    assertThat(never.kind()).isEqualTo(FindingKind.INADEQUATE);
    assertThat(findings("movement-width", row("3/8 in min.", "8 ft", "100 °F", CLASS_25)))
        .isEmpty();
  }

  @Test
  void anUnknownTemperatureRangeThatDecidesIsAskedForByItsPlace() throws IOException {
    Finding finding = only("movement-width", row("5/8 in", "12 ft", "", CLASS_25));

    assertThat(finding.kind()).isEqualTo(FindingKind.UNRESOLVED);
    assertThat(finding.message())
        .contains("what is not stated: temperature range (reckoned with 60 °F to 160 °F)");
    assertThat(finding.question())
        .startsWith(
            "What is the largest expected temperature range of the tile surface of GT-1 (South"
                + " terrace)?")
        .endsWith("it needs 1/2 in (13 mm) to 3/4 in (20 mm).");
  }

  @Test
  void anUnknownTemperatureRangeThatDecidesNothingIsNotAskedFor() throws IOException {
    assertThat(findings("movement-width", row("3/4 in", "12 ft", "", CLASS_25))).isEmpty();
    assertThat(only("movement-width", row("1/8 in", "12 ft", "", CLASS_25)).question())
        .doesNotContain("largest expected");
  }

  @Test
  void aProjectFactAnswersTheQuestionAndIsShownWithItsOrigin() throws IOException {
    Path layer = folder.resolveSibling(folder.getFileName() + "-layer.yaml");
    Files.writeString(
        layer,
        """
        layer: moorhen
        facts:
          - attribute: location.temperatureRange
            value: 130 °F
            exposure: exterior
            reason: weather record
        """);
    write(row("5/8 in", "12 ft", "", CLASS_25));
    Checked checked = Checked.of(folder, layer);

    assertThat(checked.findings("movement-width")).isEmpty();
    assertThat(calculation(checked, "movement-width").inputs())
        .filteredOn(input -> input.name().equals("range"))
        .singleElement()
        .satisfies(
            input -> {
              assertThat(input.quantity()).hasToString("130 °F");
              assertThat(input.origin().place()).contains("layer.yaml");
            });
  }

  @Test
  void anAssumptionOfTheRulesGoesIntoTheArithmeticAndIsFlagged() throws IOException {
    Path layer = folder.resolveSibling(folder.getFileName() + "-layer.yaml");
    Files.writeString(
        layer,
        """
        layer: moorhen
        assumptions:
          - attribute: location.temperatureRange
            value: 130 °F
            exposure: exterior
            reason: usual for the region
        """);
    write(row("1/2 in", "12 ft", "", CLASS_25));
    Checked checked = Checked.of(folder, layer);

    assertThat(checked.findings("movement-width"))
        .singleElement()
        .satisfies(
            finding -> {
              assertThat(finding.kind()).isEqualTo(FindingKind.INADEQUATE);
              assertThat(finding.steps())
                  .anyMatch(
                      step ->
                          step.contains("130 °F (72.2 K); assumed: ")
                              && step.contains("usual for the region"));
            });
  }

  @Test
  void withoutAnExposureTheJointIsJudgedByAllAndAskedForWhenTheyDiffer() throws IOException {
    Finding finding =
        only("movement-width", "GT-1,Glass tile,Room 7,,3/8 in,20 ft,60 °F," + CLASS_25 + ",");

    assertThat(finding.kind()).isEqualTo(FindingKind.UNRESOLVED);
    assertThat(finding.question()).contains("Does GT-1 stand indoors");
    assertThat(
            findings(
                "movement-width", "GT-1,Glass tile,Room 7,,1 in,12 ft,100 °F," + CLASS_25 + ","))
        .isEmpty();
  }

  @Test
  void aSpacingThatIsTooWideInPartIsAQuestionAndThroughoutAFault() throws IOException {
    Finding part = only("movement-spacing", row("3/4 in", "10 to 14 ft", "100 °F", CLASS_25));
    Finding all = only("movement-spacing", row("3/4 in", "20 to 25 ft", "100 °F", CLASS_25));

    assertThat(part.kind()).isEqualTo(FindingKind.UNRESOLVED);
    assertThat(part.question()).contains("No wider than").contains("12 ft (3.65 m)");
    assertThat(all.kind()).isEqualTo(FindingKind.INADEQUATE);
    assertThat(all.expected()).isEqualTo("no wider than 12 ft (3.65 m) (exterior)");
    assertThat(all.steps()).anyMatch(step -> step.contains("-13 ft (-3.96 m)"));
    assertThat(findings("movement-spacing", row("3/4 in", "8 to 12 ft", "100 °F", CLASS_25)))
        .isEmpty();
  }

  @Test
  void aRunIsLaidOutInEqualFields() throws IOException {
    write(row("1/2 in", "12 ft", "100 °F", CLASS_25) + "40 ft");
    Calculation layout = calculation(Checked.of(folder), "movement-layout");

    assertThat(layout.steps())
        .extracting(Calculation.Step::name, step -> step.result().number())
        .containsExactly(
            org.assertj.core.groups.Tuple.tuple("fields", 4.0),
            org.assertj.core.groups.Tuple.tuple("field", 10.0),
            org.assertj.core.groups.Tuple.tuple("joints", 3.0));
  }

  @Test
  void aClassOfSealantThatTheMovementOverstrainsIsToldWithAWiderJoint() throws IOException {
    // Plastic-like expansion: 30e-6 × 144 in × 50 K = 0.216 in; in 1/2 in that is 43 %.
    write(
        "GT-1,Glass tile,Terrace,Exterior,1/2 in,12 ft,90 °F," + CLASS_25 + ",,30e-6 /K",
        HEADER.strip() + ",Thermal expansion\n");
    Checked checked = Checked.of(folder);

    assertThat(checked.findings("movement-width"))
        .singleElement()
        .satisfies(f -> assertThat(f.expected()).startsWith("7/8 in (22 mm)"));
    assertThat(checked.verdicts("movement-class"))
        .extracting(Verdict::outcome)
        .containsExactly(Verdict.Outcome.UNDECIDED);
  }

  private static String row(String width, String spacing, String range, String sealant) {
    return "GT-1,Glass tile,South terrace,Exterior,"
        + width
        + ","
        + spacing
        + ","
        + range
        + ","
        + sealant
        + ",";
  }

  private void write(String row) throws IOException {
    write(row, HEADER);
  }

  private void write(String row, String header) throws IOException {
    Files.writeString(folder.resolve("schedule.csv"), header + row + "\n");
  }

  private List<Finding> findings(String check, String row) throws IOException {
    write(row);
    return Checked.of(folder).findings(check);
  }

  private Finding only(String check, String row) throws IOException {
    List<Finding> findings = findings(check, row);
    assertThat(findings).extracting(Finding::message).hasSize(1);
    return findings.get(0);
  }

  private static Calculation calculation(Checked checked, String check) {
    return checked.outcome().calculations().stream()
        .filter(one -> one.check().equals(check))
        .findFirst()
        .orElseThrow();
  }
}
