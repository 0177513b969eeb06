package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.read.ReadAll;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Cells that say nothing by themselves: a cross, the number of a note, "unchanged", letters. */
class NotesTicksAndChangesTest {
  @TempDir Path folder;

  private Checked of(String name, String... lines) {
    return Checked.ofFiles(folder, name, String.join("\n", lines));
  }

  private static List<String> values(Checked c, String tag, String attribute) {
    return c.entry(tag).values(attribute).stream()
        .filter(v -> !v.excluded())
        .map(v -> v.content().text())
        .distinct()
        .toList();
  }

  @Test
  void a_cross_says_what_its_heading_says() {
    Checked c =
        of(
            "grid.csv",
            "Mark,Product,Goes on,,,,Service,,Set with",
            ",,Wall,Floor,Ceiling,Bench,Dry,Wet,",
            "BR-1,Fused glass mosaic,x,,x,,,x,ANSI A118.15",
            "BR-2,Cast glass tile,,x,,,x,,ANSI A118.4",
            "BR-3,Quarry tile,,x,,x,,x,ANSI A118.4");
    assertThat(values(c, "BR-1", "location.surface")).containsExactlyInAnyOrder("wall", "ceiling");
    assertThat(values(c, "BR-1", "location.exposure")).containsExactly("wet");
    assertThat(values(c, "BR-2", "location.surface")).containsExactly("floor");
    assertThat(values(c, "BR-2", "location.exposure")).containsExactly("dry");
    assertThat(values(c, "BR-2", "mortar.standard")).containsExactly("ANSI A118.4");
  }

  @Test
  void a_cross_beside_other_words_is_left_as_it_is() {
    Checked c =
        of(
            "grid.csv",
            "Mark,Product,Joints,,Samples",
            ",,Width,Depth,",
            "BR-1,Fused glass mosaic,1/8 in,x,x",
            "BR-2,Cast glass tile,x,1/4 in,x");
    assertThat(values(c, "BR-1", "location.surface")).isEmpty();
  }

  @Test
  void a_note_is_of_those_that_call_it() {
    Checked c =
        of(
            "finishes.csv",
            "Mark,Product,Place,Remarks",
            "BR-1,Fused glass mosaic,Hammam,\"Notes 1, 3\"",
            "BR-2,Cast glass tile,Bar front,Note 2",
            "QT-1,Quarry tile,Kitchen floor,\"1, 2\"",
            "",
            "Note 1,\"Movement joints at 8 ft on center, filled with silicone.\",,",
            "Note 2,\"Movement joints at 20 ft on center, filled with polysulfide.\",,",
            "Note 3,Mortar to ANSI A118.15 in white.,,");
    assertThat(values(c, "BR-1", "movement.spacing")).containsExactly("8 ft");
    assertThat(values(c, "BR-2", "movement.spacing")).containsExactly("20 ft");
    assertThat(values(c, "BR-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(values(c, "BR-2", "mortar.standard")).isEmpty();
  }

  @Test
  void a_number_that_no_note_has_is_not_understood() {
    of(
        "finishes.csv",
        "Mark,Product,Place,Remarks",
        "BR-1,Fused glass mosaic,Hammam,4",
        "BR-2,Cast glass tile,Bar front,5",
        "",
        "1. Movement joints at 8 ft on center.,,,");
    Recogniser recogniser = new Recogniser(Checked.vocabulary());
    assertThat(recogniser.recognise(ReadAll.of(folder).get(0)).account().unread())
        .anySatisfy(unread -> assertThat(unread.samples()).contains("4"));
  }

  @Test
  void a_log_of_changes_says_what_holds_now() {
    of(
        "tiles.csv",
        "Mark,Product,Place,Joint\nBR-1,Fused glass mosaic,Hammam wall,1/16 in\n"
            + "BR-2,Cast glass tile,Bar front,1/16 in\n");
    Checked c =
        of(
            "addendum 2.csv",
            "Addendum 2: changes,,,",
            "Mark,Item,Previous,New",
            "BR-1,Grout joint,1/16 in,1/8 in",
            "BR-1,Mortar,ANSI A118.4,ANSI A118.15",
            "BR-1,Substrate,cement board,no change",
            "BR-2,Mortar,ANSI A118.4,unchanged");
    assertThat(c.governing("BR-1", "grout.width")).containsExactly("0.125 in");
    assertThat(c.governing("BR-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("BR-1", "substrate.type")).containsExactly("cement board");
    assertThat(c.governing("BR-2", "grout.width")).containsExactly("0.0625 in");
    assertThat(c.governing("BR-2", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(c.findings("conflict")).isEmpty();
  }

  @Test
  void a_legend_may_stand_in_pairs_beside_each_other() {
    of(
        "legend.csv",
        "Mark,Product,Surf.,Substrate,Mortar",
        "BR-1,Fused glass mosaic,\"W, C\",XPB,LTM",
        "BR-2,Cast glass tile,W,MBD,EPM",
        "",
        "XPB,extruded foam tile backer board,LTM,latex-modified mortar",
        "MBD,cement mortar bed,EPM,epoxy mortar",
        "W,wall,C,ceiling");
    Checked c = Checked.taught(folder);
    assertThat(values(c, "BR-1", "location.surface")).containsExactlyInAnyOrder("wall", "ceiling");
    assertThat(values(c, "BR-2", "mortar.chemistry")).containsExactly("epoxy");
    assertThat(values(c, "BR-2", "substrate.type")).containsExactly("mortar bed");
  }

  @Test
  void the_tile_of_a_zone_is_no_code_that_the_zone_calls() {
    Checked c =
        Checked.ofFiles(
            folder,
            "linings.csv",
            "Zone table,,,\nZone,Place,Lining,Conditions\nZ1,Hammam walls,BR1,Wet\n"
                + "Z2,Porch wall,BR2,\"Outdoors, frost\"\n\n"
                + "Lining,Material,Size,\nBR1,Fused glass mosaic,20 x 20 mm,\n"
                + "BR2,Cast glass tile,100 x 200 mm,\n");
    assertThat(values(c, "BR1", "location.exposure")).contains("wet");
    assertThat(values(c, "BR2", "location.exposure")).contains("exterior-freeze");
    assertThat(values(c, "BR2", "tile.size")).containsExactly("100 mm x 200 mm");
  }

  @Test
  void the_mark_in_a_card_goes_before_the_count_over_it() {
    Checked c =
        Checked.ofFiles(
            folder,
            "log.txt",
            "SUBMITTALS\n\nITEM 1\n  PRODUCT ........ FUSED GLASS MOSAIC\n"
                + "  ARCH. TAG ...... BR-1\n  SIZE ........... 1 X 1 IN\n  JOINT .......... 1/16 IN\n\n"
                + "ITEM 2\n  PRODUCT ........ CAST GLASS TILE\n  ARCH. TAG ...... BR-2\n"
                + "  SIZE ........... 2 X 4 IN\n  JOINT .......... 1/8 IN\n");
    assertThat(c.hasGlass("BR-1")).isTrue();
    assertThat(values(c, "BR-2", "grout.width")).containsExactly("0.125 in");
  }
}
