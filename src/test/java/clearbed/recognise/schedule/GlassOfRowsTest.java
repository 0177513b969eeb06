package clearbed.recognise.schedule;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which rows are glass tile, by headings, titles and what other documents say. */
class GlassOfRowsTest {
  @TempDir Path folder;

  private List<String> glass(String... namesAndTexts) throws IOException {
    for (int i = 0; i < namesAndTexts.length; i += 2)
      Files.writeString(folder.resolve(namesAndTexts[i]), namesAndTexts[i + 1]);
    return Checked.of(folder).project().glass().stream().map(Entry::tag).toList();
  }

  @Test
  void a_heading_that_asks_for_the_kind_of_glass_says_that_its_rows_are_of_glass()
      throws IOException {
    String schedule =
        "Ref,Glass type,Face,Thk\nPB-1,\"Pressed, through colour\",2 x 2 in,1/4 in\n"
            + "PB-2,Fused mosaic,1 x 1 in,1/4 in\nPB-3,Honed basalt,4 x 4 in,1/2 in\n";
    assertThat(glass("schedule.csv", schedule)).containsExactly("PB-1", "PB-2");
  }

  @Test
  void of_windows_and_doors_it_says_no_such_thing() throws IOException {
    String doors = "Door,Leaf,Glass type\nD-1,Hollow metal,Wired\nD-2,Wood,Insulated clear\n";
    assertThat(glass("doors.csv", doors)).isEmpty();
  }

  @Test
  void a_title_that_says_what_the_rows_are_not_goes_before_glass_that_a_row_names()
      throws IOException {
    String schedule =
        "Items other than glass tile,,\nCode,Item,Trade\nLM-1,\"Landscape mulch, recycled glass\",Gardener\n"
            + "PN-2,Porcelain pavers,Mason\n";
    assertThat(glass("other.csv", schedule)).isEmpty();
  }

  @Test
  void float_or_sheet_glass_of_which_tile_is_made_is_tile() throws IOException {
    String schedule =
        "Mark,Description,Size\nSG-1,Fused sheet-glass wall tile,4 x 12 in\n"
            + "SG-2,Float glass mosaic,1 x 1 in\nSG-3,Laminated glass screen,36 x 84 in\n";
    assertThat(glass("schedule.csv", schedule)).containsExactly("SG-1", "SG-2");
  }

  @Test
  void a_mark_that_is_not_used_is_no_tile_even_if_somebody_asks_for_it() throws IOException {
    String schedule =
        "Mark,Material,Size,Joint\nVG-1,Cast glass mosaic,1 x 1 in,1/8 in\nVG-4,NOT USED,,\n";
    String answers =
        "CLARIFICATION 3\n\n1. VG-4 is shown as not used. Was there glass tile in the foyer?"
            + " It was dropped. Disregard VG-4.\n";
    assertThat(glass("schedule.csv", schedule, "clarification 3.txt", answers))
        .containsExactly("VG-1");
  }

  @Test
  void a_note_that_glass_in_a_name_does_not_mean_glass_tile_makes_none() throws IOException {
    String schedule =
        "Tag,Description,Size\nVG-1,Glass tile,4 x 4 in\nGM-7,Glass-mat sheathing,48 x 96 in\n";
    String note = "NOTES\n\n1. The name of GM-7 does not mean glass tile.\n";
    assertThat(glass("schedule.csv", schedule, "notes.txt", note)).containsExactly("VG-1");
  }

  @Test
  void a_column_without_a_mark_in_a_turned_schedule_speaks_of_all() throws IOException {
    String schedule =
        "Terrace pool - glass tile by place,,,\nMark,WB-1,WB-2,\nPlace,Pool waterline,Spa wall,\n"
            + "Kind of glass,Cast,Fused,\nThickness,1/4 in.,1/4 in.,measured\n"
            + "Grout,\"ANSI A118.3, white\",\"ANSI A118.3, grey\",both by one maker\n"
            + "Joint,1/8 in.,1/8 in.,\n";
    assertThat(glass("matrix.csv", schedule)).containsExactly("WB-1", "WB-2");
  }

  @Test
  void a_title_that_names_glass_and_nothing_else_makes_its_rows_no_other_tile() throws IOException {
    String sheet =
        "Glass take-off,,,\nTag,Description,Area m2,Size\nVG-1,Counter,24,20 x 20 mm\n"
            + "VG-2,Niche,8,50 x 50 mm\n";
    String section =
        "SECTION 09 30 00 - GLASS TILING\nPART 2 - PRODUCTS\n2.1 GLASS TILE\n"
            + "A. VG-1: Glass mosaic, opaque.\nB. VG-2: Cast glass tile, opaque.\n";
    assertThat(glass("take-off.csv", sheet, "09 30 00.txt", section))
        .containsExactly("VG-1", "VG-2");
    Checked c = Checked.of(folder);
    assertThat(c.governing("VG-1", "tile.material")).doesNotContain("no glass tile");
    assertThat(c.findings("conflict")).isEmpty();
  }

  @Test
  void a_title_of_what_is_no_tile_makes_none_of_a_row_that_does_not_say_what_it_is()
      throws IOException {
    String schedule =
        "Mark,What it is,Piece\nGlass tile,,\nHA-1,Fused glass mosaic,1 x 1 in\n"
            + "Glass which is not tile and the rest,,\nHA-7,\"Larch slats, oiled\",3/4 x 3 in\n";
    assertThat(glass("list.csv", schedule)).containsExactly("HA-1");
  }

  @Test
  void a_tank_that_is_cast_on_the_ground_is_no_cast_glass() throws IOException {
    glass(
        "list.csv",
        "Mark,Material,Size,Notes\nHA-2,Fused glass mosaic,1 x 1 in,Tank is cast on grade\n");
    assertThat(Checked.of(folder).governing("HA-2", "tile.kind")).containsExactly("fused");
  }

  @Test
  void the_number_of_a_section_among_keynotes_is_no_mark() throws IOException {
    String keynotes =
        "Key,Keynote text\nSection 09 30 20,Glass tiling\nB1,Glass mosaic HA-1 to walls\n"
            + "B2,\"Glass mosaic HA-2, floor\"\nB3,Glass tile HA-3\nOther trades,-\n";
    assertThat(glass("keys.csv", keynotes)).noneMatch(tag -> tag.contains("09 30 20"));
  }
}
