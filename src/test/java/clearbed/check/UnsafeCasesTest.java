package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Verdict;
import clearbed.model.report.Verdict.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What once passed, or was advised, and can hurt people or fail: each fires, is silent where the
 * documents say it right, and does not apply where it does not belong.
 */
class UnsafeCasesTest {
  @TempDir Path folder;

  private Outcome outcome(String row, String clause, String check) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Room,Surface,Exposure,Size,Kind of Glass,Backing,Translucency,Substrate\nGT-1,Glass tile,"
            + row
            + "\n");
    Files.writeString(
        folder.resolve("09 30 00.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 TILES\n\nA. GT-1: glass tile.\nB. "
            + clause
            + "\n");
    List<Verdict> verdicts = Checked.of(folder).verdicts(check);
    assertThat(verdicts).hasSize(1);
    return verdicts.get(0).outcome();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        // One friction figure for all floors.
        "Terrace,Floor,Exterior,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.42. | floor-slip | FINDING",
        "Terrace,Floor,Exterior,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.55. | floor-slip | SATISFIED",
        "Terrace,Wall,Exterior,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: cast. | floor-slip | NOT_APPLICABLE",
        "Natatorium,Pool deck,Wet,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: cast. | floor-slip | FINDING",
        "Natatorium,Pool deck,Wet,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.50. | floor-slip | SATISFIED",
        "Fountain,Basin,Submerged,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: cast. | floor-slip | NOT_APPLICABLE",
        "Steam room,Floor,Steam,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.42. | floor-slip | FINDING",
        "Steam room,Floor,Steam,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.52. | floor-slip | SATISFIED",
        "Main stair,Stair treads,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.50. | slip-sloped | FINDING",
        "Main stair,Stair treads,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: the manufacturer shall confirm in writing that the tile is suited to stairs. | slip-sloped | SATISFIED",
        "Lobby,Floor,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: cast. | slip-sloped | NOT_APPLICABLE",
        "Natatorium,Pool deck,Wet,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: wet DCOF 0.42. | floor-slip | FINDING",
        "Natatorium,Pool steps,Submerged,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: cast. | floor-slip | FINDING",
        // See-through glass on a membrane.
        "Shower,Wall,Wet,4 x 4 in,Cast,None,Transparent,Cement board | Waterproof membrane: ANSI A118.10. | membrane-see-through | FINDING",
        "Shower,Wall,Wet,4 x 4 in,Cast,None,Transparent,Cement board | Waterproof membrane: ANSI A118.10, behind a mortar bed. | membrane-see-through | SATISFIED",
        "Shower,Wall,Wet,4 x 4 in,Cast,None,Opaque,Cement board | Waterproof membrane: ANSI A118.10. | membrane-see-through | NOT_APPLICABLE",
        "Lobby,Floor,Dry,4 x 4 in,Cast,None,Translucent,Concrete slab | GT-1: cast. | crack-isolation | NOT_APPLICABLE",
        // What is behind it.
        "Shower,Wall,Wet,4 x 4 in,Cast,None,Opaque,Gypsum board | GT-1: cast. | substrate-place | FINDING",
        "Shower,Wall,Wet,4 x 4 in,Cast,None,Opaque,Cement board | GT-1: cast. | substrate-place | SATISFIED",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Plywood | GT-1: cast. | substrate-place | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Gypsum board | GT-1: cast. | substrate-place | SATISFIED",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque, | GT-1: cast. | substrate-place | NOT_APPLICABLE",
        "Shower,Wall,Wet,4 x 4 in,Cast,None,Opaque,Gypsum board | Waterproof membrane: ANSI A118.10. | substrate-place | FINDING",
        // Movement.
        "Outdoor pool,Pool,Submerged,1 x 1 in,Cast,None,Opaque,Concrete | Movement joints: 3/8 in wide at 12 ft centers. | movement-width | FINDING",
        "Level 4 lobby,Floor,Dry,24 x 24 in,Cast,None,Opaque,Level 4 concrete slab | Movement joints: 1/4 in wide at 25 ft centers. | movement-spacing | FINDING",
        "Level 4 lobby,Floor,Dry,24 x 24 in,Cast,None,Opaque,Level 4 concrete slab | Movement joints: 1/4 in wide at 12 ft centers. | movement-spacing | SATISFIED",
        "Lobby,Floor,Dry,24 x 24 in,Cast,None,Opaque,Slab on grade | Movement joints: 1/8 in wide at 20 ft centers; range of tile surface temperature 20 °F; sealant Class 50. | movement-width | FINDING",
        "Outdoor pool,Pool,Submerged,1 x 1 in,Cast,None,Opaque,Concrete | Movement joints: 1/4 in wide at 12 ft centers. | movement-width | FINDING",
        "Outdoor pool,Pool,Submerged,1 x 1 in,Cast,None,Opaque,Concrete | Movement joints: 1/2 in wide at 12 ft centers; range of tile surface temperature 90 °F; sealant Class 50. | movement-width | SATISFIED",
        // Heat.
        "Terrace,Wall,Exterior,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: cast. | thermal-shock | FINDING",
        "Terrace,Wall,Exterior,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: ANSI A137.2. | thermal-shock | NOT_APPLICABLE",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: cast. | thermal-shock | NOT_APPLICABLE",
        // The standard of ceramic tile beside that of glass, and a mortar that is no more.
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: ANSI A137.2, ANSI A137.1. | tile-standard | SATISFIED",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: ANSI A137.1. | tile-standard | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Mortar: ANSI A118.2. | mortar-class | FINDING",
        // Water that comes early.
        "Pool tank,Pool,Submerged,1 x 1 in,Cast,None,Opaque,Concrete | Fill the pool 3 days after grouting. | cure-before-filling | FINDING",
        "Pool tank,Pool,Submerged,1 x 1 in,Cast,None,Opaque,Concrete | Fill the pool 21 days after grouting. | cure-before-filling | SATISFIED",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | GT-1: cast. | cure-before-filling | NOT_APPLICABLE",
        // Bond.
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Mortar: ANSI A118.4, shear bond strength 350 psi. | bond-strength | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Mortar: ANSI A118.4, shear bond strength 400 psi. | bond-strength | SATISFIED",
        "Lobby,Wall,Dry,4 x 4 in,Low-temperature coated,None,Opaque,Concrete | Mortar: ANSI A118.4, shear bond strength 350 psi. | bond-strength | NOT_APPLICABLE",
        // Coverage where it is dry and opaque.
        "Lobby,Floor,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Mortar coverage: 60 percent. | coverage-least | FINDING",
        "Lobby,Floor,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Mortar coverage: 85 percent. | coverage-least | SATISFIED",
        "Shower,Floor,Wet,4 x 4 in,Cast,None,Opaque,Concrete | Mortar coverage: 60 percent. | coverage-least | NOT_APPLICABLE",
        // The short straightedge.
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Substrate flat within 1/4 in in 10 ft and 1/4 in in 12 in. | flatness | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Substrate flat within 1/4 in in 10 ft and 1/16 in in 12 in. | flatness | SATISFIED",
        // Sealant as deep as its makers ask.
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Movement joints: 1/4 in wide; sealant depth 1/16 in. | sealant-depth | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Movement joints: 1/4 in wide; sealant depth 1/4 in. | sealant-depth | SATISFIED",
        // Steam goes through what holds water.
        "Steam room,Wall,Steam,2 x 2 in,Cast,None,Opaque,Concrete | Waterproof membrane: ANSI A118.10. | steam-vapour | FINDING",
        "Steam room,Wall,Steam,2 x 2 in,Cast,None,Opaque,Concrete | Waterproof membrane: ANSI A118.10, 0.5 perm. | steam-vapour | SATISFIED",
        "Shower,Wall,Wet,2 x 2 in,Cast,None,Opaque,Concrete | Waterproof membrane: ANSI A118.10. | steam-vapour | NOT_APPLICABLE",
        // Frost that nobody speaks of.
        "Facade,Wall,Exterior,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: cast. | frost-unsaid | FINDING",
        "Facade,Wall,Exterior,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: freeze-thaw resistance to ASTM C1026. | frost-unsaid | SATISFIED",
        "Lobby,Wall,Dry,2 x 2 in,Cast,None,Opaque,Concrete | GT-1: cast. | frost-unsaid | NOT_APPLICABLE",
        // Paint against cement.
        "Lobby,Wall,Dry,4 x 4 in,Cast,Painted,Opaque,Concrete | Mortar: ANSI A118.15 cement mortar. | backing | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,Painted,Opaque,Concrete | Mortar: ANSI A118.3 epoxy. | backing | SATISFIED",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Mortar: ANSI A118.15 cement mortar. | backing | NOT_APPLICABLE",
        "Lobby,Wall,Dry,4 x 4 in,Cast,Painted,Opaque,Concrete | Mortar: ANSI A118.15. The tile manufacturer shall confirm in writing that the mortar is suitable for the painted backing. | backing | NOT_APPLICABLE",
        // Stiffness.
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Cement board | Deflection of the substrate: L/240. | deflection | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Cement board | Deflection of the substrate: L/600. | deflection | SATISFIED",
        "Pool,Pool,Submerged,1 x 1 in,Cast,None,Opaque,Concrete | GT-1: cast. | deflection | NOT_APPLICABLE",
        // Acid.
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Clean tile with dilute muriatic acid to remove haze. | acid-cleaning | FINDING",
        "Lobby,Wall,Dry,4 x 4 in,Cast,None,Opaque,Concrete | Clean tile with neutral cleaner; use no acids. | acid-cleaning | SATISFIED",
      })
  void what_is_unsafe_is_found_and_nothing_else(
      String row, String clause, String check, Outcome expected) throws IOException {
    assertThat(outcome(row, clause, check)).isEqualTo(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Lobby,Wall,Dry | Movement joints by BS 5385-1: 8 mm wide at 7.5 m centres. | movement-spacing | FINDING",
        "Lobby,Wall,Dry | Movement joints by BS 5385-1: 8 mm wide at 4 m centres. | movement-spacing | SATISFIED",
        "Facade,Wall,\"External, frost\" | Movement joints by BS 5385-2: 12 mm wide at 3.6 m centres. | movement-spacing | SATISFIED",
        "Terrace,Floor,External | GT-1: slip class R10 to EN 16165 Annex B. | floor-slip | FINDING",
        "Terrace,Floor,External | GT-1: slip class R11 to EN 16165 Annex B. | floor-slip | SATISFIED",
        "Showers,Floor,\"Wet, barefoot\" | GT-1: wet PTV 36 to EN 16165. | slip-slider | FINDING",
        "Showers,Floor,\"Wet, barefoot\" | GT-1: wet PTV 36 with slider 55 to EN 16165. | slip-slider | SATISFIED",
        "Lobby,Wall,Dry | GT-1: sealant of movement joints to EN 15651-1. | joint-sealant-facade | FINDING",
        "Lobby,Wall,Dry | GT-1: sealant of movement joints to ISO 11600 F-25LM. | joint-sealant-facade | SATISFIED",
        "Facade,Wall,External | GT-1: sealant of movement joints to EN 15651-1. | joint-sealant-facade | NOT_APPLICABLE",
        "Shower,Wall,Wet | GT-1: sealant of movement joints to EN 15651-3. | joint-sealant-sanitary | NOT_APPLICABLE",
        "Pool tank,Wall,Submerged | GT-1: sealant of movement joints to EN 15651-3. | joint-sealant-sanitary | FINDING",
        "Lobby,Wall,Dry | Work at 5 to 30 degC. | temperature | SATISFIED",
      })
  void what_is_unsafe_by_iso_and_en_is_found_and_nothing_else(
      String row, String clause, String check, Outcome expected) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Ref,Material,Room,Surface,Exposure\nGT-1,Glass tile," + row + "\n");
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 TILES\n\nA. GT-1: glass tile.\nB. "
            + clause
            + "\n");
    List<Verdict> verdicts = Checked.by("iso-en", folder).verdicts(check);
    assertThat(verdicts).hasSize(1);
    assertThat(verdicts.get(0).outcome()).isEqualTo(expected);
  }
}
