package clearbed.recognise.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Headings that name tests, and tiles side by side over lines that are counted. */
class CountedMatrixTest {
  @TempDir Path folder;

  private Checked of(String csv) throws IOException {
    Files.writeString(folder.resolve("matrix.csv"), csv);
    return Checked.by("iso-en", folder);
  }

  @Test
  void a_column_that_counts_the_lines_hides_no_properties() throws IOException {
    Checked c =
        of(
            "Line,Property,GF-1,GF-2,GF-3\n1,Where,Shower walls,Steam bath,Foyer wall (dry)\n"
                + "2,How made,cast glass,fused glass,\"float glass, cut\"\n"
                + "3,Size [mm],48 x 48,23 x 23,148 x 298\n4,Back,plain,\"plain, ribbed\",plain\n"
                + "5,Adhesive class,C2TE S1,R2T,C2TE S1\n6,Grout class,CG2WA,RG,CG2WA\n"
                + "7,Joint width [mm],3,2,3\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GF-1", "GF-2", "GF-3");
    assertThat(c.governing("GF-2", "mortar.isoClass")).containsExactly("R2");
    assertThat(c.governing("GF-2", "tile.backing")).containsExactly("none");
    assertThat(c.governing("GF-3", "tile.size")).containsExactly("148 mm x 298 mm");
  }

  @Test
  void mirrors_and_blocks_in_mortar_are_no_tile_for_it() throws IOException {
    Checked c =
        of(
            "Code,Finish,Adhesive,Grout\nGF-1,Cast glass mosaic,C2TE,CG2WA\n"
                + "MI-1,Mirror of float glass,silicone,none\nGB-1,Glass block,masonry mortar,white\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GF-1");
  }

  @Test
  void results_stand_under_the_standard_that_heads_them() throws IOException {
    Checked c =
        of(
            "Code,Place,Delivered,Thermal shock EN ISO 10545-9,Frost EN ISO 10545-12\n"
                + "WG-1,\"Glass mosaic, bath basin\",\"sheets, dots on back\",passed,n.a. indoors\n"
                + "WG-2,\"Glass mosaic, porch, outside, frost\",\"sheets, mesh on back\",,\"passed, 100 cycles\"\n"
                + "WG-3,\"Glass tile, steam cabin\",single tiles,,n.a. indoors\n"
                + "WG-4,\"Glass mosaic, porch, outside, frost\",sheets,,\"100 cycles, no damage\"\n");
    assertThat(c.governing("WG-1", "tile.thermalShock")).containsExactly("ISO 10545-9");
    assertThat(c.governing("WG-2", "tile.freezeThaw")).containsExactly("ISO 10545-12");
    assertThat(c.governing("WG-4", "tile.freezeThaw")).containsExactly("ISO 10545-12");
    assertThat(c.governing("WG-1", "tile.freezeThaw")).isEmpty();
    assertThat(c.governing("WG-3", "tile.thermalShock")).isEmpty();
  }
}
