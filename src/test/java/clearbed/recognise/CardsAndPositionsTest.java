package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Tables in which a tile is a card of its own or a position of a bill. */
class CardsAndPositionsTest {
  @TempDir Path folder;

  private Checked of(String name, String text) throws IOException {
    return Checked.ofFiles(folder, name, text);
  }

  @Test
  void cards_stand_one_below_the_other_under_their_marks() throws IOException {
    Checked c =
        of(
            "cards.csv",
            "GT-1,\"Glass mosaic, washroom walls\"\n"
                + "Size,20 x 20 mm\n"
                + "Mortar,\"ANSI A118.15, white\"\n"
                + "Substrate,Cement backer board\n"
                + "GT-2,\"Cast glass tile, bar front\"\n"
                + "Size,50 x 200 mm\n"
                + "Mortar,\"ANSI A118.3, white\"\n"
                + "Substrate,Concrete\n");
    assertThat(c.project().glass().stream().map(Entry::tag)).containsExactly("GT-1", "GT-2");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-2", "substrate.type")).containsExactly("concrete");
  }

  @Test
  void the_number_of_a_position_is_no_mark_where_its_text_has_one() throws IOException {
    Checked c =
        of(
            "bill.md",
            "# 31 Tile work\n\n"
                + "| Pos. | Text | Quantity |\n|---|---|---|\n"
                + "| 31.610 | GT-1 Glass mosaic, 20 x 20 mm, to ANSI A137.2, translucent | 86 |\n"
                + "| 31.620 | GT-2 Cast glass tile, 50 x 200 mm, to ANSI A137.2, opaque | 40 |\n"
                + "| 31.710 | PT-1 Porcelain tile, 600 x 600 mm | 12 |\n");
    assertThat(c.project().glass().stream().map(Entry::tag)).containsExactly("GT-1", "GT-2");
    assertThat(c.governing("GT-1", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("GT-2", "tile.size")).containsExactly("50 mm x 200 mm");
  }

  @Test
  void the_number_of_an_item_is_no_mark_where_its_words_call_the_tile_by_one() throws IOException {
    Checked c =
        of(
            "bill.csv",
            "Item,Description,Unit,Qty\n"
                + "1,\"Glass tile GL7, bedded in K2, to vestibule walls\",m2,30\n"
                + "2,\"Ditto, to the reveals\",m2,4\n"
                + "3,\"Glass mosaic GL8, bedded in K3, to counter\",m2,9\n"
                + "4,\"Expansion joints in glass tiling, sealed as specified\",m,50\n"
                + "5,\"Porcelain tile PT2, to floor\",m2,60\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GL7", "GL8");
  }

  @Test
  void an_item_of_glass_tile_without_a_mark_is_a_tile_among_others_that_have_one()
      throws IOException {
    Checked c =
        of(
            "bill.csv",
            "Item,Description,Unit,Qty\n"
                + "1,\"Glass tile GL7, bedded in K2, to vestibule walls\",m2,30\n"
                + "2,\"Glass mosaic GL8, bedded in K3, to counter\",m2,9\n"
                + "3,\"Glass tile 100 x 100 mm to splashback of tea kitchen\",m2,2\n");
    assertThat(c.project().glass()).extracting(Entry::tag).contains("GL7", "GL8", "3");
  }

  @Test
  void the_line_of_an_office_between_a_title_and_its_card_names_nothing() throws IOException {
    StringBuilder cards = new StringBuilder();
    for (String title :
        new String[] {"GT-1 Glass mosaic, dusk", "PT-4 Porcelain", "GT-2 Glass tile, dawn"})
      cards
          .append(title)
          .append("\n\nHarbour Library | product data | North Quay Office\n\n")
          .append("| How made | Cast |\n|---|---|\n| Size | 50 x 50 x 6 mm |\n")
          .append("| Mortar | ANSI A118.15, white |\n| Substrate | Concrete |\n\n");
    Checked c = of("cards.md", cards.toString().replace(" | product data | ", " / data / "));
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GT-1", "GT-2");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void the_mark_of_a_card_stands_behind_the_name_of_its_kind() throws IOException {
    Checked c =
        of(
            "facing.csv",
            "FICHE V.01,Glass facing\nKind,Fused glass tile\nSize,100 x 100 mm\n"
                + "Mortar,\"ANSI A118.15, white\"\nSubstrate,Cement board\nJoint width,2 mm\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("V.01");
    assertThat(c.governing("V.01", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("V.01", "tile.size")).containsExactly("100 mm x 100 mm");
    assertThat(c.governing("V.01", "grout.width")).containsExactly("2 mm");
  }

  @Test
  void a_card_of_names_and_values_in_plain_text_stands_under_its_place() throws IOException {
    Checked c =
        of(
            "addendum.txt",
            "ADDENDUM NO. 1\n\n(1) Steam room walls, upper floor. Add to the schedule:\n\n"
                + "    Mark         GT-7\n"
                + "    Material     Glass tile, pearl\n"
                + "    Size         98 x 98 x 8 mm\n"
                + "    See-through  Opaque\n"
                + "    Adhesive     R2T, white\n"
                + "    Grout joint  2 mm\n\n"
                + "(2) The lobby stays as it is.\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GT-7");
    assertThat(c.governing("GT-7", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("GT-7", "mortar.chemistry")).containsExactly("epoxy");
    assertThat(c.governing("GT-7", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("GT-7", "location.exposure")).containsExactly("steam");
    assertThat(c.governing("GT-7", "grout.width")).containsExactly("2 mm");
  }

  @Test
  void a_colour_named_after_a_stone_makes_no_stone_of_glass() throws IOException {
    Checked c =
        of(
            "cards.md",
            "### GT-3 - Spa, shower floor\n\n"
                + "| | |\n|---|---|\n| Looks | Slate, opaque |\n| Back | Plain, no coating |\n"
                + "| Size | 2 x 2 in |\n\n## Legend\n\n"
                + "| Mark | Material |\n|---|---|\n| GT-3 | Glass mosaic |\n");
    assertThat(c.hasGlass("GT-3")).isTrue();
    assertThat(c.governing("GT-3", "tile.translucency")).containsExactly("opaque");
    assertThat(c.findings("conflict")).isEmpty();
  }

  @Test
  void keynotes_of_divisions_are_marks_and_their_texts_describe() throws IOException {
    Files.writeString(
        folder.resolve("legend.csv"),
        "Keynote,Keynote Text,Nominal Size,Location\n"
            + "0423.B1,GLASS UNIT MASONRY,7-3/4 IN X 7-3/4 IN,STAIR\n"
            + "0930.G1,\"GLASS MOSAIC, PRESSED, PAPER-FACED SHEETS\",1 IN X 1 IN,\"POOL WALLS, SUBMERGED\"\n"
            + "0930.G2,\"GLASS TILE, CAST, INDIVIDUAL PIECES\",2 IN X 6 IN,LOBBY WALL\n"
            + "0930.P1,PORCELAIN TILE,12 IN X 12 IN,POOL DECK\n");
    Checked c =
        of(
            "09 30 00.txt",
            "SECTION 09 30 00\nTILING\nPART 2 - PRODUCTS\n2.1 MORTAR\n"
                + "A. 0930.G1: ANSI A118.3 epoxy mortar.\nB. 0930.G2: ANSI A118.15 mortar.\n");
    assertThat(c.project().glass()).extracting(Entry::tag).contains("0930.G1", "0930.G2");
    assertThat(c.governing("0930.G2", "tile.kind")).containsExactly("cast");
  }

  @Test
  void a_description_has_its_size_in_the_unit_noted_for_all() throws IOException {
    Checked c =
        of(
            "codes.csv",
            "CODE LIST. Sizes in millimetres.,,\nCode,Material,Description\n"
                + "GT-1,Glass mosaic,\"23 x 23 x 4, sea green\"\n"
                + "GT-2,Glass tile,\"75 x 300 x 8, rust\"\n"
                + "PT-1,Porcelain tile,\"600 x 600 x 10, matt\"\n");
    assertThat(c.governing("GT-1", "tile.size")).containsExactly("23 mm x 23 mm x 4 mm");
  }

  @Test
  void a_list_of_standards_in_a_table_requires_none_of_them() throws IOException {
    Checked c =
        of(
            "section.md",
            "# SECTION 09 30 00 - TILING\n\n## 1.2 Standards cited in this document\n\n"
                + "| Number | Subject |\n|---|---|\n| ANSI A118.15 | Mortars |\n"
                + "| ANSI A137.2 | Glass tile |\n| ASTM C920 | Sealants |\n"
                + "| ASTM C1026 | Freeze-thaw resistance |\n\n## 2.1 Materials\n\n"
                + "GT-1: glass tile to ANSI A137.2.\n\nMortar: ANSI A118.15. Sealant: ASTM C920.\n");
    assertThat(c.findings("unused-standard"))
        .extracting(f -> f.message())
        .containsExactly("ASTM C1026 is listed in the references and required nowhere.");
  }

  @Test
  void build_ups_one_below_the_other_are_of_the_tiles_that_their_titles_name() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Mark,Material,Size\nVG-1,Cast glass mosaic,20 x 20 mm\nVG-2,Fused glass tile,50 x 100 mm\n");
    Checked c =
        of(
            "layers.csv",
            "Build-ups of the bath house,,\n"
                + "B1 Plunge pool: VG-1,,\n"
                + "-,Exposure,submerged\n1,Ground,Cast concrete\n2,Mortar,\"ANSI A118.15, white\"\n"
                + "3,Tile,VG-1\n4,Grout,\"ANSI A118.3, joint 2 mm\"\n5,Movement joints,\"every 2.4 m, 8 mm wide\"\n"
                + "B2 Foyer wall: VG-2,,\n"
                + "-,Exposure,dry\n1,Ground,Cement board\n2,Mortar,\"ANSI A118.3, white\"\n"
                + "3,Tile,VG-2\n4,Grout,\"ANSI A118.7, joint 3 mm\"\n5,Movement joints,\"every 6 m, 6 mm wide\"\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("VG-1", "VG-2");
    assertThat(c.governing("VG-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("VG-1", "grout.width")).containsExactly("2 mm");
    assertThat(c.governing("VG-2", "grout.width")).containsExactly("3 mm");
    assertThat(c.governing("VG-1", "movement.spacing")).containsExactly("2.4 m");
    assertThat(c.governing("VG-2", "substrate.type")).containsExactly("cement board");
    assertThat(c.governing("VG-1", "location.exposure")).contains("submerged");
    assertThat(c.governing("VG-2", "location.exposure")).contains("dry");
  }

  @Test
  void a_position_is_of_the_tile_in_its_title() throws IOException {
    Files.writeString(
        folder.resolve("tiles.csv"),
        "Mark,Material,Size\nVG-1,Cast glass mosaic,20 x 20 mm\nVG-2,Glass tile,50 x 100 mm\n");
    Checked c =
        of(
            "works.txt",
            """
            DESCRIPTION OF GLASS TILE WORKS

            Pos. 31.40.010  VG-1 in the plunge pool

            Glass mosaic, paper on the face, laid in a full bed.

            Pos. 31.40.020  VG-2 in the foyer

            Fused glass tiles, translucent, laid in stretcher bond.
            """);
    assertThat(c.governing("VG-1", "tile.mounting")).containsExactly("paper-face");
    assertThat(c.governing("VG-2", "tile.mounting")).isEmpty();
    assertThat(c.governing("VG-2", "tile.kind")).containsExactly("fused");
    assertThat(c.governing("VG-1", "tile.translucency")).isEmpty();
  }
}
