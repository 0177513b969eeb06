package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Marks beside words for glass tile that make no tile of them, and places that are of no row. */
class WhatIsNoTileTest {
  @TempDir Path folder;

  private Checked of(String clause) throws IOException {
    return Checked.ofFiles(
        folder,
        "schedule.csv",
        "Mark,Material,Size\nGT-1,Cast glass tile,3 x 6 in\nPT-1,Paver,24 x 24 in\n",
        "09 30 23.txt",
        "SECTION 09 30 23\n\nGLASS TILE\n\nPART 2 - PRODUCTS\n\n2.1 MATERIALS\n\n" + clause + "\n");
  }

  private static Iterable<String> glass(Checked c) {
    return c.project().glass().stream().map(Entry::tag).toList();
  }

  @Test
  void what_is_said_to_be_no_glass_tile_is_none() throws IOException {
    assertThat(
            glass(
                of(
                    "A. PT-1, ST-1 and MR-1 are not glass tile. Requirements for glass tile do not"
                        + " apply to them.")))
        .containsExactly("GT-1");
    assertThat(glass(of("A. GT-7 is cast glass tile, not porcelain, 2 x 2 in.")))
        .contains("GT-1", "GT-7");
  }

  @Test
  void what_makers_of_glass_tile_accept_is_none() throws IOException {
    assertThat(glass(of("A. The glass tile makers accept WP-1 and WP-2 below the types named.")))
        .containsExactly("GT-1");
  }

  @Test
  void a_title_of_places_in_and_out_of_doors_gives_its_rows_none() throws IOException {
    Files.writeString(
        folder.resolve("schedule.md"),
        "| Tag | Material | Size |\n|---|---|---|\n| Wet, floor and exterior | | |\n"
            + "| GT-4 | Cast glass mosaic | 1 x 1 in |\n| Pool walls, submerged | | |\n"
            + "| GT-5 | Cast glass mosaic | 1 x 1 in |\n");
    Checked c = Checked.of(folder);
    assertThat(c.governing("GT-4", "location.exposure")).isEmpty();
    assertThat(c.governing("GT-4", "location.surface")).isEmpty();
    assertThat(c.governing("GT-5", "location.exposure")).containsExactly("submerged");
  }

  @Test
  void a_kind_that_a_sentence_takes_in_is_not_that_of_the_tiles() throws IOException {
    assertThat(
            of("A. The tile makers state that their tile, translucent tile included, may be bonded to membrane.")
                .governing("GT-1", "tile.translucency"))
        .isEmpty();
    assertThat(
            of("A. GT-1: cast glass tile, translucent, grout included.")
                .governing("GT-1", "tile.translucency"))
        .containsExactly("translucent");
  }

  @Test
  void a_row_that_only_calls_a_sealant_is_of_its_tile() throws IOException {
    Files.writeString(
        folder.resolve("joints.md"),
        "| Codes | Spacing ft | Width in | Sealant |\n|---|---|---|---|\n"
            + "| GT-1 | 8 | 3/8 | SL1 |\n| GT-2 | 20 | 1/4 | SL2 |\n");
    Files.writeString(
        folder.resolve("sealants.md"),
        "| Ref | Sealant | Use |\n|---|---|---|\n"
            + "| SL1 | Silicone, ASTM C920, Class 25 | Wet walls |\n"
            + "| SL2 | Silicone, ASTM C920, Class 50 | Other walls |\n");
    Files.writeString(
        folder.resolve("tiles.md"),
        "| Code | Material | Size |\n|---|---|---|\n"
            + "| GT-1 | Cast glass tile | 3 x 6 in |\n| GT-2 | Fused glass tile | 3 x 6 in |\n");
    Checked c = Checked.of(folder);
    assertThat(c.governing("GT-1", "movement.width")).containsExactly("0.375 in");
    assertThat(c.governing("GT-2", "movement.spacing")).containsExactly("20 ft");
  }
}
