package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is left to a choice, wanted too late or left out, and what is forbidden of a whole list. */
class WhatIsAskedOfNobodyTest {
  @TempDir Path folder;

  private Checked section(String text) {
    return Checked.ofFiles(
        folder,
        "schedule.csv",
        "Mark,Material,Room\nGT-1,Glass mosaic,Lobby wall\nGT-2,Glass tile,Restroom floor\n",
        "09 30 23.md",
        "SECTION 09 30 23\n\nGLASS TILE\n\nPART 3 - EXECUTION\n\n3.1 WORK\n\nA. " + text + "\n");
  }

  private List<String> stated(String attribute, String text) {
    return section(text).governing("GT-1", attribute);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "A mock-up of the glass tile may be left out at the installer's discretion.",
        "The owner may ask for a mock-up of the glass tile.",
        "Mock-ups are optional.",
        "Build a sample panel after tile work is complete, as a record.",
        "Do not build a mock-up.",
      })
  void a_mock_up_that_nobody_has_to_build_is_not_required(String text) {
    assertThat(stated("process.mockup", text)).isEmpty();
    assertThat(section(text).findings("mockup")).isNotEmpty();
  }

  @Test
  void one_that_must_be_built_is() {
    assertThat(stated("process.mockup", "Build a mock-up before tile is set. It may stay."))
        .isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Movement joints need not follow TCNA EJ171.",
        "TCNA EJ171 is for guidance only.",
        "TCNA EJ171 is not a requirement of this work.",
      })
  void a_guideline_that_nobody_has_to_follow_is_none(String text) {
    assertThat(stated("movement.guideline", text)).isEmpty();
  }

  @Test
  void samples_at_the_end_are_no_submittals() {
    assertThat(stated("process.submittals", "Submit spare tile and warranties at closeout."))
        .isEmpty();
    assertThat(stated("process.submittals", "Submit samples and product data.")).isNotEmpty();
  }

  @Test
  void backing_that_is_left_out_is_reported() {
    Checked none = section("Seal movement joints with silicone. No backer rod is placed.");
    assertThat(none.findings("sealant-backing"))
        .anyMatch(f -> f.message().contains("no backing is wanted"));
  }

  @Test
  void what_a_list_forbids_it_forbids_of_each() {
    assertThat(
            stated(
                "process.acidCleaning",
                "Cleaning glass tile with muriatic acid, steel wool, and scouring pads is strictly"
                    + " prohibited."))
        .isEmpty();
    assertThat(stated("process.acidCleaning", "Remove haze from glass tile with steel wool."))
        .isNotEmpty();
  }

  @Test
  void what_other_tile_may_bear_is_not_said_of_glass() {
    assertThat(
            stated(
                "process.acidCleaning",
                "Unlike PT-1, which may be washed with acid, glass tile is cleaned with water."))
        .isEmpty();
  }

  @Test
  void tile_that_may_run_over_joints_has_none_there() {
    assertThat(
            stated(
                "movement.places",
                "Movement joints stand at perimeters and corners. Tile may continue over"
                    + " structural joints."))
        .containsExactlyInAnyOrder("perimeter", "changes of plane");
    assertThat(
            stated(
                "movement.places",
                "Movement joints stand at perimeters. They are not required at corners, changes of"
                    + " backing or structural joints."))
        .containsExactly("perimeter");
  }
}
