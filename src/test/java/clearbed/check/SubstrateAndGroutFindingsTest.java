package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import clearbed.Checked;
import clearbed.model.report.Calculation;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Verdict;
import clearbed.model.value.Unit;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Figures of substrate, grout and sealant against what their arithmetic asks for. */
class SubstrateAndGroutFindingsTest {
  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "1/16 in,1/32 in,'at least 1/8 in (3 mm)'",
    "1.5 mm,1 mm,'at least 3 mm (1/8 in)'",
    "1/32 in,,'at least 1/16 in (2 mm)'",
  })
  void aGroutJointIsThreeTimesTheVariationAndNeverUnderASixteenth(
      String width, String variation, String expected) {
    Finding finding = only("grout-width", grout(width, variation));

    assertThat(finding.expected()).isEqualTo(expected);
    assertThat(finding.steps()).anyMatch(step -> step.contains("ANSI A108.02"));
    assertThat(finding.steps()).anyMatch(step -> step.startsWith("Stated joint beyond"));
  }

  @ParameterizedTest
  @CsvSource({"1/8 in,1/32 in", "3 mm,1 mm", "1.5 mm,0.5 mm", "1/16 in,"})
  void aGroutJointThatIsWideEnoughPasses(String width, String variation) {
    assertThat(checked(grout(width, variation)).findings("grout-width")).isEmpty();
  }

  @Test
  void aRangeOfVariationThatDecidesIsUnresolved() {
    assertThat(only("grout-width", grout("1/8 in", "1/32 to 1/16 in")).kind())
        .isEqualTo(FindingKind.UNRESOLVED);
  }

  private static String grout(String width, String variation) {
    return "Tag,Material,Grout joint width,Size variation\nGT-1,Glass tile,"
        + width
        + ","
        + (variation == null ? "" : variation)
        + "\n";
  }

  @Test
  void aDeflectionShowsWhatItComesToOnASpan() {
    Finding finding = only("deflection", "Tag,Material,Deflection limit\nGT-1,Glass tile,L/240\n");

    assertThat(finding.steps())
        .anyMatch(step -> step.contains("Span 10 ft (3.05 m); assumed: an example"))
        .anyMatch(step -> step.contains("span ÷ n = 1/2 in (12.7 mm)"))
        .anyMatch(step -> step.contains("span ÷ n of the limit = 0.333 in (8.47 mm)"));
  }

  @Test
  void aFlatnessIsCarriedToTenFeet() {
    Finding finding =
        only("flatness", "Tag,Material,Size,Flatness\nGT-1,Glass tile,12 x 24 in,3 mm in 2 m\n");

    assertThat(finding.expected()).startsWith("1/8 in in 10 ft");
    // 3 mm in 2 m is 0.18 in in 10 ft.
    assertThat(finding.steps())
        .anyMatch(step -> step.contains("stated departure × 10 ft ÷ straightedge = 0.180 in"));
  }

  @ParameterizedTest
  @CsvSource({"3.2 mm in 3 m", "1/8 in in 10 ft", "3 mm in 3 m"})
  void aFlatnessRoundedFromOneSystemToTheOtherPasses(String flatness) {
    String table = "Tag,Material,Size,Flatness\nGT-1,Glass tile,12 x 24 in," + flatness + "\n";
    assertThat(checked(table).findings("flatness")).isEmpty();
  }

  @Test
  void aFlatnessThatTurnsOnAnUnknownSizeWaitsForIt() {
    Checked checked = checked("Tag,Material,Flatness\nGT-1,Glass tile,1/4 in in 10 ft\n");

    assertThat(checked.verdicts("flatness"))
        .extracting(Verdict::outcome)
        .containsExactly(Verdict.Outcome.UNDECIDED);
    assertThat(checked.findings("tile-size")).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource({
    "1/2 in,1/4 in,true",
    "12 mm,6 mm,true",
    "1/2 in,5/16 in,true",
    "3/8 in,1/4 in,true",
    "1/8 in,1/4 in,true",
    "1/2 in,5/8 in,false",
    "1/2 in,1/8 in,false",
    "1/4 in,3 mm,true",
  })
  void aSealantIsFromHalfAsDeepAsTheJointIsWideToAsDeepOrAsMakersAsk(
      String width, String depth, boolean passes) {
    Checked checked =
        checked(
            "Tag,Material,Movement joint width,Sealant depth\nGT-1,Glass tile,"
                + width
                + ","
                + depth
                + "\n");

    assertThat(checked.findings("sealant-depth").isEmpty()).isEqualTo(passes);
    checked
        .findings("sealant-depth")
        .forEach(f -> assertThat(f.steps()).anyMatch(step -> step.contains("half the width")));
  }

  @Test
  void whatABidderPricesIsTakenOffWhereTheAreaIsStated() {
    Checked checked =
        checked(
            "Tag,Material,Size,Thickness,Grout joint width,Tiled area,Movement joint"
                + " width,Movement joint spacing\n"
                + "GT-1,Glass tile,98 x 98 mm,8 mm,2 mm,10 m²,10 mm,2.5 m\n"
                + "GT-1,Glass tile,98 x 98 mm,8 mm,2 mm,20 m²,10 mm,2.5 m\n");
    Calculation quantities =
        checked.outcome().calculations().stream()
            .filter(one -> one.check().equals("quantities"))
            .findFirst()
            .orElseThrow();

    // Two rows: 30 m² of modules of 100 mm, a tenth more.
    assertThat(number(quantities, "tiles")).isCloseTo(3300, within(1e-9));
    // 2 × 30 m² ÷ 2.5 m of joints and 4 × √30 m at the edges, 10 mm by 5 mm, a tenth more.
    assertThat(number(quantities, "sealant"))
        .isCloseTo((24 + 4 * Math.sqrt(30)) * 0.01 * 0.005 * 1100, within(1e-9));
    // A bed of 3/32 in for tile between mosaic and large format.
    assertThat(number(quantities, "mortar")).isCloseTo(30 * 0.0254 * 3 / 32 * 1100, within(1e-9));
    assertThat(quantities.inputs())
        .filteredOn(input -> input.name().equals("area"))
        .singleElement()
        .satisfies(
            input -> {
              assertThat(input.quantity().in(Unit.SQUARE_METRE)).isCloseTo(30, within(1e-9));
              assertThat(input.basis()).isEqualTo("sum of 2 rows");
            });
  }

  @Test
  void withoutAnAreaNothingIsTakenOff() {
    Checked checked =
        checked("Tag,Material,Size,Grout joint width\nGT-1,Glass tile,98 x 98 mm,2 mm\n");
    assertThat(checked.outcome().calculations()).noneMatch(one -> one.check().equals("quantities"));
  }

  private static double number(Calculation calculation, String step) {
    return calculation.steps().stream()
        .filter(one -> one.name().equals(step))
        .findFirst()
        .orElseThrow()
        .result()
        .number();
  }

  private Checked checked(String table) {
    return Checked.ofFiles(folder, "schedule.csv", table);
  }

  private Finding only(String check, String table) {
    var findings = checked(table).findings(check);
    assertThat(findings).extracting(Finding::message).hasSize(1);
    return findings.get(0);
  }
}
