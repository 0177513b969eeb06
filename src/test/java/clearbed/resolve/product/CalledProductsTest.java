package clearbed.resolve.product;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A product that tiles call for is described in one schedule and used in another. */
class CalledProductsTest {
  @TempDir Path folder;

  private Checked with(String schedule, String products, String note) throws IOException {
    Files.writeString(folder.resolve("a schedule.csv"), schedule);
    Files.writeString(folder.resolve("b products.csv"), products);
    Files.writeString(folder.resolve("c notes.txt"), "GLASS TILE NOTES\n\n" + note + "\n");
    return Checked.taught(folder);
  }

  private static String[] glass(Checked c) {
    return c.project().glass().stream().map(Entry::tag).toArray(String[]::new);
  }

  @Test
  void what_is_said_of_a_product_is_said_of_the_tiles_that_call_for_it() throws IOException {
    Checked c =
        with(
            "Finish,Product,Size,Where used\n"
                + "W-1,Series 2,1 x 1 in,Bar front\nW-2,Series 1,2 x 2 in,Shower walls\n"
                + "W-3,Series 2,1 x 2 in,Stair wall\n",
            "Product,Description,Made by,Light,Back\n"
                + "Series 1,Glass mosaic,Cast,Opaque,None\n"
                + "Series 2,Glass mosaic,Fused,Translucent,Painted\n"
                + "Series 3,Glass mosaic,Cast,Opaque,None\n",
            "Series 2 is set in ANSI A118.3 mortar.");
    assertThat(glass(c)).containsExactly("W-1", "W-2", "W-3");
    assertThat(c.governing("W-1", "tile.kind")).containsExactly("fused");
    assertThat(c.governing("W-2", "tile.kind")).containsExactly("cast");
    assertThat(c.governing("W-3", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("W-3", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("W-2", "mortar.standard")).isEmpty();
  }

  @Test
  void a_tile_that_another_one_is_to_meet_stays_a_tile() throws IOException {
    Checked c =
        with(
            "Finish,Material,Size,Next to,Where used\n"
                + "W-1,Glass mosaic,1 x 1 in,F-1,Bar front\n"
                + "W-2,Glass mosaic,2 x 2 in,F-2,Shower walls\n",
            "Finish,Material,Made by,Where used\n"
                + "F-1,Glass mosaic,Cast,Bar floor\nF-2,Glass mosaic,Cast,Shower floor\n",
            "Keep it clean.");
    assertThat(glass(c)).containsExactly("W-1", "W-2", "F-1", "F-2");
  }

  @Test
  void an_adhesive_that_is_for_one_tile_makes_no_product_of_it() throws IOException {
    Checked c =
        with(
            "Finish,Material,Size,Made by\n"
                + "W-1,Glass mosaic,1 x 1 in,Cast\nW-2,Glass mosaic,2 x 2 in,Fused\n",
            "No.,Class,Colour,For\nK2,ANSI A118.15,white,W-1\nK3,ANSI A118.3,white,W-2\n",
            "Keep it clean.");
    assertThat(glass(c)).containsExactly("W-1", "W-2");
    assertThat(c.governing("W-1", "mortar.standard")).containsExactly("ANSI A118.15");
  }
}
