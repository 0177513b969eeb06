package clearbed.resolve.entry;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which tiles a clause that names places speaks for. */
class ReachTest {
  @TempDir Path folder;

  private Checked set(String... clauses) {
    return Checked.ofFiles(
        folder,
        "Tile schedule.csv",
        """
        Tag,Material,Room,Surface,Exposure
        PG-1,Glass mosaic,Main pool,Pool wall,Submerged
        PG-2,Glass mosaic,Pool deck inlay,Floor,Exterior
        PG-3,Glass tile,Bar,Wall,Dry
        """,
        "09 30 00 Tiling.txt",
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 MATERIALS\n\nA. "
            + String.join("\n\nB. ", clauses)
            + "\n");
  }

  @Test
  void a_room_in_a_list_of_places_is_matched_with_the_rooms_of_the_schedule() {
    Checked c = set("Pool and deck: epoxy grout, ANSI A118.3.", "Bar: grout, ANSI A118.7.");
    assertThat(c.governing("PG-1", "grout.standard")).contains("ANSI A118.3");
    assertThat(c.governing("PG-2", "grout.standard")).contains("ANSI A118.3");
    assertThat(c.governing("PG-3", "grout.standard")).doesNotContain("ANSI A118.3");
  }

  @Test
  void a_place_alone_does_not_reach_other_rooms() {
    Checked c = set("Pool: epoxy grout, ANSI A118.3.");
    assertThat(c.governing("PG-1", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("PG-2", "grout.standard")).isEmpty();
  }

  private Checked rooms(String... clauses) {
    return Checked.ofFiles(
        folder,
        "Rooms.csv",
        """
        Tag,Material,Room,Surface,Exposure
        GX-1,Glass tile,"Lobby 101, east side",Wall,Dry
        GX-2,Glass tile,Corridors,Wall,Dry
        GX-3,Glass tile,Washrooms,Floor,Wet
        """,
        "09 30 00 Tiling.txt",
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 MATERIALS\n\nA. "
            + String.join("\n\nB. ", clauses)
            + "\n");
  }

  @Test
  void rooms_of_one_kind_are_told_apart_by_the_names_in_the_schedule() {
    Checked c =
        rooms(
            "Mortar to ANSI A118.15 at the lobby wall, and to ANSI A118.4 at the corridor.",
            "Washroom floors: mortar to ANSI A118.3.");
    assertThat(c.governing("GX-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GX-2", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("GX-3", "mortar.standard")).containsExactly("ANSI A118.3");
  }

  @Test
  void a_room_left_out_leaves_out_no_other() {
    Checked c = rooms("Mortar to ANSI A118.4 in the lobby; mortar to ANSI A118.15 elsewhere.");
    assertThat(c.governing("GX-1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("GX-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void a_room_that_no_schedule_has_stands_for_its_kind() {
    Checked c = rooms("Foyer: mortar to ANSI A118.4.");
    assertThat(c.governing("GX-1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("GX-3", "mortar.standard")).isEmpty();
  }
}
