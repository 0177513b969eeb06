package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What one sheet of several in a document says is said of the tiles of its own table. */
class SheetScopesTest {
  @TempDir Path folder;

  private Checked of(String... sheets) {
    return Checked.ofFiles(
        folder, "rooms.md", "# Room data sheets, tiling\n\n" + String.join("\n", sheets));
  }

  private static String sheet(String title, String tile, String other, String properties) {
    return "# "
        + title
        + "\n\n| Code | Finish | Where |\n|---|---|---|\n"
        + tile
        + other
        + "\n| Property | Requirement |\n|---|---|\n"
        + properties;
  }

  @Test
  void the_flatness_of_one_room_does_not_reach_the_tile_of_the_other() {
    Checked c =
        of(
            sheet(
                "Room data sheet 0.1",
                "| VG-1 | Glass mosaic | Walls |\n",
                "| PT-1 | Porcelain tile | Floor |\n",
                "| Flatness of substrate | 3 mm in 2 m |\n| Adhesive | ANSI A118.15, white |\n"),
            sheet(
                "Room data sheet 0.2",
                "| VG-2 | Cast glass tile | Splashback |\n",
                "| LN-1 | Linoleum | Floor |\n",
                "| Flatness of substrate | 5 mm in 2 m |\n| Adhesive | ANSI A118.3, grey |\n"));
    assertThat(c.governing("VG-1", "substrate.flatness")).containsExactly("3 mm in 2 m");
    assertThat(c.governing("VG-2", "substrate.flatness")).containsExactly("5 mm in 2 m");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
  }

  @Test
  void what_one_sheet_alone_states_is_not_said_of_the_tile_of_the_other() {
    Checked c =
        of(
            sheet(
                "Room data sheet 1.1",
                "| VG-1 | Glass mosaic | Walls |\n",
                "",
                "| Flatness of substrate | 3 mm in 2 m |\n| Adhesive | ANSI A118.15, white |\n"),
            sheet(
                "Room data sheet 1.2",
                "| VG-2 | Cast glass tile | Splashback |\n",
                "",
                "| Adhesive | ANSI A118.3, white |\n| Grout | ANSI A118.7 |\n"));
    assertThat(c.governing("VG-1", "substrate.flatness")).containsExactly("3 mm in 2 m");
    assertThat(c.governing("VG-2", "substrate.flatness")).isEmpty();
    assertThat(c.governing("VG-1", "grout.standard")).isEmpty();
  }

  @Test
  void what_stands_before_all_sheets_is_said_of_all_tiles() {
    Checked c =
        of(
            "Grout of all glass tile: ANSI A118.7.\n",
            sheet(
                "Room data sheet 2.1",
                "| VG-1 | Glass mosaic | Walls |\n",
                "",
                "| Adhesive | ANSI A118.15 |\n"),
            sheet(
                "Room data sheet 2.2",
                "| VG-2 | Glass mosaic | Walls |\n",
                "",
                "| Adhesive | ANSI A118.3 |\n"));
    assertThat(c.governing("VG-1", "grout.standard")).containsExactly("ANSI A118.7");
    assertThat(c.governing("VG-2", "grout.standard")).containsExactly("ANSI A118.7");
  }
}
