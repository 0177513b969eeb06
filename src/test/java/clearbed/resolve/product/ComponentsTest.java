package clearbed.resolve.product;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import clearbed.model.value.Value;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a mark stands for is said of the tiles that call for it, and of no others. */
class ComponentsTest {
  @TempDir Path folder;

  private static final String SCHEDULE =
      "Tag,Material,Laid in,Filled with,Goes on\n"
          + "VG-1,Cast glass mosaic,TM-4,PG-2 pearl,Cement board\n"
          + "VG-2,Fused glass tile with a painted back,TM-7,PG-3,LW-1 on cement board\n"
          + "CT-9,Porcelain tile,TM-5,PG-2,Slab\n";

  private Checked with(String name, String text) throws IOException {
    return Checked.ofFiles(folder, "schedule.csv", SCHEDULE, name, text);
  }

  @Test
  void a_clause_that_says_what_a_mark_is_speaks_for_the_rows_that_call_for_it() throws IOException {
    Checked c =
        with(
            "materials.txt",
            """
            GLASS TILE MATERIALS

            TM-4 is a white modified thinset to ANSI A118.15. TM-7 is a white epoxy adhesive to ANSI A118.3.

            TM-5 is a gray mortar to ANSI A118.4.

            PG-2: unsanded cement grout, ANSI A118.7. PG-3: epoxy grout, ANSI A118.3.

            Membrane LW-1: liquid waterproofing, ANSI A118.10.
            """);
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("VG-1", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("VG-1", "grout.standard")).containsExactly("ANSI A118.7");
    assertThat(c.governing("VG-2", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("VG-2", "membrane.standard")).containsExactly("ANSI A118.10");
    assertThat(c.governing("VG-1", "membrane.standard")).isEmpty();
  }

  @Test
  void so_does_a_table_of_marks_and_none_of_them_is_a_tile() throws IOException {
    Checked c =
        with(
            "key.csv",
            "Sign,Stands for,Where\n"
                + "TM-4,\"White polymer mortar, ANSI A118.15\",mosaics\n"
                + "TM-7,\"White epoxy adhesive, ANSI A118.3\",painted backs\n"
                + "PG-2,\"Unsanded grout, ANSI A118.7\",glass tile\n");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.project().glass().stream().map(Entry::tag)).containsExactly("VG-1", "VG-2");
  }

  @Test
  void a_mark_that_no_tile_calls_for_speaks_for_none_that_calls_for_another() throws IOException {
    Checked c =
        with(
            "n.txt",
            "GLASS TILE NOTES\n\nTM-4 is a white mortar, ANSI A118.15.\n\nTM-8 is a gray mortar, ANSI A118.1.\n");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).isEmpty();
  }

  @Test
  void a_clause_on_a_tile_calls_for_a_mark_as_well_as_a_row_does() throws IOException {
    Files.writeString(
        folder.resolve("09 30 00.txt"),
        """
        SECTION 09 30 00 - TILING
        PART 2 - PRODUCTS
        2.1 TILE
        A. MG-1: Glass mosaic, opaque, ANSI A137.2, laid in BA-1.
        B. MG-2: Glass mosaic, translucent, ANSI A137.2, laid in BA-2.
        2.2 MATERIALS
        A. BA-1: Gray modified mortar, ANSI A118.4.
        B. BA-2: White improved mortar, ANSI A118.15.
        """);
    Checked c = Checked.of(folder);
    assertThat(c.governing("MG-1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("MG-2", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("MG-2", "mortar.colour")).containsExactly("white");
  }

  @Test
  void the_mark_of_a_tile_stands_for_no_mortar() throws IOException {
    Checked c = with("n.txt", "GLASS TILE NOTES\n\nVG-1: mortar ANSI A118.4.\n");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.governing("VG-2", "mortar.standard")).isEmpty();
  }

  @Test
  void a_rule_for_glass_tile_is_not_limited_by_other_tile_named_beside_it() throws IOException {
    Checked c =
        with(
            "n.txt",
            "GLASS TILE NOTES\n\nAcids and abrasive pads shall not be used on any glass tile (acid wash of CT-9 comes first).\n");
    assertThat(c.entry("VG-1").values().stream().map(Value::attribute))
        .contains("process.cleaning");
  }

  @Test
  void a_mark_of_a_sealant_is_known_by_what_its_clause_states() throws IOException {
    Checked c =
        with(
            "joints.txt",
            """
            GLASS TILE JOINTS

            JS-1: Silicone, ASTM C920, Type S, Grade NS, Class 50, Uses NT and A.

            JS-2: Polyurethane, ASTM C920, Type M, Grade P, Class 25, Uses T and M.

            VG-1: seal with JS-1. VG-2: seal with JS-2.
            """);
    assertThat(c.governing("VG-1", "sealant.class")).containsExactly("50");
    assertThat(c.governing("VG-2", "sealant.use")).contains("T").doesNotContain("NT");
  }

  @Test
  void the_glue_of_a_tile_that_suits_an_adhesive_is_not_the_glue_of_all_its_tiles()
      throws IOException {
    Checked c =
        with(
            "tiles.txt",
            """
            GLASS TILE NOTES

            TM-4 is a white adhesive to ANSI A118.15 for VG-1 and VG-2.

            VG-1: Sheets on a mesh. The mesh is compatible with adhesive TM-4.

            VG-2: Loose tiles.
            """);
    assertThat(c.governing("VG-1", "tile.mountingMortar")).containsExactly("required");
    assertThat(c.governing("VG-2", "tile.mountingMortar")).isEmpty();
  }

  @Test
  void rows_on_parts_of_the_work_speak_for_the_tiles_whose_cells_call_for_them()
      throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        """
        Mark,What it is,Size,Fixed to,Adhesive,Grout
        VG1,Cast glass tile,2 x 2 in,Cement board,K1 white,P1
        VG2,Fused glass tile,3 x 6 in,Cement board,K2,P1
        """);
    Files.writeString(
        folder.resolve("parts.csv"),
        """
        Ref,Adhesive,Remark
        K1,"Cement adhesive, ANSI A118.15, made in white and in grey",colour as the list of tiles
        K2,"Epoxy adhesive, ANSI A118.3, white",
        """);
    Checked c = Checked.of(folder);
    assertThat(c.governing("VG1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG1", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("VG2", "mortar.standard")).containsExactly("ANSI A118.3");
  }

  @Test
  void such_a_row_may_list_the_tiles_that_it_is_for() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        """
        Mark,What it is,Size,Fixed to
        VG1,Cast glass tile,2 x 2 in,Cement board
        VG2,Fused glass tile,3 x 6 in,Cement board
        VG3,Fused glass tile,3 x 6 in,Cement board
        """);
    Files.writeString(
        folder.resolve("parts.csv"),
        """
        ,Kind,Class,Colour,For
        K1,"cement adhesive, polymer-modified",C2TE S1,white,"VG1, VG3"
        K2,reaction resin adhesive,R2T,white,VG2
        """);
    Checked c = Checked.of(folder);
    assertThat(c.governing("VG1", "mortar.isoClass")).containsExactly("C2");
    assertThat(c.governing("VG2", "mortar.isoClass")).containsExactly("R2");
    assertThat(c.governing("VG3", "mortar.isoClass")).containsExactly("C2");
  }

  @Test
  void a_row_on_another_finish_is_no_part_of_the_work() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        """
        Mark,Material,Size,Substrate,Mortar,Notes
        VG-1,Cast glass tile,2 x 2 in,Cement board,ANSI A118.15,Joints align with PC-1
        PC-1,Porcelain tile,12 x 24 in,Slab,ANSI A118.4,
        """);
    Checked c = Checked.of(folder);
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void a_product_may_be_called_by_its_kind_and_a_letter_or_number() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Size,Setting,Grout\n"
            + "VG-1,Cast glass mosaic,1 x 1 in,Adhesive 1,Grout K\n"
            + "VG-2,Fused glass tile,3 x 6 in,Adhesive 2,Grout L\n"
            + "CT-9,Porcelain tile,6 x 6 in,Adhesive 1,Grout K\n");
    Files.writeString(
        folder.resolve("materials.txt"),
        """
        SECTION 09 30 00 - TILING
        PART 2 - PRODUCTS
        2.1 SETTING MATERIALS
        A. Adhesive 1: modified thinset mortar, ANSI A118.15.
        1. Color: gray.
        B. ADHESIVE 2 - epoxy, ANSI A118.3.
        1. Color: white.
        2.2 GROUT
        A. Grout K is unsanded, ANSI A118.7.
        B. Grout L is epoxy, ANSI A118.3.
        """);
    Checked c = Checked.taught(folder);
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-1", "mortar.colour")).containsExactly("grey");
    assertThat(c.governing("VG-1", "grout.standard")).containsExactly("ANSI A118.7");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("VG-2", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("VG-2", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(c.project().glass().stream().map(Entry::tag)).containsExactly("VG-1", "VG-2");
  }

  @Test
  void a_mark_may_be_the_title_of_what_it_stands_for() throws IOException {
    Checked c =
        with(
            "works.txt",
            """
            DESCRIPTION OF GLASS TILE WORKS

            31.20.010  TM-4

            Modified mortar ANSI A118.15, white.

            31.20.020  TM-7

            Epoxy mortar ANSI A118.3, grey.

            31.30.010  Waterproofing LW-1

            Liquid membrane ANSI A118.10, two coats.
            """);
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("VG-1", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("VG-2", "membrane.standard")).containsExactly("ANSI A118.10");
    assertThat(c.governing("VG-1", "membrane.standard")).isEmpty();
  }

  @Test
  void what_suits_an_adhesive_on_the_card_of_a_tile_is_of_that_tile() throws IOException {
    Files.writeString(
        folder.resolve("cards.csv"),
        "VG-1,Cast glass mosaic\nSize,20 x 20 mm\nMounting,\"Mesh, glued; suits TM-4\"\nThickness,6 mm\n"
            + "VG-3,Cast glass mosaic\nSize,25 x 25 mm\nMounting,Loose\nThickness,6 mm\n");
    Checked c =
        with(
            "n.txt",
            "GLASS TILE NOTES\n\nTM-4 is a white mortar, ANSI A118.15, for VG-1 and VG-3.\n");
    assertThat(c.governing("VG-1", "tile.mounting")).containsExactly("mesh-back");
    assertThat(c.governing("VG-3", "tile.mounting")).containsExactly("loose");
  }
}
