package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the documents say of most glass tile and not of one stands out. */
class UnlikeOthersTest {
  @TempDir Path folder;

  private Checked schedule(String... rows) throws IOException {
    return Checked.ofFiles(folder, "schedule.csv", String.join("\n", rows) + "\n");
  }

  private static void onlyNotesOnBacking(Checked checked) {
    assertThat(checked.findings("tile-backing-stated"))
        .extracting(Finding::level)
        .isNotEmpty()
        .containsOnly(Level.NOTE);
  }

  @Test
  void a_backing_that_most_have_is_missed_more_where_one_has_none() throws IOException {
    Checked checked =
        schedule(
            "Tag,Material,Location",
            "GT-1,\"Cast glass tile, opaque, bare back\",Lobby wall",
            "GT-2,\"Fused glass tile, opaque, painted back\",Corridor wall",
            "GT-3,\"Fused glass tile, opaque\",Office wall");
    assertThat(checked.findings("tile-backing-stated"))
        .singleElement()
        .satisfies(f -> assertThat(f.tags()).containsExactly("GT-3"))
        .satisfies(f -> assertThat(f.level()).isEqualTo(Level.WARNING));
  }

  @Test
  void a_backing_that_few_have_is_a_note() throws IOException {
    Checked checked =
        schedule(
            "Tag,Material,Location",
            "GT-1,\"Cast glass tile, opaque, painted back\",Lobby wall",
            "GT-2,\"Fused glass tile, opaque\",Corridor wall",
            "GT-3,\"Fused glass tile, opaque\",Office wall");
    onlyNotesOnBacking(checked);
  }

  @Test
  void of_a_tile_without_the_standard_the_thermal_shock_test_is_asked_once() throws IOException {
    Checked checked =
        schedule(
            "Tag,Material,Exposure,Tile standard,Thermal shock test",
            "GT-1,Fused glass tile,Direct sun,,",
            "GT-2,Cast glass tile,Steam,ANSI A137.2,ASTM C484");
    assertThat(checked.findings("thermal-shock"))
        .filteredOn(f -> f.tags().contains("GT-1"))
        .hasSize(1);
  }

  @Test
  void what_a_class_reaches_is_said_of_what_is_set_with_it() throws IOException {
    Files.writeString(
        folder.resolve("spec.txt"),
        """
        SECTION 09 30 23
        GLASS TILING
        2.1 ADHESIVES
        A. Class R2 reaches 2.0 N/mm2 in shear. Class C2 reaches 1.0 N/mm2 in tension.
        """);
    Checked checked =
        schedule(
            "Tag,Material,Adhesive",
            "GT-1,Cast glass tile,C2TE S1 to EN 12004-1",
            "GT-2,Fused glass tile,R2T to EN 12004-1");
    assertThat(checked.governing("GT-1", "mortar.bond")).isEmpty();
    assertThat(checked.governing("GT-2", "mortar.bond")).hasSize(1);
    assertThat(checked.governing("GT-2", "mortar.tensile")).isEmpty();
  }

  @Test
  void where_several_have_no_backing_the_office_does_not_give_any() throws IOException {
    Checked checked =
        schedule(
            "Tag,Material,Location",
            "GT-1,\"Cast glass tile, opaque, bare back\",Lobby wall",
            "GT-2,\"Fused glass tile, opaque, painted back\",Corridor wall",
            "GT-3,\"Fused glass tile, opaque, bare back\",Office wall",
            "GT-4,\"Fused glass tile, opaque, bare back\",Office wall",
            "GT-5,\"Fused glass tile, opaque\",Lift lobby wall",
            "GT-6,\"Fused glass tile, opaque\",Bar wall",
            "GT-7,\"Fused glass tile, opaque\",Café wall");
    onlyNotesOnBacking(checked);
  }

  @Test
  void words_on_classes_at_large_do_not_contradict_the_class_of_a_tile() throws IOException {
    Files.writeString(
        folder.resolve("spec.txt"),
        """
        SECTION 09 30 23
        GLASS TILING
        2.1 GROUT
        A. Glass tile: resin grout, class RG, not more than 1 m2 at once.
        """);
    Checked checked =
        schedule(
            "Tag,Material,Grout",
            "GT-1,Cast glass tile,CG2 WA to EN 13888",
            "GT-2,Fused glass tile,RG to EN 13888");
    assertThat(checked.findings("conflict")).isEmpty();
    assertThat(checked.governing("GT-1", "grout.isoClass")).containsExactly("CG2");
  }

  @Test
  void two_classes_for_one_mark_contradict_each_other() throws IOException {
    Files.writeString(
        folder.resolve("spec.txt"),
        """
        SECTION 09 30 23
        GLASS TILING
        2.1 GROUT
        A. GT-1: grout class RG to EN 13888.
        """);
    Checked checked = schedule("Tag,Material,Grout", "GT-1,Cast glass tile,CG2 WA to EN 13888");
    assertThat(checked.findings("conflict"))
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("CG2").contains("RG"));
  }

  @Test
  void glass_that_is_not_called_tile_elsewhere_contradicts_nothing() throws IOException {
    Files.writeString(
        folder.resolve("rooms.csv"),
        "Room,Surface,Code,Finish\nLobby,Wall,GT-1,\"Kiln-cast glass slabs, ice grey\"\n");
    Checked checked = schedule("Tag,Material,Size", "GT-1,Cast glass tile,4 x 4 in");
    assertThat(checked.findings("conflict")).isEmpty();
  }

  @Test
  void what_a_schedule_asks_by_a_standard_is_to_be_listed() throws IOException {
    Files.writeString(
        folder.resolve("spec.txt"),
        """
        SECTION 09 30 23
        GLASS TILING
        1.2 REFERENCES
        A. ANSI A137.2, glass tile.
        B. ANSI A118.15, mortar.
        2.1 GLASS TILE
        A. Glass tile conforms to ANSI A137.2 and is set in mortar to ANSI A118.15.
        """);
    Checked checked =
        schedule(
            "Tag,Material,Location,Frost test",
            "GT-1,Cast glass tile,Exterior wall,\"ASTM C1026, no damage\"");
    assertThat(checked.findings("unlisted-standard"))
        .extracting(Finding::message)
        .singleElement()
        .asString()
        .contains("ASTM C1026");
  }
}
