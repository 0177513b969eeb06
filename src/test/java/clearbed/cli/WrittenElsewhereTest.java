package clearbed.cli;

import static clearbed.cli.CheckedJson.glass;
import static clearbed.cli.CheckedJson.values;
import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a row, a cell or a clause does not write itself, as another one has it. */
class WrittenElsewhereTest {
  @TempDir Path folder;

  private JsonNode checked(String name, String text) throws IOException {
    return CheckedJson.of(folder, Map.of(name, text));
  }

  private static List<String> tags(JsonNode run) {
    List<String> out = new ArrayList<>();
    run.path("entries").forEach(entry -> out.add(entry.path("tag").asText()));
    return out;
  }

  @Test
  void products_and_systems_are_joined_by_their_codes() throws IOException {
    JsonNode run =
        checked(
            "tables.csv",
            """
            Code,Article,Room,Surface,Build-up
            W7,4410,Plunge bath,Wall,BS-2
            W8,4417,Tea kitchen,Wall,BS-1
            W9,5002,Corridor,Floor,BS-1

            Article,Product,Size mm,Thickness mm
            5002,Porcelain tile,300 x 600,9
            4417,Glass tile,75 x 150,8
            4410,Glass mosaic,20 x 20,4

            Build-up,Substrate,Mortar,Mortar colour
            BS-1,gypsum board,ANSI A118.4,grey
            BS-2,mortar bed,ANSI A118.15,white
            """);
    assertThat(tags(run)).containsExactly("W7", "W8", "W9");
    assertThat(glass(run)).containsExactly("W7", "W8");
    assertThat(values(run, "W7", "tile.size")).containsExactly("20 mm x 20 mm");
    assertThat(values(run, "W7", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(values(run, "W8", "mortar.colour")).containsExactly("grey");
    assertThat(values(run, "W8", "tile.thickness")).containsExactly("8 mm");
  }

  @Test
  void marks_are_the_marks_of_a_table_that_calls_systems_in_another_column() throws IOException {
    JsonNode run =
        checked(
            "sheet.csv",
            """
            Tile,Material,Size,Setting method
            GB-1,Glass mosaic,1 x 1 in,M-4
            GB-2,Glass tile,2 x 6 in,M-5
            KB-1,Ceramic tile,4 x 4 in,M-4

            Setting method,Substrate,Mortar,Grout
            M-4,cement board,ANSI A118.4,ANSI A118.7
            M-5,mortar bed,ANSI A118.15,ANSI A118.3 epoxy
            """);
    assertThat(glass(run)).containsExactly("GB-1", "GB-2");
    assertThat(values(run, "GB-1", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(values(run, "GB-2", "grout.type")).containsExactly("epoxy");
  }

  @Test
  void a_cell_may_say_what_the_same_column_says_of_another_tile() throws IOException {
    JsonNode run =
        checked(
            "list.csv",
            """
            Mark,Material,Size,Thickness,Mortar,Joint
            GS-1,Glass mosaic,1 x 1 in,1/4 in,ANSI A118.15,1/16 in
            GS-2,Glass mosaic,2 x 2 in,same as GS-1,as per GS-1,1/8 in
            GS-3,as GS-2,3 x 3 in,as GS-2,Same as for type GS-2,see GS-1
            """);
    assertThat(glass(run)).containsExactly("GS-1", "GS-2", "GS-3");
    assertThat(values(run, "GS-2", "tile.thickness")).containsExactly("0.25 in");
    assertThat(values(run, "GS-3", "tile.thickness")).containsExactly("0.25 in");
    assertThat(values(run, "GS-3", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(values(run, "GS-3", "grout.width")).containsExactly("0.0625 in");
  }

  @Test
  void tiles_side_by_side_may_have_the_units_of_their_lines_before_them() throws IOException {
    JsonNode run =
        checked(
            "turned.csv",
            """
            ,Units,V1,V2,V3
            Material,,Glass mosaic,as V1,Porcelain tile
            Format,mm,25 x 25,50 x 50,300 x 300
            Thickness,mm,4,as V1,9
            Room,,Sauna shower,Bar,Lift lobby
            Adhesive,,"C2 S1, white",same as V1,C2
            Joint width,mm,2,3,4
            """);
    assertThat(glass(run)).containsExactly("V1", "V2");
    assertThat(values(run, "V2", "tile.size")).containsExactly("50 mm x 50 mm");
    assertThat(values(run, "V2", "tile.thickness")).containsExactly("4 mm");
    assertThat(values(run, "V2", "mortar.isoClass")).containsExactly("C2");
    assertThat(values(run, "V2", "grout.width")).containsExactly("3 mm");
  }

  @Test
  void a_tile_in_words_may_be_as_another_one_but_for_some_of_it() throws IOException {
    JsonNode run =
        checked(
            "key.txt",
            """
            FINISH KEY

            GW-1: Glass tile, 2 x 8 inch, 8 mm thick, translucent, on walls of Pantry 12. Over cement backer board. Unsanded grout, 1/16 inch joints.

            GW-2: As GW-1 but 4 x 4 inch, on floor of Wash Room 14, 1/8 inch joints.

            GW-3: To match GW-1 as seen on site.
            """);
    assertThat(glass(run)).containsExactly("GW-1", "GW-2");
    assertThat(values(run, "GW-2", "tile.size")).containsExactly("4 in x 4 in");
    assertThat(values(run, "GW-2", "tile.thickness")).containsExactly("8 mm");
    assertThat(values(run, "GW-2", "tile.translucency")).containsExactly("translucent");
    assertThat(values(run, "GW-2", "grout.width")).containsExactly("0.125 in");
    assertThat(values(run, "GW-2", "location.surface")).containsExactly("floor");
    assertThat(values(run, "GW-1", "tile.size")).containsExactly("2 in x 8 in");
  }

  @Test
  void an_item_of_a_bill_may_be_as_another_item() throws IOException {
    JsonNode run =
        checked(
            "bill.csv",
            """
            Item,Description,Unit,Quantity
            A,"MG-1 Glass mosaic, 20 x 20 mm, 4 mm thick; bedded in C2 adhesive, white; 2 mm joints",m2,80
            B,"MG-2 Glass mosaic as item A but 40 x 40 mm",m2,22
            C,"PT-1 Porcelain tile, 300 x 300 mm; bedded in C1 adhesive; 4 mm joints",m2,90
            """);
    assertThat(glass(run)).containsExactly("MG-1", "MG-2");
    assertThat(values(run, "MG-2", "tile.size")).containsExactly("40 mm x 40 mm");
    assertThat(values(run, "MG-2", "tile.thickness")).containsExactly("4 mm");
    assertThat(values(run, "MG-2", "mortar.isoClass")).containsExactly("C2");
    assertThat(values(run, "MG-2", "location.area")).containsExactly("22 m²");
  }

  @Test
  void a_line_of_a_bill_describes_the_tile_of_the_items_below_it() throws IOException {
    JsonNode run =
        checked(
            "trade.csv",
            """
            Item,Description,Unit,Qty
            ,"VG1 glass mosaic 20 x 20 mm, 4 mm thick, on paper-faced sheets; C2 adhesive, white; 2 mm joints",,
            A,"To walls, Bath 2.14",m2,31
            B,"To floor, Foot bath 2.15",m2,6
            ,"PV2 porcelain paver 600 x 600 mm; on mortar bed; C2 adhesive, grey; 5 mm joints",,
            C,"To floor, Roof terrace",m2,70
            """);
    assertThat(tags(run)).containsExactly("VG1", "PV2");
    assertThat(glass(run)).containsExactly("VG1");
    assertThat(values(run, "VG1", "tile.size")).containsExactly("20 mm x 20 mm");
    assertThat(values(run, "VG1", "location.room")).containsExactly("Bath 2.14", "Foot bath 2.15");
    assertThat(values(run, "VG1", "location.surface")).containsExactly("wall", "floor");
    assertThat(values(run, "VG1", "grout.width")).containsExactly("2 mm");
  }

  private static final String BLANKS =
      """
      %s

      Mark,Material,Size,Thickness,Mortar,Joint
      GL-1,Glass mosaic,1 x 1 in,1/4 in,ANSI A118.15,1/16 in
      GL-2,,2 x 2 in,,,
      """;

  @Test
  void blanks_repeat_the_row_above_where_the_document_says_so() throws IOException {
    JsonNode run = checked("a.csv", BLANKS.formatted("Empty cells repeat the line above."));
    assertThat(glass(run)).containsExactly("GL-1", "GL-2");
    assertThat(values(run, "GL-2", "tile.thickness")).containsExactly("0.25 in");
    assertThat(values(run, "GL-2", "grout.width")).containsExactly("0.0625 in");
  }

  @Test
  void blanks_repeat_nothing_where_no_document_says_so() throws IOException {
    JsonNode run = checked("a.csv", BLANKS.formatted("Blank cells are not required."));
    assertThat(glass(run)).containsExactly("GL-1");
  }
}
