package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Hints below headings, products of other tables, joints by rows, cards that run on. */
class HabitsOfTablesTest {
  @TempDir Path folder;

  @Test
  void hints_below_headings_are_of_those_and_head_nothing() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Tiles of the bath house,,,,,,\n"
                + "Mark,Where,What it is,Size,Thk,Tol.,Joint\n"
                + ",room,see Key,mm,mm,± mm,mm\n"
                + "GROUND FLOOR,,,,,,\n"
                + "G-1,\"Lobby, wall\",\"Glass mosaic, cast\",25 x 25,6,0.3,2\n"
                + "G-2,\"Café, wall\",\"Glass tile, fused\",98 x 98,8,0.5,3\n"
                + "C-1,Kitchen,Porcelain,200 x 200,8,,3\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("G-1", "G-2");
    assertThat(c.governing("G-1", "tile.size")).containsExactly("25 mm x 25 mm");
    assertThat(c.governing("G-1", "tile.sizeVariation")).containsExactly("0.3 mm");
    assertThat(c.governing("G-2", "grout.width")).containsExactly("3 mm");
  }

  @Test
  void a_row_of_data_below_a_heading_is_no_hint() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Where,Material,Size,Joint\n"
                + "GT-1,Lobby wall,Glass tile,2 x 2 in,1/8 in\n"
                + "GT-2,Lobby wall,Glass tile,1 x 1 in,1/16 in\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("GT-1", "GT-2");
  }

  @Test
  void tiles_across_have_marks_with_letters_in_two_parts() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,GT-C1,GT-D2\nLocation,\"Showers, wall\",\"Lobby, counter front\"\n"
                + "Surface,Wall,Wall\nExposure,Wet,Dry interior\n"
                + "Tile standard,ANSI A137.2,ANSI A137.2\nManufacture,Fused,Cast\n"
                + "\"Face size, in.\",1 x 3,2 x 8\nTransmission of light,Opaque,Translucent\n");
    assertThat(c.governing("GT-C1", "tile.size")).containsExactly("1 in x 3 in");
    assertThat(c.governing("GT-D2", "tile.translucency")).containsExactly("translucent");
  }

  @Test
  void what_another_table_lists_is_said_of_the_tiles_that_call_for_it() {
    Checked c =
        Checked.ofFiles(
            folder,
            "finishes.md",
            "# Finishes\n\n"
                + "| Code | Finish | Product code | Where |\n|---|---|---|---|\n"
                + "| WT01 | Porcelain | KED-6030 | Laundry, walls |\n"
                + "| WT02 | Glass tile | OLU-3010 | Lift lobby, wall |\n"
                + "| WT03 | Glass mosaic | PIR-2525 | Shower, walls |\n"
                + "| PF01 | Paint | - | Generally |\n"
                + "| WT04 | Glass tile | OLU-1575 | Bar, wall |\n\n"
                + "# Products\n\n"
                + "| Product code | Made | Size | Opacity | Sheet |\n|---|---|---|---|---|\n"
                + "| OLU-3010 | Fused | 298 x 98 mm | Opaque | Loose |\n"
                + "| OLU-1575 | Cast | 148 x 73 mm | Translucent | Loose |\n"
                + "| PIR-2525 | Pressed | 23 x 23 mm | Opaque | Mesh back |\n");
    assertThat(c.governing("WT02", "tile.size")).containsExactly("298 mm x 98 mm");
    assertThat(c.governing("WT04", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("WT03", "tile.mounting")).containsExactly("mesh-back");
    assertThat(c.project().entries()).extracting(Entry::tag).doesNotContain("OLU-3010");
  }

  @Test
  void products_that_a_text_counts_line_by_line_are_followed() {
    Checked c =
        Checked.taughtByFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Size,Adh.,Grt,Sealant\n"
                + "G/01,Glass mosaic,25 x 25 mm,A2 white,Gr2,Sb\n"
                + "G/02,Glass mosaic,25 x 25 mm,A2 white,Gr1,Sa\n"
                + "G/03,Glass mosaic,25 x 25 mm,A2 white,Gr1,Sa\n",
            "spec.txt",
            "GLASS TILING\n\n210  SUITABILITY\n\nMarks G/01 to G/03: obtain the tile manufacturer's"
                + " written confirmation that the tile is suited to the position.\n\n"
                + "510  GROUT TYPES, EN 13888-1\n\nGr1: CG2 WA, unsanded.\n\nGr2: RG, epoxy.\n\n"
                + "620  SEALANTS\n\nSa: ISO 11600-F-25LM, neutral silicone.\n\n"
                + "Sb: EN 15651-4 PW, for permanent immersion.\n");
    assertThat(c.governing("G/01", "grout.isoClass")).containsExactly("RG");
    assertThat(c.governing("G/02", "grout.isoClass")).containsExactly("CG2");
    assertThat(c.governing("G/01", "sealant.standard")).containsExactly("EN 15651-4");
    assertThat(c.governing("G/02", "process.suitability")).isNotEmpty();
  }

  @Test
  void a_sheet_of_joints_is_told_by_the_name_of_its_file() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Size\nGT-1,Glass mosaic,1 x 1 in\nGT-2,Glass mosaic,1 x 1 in\n",
            "P12-JointSchedule.csv",
            "joint_id,tile_marks,width_in,depth_in,max_spacing_ft,c920_use\n"
                + "J01,GT-1,0.375,0.1875,8,NT I M G\nJ02,GT-2,0.250,0.125,20,NT G A\n"
                + "J03,PT-1,0.250,0.125,20,NT G A\nJ04,PT-2,0.375,0.1875,8,T M\n"
                + "J05,PT-3,0.375,0.1875,8,T M\nJ06,PT-4,0.375,0.1875,8,T NT I\n");
    assertThat(c.governing("GT-1", "movement.width")).containsExactly("0.375 in");
    assertThat(c.governing("GT-2", "movement.spacing")).containsExactly("20 ft");
    assertThat(c.governing("GT-1", "sealant.use")).containsExactlyInAnyOrder("NT", "I", "M", "G");
  }

  @Test
  void cards_of_rooms_that_run_on_are_read_apart() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Size\nW-1,Glass tile,2 x 2 in\nW-2,Glass tile,2 x 2 in\n"
                + "W-3,Glass tile,2 x 2 in\n",
            "rooms.md",
            "Room S1 Lobby\n\n| Floor | Terrazzo |\n|---|---|\n"
                + "| Walls | W-1 full height |\n| Exposure | Inside, dry |\n"
                + "| Room S2 Porch Floor | Paving |\n| Walls | W-2 |\n"
                + "| Exposure | Outside, freezing winters |\n"
                + "| Room S3 Steam room Floor | Precast |\n| Walls | W-3 |\n"
                + "| Exposure | Steam |\n");
    assertThat(c.governing("W-1", "location.exposure")).containsOnly("dry");
    assertThat(c.governing("W-2", "location.exposure")).contains("exterior-freeze");
    assertThat(c.governing("W-3", "location.exposure")).containsOnly("steam");
  }

  @Test
  void a_mark_with_a_remark_in_brackets_is_a_mark() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Size\nW-5,Glass tile,2 x 2 in\nW-9,Glass tile,2 x 2 in\n",
            "joints.csv",
            "Marks,\"Farthest apart, each way\",Width\nW-9 (sun),8 ft,3/8 in\n"
                + "\"W-5 (outside, -10 to 120 deg F)\",8 ft,1/2 in\n");
    assertThat(c.governing("W-9", "movement.width")).containsExactly("0.375 in");
    assertThat(c.governing("W-5", "movement.width")).containsExactly("0.5 in");
    assertThat(c.project().entries()).hasSize(2);
  }

  @Test
  void fused_sheet_glass_is_made_so_and_sheet_glass_is_no_tile() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Description,Size\nT-1,\"Mosaic, fused sheet glass\",1 x 2 in\n"
                + "T-2,Sheet glass,600 x 900 mm\nT-3,Glass tile,2 x 2 in\n");
    assertThat(c.project().glass()).extracting(Entry::tag).containsExactly("T-1", "T-3");
  }

  @Test
  void a_joint_passes_on_what_it_calls_for() {
    Checked c =
        Checked.taughtByFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Size,Joint row\nTL-G01,Glass tile,3 x 6 in,D1\n"
                + "TL-G02,Glass tile,3 x 6 in,D2\n",
            "notes.md",
            "# Movement joint rows\n\n| Row | Spacing each way, max | Width | Sealant |\n"
                + "|---|---|---|---|\n| D1 | 20 ft | 1/4 in | JS-1 |\n"
                + "| D2 | 8 ft | 1/2 in | JS-4 |\n\n# Sealants\n\n"
                + "JS-1: sealant ASTM C920, Type S, Grade NS, Class 25.\n\n"
                + "JS-4: sealant ASTM C920, Type S, Grade NS, Class 50.\n");
    assertThat(c.governing("TL-G01", "sealant.class")).containsExactly("25");
    assertThat(c.governing("TL-G02", "sealant.class")).containsExactly("50");
  }

  @Test
  void what_is_said_elsewhere_is_not_said_here() {
    Checked c = ofSection("C. Joints 20 ft apart at most. For GT-3 see the notes of sheet A-6.");
    assertThat(c.governing("GT-1", "movement.spacing")).containsExactly("20 ft");
    assertThat(c.governing("GT-3", "movement.spacing")).isEmpty();
  }

  @Test
  void a_place_and_a_mark_are_both_meant() {
    Checked c =
        ofSection(
            "C. Spacing: dry rooms 20 ft at most; wet rooms, steam room and GT-2 surround 8 ft at"
                + " most.");
    assertThat(c.governing("GT-1", "movement.spacing")).containsOnly("8 ft");
    assertThat(c.governing("GT-2", "movement.spacing")).contains("8 ft");
  }

  @Test
  void letters_that_all_marks_open_with_are_said_once() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Size\nTL-G01,Glass tile,3 x 6 in\nTL-G02,Glass tile,3 x 6 in\n"
                + "TL-G03,Glass tile,3 x 6 in\n",
            "notes.txt",
            "GLASS TILE NOTES\n1. Mortar coverage of tile TL-G01, G02: 95 percent. TL-G03: 85"
                + " percent.\n2. Mock-up before installation: one panel of each TL-G type.\n");
    assertThat(c.governing("TL-G02", "mortar.coverage")).containsExactly("95 %");
    assertThat(c.governing("TL-G03", "mortar.coverage")).containsExactly("85 %");
    for (String tag : List.of("TL-G01", "TL-G02", "TL-G03"))
      assertThat(c.governing(tag, "process.mockup")).isNotEmpty();
  }

  @Test
  void a_legend_whose_code_is_no_water_is_not_under_water() {
    Checked c =
        Checked.ofFiles(
            folder,
            "tiles.csv",
            "Mark,Material,Exposure,Size\nGT-1,Glass tile,\"inside, no water\",1 x 1 in\n"
                + "GT-2,Glass tile,waterline,1 x 1 in\n");
    assertThat(c.governing("GT-1", "location.exposure")).doesNotContain("submerged");
    assertThat(c.governing("GT-2", "location.exposure")).contains("submerged");
  }

  private Checked ofSection(String joints) {
    return Checked.ofFiles(
        folder,
        "tiles.csv",
        "Mark,Material,Exposure,Size\nGT-1,Glass mosaic,wet,1 x 1 in\n"
            + "GT-2,Glass tile,dry,1 x 1 in\nGT-3,Glass mosaic,exterior,1 x 1 in\n",
        "spec.txt",
        "SECTION 09 30 00 - GLASS TILING\nPART 3 - EXECUTION\n3.5 MOVEMENT JOINTS\n" + joints);
  }
}
