package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Tests of the tile in the terms of ISO and EN standards. Pendulum values of 36 and more are of low
 * slip potential by the Health and Safety Executive's sheet on assessing the slip resistance of
 * flooring (25 to 35 moderate, below 25 high). Barefoot classes begin at 12, 18 and 24°, class A
 * for largely dry floors, B for showers and pool surrounds (handed down from DIN 51097, from
 * memory); shod class R10 begins at 10° (DIN 51130, from memory).
 */
class IsoEnTest {
  private static final Map<String, String> ROWS =
      Map.of(
          "frost", "Glass tile,Entrance,Wall,\"External, frost\"",
          "steam", "Glass tile,Hammam,Wall,Steam",
          "floor", "Glass tile,Changing room,Floor,Wet",
          "showers", "Glass mosaic,Showers,Floor,Wet",
          "lobby", "Glass mosaic,Lobby,Floor,Dry",
          "foyer", "Glass tile,Foyer,Wall,Dry",
          "pool", "Glass mosaic,Pool tank,Wall,Submerged");

  @TempDir Path folder;

  private Checked set(String row, String clause) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"), "Ref,Material,Room,Surface,Exposure\nGT1," + row + "\n");
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 TILES\n\nA. " + clause + "\n");
    return Checked.by("iso-en", folder);
  }

  @Test
  void a_class_uses_the_listed_standard_that_it_is_of() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Ref,Material,Room,Adhesive\nGT1,Glass tile,Foyer,\"C2TE S1, white\"\n");
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 1 - GENERAL\n\n1.2 REFERENCES\n\n"
            + "A. EN 12004-1, adhesives for tiles.\n\nB. EN 13888-1, grouts.\n\n"
            + "PART 2 - PRODUCTS\n\n2.1 GLASS TILE\n\nA. Glass tile shall be white.\n");
    assertThat(Checked.by("iso-en", folder).findings("unused-standard"))
        .singleElement()
        .satisfies(f -> assertThat(f.message()).startsWith("EN 13888-1"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "freeze-thaw | frost | GT1: cast glass tile.",
        "freeze-thaw | frost | GT1: thermal shock resistance to ISO 10545-9.",
        "thermal-shock | steam | GT1: cast glass tile.",
        "thermal-shock | steam | GT1: frost resistance to BS EN ISO 10545-12.",
        "floor-slip | floor | GT1: textured surface.",
        "floor-slip | floor | GT1: tested for slip to BS EN 16165.",
        "floor-slip | floor | GT1: pendulum test to BS EN 16165 Annex C, slider 55, wet.",
        "floor-slip | floor | GT1: PTV not less than 20 wet to BS EN 16165.",
        "floor-slip | floor | GT1: slip resistance 28 PTV wet (slider 96).",
        "floor-slip | floor | GT1: pendulum value 24 to 30, wet, dry 60.",
        "floor-slip | floor | GT1: dry PTV 55.",
        "floor-slip | floor | GT1: wet DCOF 0.30, ANSI A326.3.",
        "floor-slip | floor | GT1: slip class R9 to EN 16165 Annex B.",
        "floor-slip | lobby | GT1: PTV 20, wet.",
        "floor-slip | showers | GT1: slip resistance R10, EN 16165.",
        "floor-slip | showers | GT1: slip class R10/A by EN 16165.",
        "floor-slip | showers | GT1: barefoot class A to EN 16165 Annex A.",
        "floor-slip | showers | GT1: barefoot ramp test, EN 16165 Annex A, acceptance angle 14°.",
        "sealant-use | floor | GT1: sealant ISO 11600 F-25LM, neutral silicone.",
        "temperature | foyer | GT1: set tile at no less than 2 °C.",
        "withdrawn-standard | foyer | GT1: adhesive C2TE to EN 12004-1:2007.",
        "withdrawn-standard | foyer | GT1: bond tested to BS EN 1348.",
        "joint-sealant | foyer | GT1: sealant of movement joints to EN 15651-1.",
        "substrate-place | showers | GT1: substrate blockwork with gypsum plaster.",
        "vague | foyer | GT1: the substrate shall be fairly flat and level.",
        "joint-sealant | pool | GT1: sealant of movement joints to EN 15651-1, F-EXT-INT-CC 25LM.",
        "cure-before-filling | pool | GT1: the pool is not filled until 5 days after grouting.",
      })
  void a_test_that_no_document_names_is_asked_for(String check, String place, String clause)
      throws IOException {
    assertThat(set(ROWS.get(place), clause).findings(check)).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "freeze-thaw | frost | GT1: frost resistance to BS EN ISO 10545-12, no damage.",
        "freeze-thaw | frost | GT1: frost resistant to ISO 10545-12 after 100 cycles.",
        "freeze-thaw | frost | GT1: freeze-thaw to ASTM C1026, no damage.",
        "thermal-shock | steam | GT1: thermal shock resistance to EN ISO 10545-9.",
        "thermal-shock | steam | GT1: no damage in thermal shock by ASTM C484.",
        "floor-slip | floor | GT1: pendulum value (PTV) not less than 36 wet to BS EN 16165.",
        "floor-slip | floor | GT1: wet DCOF 0.42 or more, ANSI A326.3.",
        "floor-slip | floor | GT1: PTV of at least 36, wet.",
        "floor-slip | floor | GT1: 40 PTV wet, slider 96, by BS EN 16165 Annex C.",
        "floor-slip | floor | GT1: wet pendulum test value (slider 55, BS EN 16165 Annex C): 36 or more.",
        "floor-slip | floor | GT1: reject any tile with a PTV below 36.",
        "floor-slip | floor | GT1: PTV 60 dry, 38 wet.",
        "floor-slip | floor | GT1: slip class R10 or higher to EN 16165 Annex B.",
        "floor-slip | floor | GT1: R11 to DIN EN 16165.",
        "floor-slip | lobby | GT1: slip class R9 to EN 16165 Annex B.",
        "floor-slip | showers | GT1: R10/B.",
        "floor-slip | showers | GT1: barefoot class B, EN 16165 Annex A.",
        "floor-slip | showers | GT1: class C to EN 16165 Annex A (barefoot ramp).",
        "floor-slip | showers | GT1: barefoot ramp test, EN 16165 Annex A, acceptance angle at least 24°.",
        "floor-slip | showers | GT1: R10 and a wet pendulum test value of 36 with slider 55.",
        "freeze-thaw | foyer | GT1: cast glass tile.",
        "thermal-shock | foyer | GT1: cast glass tile.",
        "floor-slip | foyer | GT1: cast glass tile.",
        "sealant-use | floor | GT1: sealant to EN 15651-4, PW INT 25LM.",
        "sealant-use | floor | GT1: the sealant is declared by its maker for foot traffic.",
        "temperature | foyer | GT1: set tile while air and floor are between 5 and 35 °C.",
        "withdrawn-standard | foyer | GT1: adhesive C2TE to EN 12004-1:2017.",
        "withdrawn-standard | foyer | GT1: adhesive C2TE to EN 12004-1.",
        "joint-sealant | frost | GT1: sealant of movement joints to EN 15651-1.",
        "joint-sealant | foyer | GT1: sealant of movement joints to ISO 11600 F-25LM.",
        "cure-before-filling | pool | GT1: fill the pool not less than 21 days after grouting.",
        "cure-before-filling | pool | GT1: fill the pool three weeks after grouting.",
      })
  void a_test_that_is_named_or_not_called_for_raises_nothing(
      String check, String place, String clause) throws IOException {
    assertThat(set(ROWS.get(place), clause).findings(check)).isEmpty();
  }

  private Checked onConcrete(String clause) throws IOException {
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 TILES\n\nA. " + clause + "\n");
    return column("Substrate", "Concrete slab");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "GT1: cast glass tile. | 1",
        "GT1: the waterproof membrane is to EN 14891, class CM O1P. | 1",
        "GT1: lay a decoupling mat under the tile. | 0",
        "GT1: the membrane below it bridges the cracks of the slab. | 0",
        "GT1: crack isolation membrane to ANSI A118.12. | 0",
      })
  void over_a_concrete_floor_a_layer_that_bridges_cracks_is_asked_for(String clause, int times)
      throws IOException {
    assertThat(onConcrete(clause).findings("crack-isolation")).hasSize(times);
  }

  private Checked column(String header, String cell) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Ref,Material,Room,Surface,Exposure,"
            + header
            + "\nGT1,"
            + ROWS.get("showers")
            + ",\""
            + cell
            + "\"\n");
    return Checked.by("iso-en", folder);
  }

  /** What is found of slip resistance, the question for the slider aside. */
  private List<Finding> slip(String header, String cell) throws IOException {
    return column(header, cell).findings("floor-slip").stream()
        .filter(f -> !f.attribute().equals("tile.slider"))
        .toList();
  }

  private Checked floor(String place, String cited, String clause) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Ref,Material,Room,Surface,Exposure\nGT1,Glass mosaic," + place + "\n");
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 TILES\n\nA. Tile work is to "
            + cited
            + ".\nB. GT1: "
            + clause
            + "\n");
    return Checked.by("iso-en", folder);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'Terrace,Floor,External' | DIN 18157 | slip class R10 to EN 16165. | class R11, or R10 with V4, outside",
        "'Terrace,Floor,External' | AS 3958 | slip class P3 to AS/NZS 4586. | class P4 or higher, or class R11, or R10 with V4, outside",
        "'Terrace,Floor,External' | BS 5385-3 | wet PTV 30. | a wet pendulum test value of 36 or more with slider 96",
        "'Pool surround,Floor,Wet' | DIN 18157 | barefoot class A to DIN 51097. | barefoot class B or C",
        "'Pool steps,Steps,Wet' | DIN 18157 | barefoot class B to DIN 51097. | barefoot class C on steps and slopes into water",
        "'Communal showers,Floor,Wet' | AS 3958 | slip class P3 to AS 4586. | class P4 or higher, or barefoot class B or C",
        "'Kitchen,Floor,Wet' | ISO 13007-1 | slip class R9. | a wet pendulum test value of 36 or more with slider 96, or class R10 or higher where it is wet",
      })
  void each_place_wants_its_own_slip_resistance_in_the_terms_of_its_country(
      String place, String cited, String clause, String expected) throws IOException {
    assertThat(floor(place, cited, clause).findings("floor-slip"))
        .filteredOn(f -> f.level() == Level.WARNING)
        .extracting(Finding::expected)
        .containsExactly(expected);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "'Terrace,Floor,External' | DIN 18157 | slip class R11 to EN 16165.",
        "'Terrace,Floor,External' | DIN 18157 | slip class R10/V4 to EN 16165.",
        "'Terrace,Floor,External' | AS 3958 | slip class P4 to AS/NZS 4586.",
        "'Pool surround,Floor,Wet' | DIN 18157 | barefoot class B to DIN 51097.",
        "'Pool steps,Steps,Wet' | DIN 18157 | barefoot class C to DIN 51097.",
        "'Pool surround,Floor,Wet' | BS 5385-4 | wet PTV 40, slider 55, to BS EN 16165 Annex C.",
        "'Hotel bathroom,Floor,Wet' | AS 3958 | slip class P3 to AS 4586.",
        "'Reflecting pool,Pool floor,Submerged' | DIN 18157 | cast glass.",
        "'Foyer,Wall,Dry' | DIN 18157 | cast glass.",
      })
  void what_the_place_wants_raises_nothing(String place, String cited, String clause)
      throws IOException {
    assertThat(floor(place, cited, clause).findings("floor-slip")).isEmpty();
  }

  @Test
  void a_pendulum_value_for_bare_feet_is_asked_for_its_slider() throws IOException {
    assertThat(floor("Showers,Floor,Wet", "BS 5385-4", "wet PTV 40.").findings("floor-slip"))
        .extracting(Finding::level, Finding::message)
        .containsExactly(
            tuple(
                Level.NOTE,
                "GT1 is walked on barefoot, and the slider of its pendulum value is not stated."));
    assertThat(
            floor("Showers,Floor,Wet", "BS 5385-4", "wet PTV 40, slider 96.")
                .findings("floor-slip"))
        .extracting(Finding::level, Finding::found)
        .containsExactly(tuple(Level.WARNING, "96"));
  }

  @Test
  void british_work_is_asked_for_a_pendulum_value_where_only_oil_was_tested() throws IOException {
    assertThat(floor("Kitchen,Floor,Wet", "BS 5385-3", "slip class R11.").findings("floor-slip"))
        .extracting(Finding::level, Finding::question)
        .containsExactly(
            tuple(Level.NOTE, "What is the wet pendulum test value of GT1, with slider 96?"));
    assertThat(floor("Kitchen,Floor,Wet", "DIN 18157", "slip class R11.").findings("floor-slip"))
        .isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Terrace,Floor,External | adhesive C2TE to EN 12004-1. | adhesive-deformable | 1",
        "Terrace,Floor,External | adhesive C2TE S1 to EN 12004-1. | adhesive-deformable | 0",
        "Terrace,Floor,External | adhesive C2FTES2 to EN 12004-1. | adhesive-deformable | 0",
        "Terrace,Floor,External | adhesive R2T to EN 12004-1. | adhesive-deformable | 0",
        "Foyer,Wall,Dry | adhesive C2TE to EN 12004-1. | adhesive-deformable | 0",
        "Showers,Wall,Wet | grout CG1 to EN 13888-1. | grout-class | 1",
        "Showers,Wall,Wet | grout CG2 WA to EN 13888-1. | grout-class | 0",
        "Showers,Wall,Wet | grout RG to EN 13888-1. | grout-class | 0",
        "Foyer,Wall,Dry | grout CG1 to EN 13888-1. | grout-class | 0",
        "Foyer,Wall,Dry | adhesive C1T to EN 12004-1. | mortar-class | 1",
        "Foyer,Wall,Dry | 'adhesive to EN 12004-1, tensile adhesion 0.5 N/mm2.' | bond-strength | 1",
        "Foyer,Wall,Dry | 'adhesive to EN 12004-1, tensile adhesion 1.0 N/mm2.' | bond-strength | 0",
        "Foyer,Wall,Dry | 'adhesive R2T, shear adhesion 1.5 N/mm2.' | bond-strength | 1",
        "Showers,Wall,Wet | the bonded sheet membrane is to ISO 13007-6. | membrane | 0",
        "Showers,Wall,Wet | the membrane is to DIN 18534. | membrane | 1",
        "'Showers,Wall,W2-I' | the membrane is to DIN 18534. | membrane | 0",
        "Showers,Wall,Wet | 'the membrane is to DIN 18534, class W2-I.' | membrane | 0",
        "Foyer,Wall,Dry | backgrounds within 3 mm under a 2 m straightedge. | flatness | 0",
        "Foyer,Wall,Dry | backgrounds within 6 mm under a 2 m straightedge. | flatness | 1",
        "Foyer,Wall,Dry | 'evenness by DIN 18202, table 3, row 7.' | flatness | 0",
        "Foyer,Floor,Dry | surface regularity SR1. | flatness | 0",
        "Foyer,Floor,Dry | surface regularity SR3. | flatness | 1",
        "Foyer,Wall,Dry | set tile from 5 to 30 °C. | temperature | 0",
        "Foyer,Wall,Dry | adhesive to BS 5980. | withdrawn-standard | 1",
        "Foyer,Wall,Dry | workmanship to BS 8000-11.1:1989. | withdrawn-standard | 1",
        "Foyer,Wall,Dry | tiling to AS 3958.1-2007. | withdrawn-standard | 1",
        "Foyer,Wall,Dry | adhesive C2 to EN 12004:2007. | withdrawn-standard | 1",
      })
  void classes_and_editions_are_read_and_judged(
      String place, String clause, String check, int times) throws IOException {
    Checked checked = floor(place, "ISO 11600", clause);
    assertThat(
            checked.findings(check).stream()
                .filter(
                    f ->
                        f.kind() != FindingKind.MISSING
                            || f.attribute().equals("mortar.deformability")
                            || f.attribute().equals("membrane.waterClass")))
        .hasSize(times);
  }

  @Test
  void an_undated_standard_that_stands_in_parts_now_is_a_note() throws IOException {
    assertThat(
            floor("Foyer,Wall,Dry", "ISO 11600", "adhesive C2 to EN 12004.")
                .findings("withdrawn-standard"))
        .extracting(Finding::level, Finding::expected)
        .containsExactly(tuple(Level.NOTE, "EN 12004-1:2017"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "BS 5385-3 | Floor | 9 | 0",
        "DIN 18157 | Floor | 9 | 1",
        "DIN 18157 | Floor | 6.5 | 0",
        "AS 3958 | Floor | 8 | 0",
        "AS 3958 | Wall | 6 | 1",
        "BS 5385-1 | Wall | 4.5 | 0",
      })
  void movement_joints_follow_the_code_of_the_country(
      String cited, String surface, String metres, int times) throws IOException {
    assertThat(
            floor(
                    "Foyer," + surface + ",Dry",
                    cited,
                    "movement joints 8 mm wide at " + metres + " m centres.")
                .findings("movement-spacing"))
        .hasSize(times);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Slip resistance | R10/B, PTV 36",
        "Slip resistance | 36",
        "Slip resistance | 36 wet",
        "Slip resistance | R10/B",
        "Slip resistance | B",
        "Slip resistance | 0.50",
        "PTV (wet) | 36+",
        "PTV | >= 40",
        "Wet PTV | 40",
        "Pendulum value | 38-44",
        "Slip rating | Class C (barefoot)",
        "Barefoot class | C",
        "Slip class | A+B",
      })
  void a_column_says_how_slip_resistant_a_tile_is(String header, String cell) throws IOException {
    assertThat(slip(header, cell)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Slip resistance | R10/A",
        "Slip resistance | 25",
        "Slip resistance | R10",
        "Slip resistance | 0.42",
        "Slip resistance | non-slip",
        "Slip resistance | EN 16165",
        "PTV | 24",
        "Barefoot class | A",
        "R rating | R11",
      })
  void a_column_that_says_too_little_is_reported_once(String header, String cell)
      throws IOException {
    assertThat(slip(header, cell)).hasSize(1);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Paper-faced sheets: press into the bed, wet the paper after 40 minutes, peel it off. | 0",
        "The face paper is soaked and drawn off before the adhesive sets; tiles are straightened. | 0",
        "Set paper-faced mosaic by the method of BS 5385-4. | 0",
        "Packing paper is taken off on site. | 1",
        "Paper-faced sheets are pressed into the bed. | 1"
      })
  void the_method_in_the_document_is_as_good_as_the_code(String clause, int findings)
      throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Ref,Material,Mounting,Room,Surface,Exposure\nGT1,Glass mosaic,Paper-faced,Foyer,Wall,Dry\n");
    Files.writeString(
        folder.resolve("09 30 00 Tiling.txt"),
        "SECTION 09 30 00 - TILING\n\nPART 3 - EXECUTION\n\n3.1 GLASS TILE\n\nA. " + clause + "\n");
    assertThat(Checked.by("iso-en", folder).findings("paper-face")).hasSize(findings);
  }

  @ParameterizedTest
  @ValueSource(strings = {"CM O1P", "DM O2P", "RM P", "O1P"})
  void a_class_of_a_membrane_is_of_its_standard(String code) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Ref,Material,Room,Surface,Exposure,Membrane\nGT1,Glass tile,Showers,Wall,Wet,"
            + code
            + "\n");
    assertThat(Checked.by("iso-en", folder).findings("membrane")).isEmpty();
  }

  @Test
  void a_standard_of_tile_is_no_letter_of_the_maker() throws IOException {
    assertThat(set("foyer", "Glass tile shall comply with ISO 13006.").findings("suitability"))
        .hasSize(1);
    assertThat(
            set(
                    "foyer",
                    "Glass tile: submit the tile maker's written confirmation of suitability for the place.")
                .findings("suitability"))
        .isEmpty();
  }
}
