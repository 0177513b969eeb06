package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.value.Entry;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A sheet of tiles across, products by letters, notes by bare numbers, cards under one another. */
class SheetsOfPoolBuildersTest {
  private static final String PRODUCTS =
      "Mark,Product,Requirement\n"
          + "BM-1,\"Latex mortar, white\",\"ANSI A118.15; 420 psi in shear to glass tile\"\n"
          + "WP,Bonded waterproof membrane,ANSI A118.10\n"
          + "EG,Epoxy grout,ANSI A118.3\n"
          + "US,\"Polyurethane sealant\",\"ASTM C920, Type M, Grade NS, Class 35, Uses T and I\"\n";

  @TempDir Path folder;

  @Test
  void a_title_over_tiles_across_and_a_list_below_are_tables_of_their_own() {
    Checked c =
        Checked.ofFiles(
            folder,
            "sheet.csv",
            "NORTH COVE BATHS,Project 77,Sheet P-9\n\n"
                + "Glass tile,BW-1,BF-1\nUse,Basin wall,Basin floor\n\"Face (in)\",1 x 1,2 x 2\n"
                + "See-through,,Opaque\n\"Joint (in)\",1/16,1/8\n\n"
                + "Other finishes (not glass tile),Item,Where\nRP-1,Rubber paver,Deck\n"
                + "BL-1,Bluestone coping,Edge\n\n\"Notes: n/a = not applicable.\"\n");
    assertThat(c.project().entries()).extracting(Entry::tag).containsExactly("BW-1", "BF-1");
    assertThat(c.governing("BW-1", "tile.size")).containsExactly("1 in x 1 in");
    assertThat(c.governing("BF-1", "grout.width")).containsExactly("0.125 in");
  }

  @Test
  void letters_that_a_list_of_products_gives_are_followed_from_the_schedule() {
    Checked c =
        Checked.taughtByFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Size,Membrane,Mortar,Grout,Sealant\n"
                + "BW-1,Glass mosaic,1 x 1 in,\"WP, under the bed\",BM-1,EG,US\n"
                + "BF-1,Glass mosaic,2 x 2 in,WP,BM-1,EG,US\n",
            "products.csv",
            PRODUCTS);
    for (String tag : List.of("BW-1", "BF-1")) {
      assertThat(c.governing(tag, "mortar.standard")).containsExactly("ANSI A118.15");
      assertThat(c.governing(tag, "membrane.standard")).containsExactly("ANSI A118.10");
      assertThat(c.governing(tag, "grout.standard")).containsExactly("ANSI A118.3");
      assertThat(c.governing(tag, "sealant.class")).containsExactly("35");
    }
    assertThat(c.project().entries()).extracting(Entry::tag).containsExactly("BW-1", "BF-1");
  }

  @Test
  void notes_by_bare_numbers_are_apart() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Size,Place\nBW-1,Glass mosaic,1 x 1 in,Basin wall\n"
                + "BB-1,Glass mosaic,1 x 1 in,Bar wall\n",
            "notes.txt",
            "SHEET P-2   NOTES\n\n"
                + " 1  Shell by others.\n"
                + " 2  MOVEMENT JOINTS, SPACING\n"
                + "      BW-1 basin wall .......... 8 ft on center\n"
                + "      BB-1 bar wall ............ 20 ft on center\n"
                + " 3  BW-1 turns the corner; basin edge: one course,\n"
                + "    all around.\n"
                + " 4  BB-1: stop below the shelf.\n");
    assertThat(c.governing("BB-1", "movement.spacing")).containsExactly("20 ft");
    assertThat(c.governing("BW-1", "movement.spacing")).containsExactly("8 ft");
    assertThat(c.governing("BB-1", "location.exposure")).doesNotContain("submerged");
  }

  @Test
  void many_cards_under_one_another_call_products_by_their_marks() {
    StringBuilder cards = new StringBuilder();
    for (int i = 1; i <= 9; i++)
      cards.append(
          ("QT-%d,\"Glass tile, room %d\"%nVendor / series,V-0%d%nManufacture,Fused glass%n"
                  + "Size,2 in. x 2 in. x 1/4 in. on sheets of 12 in. x 12 in.%n"
                  + "Color / light,\"Sand, opaque\"%nStandard,ANSI A137.2%n"
                  + "Set with,Mortar M-%d%nGrout / joint,\"G-1, 1/8 in. joint\"%n")
              .formatted(i, i, i, i % 2 + 1));
    Checked c =
        Checked.ofFiles(
            folder,
            "cards.csv",
            cards.toString(),
            "093000.txt",
            "SECTION 09 30 00\nTILING\n\nPART 2 - PRODUCTS\n\n2.1 MORTAR\n\n"
                + "A. M-1: white modified cement mortar to ANSI A118.15.\n\n"
                + "B. M-2: white epoxy mortar to ANSI A118.3.\n\n2.2 GROUT\n\n"
                + "A. G-1: unsanded high-performance cement grout to ANSI A118.7.\n");
    assertThat(c.governing("QT-1", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("QT-2", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("QT-9", "tile.size")).containsExactly("2 in x 2 in x 0.25 in");
    assertThat(c.governing("QT-9", "grout.standard")).containsExactly("ANSI A118.7");
  }

  @Test
  void a_range_beside_a_place_is_that_of_the_tile_and_of_no_work() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Made,Exposure\n"
                + "BF-1,Glass mosaic,\"Fused, silver leaf on back\",\"Submerged, 60 to 104 deg F\"\n");
    assertThat(c.governing("BF-1", "process.temperature")).isEmpty();
    assertThat(c.governing("BF-1", "location.temperatureRange")).containsExactly("44 °F");
  }

  @Test
  void the_floor_of_a_pool_is_no_deck() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Size,Place,Exposure,Spacing of joints,Width of joints,Range of tile (F)\n"
                + "BF-1,Glass mosaic,1 x 1 in,Basin floor,\"Exterior, submerged, frost\",8 ft,1/2 in,130\n");
    assertThat(c.findings("movement-width"))
        .extracting(Finding::message)
        .noneMatch(message -> message.contains("3/4 in"));
  }

  @Test
  void a_product_and_a_width_stand_in_one_cell_and_float_glass_that_is_set_is_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Location,Tile,Tile,Installation,Installation\n"
                + "Tag,Location,Make,Face size (in.),Mortar,Grout / joint width (in.)\n"
                + "GC-1,Wash room walls,Pressed glass mosaic,1 x 1,LM-1,GR-2 / 1/16\n"
                + "GC-2,Bar wall,Cast glass,2 x 2,LM-1,GR-1 / 1/8\n"
                + "GC-3,Bar wall,\"Float glass, painted on the back\",2 x 4,EM-1,GR-1 / 1/8\n");
    assertThat(c.governing("GC-1", "grout.width")).containsExactly("0.0625 in");
    assertThat(c.governing("GC-3", "grout.width")).containsExactly("0.125 in");
    assertThat(c.entry("GC-3").glass()).isTrue();
  }

  @Test
  void inside_what_does_not_freeze_is_not_outside() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Exposure\nGC-1,Glass mosaic,\"Interior, wet, not freezing\"\n"
                + "GC-2,Glass mosaic,\"Porch, not freezing\"\n");
    assertThat(c.governing("GC-1", "location.exposure")).containsExactly("wet");
    assertThat(c.governing("GC-2", "location.exposure")).contains("exterior");
  }

  @Test
  void two_systems_about_an_equals_sign_are_one_figure_and_a_scale_is_not() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Size\nGC-1,Glass tile,48 x 48 x 8 mm (8 mm = 5/8 in)\n",
            "notes.txt",
            "GLASS TILE NOTES\n\n1. Scale of all details: 1/2 in = 1 ft.\n");
    assertThat(c.findings("unit-slip")).hasSize(1);
  }

  @Test
  void a_stricter_bound_of_its_own_keeps_that_of_all_and_a_looser_one_does_not() {
    String section =
        "SECTION 09 30 00\nTILING\n\nPART 2 - PRODUCTS\n\n2.2 MORTAR\n\n"
            + "A. Mortar for glass tile: shear bond strength to glass tile not less than 400 psi.\n";
    assertThat(conflicts(450, section)).isZero();
    assertThat(conflicts(350, section)).isEqualTo(1);
  }

  private long conflicts(int psi, String section) {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tag,Material,Shear bond strength\nBF-1,Glass mosaic,not less than " + psi + " psi\n",
            "093000.txt",
            section);
    return c.findings("conflict").size();
  }

  @Test
  void sample_panels_in_a_bill_are_no_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "bill.csv",
            "Item,Mark,Description,Unit,Qty\n1,BF-1,Glass mosaic 25 x 25 mm to pool floor,m2,80\n"
                + "2,BW-1,Glass mosaic 25 x 25 mm to pool wall,m2,60\n"
                + "3,,Sample panels (mock-up) of glass tile to each,nr,2\n");
    assertThat(c.project().entries()).extracting(Entry::tag).containsExactly("BF-1", "BW-1");
  }
}
