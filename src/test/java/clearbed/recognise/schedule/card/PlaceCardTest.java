package clearbed.recognise.schedule.card;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the card of a room says is said of the tiles on it. */
class PlaceCardTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("codes.csv"),
        "Code,What,Size\nWA-1,Cast glass tile,3 x 6 in\nWA-2,Fused glass mosaic,1 x 1 in\n"
            + "FA-3,Fused glass mosaic,1 x 1 in\nPO-9,Porcelain tile,12 x 12 in\n");
  }

  private Checked with(String... cards) throws IOException {
    for (int i = 0; i < cards.length; i++)
      Files.writeString(folder.resolve("room " + i + ".md"), cards[i]);
    return Checked.of(folder);
  }

  private static String card(String... rows) {
    StringBuilder out = new StringBuilder("| ROOM SHEET | Job 12 |\n|---|---|\n");
    for (String row : rows) out.append("| ").append(row).append(" |\n");
    return out.toString();
  }

  @Test
  void its_joints_reach_no_tile_of_another_room() throws IOException {
    Checked c =
        with(
            card(
                "Room | 1.01 Lobby",
                "East wall | WA-1, 9 ft high",
                "Floor | PO-9",
                "Movement joints in glass tile | Every 20 ft each way, 1/4 in. wide"),
            card(
                "Room | X.10 Court, outdoors",
                "Wall | WA-2",
                "Floor | PO-9",
                "Movement joints in glass tile | Every 8 ft each way, 3/8 in. wide"));
    assertThat(c.governing("WA-1", "movement.spacing")).containsExactly("20 ft");
    assertThat(c.governing("WA-2", "movement.spacing")).containsExactly("8 ft");
    assertThat(c.governing("WA-2", "location.exposure")).contains("exterior");
  }

  @Test
  void a_row_that_opens_with_a_part_of_the_room_is_of_the_tile_there() throws IOException {
    Checked c =
        with(
            card(
                "Room | 3.12 Showers",
                "Shower walls, full height | WA-2",
                "Shower walls are on | Cement backer board on steel studs",
                "Shower floor | FA-3",
                "Shower floor is on | Mortar bed on concrete slab"));
    assertThat(c.governing("WA-2", "substrate.type")).containsExactly("cement board");
    assertThat(c.governing("FA-3", "substrate.type")).doesNotContain("cement board");
  }

  @Test
  void the_card_of_a_tile_is_none_of_a_room() throws IOException {
    Checked c =
        with(
            card(
                "Code | WA-1",
                "Room | Lobby",
                "Size | 3 x 6 in",
                "Joint | 1/8 in",
                "Back | plain"));
    assertThat(c.governing("WA-1", "grout.width")).containsExactly("0.125 in");
    assertThat(c.governing("WA-2", "grout.width")).isEmpty();
  }

  @Test
  void the_room_may_stand_over_its_card() throws IOException {
    Checked c =
        with(
            under(
                "Room 2.14 Plunge pool terrace",
                "Exposure | Outdoors, frost",
                "Walls to 2.4 m | WA-1",
                "Floor strip | FA-3",
                "Floor elsewhere | PO-9",
                "Build-up of walls | Gypsum board on steel studs",
                "Construction of floor | Concrete slab",
                "Waterproofing | none"),
            under("1.05 Steam bath", "Exposure | Steam", "Walls, ceiling | WA-2", "Floor | PO-9"));
    assertThat(c.governing("WA-1", "location.exposure")).contains("exterior-freeze");
    assertThat(c.governing("WA-1", "location.surface")).contains("wall");
    assertThat(c.governing("WA-1", "substrate.type")).containsExactly("gypsum board");
    assertThat(c.governing("FA-3", "substrate.type")).containsExactly("concrete");
    assertThat(c.governing("WA-1", "membrane.standard")).containsExactly("none");
    assertThat(c.governing("WA-2", "membrane.standard")).isEmpty();
    assertThat(c.governing("WA-2", "location.exposure")).containsOnly("steam");
  }

  @Test
  void a_value_may_name_the_tiles_of_several_parts_of_the_room() throws IOException {
    Checked c =
        with(
            under(
                "Room 4.02 Bathing hall",
                "Floor | Surround: PO-9 porcelain",
                "Walls | East wall: WA-1 cast glass tile, on cement board. West wall: PO-9 porcelain",
                "Pool | WA-2 glass mosaic. Users barefoot: slip resistance class C",
                "Conditions | Water 29 degrees, air 30 degrees"));
    assertThat(c.governing("WA-1", "substrate.type")).containsExactly("cement board");
    assertThat(c.governing("WA-1", "location.exposure")).doesNotContain("submerged");
    assertThat(c.governing("WA-2", "location.exposure")).containsOnly("submerged");
    assertThat(c.governing("WA-2", "substrate.type")).doesNotContain("cement board");
    assertThat(c.project().entries()).noneMatch(e -> e.tag().contains("Surround"));
  }

  @Test
  void a_room_uses_a_tile_and_schedules_none() throws IOException {
    Checked c =
        with(
            under(
                "Room 4.03 Showers",
                "Walls | WA-1 cast glass tile; WA-7 glass mosaic, niche",
                "Floor | PO-9",
                "Exposure | Wet"));
    assertThat(c.hasGlass("WA-7")).isTrue();
    assertThat(c.findings("unscheduled-tag")).hasSize(1);
    assertThat(c.findings("unscheduled-tag").get(0).tags()).containsExactly("WA-7");
  }

  @Test
  void a_table_of_parts_and_marks_under_another_heading_is_no_card_of_a_room() throws IOException {
    Checked c = with(under("Deliveries", "Exposure | Freezing", "Wall | WA-1", "Floor | PO-9"));
    assertThat(c.governing("WA-1", "location.exposure")).doesNotContain("exterior-freeze");
  }

  private static String under(String heading, String... rows) {
    StringBuilder out = new StringBuilder("## " + heading + "\n\n");
    for (int i = 0; i < rows.length; i++)
      out.append("| ").append(rows[i]).append(i == 0 ? " |\n|---|---|\n" : " |\n");
    return out.append("\n").toString();
  }
}
