package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.Level;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures that are stated, and too little for glass or for the place. */
class StricterFindingsTest {
  @TempDir Path folder;

  private List<Finding> serious(String ruleSet, String check, String... lines) throws IOException {
    Files.writeString(
        folder.resolve("section 09 30 23.txt"),
        "SECTION 09 30 23\nGLASS TILE\n\n2.1 TILE\n\n" + String.join("\n\n", lines) + "\n");
    return Checked.by(ruleSet, folder).findings(check).stream()
        .filter(f -> f.level() != Level.NOTE)
        .toList();
  }

  private static final String POOL = "A. GM-1: cast glass mosaic, 20 x 20 mm, opaque, pool walls.";

  @Test
  void a_pool_set_in_cement_is_not_filled_after_a_week() throws IOException {
    String mortar = "B. Mortar: cement mortar, ANSI A118.15.";
    assertThat(
            serious(
                "north-america",
                "cure-before-filling",
                POOL,
                mortar,
                "C. Fill the pool no sooner than 7 days after grouting."))
        .extracting(Finding::message)
        .containsExactly(
            "GM-1 is filled 7 days after grouting; wanted: 21 days, or what the makers of mortar"
                + " and grout allow in writing.");
    assertThat(
            serious(
                "north-america",
                "cure-before-filling",
                POOL,
                mortar,
                "C. Pool shell: render cured 7 days before it is filled for the water test.",
                "D. Fill the pool no sooner than 21 days after grouting."))
        .isEmpty();
  }

  @Test
  void set_and_grouted_in_resin_a_week_may_do() throws IOException {
    assertThat(
            serious(
                "north-america",
                "cure-before-filling",
                POOL,
                "B. Mortar: epoxy, ANSI A118.3.",
                "C. Grout: epoxy, ANSI A118.3.",
                "D. Fill the pool no sooner than 7 days after grouting."))
        .isEmpty();
  }

  @Test
  void a_shower_wants_more_grip_unless_it_is_private() throws IOException {
    assertThat(
            serious(
                "north-america",
                "floor-slip",
                "A. GM-2: cast glass mosaic, 20 x 20 mm, opaque, changing shower floor; wet DCOF"
                    + " 0.42 by ANSI A326.3."))
        .hasSize(1);
    assertThat(
            serious(
                "north-america",
                "floor-slip",
                "A. GM-2: cast glass mosaic, 20 x 20 mm, opaque, guest bath shower floor; wet DCOF"
                    + " 0.42 by ANSI A326.3."))
        .isEmpty();
  }

  @Test
  void a_large_tile_has_no_use_for_the_lesser_row_of_evenness() throws IOException {
    String even = "B. Background of GM-3: 6 mm under a straightedge of 3 m.";
    assertThat(
            serious(
                "iso-en", "flatness", "A. GM-3: cast glass tile, 600 x 600 mm, lobby wall.", even))
        .hasSize(1);
    assertThat(
            serious(
                "iso-en", "flatness", "A. GM-3: cast glass tile, 100 x 100 mm, lobby wall.", even))
        .isEmpty();
  }

  @Test
  void wet_cutting_protects_no_eyes() throws IOException {
    assertThat(serious("north-america", "cutting-safety", POOL, "B. Cut tile on a wet saw."))
        .hasSize(1);
    assertThat(
            serious(
                "north-america",
                "cutting-safety",
                POOL,
                "B. Cut tile on a wet saw. Goggles and gloves on."))
        .isEmpty();
  }

  @Test
  void an_edition_that_is_replaced_is_told_where_it_is_only_listed() throws IOException {
    assertThat(
            serious(
                "iso-en",
                "withdrawn-standard",
                POOL,
                "1.2 REFERENCES",
                "A. EN 12004:2007 Adhesives for tiles"))
        .extracting(Finding::message)
        .containsExactly(
            "EN 12004:2007 (tile adhesives) is superseded; EN 12004-1:2017 has taken its place.");
  }

  @Test
  void a_side_in_brackets_that_is_another_is_told_without_units_as_well() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Mark,What,\"Face size, in. (mm)\"\nGT-8,Glass tile,6 x 18 x 5/16 (152 x 357 x 8)\n"
            + "GT-9,Glass tile,2 x 2 x 1/4 (51 x 51 x 6)\nGT-7,Glass tile,12 x 24 (300 x 600)\n");
    assertThat(Checked.of(folder).findings("unit-slip"))
        .extracting(Finding::tags)
        .containsExactly(List.of("GT-8"));
  }
}
