package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Sentences, titles and rows that say something of less, of more or of other things. */
class WhatSentencesAreOfTest {
  @TempDir Path folder;

  private Checked section(String article, String... lines) {
    return Checked.ofFiles(
        folder,
        "schedule.csv",
        "Mark,Material,Mounting,Mortar,Grout,Room,Exposure\n"
            + "GT-1,Glass mosaic,Paper-faced,M1,G1,Showers,Wet\n"
            + "GT-2,Glass mosaic,Mesh on the back,M1,G2,Showers,Wet\n"
            + "GT-3,Glass tile,Loose,M2,G2,Showers,Wet\n",
        "09 30 23.md",
        "SECTION 09 30 23\n\nGLASS TILE\n\nPART 3 - EXECUTION\n\n"
            + article
            + "\n\n"
            + String.join("\n\n", lines)
            + "\n");
  }

  @Test
  void what_mesh_covers_of_the_back_is_no_coverage_of_mortar() {
    Checked c = section("3.1 SETTING", "A. Mesh covers no more than 40 percent of the back.");
    assertThat(c.governing("GT-2", "mortar.coverage")).isEmpty();
    c = section("3.1 SETTING", "A. The mortar covers at least 95 percent of the back.");
    assertThat(c.governing("GT-2", "mortar.coverage")).containsExactly("at least 95 %");
  }

  @Test
  void tags_of_another_matter_limit_no_later_sentence() {
    Checked c =
        section(
            "3.1 SETTING",
            "A. Face-mounted sheets of GT-1 are installed to ANSI A108.14. Mortar coverage is 95"
                + " percent at least.");
    assertThat(c.governing("GT-3", "mortar.coverage")).isNotEmpty();
    c = section("3.1 SETTING", "A. GT-1 is set by hand. Mortar coverage is 95 percent at least.");
    assertThat(c.governing("GT-3", "mortar.coverage")).isEmpty();
  }

  @Test
  void a_title_names_the_guideline_and_no_product() {
    Checked c =
        section("3.4 MOVEMENT JOINTS (TCNA EJ171)", "A. Joints stand at 8 ft, 3/8 in wide.");
    assertThat(c.governing("GT-1", "movement.guideline")).containsExactly("TCNA EJ171");
    c = section("3.4 EPOXY MORTAR (ANSI A118.3)", "A. Keep it dry.");
    assertThat(c.governing("GT-1", "mortar.standard")).isEmpty();
  }

  @Test
  void a_table_of_units_states_none_of_its_figures() {
    Checked c =
        section("3.5 GROUT JOINTS", "A. Grout joint widths: 1/16 in = 1.6 mm, 1/8 in = 3.2 mm.");
    assertThat(c.governing("GT-1", "grout.width")).isEmpty();
  }

  @Test
  void a_standard_of_mortars_and_grouts_is_of_what_its_row_describes() {
    Checked c =
        section(
            "2.4 MORTARS AND GROUTS",
            "| Code | Material | Required |\n|---|---|---|\n"
                + "| M1 | Cement mortar, white | ANSI A118.15 |\n"
                + "| M2 | Epoxy mortar, white | ANSI A118.3 |\n"
                + "| G1 | Epoxy grout, no sand | ANSI A118.3 |\n"
                + "| G2 | Cement grout, unsanded | ANSI A118.7 |");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-1", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-3", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-3", "grout.standard")).containsExactly("ANSI A118.7");
  }
}
