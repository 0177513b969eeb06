package clearbed;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.value.Entry;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Glass that is no tile makes no glass tile entry. */
class NotTileTest {
  @TempDir Path folder;

  private Checked check(String name, String... lines) {
    return Checked.ofFiles(folder, name, String.join("\n", lines) + "\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mirror, frameless, polished edges",
        "Mirror glass",
        "Glazing, insulating, low-e",
        "Glass block, 8 x 8 x 4 in",
        "Glass brick",
        "Glass-fibre mesh",
        "Fiberglass reinforced panel",
        "Glass-mat backer board",
        "Coated glass mat water-resistant gypsum board",
        "Fiberglass lath",
        "Spandrel glass",
        "Back-painted glass panel",
        "Frameless glass shower door",
        "Tempered glass shower enclosure",
        "Laminated glass guard",
        "Glass marker board",
        "Ceramic tile, glass-look",
        "Porcelain tile with mesh of glass fiber",
        "Glazed ceramic tile",
        "Foam glass insulation"
      })
  void a_row_on_other_glass_is_no_entry(String material) {
    Checked checked =
        check(
            "schedule.csv",
            "Tag,Material,Location,Size",
            "XX-1,\"" + material + "\",Lobby wall,24 x 36 in",
            "PT-1,Porcelain tile,Lobby floor,12 x 24 in");
    assertThat(checked.project().glass()).extracting(Entry::evidence).isEmpty();
    assertThat(checked.outcome().findings()).isEmpty();
    assertThat(checked.outcome().verdicts()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Glass tile",
        "Glass mosaic, mesh-mounted on glass-fibre mesh",
        "Mosaic tile, glass, 1 x 1 in",
        "Recycled glass wall tile",
        "Tile, cast glass, sea green",
        "Fused glass, 3 x 6 in",
        "Smalti",
        "Vitreous glass mosaic"
      })
  void a_row_on_glass_tile_is_an_entry(String material) {
    Checked checked =
        check(
            "schedule.csv",
            "Tag,Material,Location,Size",
            "XX-1,\"" + material + "\",Lobby wall,3 x 6 in",
            "PT-1,Porcelain tile,Lobby floor,12 x 24 in");
    assertThat(checked.project().glass()).extracting(Entry::tag).containsExactly("XX-1");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "08 80 00 | GLAZING | GL-1: laminated glass, 9/16 in.",
        "08 83 00 | MIRRORS | MR-1: silvered float glass mirror, 1/4 in.",
        "04 23 00 | GLASS UNIT MASONRY | GB-1: hollow glass block, 8 by 8 by 4 in.",
        "09 28 13 | BACKING BOARDS | Coated glass-mat backer board under tile.",
        "10 28 19 | SHOWER DOORS | SD-1: tempered glass shower door, 3/8 in.",
        "09 24 00 | PORTLAND CEMENT PLASTERING | Fiberglass lath under tile.",
        "09 30 00 | TILING | CT-1: ceramic tile on glass-mat backer board with glass fibre mesh."
      })
  void a_section_on_other_glass_makes_no_entry(String number, String title, String clause) {
    Checked checked =
        check(
            "section.txt",
            "SECTION " + number,
            title,
            "PART 2 - PRODUCTS",
            "2.1 MATERIALS",
            "A. " + clause,
            "PART 3 - EXECUTION",
            "3.1 INSTALLATION",
            "A. Install in accordance with ANSI A108.5.");
    assertThat(checked.project().glass()).extracting(Entry::evidence).isEmpty();
    assertThat(checked.outcome().findings()).isEmpty();
  }

  @Test
  void the_glass_of_a_mirror_row_does_not_make_its_neighbours_glass() {
    Checked checked =
        check(
            "finishes.csv",
            "WALL FINISHES,,",
            "Code,Material,Size",
            "MR-1,Mirror,36 x 60 in",
            "GT-1,Glass mosaic,1 x 1 in",
            "PT-1,Paint,-",
            "GL-1,Glass shower screen,30 x 80 in");
    assertThat(checked.project().glass()).extracting(Entry::tag).containsExactly("GT-1");
  }
}
