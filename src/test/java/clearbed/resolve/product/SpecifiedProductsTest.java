package clearbed.resolve.product;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tiles that no schedule has. */
class SpecifiedProductsTest {

  private static Checked text(String... lines) {
    return Checked.ofLines("tile.txt", List.of(lines));
  }

  private static final String[] SHORT_FORM = {
    "TILE WORK",
    "What is covered",
    "GLS-A, COUNTER",
    "What it is: cast glass tile, 3 in. x 6 in., translucent.",
    "Where it goes: the front of the counter, a wall that stays dry.",
    "What it is set on: cement mortar bed on concrete block.",
    "GLS-B, SHOWER",
    "What it is: fused glass mosaic, 1 in. x 1 in., opaque.",
    "Where it goes: shower walls, wet.",
    "What it is set on: cement mortar bed.",
    "TB-1, CHIMNEY",
    "What it is: thin brick.",
    "MATERIALS",
    "GLS-A goes in mortar that meets ANSI A118.15. GLS-B goes in epoxy that meets ANSI A118.3.",
  };

  @Test
  void a_heading_that_gives_a_tag_over_words_on_glass_tile_makes_an_entry() {
    Checked c = text(SHORT_FORM);
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GLS-A", "GLS-B");
    assertThat(c.governing("GLS-A", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("GLS-A", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GLS-B", "mortar.standard")).containsExactly("ANSI A118.3");
  }

  @Test
  void its_place_is_read_from_the_paragraph_that_gives_it() {
    Checked c = text(SHORT_FORM);
    assertThat(c.governing("GLS-A", "location.exposure")).containsExactly("dry");
    assertThat(c.governing("GLS-B", "location.exposure")).contains("wet");
    assertThat(c.governing("GLS-B", "location.surface")).contains("wall");
  }

  @Test
  void what_it_is_set_on_is_no_mortar() {
    Checked c = text(SHORT_FORM);
    assertThat(c.governing("GLS-B", "substrate.type")).contains("mortar bed");
    assertThat(c.governing("GLS-B", "mortar.chemistry")).doesNotContain("cement");
  }

  @Test
  void a_clause_adds_the_weather_that_a_schedule_leaves_out() {
    Checked c =
        text(
            "TILE NOTES",
            "GLS-A: cast glass tile, opaque, 2 in. x 2 in. Place: outside wall.",
            "GLS-A Garden wall. Outside, full western sun, freezing winters.",
            "GLS-B: fused glass tile, opaque, 2 in. x 2 in. Place: counter, dry.",
            "GLS-B Counter, away from cooking heat and direct sun.");
    assertThat(c.governing("GLS-A", "location.exposure"))
        .contains("exterior", "sun-heat", "exterior-freeze");
    assertThat(c.governing("GLS-B", "location.exposure")).doesNotContain("sun-heat");
  }

  @Test
  void the_last_word_of_a_name_says_which_surface_it_is() {
    Checked c =
        text(
            "TILE NOTES",
            "GLS-A: cast glass mosaic, opaque. Place: roof deck shower wall.",
            "GLS-B: cast glass mosaic, opaque. Place: SHOWER WALLS AND FLOOR.");
    assertThat(c.governing("GLS-A", "location.surface")).containsExactly("wall");
    assertThat(c.governing("GLS-B", "location.surface")).contains("wall", "floor");
  }

  @Test
  void a_class_of_screed_below_the_title_of_a_tile_takes_nothing_from_it() {
    Checked c =
        text(
            "2 Coverings of glass",
            "2.1 GW-3 Steam bath, walls",
            "Material: Fused glass mosaic, transparent",
            "Substrate: Cement screed CT-C25-F4. Bending not more than L/480.",
            "2.2 GW-4 Shower, walls",
            "Material: Cast glass tile, translucent",
            "Substrate: Cement board. Bending not more than L/240.");
    assertThat(c.governing("GW-3", "substrate.deflection")).containsExactly("480");
    assertThat(c.governing("GW-4", "substrate.deflection")).containsExactly("240");
  }
}
