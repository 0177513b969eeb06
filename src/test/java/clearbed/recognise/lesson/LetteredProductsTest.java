package clearbed.recognise.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Products that are called by a letter alone. */
class LetteredProductsTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Code,Tile,Size,Exposure\nVG-1,Cast glass mosaic,20 x 20 mm,wet\n"
            + "VG-2,Fused glass tile,50 x 50 mm,dry\n");
    Files.writeString(
        folder.resolve("spec.md"),
        """
        # GLASS TILING

        ## 210 GLASS MOSAIC: VG-1

        | Item | Requirement |
        |---|---|
        | Adhesive | B |
        | Grout | 2 |
        | Movement joints | J1 |

        ## 220 GLASS TILE: VG-2

        | Item | Requirement |
        |---|---|
        | Adhesive | As A but grey |
        | Grout | 1 |

        ## 310 ADHESIVE A

        - Cementitious, to EN 12004-1, class C2TE S1, white.

        ## 311 ADHESIVE B

        - Reaction resin, to EN 12004-1, class R2T, white.

        ## 320 GROUT 1

        - Cementitious, to EN 13888-1, class CG2 WA.

        ## 321 GROUT 2

        - Reaction resin, to EN 13888-1, class RG.
        """);
  }

  @Test
  void a_letter_beside_the_name_of_a_product_calls_it() {
    Checked c = Checked.taught(folder);
    assertThat(c.governing("VG-1", "mortar.isoClass")).containsExactly("R2");
    assertThat(c.governing("VG-1", "grout.isoClass")).containsExactly("RG");
    assertThat(c.governing("VG-2", "mortar.isoClass")).containsExactly("C2");
    assertThat(c.governing("VG-2", "grout.isoClass")).containsExactly("CG2");
  }

  @Test
  void a_letter_below_the_name_of_a_product_calls_it() throws IOException {
    Files.writeString(
        folder.resolve("more.csv"),
        "Code,Adhesive,Grout,Joint of grout (mm)\nVG-1,B,2,2\nVG-2,A,1,2\n");
    Checked c = Checked.taught(folder);
    assertThat(c.governing("VG-1", "mortar.isoClass")).containsExactly("R2");
    assertThat(c.governing("VG-1", "grout.width")).containsExactly("2 mm");
  }

  @Test
  void a_mark_with_its_place_in_brackets_is_that_of_a_sealant() throws IOException {
    Files.writeString(
        folder.resolve("joints.md"),
        """
        # GLASS TILING: MOVEMENT JOINTS

        ## 410 SEALANTS

        - S1 (walls): neutral silicone to ISO 11600, type F, class 25LM.
        - S2 (floors): polyurethane to ISO 11600, type F, class 20LM.

        ## 420 TABLE OF MOVEMENT JOINTS

        | Row | Tiles | Greatest spacing, m | Width, mm | Sealant |
        |---|---|---|---|---|
        | A | VG-1 | 3.0 | 8 | S1 |
        | B | VG-2 | 4.0 | 6 | S2 |
        """);
    Checked c = Checked.taught(folder);
    assertThat(c.governing("VG-1", "sealant.class")).containsExactly("25");
    assertThat(c.governing("VG-1", "mortar.deformability")).isEmpty();
  }
}
