package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is right for the trade by place: cases that a figure or a standard alone once passed. */
class TradeFindingsTest {
  @TempDir Path folder;

  // ANSI A326.3-2021 use classes, as trade discussions report them: 0.42, 0.50, 0.55.
  @ParameterizedTest
  @CsvSource({
    "Terrace,Floor,Exterior,0.42,0.55 or more",
    "Natatorium,Pool deck,Wet,0.42,0.50 or more",
    "Steam room,Floor,Steam,0.42,0.50 or more",
    "Locker room,Floor,Wet,0.42,0.50 or more",
    "Entrance,Ramp,Exterior,0.42,0.55 or more",
    "Lobby,Floor,Dry,0.36,0.42 or more",
  })
  void oneFrictionFigureDoesNotServeAllFloors(
      String room, String surface, String exposure, String figure, String wanted)
      throws IOException {
    Finding finding = only("floor-slip", floor(room, surface, exposure, figure));

    assertThat(finding.level()).isEqualTo(Level.ERROR);
    assertThat(finding.expected()).startsWith(wanted);
  }

  @ParameterizedTest
  @CsvSource({
    "Terrace,Floor,Exterior,0.55",
    "Natatorium,Pool deck,Wet,0.50",
    "Steam room,Floor,Steam,0.50",
    "Guest bath,Shower floor,Wet,0.42",
    "Lobby,Floor,Dry,0.42",
  })
  void theFigureOfItsPlacePasses(String room, String surface, String exposure, String figure)
      throws IOException {
    assertThat(checked(floor(room, surface, exposure, figure)).findings("floor-slip")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({
    "Natatorium,Pool deck,Wet",
    "Natatorium,Pool steps,Wet",
    "East stair,Stair treads,Dry"
  })
  void whereFeetGoTheFigureIsAskedFor(String room, String surface, String exposure)
      throws IOException {
    assertThat(only("floor-slip", floor(room, surface, exposure, "")).kind())
        .isEqualTo(FindingKind.MISSING);
  }

  @Test
  void whoUsesAShowerIsAskedForAShowerThatIsNotSaidToBePrivate() throws IOException {
    Finding finding = only("floor-slip", floor("Shower", "Floor", "Wet", "0.42"));

    assertThat(finding.level()).isEqualTo(Level.ERROR);
    assertThat(finding.question()).contains("public");
  }

  @Test
  void theFloorOfAPoolIsAQuestionAndThatOfAFountainNone() throws IOException {
    assertThat(only("floor-slip", floor("Lap pool", "Pool floor", "Submerged", "")).level())
        .isEqualTo(Level.NOTE);
    assertThat(
            checked(floor("Fountain basin", "Pool floor", "Submerged", "")).findings("floor-slip"))
        .isEmpty();
  }

  @Test
  void theUseThatTheMakerDeclaresStandsForTheFigure() throws IOException {
    String table =
        "Tag,Material,Room,Surface,Exposure,Use class\n"
            + "GT-1,Glass tile,Terrace,Floor,Exterior,Exterior Wet\n"
            + "GT-2,Glass tile,Terrace,Floor,Exterior,Interior Wet\n";

    assertThat(checked(table).findings("floor-slip"))
        .extracting(Finding::tags)
        .containsExactly(List.of("GT-2"));
  }

  private static String floor(String room, String surface, String exposure, String figure) {
    return "Tag,Material,Room,Surface,Exposure,Wet DCOF\nGT-1,Glass tile,"
        + String.join(",", room, surface, exposure, figure == null ? "" : figure)
        + "\n";
  }

  @Test
  void gypsumIsRefusedWhereWetUnderAMembraneTooAndWoodWherever() throws IOException {
    String table =
        "Tag,Material,Exposure,Substrate,Membrane\n"
            + "GT-1,Glass mosaic,Wet,Gypsum board,ANSI A118.10\n"
            + "GT-2,Glass mosaic,Dry,Plywood,\n";

    assertThat(checked(table).findings("substrate-place"))
        .extracting(f -> f.tags() + " " + f.level())
        .containsExactlyInAnyOrder("[GT-1] ERROR", "[GT-2] ERROR");
  }

  @Test
  void slabsUnderSeeThroughGlassAreNotSentACrackIsolationMembrane() throws IOException {
    String table =
        "Tag,Material,Translucency,Surface,Substrate\n"
            + "GT-1,Glass tile,Translucent,Floor,Concrete slab\n"
            + "GT-2,Glass tile,Opaque,Floor,Concrete slab\n";

    assertThat(checked(table).findings("crack-isolation"))
        .extracting(Finding::tags)
        .containsExactly(List.of("GT-2"));
  }

  @Test
  void theGlassTileStandardSettlesThermalShock() throws IOException {
    String table =
        "Tag,Material,Exposure,Tile standard\n"
            + "GT-1,Glass tile,Direct sun,ANSI A137.2\n"
            + "GT-2,Glass tile,Direct sun,\n";

    assertThat(checked(table).findings("thermal-shock"))
        .extracting(Finding::tags)
        .containsExactly(List.of("GT-2"));
  }

  @ParameterizedTest
  @CsvSource({"cast,350 psi,1", "cast,400 psi,0", "low-temperature coated,350 psi,0"})
  void bondIsFourHundredAtLeastAndNoMatterOfCoatings(String kind, String bond, int findings)
      throws IOException {
    String table =
        "Tag,Material,Glass kind,Mortar,Shear bond\nGT-1,Glass tile,"
            + kind
            + ",ANSI A118.3,"
            + bond;

    Checked checked = checked(table + "\n");
    assertThat(
            checked.findings("bond-strength").size()
                + checked.findings("bond-strength-by-class").size())
        .isEqualTo(findings);
  }

  @Test
  void theMakersWrittenWordClearsABacking() throws IOException {
    String table =
        "Tag,Material,Backing,Mortar\nGT-3,Glass tile,Painted,ANSI A118.15\n"
            + "GT-4,Glass tile,Painted,ANSI A118.15\n";
    Files.writeString(
        folder.resolve("notes.txt"),
        "TILE NOTES\n1. The tile manufacturer shall confirm in writing that the mortar is suitable for"
            + " the painted backing of GT-3.\n");

    assertThat(checked(table).findings("backing"))
        .extracting(Finding::tags)
        .containsExactly(List.of("GT-4"));
  }

  @Test
  void aPoolOutOfDoorsHasTheJointsOfOutdoors() throws IOException {
    String row = ",Glass mosaic,1 x 1 in,Pool,Submerged,1/4 in,12 ft,50,40 °F\n";
    Checked checked =
        checked(
            "Tag,Room,Material,Size,Surface,Exposure,Movement joint width,Movement joint"
                + " spacing,Sealant class,Temperature range\n"
                + "GT-1,Outdoor pool"
                + row
                + "GT-2,Lap pool"
                + row
                + "GT-3,Natatorium"
                + row);

    assertThat(checked.findings("movement-width"))
        .extracting(f -> f.tags() + " " + f.level())
        .containsExactlyInAnyOrder("[GT-1] ERROR", "[GT-2] NOTE");
  }

  private Finding only(String check, String table) throws IOException {
    List<Finding> findings = checked(table).findings(check);
    assertThat(findings).extracting(Finding::message).hasSize(1);
    return findings.get(0);
  }

  private Checked checked(String table) throws IOException {
    return Checked.ofFiles(folder, "schedule.csv", table);
  }

  @Test
  void twelveFeetInMetresAreTwelveFeet() throws IOException {
    String table =
        "Tag,Material,Exposure,Movement joint spacing,Movement joint width\n"
            + "GT-1,Glass mosaic,Exterior,3.66 m,1/2 in\n"
            + "GT-2,Glass mosaic,Exterior,3.8 m,1/2 in\n";

    assertThat(checked(table).findings("movement-spacing"))
        .extracting(Finding::tags)
        .containsExactly(List.of("GT-2"));
  }
}
