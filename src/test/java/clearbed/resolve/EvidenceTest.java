package clearbed.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Glass or not is decided by what all documents say of a tag. */
class EvidenceTest {
  @TempDir Path folder;

  private Checked of(String... namesAndTexts) {
    return Checked.ofFiles(folder, namesAndTexts);
  }

  private static List<String> glass(Checked c) {
    return c.project().glass().stream().map(Entry::tag).toList();
  }

  private static final String BLENDS =
      "Type,Size,Mortar,Grout\nGT-1,1 x 1 in,ANSI A118.15,ANSI A118.7\n"
          + "GT-2,2 x 2 in,ANSI A118.4,ANSI A118.7\n";

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2.1 TYPE GT-1 - LAP POOL WALLS\nA. Cast glass mosaic, ANSI A137.2, opaque.",
        "2.1 TILE\nA. Type GT-1: Fused glass tile, translucent.",
        "2.1 TILE\nA. Glass mosaic GT-1, opaque, for the pool.",
        "2.1 TILE\nA. Glass tile (GT-1): opaque.",
        "2.1 GLASS MOSAIC TO THE WALLS OF THE STEAM ROOM (GT-1)\nA. Opaque.",
      })
  void a_product_article_tells_what_the_schedule_leaves_out(String product) {
    String section = "SECTION 09 30 13 - TILING\nPART 2 - PRODUCTS\n" + product + "\n";
    assertThat(glass(of("schedule.csv", BLENDS, "section.txt", section))).containsExactly("GT-1");
  }

  @Test
  void a_scope_sentence_tells_it_of_all_its_tags() {
    String section =
        """
        SECTION 09 30 13 - TILING
        PART 1 - GENERAL
        1.1 WORK INCLUDED
        A. Glass mosaics of the lap pool, the spa and the steam room, types GT-1 through GT-2.
        """;
    assertThat(glass(of("schedule.csv", BLENDS, "section.txt", section)))
        .containsExactly("GT-1", "GT-2");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "A. Grout for glass mosaic beside GT-1: white.",
        "A. GT-1: porcelain tile, to match glass tile.",
        "A. GT-1: where glass tile occurs, align joints.",
        "A. Expansion joints between GT-1 and glass tile: 3/8 in.",
      })
  void glass_tile_beside_a_tag_does_not_make_it_one(String clause) {
    String section =
        "SECTION 09 30 13 - TILING\nPART 2 - PRODUCTS\n2.1 MATERIALS\n" + clause + "\n";
    assertThat(glass(of("schedule.csv", BLENDS, "section.txt", section))).doesNotContain("GT-1");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GRC panel, ribbed",
        "Glass block, clear",
        "Laminated glass, etched",
        "Porcelain, matte",
        "Mirror, silvered",
        "Paint, eggshell",
        "Recycled glass chips in cement",
        "Woven glass textile, white",
        "Terrazzo with glass aggregate",
        "GRP (glass reinforced plastic) sheet",
        "GFRC panel",
        "Foam glass insulation",
        "Back-painted glass panel",
        "Quartz countertop",
      })
  void a_title_makes_no_glass_tile_of_other_things(String material) {
    Checked c =
        of(
            "GLASS TILE SCHEDULE.csv",
            "GLASS TILE SCHEDULE,,\nTag,Material,Size\nX-1,\"" + material + "\",2 x 2 in\n");
    assertThat(glass(c)).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Glass",
        "Cast glass, sea foam",
        "Recycled glass, hexagon",
        "Glass, back-painted",
        "Crystal glass penny rounds",
        "Aqua blend 12"
      })
  void a_title_is_enough_where_nothing_speaks_against_it(String material) {
    Checked c =
        of(
            "schedule.csv",
            "GLASS TILE SCHEDULE,,\nTag,Material,Size\nX-1,\"" + material + "\",2 x 2 in\n");
    assertThat(glass(c)).containsExactly("X-1");
  }

  @Test
  void the_words_of_a_type_that_nobody_scheduled_are_no_others() {
    String section =
        """
        SECTION 09 30 13 - GLASS TILING
        PART 2 - PRODUCTS
        2.1 GLASS MOSAIC GT-1
        A. Cast glass mosaic. Mortar: ANSI A118.15.
        2.2 GLASS MOSAIC GT-7
        A. Cast glass mosaic. Mortar: ANSI A118.3.
        2.3 BORDERS
        A. Mortar at GT-9 border: ANSI A136.1.
        """;
    Checked c = of("schedule.csv", "Tag,Material\nGT-1,Glass mosaic\n", "section.txt", section);
    assertThat(glass(c)).containsExactly("GT-1", "GT-7");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-7", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.findings("unscheduled-tag")).isNotEmpty();
  }

  @Test
  void two_products_of_one_section_are_two_entries() {
    String section =
        """
        SECTION 09 30 13 - GLASS TILING
        PART 2 - PRODUCTS
        2.1 GLASS MOSAIC TILE
        A. Standard: ANSI A137.2. Size: 1 x 1 in. Opaque.
        B. Mortar: ANSI A118.15.
        2.2 CAST GLASS WALL TILE
        A. Standard: ANSI A137.2. Size: 4 x 8 in. Translucent.
        B. Mortar: ANSI A118.3.
        2.3 GROUT
        A. ANSI A118.7, 1/8 in. wide.
        """;
    Checked c = of("section.txt", section);
    assertThat(glass(c)).containsExactly("Glass mosaic tile", "Cast glass wall tile");
    assertThat(c.governing("Glass mosaic tile", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("Cast glass wall tile", "mortar.standard"))
        .containsExactly("ANSI A118.3");
    assertThat(c.governing("Cast glass wall tile", "grout.standard"))
        .containsExactly("ANSI A118.7");
  }

  @Test
  void the_title_of_its_article_places_a_tile() {
    String section =
        """
        SECTION 09 30 13 - GLASS TILING
        PART 2 - PRODUCTS
        2.1 TYPE GT-1 - SPA WALLS AND BENCH, SUBMERGED
        A. Cast glass mosaic.
        2.2 TYPE GT-2 - POOL HALL, NORTH WALL, DAMP
        A. Fused glass tile.
        """;
    Checked c = of("schedule.csv", BLENDS, "section.txt", section);
    assertThat(c.governing("GT-1", "location.exposure")).containsExactly("submerged");
    assertThat(c.governing("GT-1", "location.surface")).contains("wall");
    assertThat(c.governing("GT-2", "location.exposure")).containsExactly("damp");
  }

  @Test
  void related_work_opens_no_section() {
    String section =
        """
        SECTION 09 30 13 - GLASS TILING
        PART 1 - GENERAL
        1.1 RELATED REQUIREMENTS
        Section 12 36 61 - Simulated stone countertops, for SS-2
        Section 07 92 00 Joint Sealants
        PART 2 - PRODUCTS
        2.1 GLASS TILE
        A. GT-1: cast glass tile. Mortar: ANSI A118.15.
        """;
    Checked c = of("section.txt", section);
    assertThat(c.project().sections()).hasSize(1);
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void a_clause_that_tiles_are_sent_to_is_theirs() {
    String section =
        """
        M40 GLASS TILING
        110 GLASS MOSAIC TO SHOWERS (WF-04)
        Grout: As clause 650.
        120 GLASS MOSAIC TO POOL (WF-05)
        Grout: As clause 655.
        650 CEMENT GROUT
        Grout: CG2WA to EN 13888. Joint width: 3 mm.
        655 EPOXY GROUT
        Grout: RG to EN 13888, epoxy. Joint width: 2 mm.
        """;
    Checked c = of("M40.txt", section.replace("\n", "\n\n"));
    assertThat(c.governing("WF-04", "grout.width")).containsExactly("3 mm");
    assertThat(c.governing("WF-05", "grout.width")).containsExactly("2 mm");
  }
}
