package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Calculation;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.Verdict;
import clearbed.model.value.Content;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A figure that is not plain is neither a value nor a blank. */
class UnreadFiguresTest {
  private static final String HEADER =
      "Tag,Material,Exposure,Size,Area (sq ft),Grout joint (in),Shear bond,"
          + "Movement joint width,Movement joint spacing,Size variation";
  private static final String PLAIN =
      "GT-1,Glass mosaic,Exterior,4 x 4 in,420,1/8,450 psi,3/8 in,8 ft,1/32 in";

  @TempDir Path folder;

  private Checked checked(String... rows) throws IOException {
    return Checked.ofFiles(folder, "tile.csv", HEADER + "\n" + String.join("\n", rows) + "\n");
  }

  private Checked with(String plain, String odd) throws IOException {
    return checked(PLAIN.replace("," + plain + ",", "," + odd + ","));
  }

  private static List<Calculation> quantities(Checked checked) {
    return checked.outcome().calculations().stream()
        .filter(c -> c.check().equals("quantities"))
        .toList();
  }

  @Test
  void quantitiesAreTakenOffFromPlainFigures() throws IOException {
    Calculation plain = quantities(checked(PLAIN)).get(0);

    assertThat(plain.lacks()).isEmpty();
    assertThat(plain.steps()).isNotEmpty();
  }

  @Test
  void quantitiesThatLackTheirAreaSayWhy() throws IOException {
    Checked checked = with("420", "120 + 80");
    Calculation lacking = quantities(checked).get(0);

    assertThat(lacking.steps()).isEmpty();
    assertThat(lacking.lacks()).isEqualTo("area not understood: '120 + 80' (tile.csv, cell E2)");
    assertThat(checked.governing("GT-1", "location.area")).isEmpty();
    assertThat(checked.entry("GT-1").blanks()).doesNotContainKey("location.area");
  }

  @Test
  void oneAreaOfSeveralThatIsNotUnderstoodLeavesTheSumOpen() throws IOException {
    Checked checked = checked(PLAIN, PLAIN.replace(",420,", ",42 LF,"));

    assertThat(quantities(checked).get(0).lacks())
        .isEqualTo("area not understood: '42 LF' (tile.csv, cell E3)");
  }

  @Test
  void aSizeAndAGroutJointAreWaitedForToo() throws IOException {
    String row = PLAIN.replace(",4 x 4 in,", ",4 x 4 in / 6 x 6 in,").replace(",1/8,", ",1/8 1/4,");

    assertThat(quantities(checked(row)).get(0).lacks())
        .startsWith("tile size not understood: '4 x 4 in / 6 x 6 in' (")
        .contains("; grout joint not understood: '1/8 1/4' (");
  }

  @Test
  void aWidthThatIsNotUnderstoodIsAFindingOfItsOwnAndNotMissing() throws IOException {
    Checked checked = with("3/8 in", "3/8 + 1/8 in");
    List<Finding> findings = checked.findings("movement-width");

    assertThat(findings).hasSize(1);
    Finding finding = findings.get(0);
    assertThat(finding.kind()).isEqualTo(FindingKind.UNREAD);
    assertThat(finding.level()).isEqualTo(Level.WARNING);
    assertThat(finding.id()).isEqualTo("movement-width/gt-1");
    assertThat(finding.origin().cell()).isEqualTo("H2");
    assertThat(finding.message())
        .isEqualTo("Width of movement joints of GT-1 is not understood: '3/8 + 1/8 in'.");
    assertThat(finding.question())
        .isEqualTo(
            "Which figure is meant by '3/8 + 1/8 in' for the width of movement joints of GT-1?");
    Verdict verdict = checked.verdicts("movement-width").get(0);
    assertThat(verdict.outcome()).isEqualTo(Verdict.Outcome.UNREAD);
    assertThat(verdict.found()).isEqualTo("not understood: '3/8 + 1/8 in'");
  }

  @Test
  void aJointThatDependsOnASpacingThatIsNotUnderstoodSaysSo() throws IOException {
    Finding finding = with("8 ft", "8 + 4 ft").findings("movement-width").get(0);

    assertThat(finding.message())
        .contains("what is not stated or not understood: ")
        .contains("joint spacing (not understood: '8 + 4 ft' (tile.csv, cell I2), reckoned with");
  }

  @Test
  void aJointMayNotPassOnOneFigureWhenAnotherBesideItIsNotUnderstood() throws IOException {
    Checked checked = checked(PLAIN, PLAIN.replace(",450 psi,", ",450/300 psi,"));

    assertThat(checked.findings("bond-strength")).hasSize(1);
    assertThat(checked.findings("bond-strength").get(0).kind()).isEqualTo(FindingKind.UNREAD);
  }

  @Test
  void whatIsWrongStaysWrongBesideAFigureThatIsNotUnderstood() throws IOException {
    Checked checked =
        checked(
            PLAIN.replace(",450 psi,", ",300 psi,"), PLAIN.replace(",450 psi,", ",450/300 psi,"));

    assertThat(checked.findings("bond-strength")).hasSize(1);
    assertThat(checked.findings("bond-strength").get(0).kind()).isEqualTo(FindingKind.INADEQUATE);
  }

  @Test
  void theFigureOfAnArticleDoesNotClearOneOfTheRowThatIsNotUnderstood() throws IOException {
    Files.writeString(
        folder.resolve("section.txt"),
        """
        SECTION 09 30 00
        TILING
        PART 2 - PRODUCTS
        2.1 MORTAR
        A. Mortar for glass tile: shear bond strength above 450 psi.
        """);
    Checked checked = with("450 psi", "4+50 psi");

    assertThat(checked.findings("bond-strength")).hasSize(1);
    assertThat(checked.findings("bond-strength").get(0).found())
        .isEqualTo("not understood: '4+50 psi'");
    assertThat(with("450 psi", "").findings("bond-strength")).isEmpty();
  }

  @Test
  void aGroutJointDoesNotPassOnASizeVariationThatIsNotUnderstood() throws IOException {
    Checked checked = checked(PLAIN.replace(",1/32 in", ",1/32 + 1/8 in"));

    assertThat(checked.findings("grout-width").get(0).message())
        .isEqualTo("Size variation of the tile of GT-1 is not understood: '1/32 + 1/8 in'.");
    assertThat(checked(PLAIN).findings("grout-width")).isEmpty();
  }

  @Test
  void aClauseWithAFigureThatIsNotUnderstoodIsAFindingAtItsPlace() throws IOException {
    Files.writeString(
        folder.resolve("section.txt"),
        """
        SECTION 09 30 00
        TILING
        PART 2 - PRODUCTS
        2.1 GLASS TILE
        A. GT-1: glass mosaic, 1 x 1 in.
        2.2 MORTAR
        A. Mortar for glass tile: shear bond strength 400/450 psi.
        """);
    Finding finding = Checked.of(folder).findings("bond-strength").get(0);

    assertThat(finding.kind()).isEqualTo(FindingKind.UNREAD);
    assertThat(finding.found()).isEqualTo("not understood: '400/450 psi'");
    assertThat(finding.origin().text()).contains("400/450 psi");
  }

  @Test
  void theUnitOfAQuantityMayStandInAColumnOfItsOwn() throws IOException {
    Files.writeString(
        folder.resolve("bill.csv"),
        """
        Tag,Material,Size,Qty,Unit
        GT-1,Glass mosaic,1 x 1 in,"1,250",SF
        GT-2,Glass tile,3 x 6 in,42,LF
        """);
    Checked checked = Checked.of(folder);

    assertThat(checked.governing("GT-1", "location.area")).containsExactly("1250 sq ft");
    assertThat(checked.governing("GT-2", "location.area")).isEmpty();
    assertThat(checked.entry("GT-2").unread("location.area").get(0).content())
        .isEqualTo(new Content.NotUnderstood("42 LF"));
  }
}
