package clearbed.recognise.schedule.card;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cards whose rows hold two properties, one of them the mark of the tile. */
class CardsInPairsTest {
  @TempDir Path folder;

  private Checked with(String... rows) throws IOException {
    Files.writeString(
        folder.resolve("codes.csv"),
        "Code,What,Size\nWA-1,Cast glass tile,3 x 6 in\nWA-2,Fused glass mosaic,1 x 1 in\n");
    StringBuilder out = new StringBuilder();
    for (String row : rows) {
      out.append("| ").append(row).append(" |\n");
      if (row == rows[0]) out.append("|---|---|---|---|\n");
    }
    Files.writeString(folder.resolve("cards.md"), out.toString());
    return Checked.of(folder);
  }

  @Test
  void both_halves_of_the_rows_are_of_the_tile_whose_mark_is_in_the_first() throws IOException {
    Checked c =
        with(
            "Item | WA-1 | Room | Lobby",
            "Light | opaque | Back | plain, no coating",
            "Mounting | paper on face | Joint | 1/8 in");
    assertThat(c.governing("WA-1", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("WA-1", "tile.backing")).containsExactly("none");
    assertThat(c.governing("WA-1", "grout.width")).containsExactly("0.125 in");
    assertThat(c.governing("WA-2", "grout.width")).isEmpty();
    assertThat(c.project().entries()).extracting(e -> e.tag()).containsExactly("WA-1", "WA-2");
  }

  @Test
  void the_mark_may_stand_in_the_second_half() throws IOException {
    Checked c =
        with(
            "Location | Lobby | Code | WA-1",
            "Translucency | opaque | Back | plain, no coating",
            "Mounting | loose | Joint | 1/8 in");
    assertThat(c.governing("WA-1", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("WA-1", "location.room")).containsExactly("Lobby");
    assertThat(c.governing("WA-2", "grout.width")).isEmpty();
  }

  @Test
  void a_card_that_runs_on_over_the_page_ends_where_the_next_begins() throws IOException {
    Checked c =
        with(
            "Ref | WA-1 | Room | Lobby",
            "Light | opaque | Back | plain, no coating",
            "Mounting | loose | Joint | 1/8 in",
            "Ref | WA-2 | Room | Showers",
            "Light | translucent | Back | plain, no coating",
            "Mounting | paper on face | Joint | 1/16 in");
    assertThat(c.governing("WA-1", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("WA-2", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("WA-1", "grout.width")).containsExactly("0.125 in");
    assertThat(c.governing("WA-2", "grout.width")).containsExactly("0.0625 in");
  }

  @Test
  void marks_across_are_those_of_a_turned_schedule() throws IOException {
    Checked c =
        with(
            "Item | WA-1 | WA-2 | WA-3",
            "Light | opaque | translucent | opaque",
            "Mounting | loose | paper on face | loose",
            "Joint | 1/8 in | 1/16 in | 1/4 in");
    assertThat(c.governing("WA-1", "grout.width")).containsExactly("0.125 in");
    assertThat(c.governing("WA-2", "grout.width")).containsExactly("0.0625 in");
  }
}
