package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Rooms by their names, exceptions with a value of their own, outer bounds, lists under a title.
 */
class WherePartsOfAClauseHoldTest {
  @TempDir Path folder;

  private Checked section(String... lines) {
    return Checked.ofFiles(
        folder,
        "schedule.csv",
        "Mark,Material,Size,Room,Exposure\n"
            + "GT-1,Glass mosaic,1 in x 1 in,\"Restrooms, floor\",wet\n"
            + "GT-2,Glass tile,4 in x 12 in,\"Lobby, wall\",interior dry\n"
            + "GT-3,Glass mosaic,1 in x 1 in,\"Pool, walls below water\",submerged\n",
        "09 30 23.md",
        "# SECTION 09 30 23 GLASS TILE\n\n## PART 3 - EXECUTION\n\n### 3.1 JOINTS\n\n"
            + String.join("\n\n", lines)
            + "\n");
  }

  @Test
  void a_room_is_known_by_its_name_however_wet_it_is() {
    Checked c = section("A. Restroom floors: sealant Use T. Walls: sealant Use NT.");
    assertThat(c.governing("GT-1", "sealant.use")).containsExactly("T");
    assertThat(c.governing("GT-2", "sealant.use")).containsExactly("NT");
    assertThat(c.governing("GT-3", "sealant.use")).containsExactly("NT");
  }

  @Test
  void what_is_said_of_pools_is_closer_to_their_walls_than_what_is_said_of_walls() {
    Checked c =
        section(
            "A. Mortar coverage: 80 percent minimum for glass tile on walls.",
            "B. Glass tile in pools: mortar coverage 90 percent minimum.");
    assertThat(c.governing("GT-3", "mortar.coverage")).containsExactly("at least 90 %");
    assertThat(c.governing("GT-2", "mortar.coverage")).containsExactly("at least 80 %");
  }

  @Test
  void the_rest_is_what_no_sentence_named() {
    Checked c =
        section(
            "A. Joints permanently submerged get sealant of Use I. All remaining joints get sealant"
                + " of Use NT.");
    assertThat(c.governing("GT-3", "sealant.use")).containsExactly("I");
    assertThat(c.governing("GT-2", "sealant.use")).containsExactly("NT");
  }

  @Test
  void a_list_of_places_before_a_colon_limits_the_rules_of_the_work_too() {
    Checked c =
        section("A. Lobby and offices: keep water off for 14 days after grouting. Pool: 21 days.");
    assertThat(c.governing("GT-1", "process.cureBeforeWater")).isEmpty();
    assertThat(c.governing("GT-2", "process.cureBeforeWater")).isNotEmpty();
    c = section("A. Do not fill the pool for 21 days after grouting.");
    assertThat(c.governing("GT-2", "process.cureBeforeWater")).isNotEmpty();
  }

  @Test
  void an_exception_has_its_own_value() {
    Checked c = section("A. Sealant of movement joints: Class 25, except Class 50 at GT-3.");
    assertThat(c.governing("GT-3", "sealant.class")).containsExactly("50");
    assertThat(c.governing("GT-1", "sealant.class")).containsExactly("25");
    c =
        section(
            "A. Except in the lobby, where they may be 20 ft apart, space movement joints 8 ft"
                + " apart.");
    assertThat(c.governing("GT-2", "movement.spacing")).containsExactly("20 ft");
    assertThat(c.governing("GT-1", "movement.spacing")).containsExactly("8 ft");
  }

  @Test
  void what_a_lead_leaves_out_is_said_of_the_rest() {
    Checked c =
        section("A. Grout, all glass except floors: ANSI A118.7. Grout at floors: ANSI A118.3.");
    assertThat(c.governing("GT-1", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-2", "grout.standard")).containsExactly("ANSI A118.7");
  }

  @Test
  void the_outermost_is_no_second_value() {
    Checked c =
        section(
            "A. Movement joints: at least 3/8 in wide at GT-3 and 1/4 in wide at GT-1. Under no"
                + " circumstances is one narrower than 1/8 in.");
    assertThat(c.governing("GT-3", "movement.width")).containsExactly("at least 0.375 in");
    assertThat(c.governing("GT-1", "movement.width")).hasSize(1);
  }

  @Test
  void both_ends_are_of_one_thing() {
    Checked c =
        section(
            "A. The joint between glass tiles is no narrower than 1/16 in and no more than 1/8 in"
                + " wide.");
    assertThat(c.governing("GT-1", "movement.width")).isEmpty();
    assertThat(c.entry("GT-1").values("grout.width")).hasSize(2);
  }

  @Test
  void how_far_a_figure_may_be_off_is_no_figure() {
    Checked c =
        section("A. Movement joints are 10 mm wide. A tolerance of plus 2 mm is allowed on each.");
    assertThat(c.governing("GT-1", "movement.width")).containsExactly("10 mm");
  }

  @Test
  void marks_under_a_title_have_what_the_title_names() {
    Checked c =
        section(
            "A. Grout joint widths:", "1. GT-1 and GT-3: 1/16 in, as mounted.", "2. GT-2: 1/8 in.");
    assertThat(c.governing("GT-1", "grout.width")).containsExactly("0.0625 in");
    assertThat(c.governing("GT-2", "grout.width")).containsExactly("0.125 in");
  }
}
