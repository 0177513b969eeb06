package clearbed.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A clause that a tile calls by its number is said of that tile and of no other. */
class ClauseCallsTest {
  @TempDir Path folder;

  @BeforeEach
  void documents() throws IOException {
    Files.writeString(
        folder.resolve("W41 tiling.txt"),
        """
        W41 GLASS TILING

        W41/110 EXTENT
        Glass tile to the laundry walls and the bar front.

        W41/310 GLASS TILE
        VG-1: cast glass tile, opaque, to ANSI A137.2. Adhesive: As W41/340.

        W41/315 GLASS TILE
        VG-2: fused glass tile, translucent, to ANSI A137.2. Adhesive: As W41/345.

        W41/340 ADHESIVE: CEMENT
        Standard: ANSI A118.15. Colour: White.

        W41/345 ADHESIVE: EPOXY
        Standard: ANSI A118.3.

        W41/510 SEALANT
        Silicone at corners of glass tile, by the primer of W41/690.
        """);
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Adhesive\nVG-3,Cast glass mosaic,W41/340\nVG-4,Fused glass mosaic,W41/345\n");
  }

  @Test
  void a_clause_on_a_tile_is_given_what_the_clause_it_calls_states() throws IOException {
    Checked c = Checked.of(folder);
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("VG-1", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("VG-2", "mortar.colour")).isEmpty();
  }

  @Test
  void so_is_a_row_of_a_schedule_in_another_document() throws IOException {
    Checked c = Checked.of(folder);
    assertThat(c.governing("VG-3", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-4", "mortar.standard")).containsExactly("ANSI A118.3");
  }

  @Test
  void a_call_of_a_clause_that_is_not_there_is_said_and_of_those_there_none() throws IOException {
    Checked c = Checked.of(folder);
    assertThat(c.findings("dangling-reference"))
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("W41/690"));
  }
}
