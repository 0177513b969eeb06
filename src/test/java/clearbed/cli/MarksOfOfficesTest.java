package clearbed.cli;

import static clearbed.cli.CheckedJson.glass;
import static clearbed.cli.CheckedJson.values;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Marks in the forms of many offices, which nothing but their documents teaches. */
class MarksOfOfficesTest {
  @TempDir Path folder;

  private JsonNode checked(Map<String, String> files) throws IOException {
    return CheckedJson.of(folder, files);
  }

  private List<String> glassOf(String name, String text) throws IOException {
    return glass(checked(Map.of(name, text)));
  }

  @Test
  void a_legend_explains_the_letters_of_marks() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "list.csv",
                """
                Ref,Name,Size,Where
                M4,Lichen,1 x 1 in,Cold pool
                M5,Fog,1 x 1 in,Footbath
                C2,Bone,4 x 4 in,Linen room
                """,
                "prefixes.csv",
                """
                Letter,Stands for
                C,Glazed ceramic tile
                M,Vitreous glass mosaic
                """));
    assertThat(glass(run)).containsExactly("M4", "M5");
  }

  @Test
  void a_legend_in_one_line_explains_the_cells_of_a_column() throws IOException {
    assertThat(
            glassOf(
                "finishes.txt",
                """
                Kinds: MGL = glass mosaic, PRC = porcelain tile, WPP = wallpaper

                Symbol    Kind    Module       Position
                2-a       MGL     20 x 20      Wash room, wall
                2-b       PRC     300 x 300    Wash room, floor
                2-c       MGL     40 x 40      Bar front
                """))
        .containsExactly("2-a", "2-c");
  }

  @Test
  void letters_that_abbreviate_are_explained_without_a_sign_between() throws IOException {
    assertThat(
            glassOf(
                "finishes.csv",
                """
                Mark,Class,Surface finish,Position
                B2-W1,GLT,"Square, on sheets",Gym shower
                B2-W2,WPA,Matt,Offices
                B2-W3,GLT,"Cast, fire polished",Tea corner
                "Class: GLT glass tile; WPA water paint acrylic",,,
                """))
        .containsExactly("B2-W1", "B2-W3");
  }

  /** "WALLS: glass tile" explains no letters. */
  @Test
  void a_property_in_capitals_is_no_legend() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "notes.txt",
                "NOTES\n\nWALLS: glass tile\n\nFLOORS: porcelain tile\n",
                "list.csv",
                "Tag,Material,Location\nWALLS-1,Limewash,Hall\nGT-1,Glass tile,Bar\n"));
    assertThat(glass(run)).containsExactly("GT-1");
  }

  @Test
  void numbers_of_keynotes_are_marks() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "keys.csv",
                """
                KEYNOTE,KEYNOTE TEXT,SHEET
                DIVISION 09,,
                093013.B7,"CERAMIC TILE, 4 X 4, OVER CEMENT BOARD",A-5
                093023.C1,"GLASS MOSAIC TILE, 1 X 1, MESH MOUNTED, AT SPA, WHITE THIN-SET",A-4
                093023.C2,"GLASS TILE, 2 X 8, AT BAR, 1/8 INCH JOINTS",A-4
                096500.D1,"RUBBER BASE, 4 INCH, BLACK",A-6
                """));
    assertThat(glass(run)).containsExactly("093023.C1", "093023.C2");
    assertThat(values(run, "093023.C1", "tile.mounting")).containsExactly("mesh-back");
  }

  @Test
  void words_and_letters_count_tiles() throws IOException {
    assertThat(
            glassOf(
                "picks.csv",
                """
                What,Made of,How big,Where it goes
                Tile A,porcelain,12 x 12,hall floor
                Tile B,glass,3 x 6,bar splash
                Tile C,glass,1 x 1 on sheets,guest shower
                Paint A,latex,,ceilings
                """))
        .containsExactly("Tile B", "Tile C");
  }

  @Test
  void a_text_counts_what_it_lists() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "house.txt",
                """
                Tile A. Brown quarries, 150 mm square, for the boot room.

                Tile B. Glazed ceramic, white, for the larder, 3 mm joints.

                Tile C. Glass mosaic in sheets, 30 mm square, for the shower, 2 mm joints.

                Tile D. Cast glass, 400 x 100 mm, above the range. White adhesive.
                """));
    assertThat(glass(run)).containsExactly("Tile C", "Tile D");
    assertThat(values(run, "Tile D", "mortar.colour")).containsExactly("white");
  }

  @Test
  void the_number_of_a_line_is_no_mark_beside_one() throws IOException {
    assertThat(
            glassOf(
                "Belagsliste.csv",
                """
                Pos.;Kurzzeichen;Bezeichnung;Format (mm);Raum
                1;FK-1;Porcelain tile;600 x 600;Foyer
                2;GS-1;Glass tile, satin face;100 x 300;Tea kitchen
                3;GS-2;Glass mosaic;20 x 20;Guest WC
                """))
        .containsExactly("GS-1", "GS-2");
  }

  @Test
  void one_property_of_a_tile_to_a_row() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "export.csv",
                """
                Finish no.;Property;Value
                0311;Name;Ceramic wall tile
                0311;Size;150 x 150 mm
                0311;Place;Kitchen
                0317;Name;Glass mosaic
                0317;Size;25 x 25 mm
                0317;Joint width;2 mm
                0322;Name;Glass tile
                0322;Size;65 x 200 mm
                0322;Joint width;3 mm
                """));
    assertThat(glass(run)).containsExactly("0317", "0322");
    assertThat(values(run, "0322", "grout.width")).containsExactly("3 mm");
  }

  @Test
  void a_mark_opens_the_cell_that_describes_it() throws IOException {
    assertThat(
            glassOf(
                "proto.csv",
                """
                Finish,Where,Rev
                "FLR-2: sealed concrete",Kitchen,0
                "TIL-1: porcelain plank, 8x36",Dining,0
                "TIL-3: crystal glass tile, 2x8, stacked",Bar die,1
                "TIL-5: glass mosaic, 1x1",Restroom wall,2
                """))
        .containsExactly("TIL-3", "TIL-5");
  }

  @Test
  void dots_lead_to_the_values_of_cards() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "records.txt",
                """
                Record
                  Finish tag ....... 31.MTL.02
                  Material ......... Blackened steel
                  Used for ......... Canopy
                End

                Record
                  Finish tag ....... 31.GLA.02
                  Material ......... Glass tile, poured
                  Size ............. 2 x 9 in
                  Mortar ........... White, latex modified
                  Joint ............ 1/16 in
                End

                Record
                  Finish tag ....... 31.GLA.03
                  Material ......... Glass mosaic tile
                  Color ............ Stout
                  Joint ............ 1/8 in
                End
                """));
    assertThat(glass(run)).containsExactly("31.GLA.02", "31.GLA.03");
    assertThat(values(run, "31.GLA.02", "mortar.colour")).containsExactly("white");
    assertThat(values(run, "31.GLA.03", "grout.width")).containsExactly("0.125 in");
  }

  @Test
  void a_title_says_what_its_types_are() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "section.txt",
                """
                SECTION 09 30 00 - TILING

                PART 2 - PRODUCTS

                2.1 CERAMIC TILE

                A. Tile Type CW-A: Glazed wall tile.

                2.2 GLASS TILE

                A. Tile Type GW-A: Clear body with fired colour behind.

                1. Joint Width: 1/16 inch.

                B. Tile Type GW-B: Mosaic, opaque, paper faced.

                1. Joint Width: 1/8 inch.

                2.3 THRESHOLDS

                A. Type TH-A: Granite, honed.
                """));
    assertThat(glass(run)).containsExactly("GW-A", "GW-B");
    assertThat(values(run, "GW-B", "grout.width")).containsExactly("0.125 in");
  }

  @Test
  void several_marks_before_one_description_are_several_tiles() throws IOException {
    assertThat(
            glassOf(
                "note.txt",
                """
                FINISHES NOTE

                1. MG-01, MG-02, MG-03: Glass mosaic, 20 x 20 mm, fountain court.

                2. PT-05: Porcelain tile, foyer.
                """))
        .containsExactly("MG-01", "MG-02", "MG-03");
  }

  @Test
  void marks_may_stand_behind_what_they_mark() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "outline.txt",
                """
                1. Walls of the spa
                   Grasscloth over liner, flax [WC-2]
                   Glass mosaic, sheet mounted, pearl, on cement board; white
                   mortar; joints 1/16 inch [WC-4]
                   Honed limestone slab [WC-6]

                2. Walls of the bar

                   Glass tile, 2 x 8, film faced; white mortar [WC-7]
                """));
    assertThat(glass(run)).containsExactly("WC-4", "WC-7");
    assertThat(values(run, "WC-4", "grout.width")).containsExactly("0.0625 in");
  }

  @Test
  void strokes_may_stand_around_a_ditto_and_words_behind_it() throws IOException {
    assertThat(
            glassOf(
                "typed.txt",
                """
                Mark    Finish                                Where

                W.10    Ceramic tiles, 150 x 150 mm           kitchen
                W.11    do. but blue                          laundry
                W.12    Vitreous glass mosaic, 25 x 25 mm     entrance columns
                W.13    do. but bronze                        visitors' lavatories
                """))
        .containsExactly("W.12", "W.13");
  }

  @Test
  void marks_with_a_stop_are_no_numbers_of_articles_and_have_a_form() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "key.csv",
                """
                KEY,MATERIAL,SIZE,WHERE,SHEET
                M4.1,Glass tile,1 x 1 in,Basin wall,L-502
                M4.2,Glass tile,2 x 2 in,Weir wall,L-502
                M6.1,Porcelain tile,12 x 24 in,Terrace,L-504
                """,
                "section.txt",
                """
                SECTION 09 30 15 - GLASS TILE

                PART 2 - PRODUCTS

                2.01 KEYS

                M4.1  Sintered glass, opaque, uncoated back. Mortar ANSI A118.4.

                M4.2  Cast glass, translucent. White mortar, ANSI A118.15.
                """,
                "notes.txt",
                """
                SHEET L-502 TILE NOTES

                1. KEYS M4.x ARE GLASS TILE.

                2. SUBSTRATE UNDER M4.x SHALL BE PLANE TO 1/4" IN 10'-0".

                3. BAND AT LIP: M4.3 GLASS TILE, 2 COURSES.
                """));
    assertThat(values(run, "M4.1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(values(run, "M4.2", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(values(run, "M4.1", "substrate.flatness")).containsExactly("0.25 in in 10 ft");
    assertThat(glass(run)).containsExactly("M4.1", "M4.2", "M4.3");
  }

  @Test
  void a_legend_makes_tile_of_float_glass() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "schedule.csv",
                """
                House by the bay. TG = glass tile, TP = porcelain
                Mark,Where,What it is,Face size x thickness
                TG1,Pool wall,Sintered glass,23 x 23 x 6 mm
                TG2,Entry hall,Cut float glass,100 x 300 x 8 mm
                TP1,Laundry floor,Porcelain,600 x 600 x 9 mm
                """));
    assertThat(glass(run)).containsExactly("TG1", "TG2");
    assertThat(values(run, "TG2", "tile.size")).containsExactly("100 mm x 300 mm x 8 mm");
  }

  @Test
  void cards_of_two_properties_to_a_row_stand_under_their_titles() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "cards.csv",
                """
                CARD TL-1 - GLASS TILE - Pool,,,
                Make-up,Pressed glass mosaic,Nominal,3/4 in x 3/4 in
                Color,Harbor,Light,Opaque
                Back,"Ribbed glass, no coating",Mortar,"ANSI A118.15, white"
                ,,,
                CARD TL-2 - PORCELAIN TILE - Lobby,,,
                Make-up,Through-body porcelain,Nominal,12 in x 24 in
                Color,Slate,Light,
                Back,Plain,Mortar,"ANSI A118.4, gray"
                ,,,
                CARD TL-3 - GLASS TILE - Showers,,,
                Make-up,Cast glass tile,Nominal,3 in x 6 in
                Color,Willow,Light,Translucent
                Back,"Ground glass, no coating",Mortar,"ANSI A118.15, white"
                """));
    assertThat(glass(run)).containsExactly("TL-1", "TL-3");
    assertThat(values(run, "TL-1", "tile.size")).containsExactly("0.75 in x 0.75 in");
    assertThat(values(run, "TL-3", "tile.translucency")).containsExactly("translucent");
    assertThat(values(run, "TL-3", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void cards_lie_side_by_side_and_below_one_another() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "board.csv",
                """
                Palette 3,,,,
                ,,,,
                AZ-2,,,AZ-5,
                Type,Glass mosaic tile,,Type,Glass tile
                Size,3/8 in x 3/8 in,,Size,4 in x 16 in
                Where,Steam room walls,,Where,Alcove
                ,,,,
                EA-4,,,SU-3,
                Type,Cork plank,,Type,Paint
                Size,6 in x 36 in,,Size,none
                Where,Treatment rooms,,Where,Ceilings
                """));
    assertThat(glass(run)).containsExactly("AZ-2", "AZ-5");
    assertThat(values(run, "AZ-5", "tile.size")).containsExactly("4 in x 16 in");
  }

  @Test
  void a_tick_stands_under_what_a_tile_is_made_of() throws IOException {
    assertThat(
            glassOf(
                "ticks.csv",
                """
                Our no.,Glass,Porcelain,Stone,Size,Wall / floor
                E-7,,x,,300 x 600,floor
                E-8,x,,,65 x 265,wall
                E-9,x,,,65 x 265,wall
                E-10,,,x,400 x 400,floor
                """))
        .containsExactly("E-8", "E-9");
  }

  @Test
  void a_section_number_stands_for_what_its_title_says() throws IOException {
    assertThat(
            glassOf(
                "key.txt",
                """
                Sections: 09 30 00 tiling (ceramic); 09 30 14 glass tiling; 09 68 00 carpet

                Key    Section     Format     Colour      Room
                K1     09 30 00    12 x 24    Flannel     Toilet 120
                K2     09 30 14    4 x 4      Marigold    Toilet 120
                K3     09 30 14    4 x 4      Spearmint   Toilet 122
                K4     09 68 00    24 x 24    Dusk        Open office
                """))
        .containsExactly("K2", "K3");
  }

  @Test
  void a_mark_stands_in_quotes_or_brackets_behind_its_item() throws IOException {
    assertThat(
            glassOf(
                "acabados.csv",
                """
                Descripción,Medidas (cm),Junta (mm),Ubicación
                Mosaico de vidrio «MV-a»,"2,5 x 2,5","1,5",Alberca
                Mosaico de vidrio «MV-b»,"2,5 x 2,5","1,5",Chapoteadero
                Azulejo de barro vidriado «AZ-a»,11 x 11,4,Cocina
                """))
        .containsExactly("MV-a", "MV-b");
  }

  @Test
  void a_blank_corner_of_a_drawn_table_is_a_cell() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "matrix.txt",
                """
                              | TG101          | TG102         | TP201
                --------------+----------------+---------------+------------
                Description   | glass tile     | glass mosaic  | porcelain
                Size (mm)     | 98 x 198       | 23 x 23       | 300 x 600
                Room          | Ensuite        | Powder room   | Laundry
                """));
    assertThat(glass(run)).containsExactly("TG101", "TG102");
    assertThat(values(run, "TG101", "tile.size")).containsExactly("98 mm x 198 mm");
  }

  @Test
  void the_number_of_a_family_may_stand_before_its_letters() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "legend.csv",
                """
                Mark,Item,Where,Face size
                9G-1,Glass mosaic,Pool walls,1 x 1 in
                9G-2,Glass tile,Lobby wall,4 x 4 in
                9P-1,Porcelain tile,Corridor floor,12 x 12 in
                """,
                "section.txt",
                """
                SECTION 09 30 00 - TILING

                PART 2 - PRODUCTS

                2.3 MORTAR

                A. 9G-1: epoxy, ANSI A118.3. 9G-2: ANSI A118.15.

                2.5 GROUT

                A. 9G-1 and 9G-2: ANSI A118.7, unsanded.
                """,
                "bulletin.txt",
                """
                BULLETIN 2

                1. Carry 9G-7 glass tile around the return of the wall.
                """));
    assertThat(values(run, "9G-1", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(values(run, "9G-2", "grout.standard")).containsExactly("ANSI A118.7");
    assertThat(run.path("findings").findValuesAsText("message"))
        .contains("9G-7 is used but stands in no tile schedule.");
  }

  @Test
  void what_a_colour_is_called_is_no_finish_and_a_key_no_schedule() throws IOException {
    JsonNode run =
        checked(
            Map.of(
                "marks.csv",
                """
                Prefix,Family
                LU,Glass tile
                TE,Porcelain tile
                RE,Mirror
                PN,Glass wall panel
                """,
                "glass tile.csv",
                """
                Mark,Color program,Goes where,Face size,Back of tile
                LU-1,Fennel,Guest bath shower walls,1 x 1 in,"None, plain glass"
                LU-4,Old Brass,Lobby bar wall,4 x 12 in,Metallic leaf
                """));
    assertThat(glass(run)).containsExactly("LU-1", "LU-4");
  }
}
