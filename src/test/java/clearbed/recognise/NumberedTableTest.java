package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.recognise.section.clause.Clause;
import clearbed.resolve.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Notes that an office sets as a table, and titles that count up. */
class NumberedTableTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Size\nVG-1,Cast glass mosaic,20 x 20 mm\nVG-2,Fused glass tile,50 x 50 mm\n");
  }

  private Checked with(String name, String text) throws IOException {
    return Checked.ofFiles(folder, name, text);
  }

  private static List<Clause> clauses(Project project) {
    return project.sections().stream().flatMap(s -> s.clauses().stream()).toList();
  }

  @Test
  void notes_under_letters_in_a_table_are_running_text_and_their_marks_no_tiles()
      throws IOException {
    Checked c =
        with(
            "notes.md",
            "| Ref | Note |\n|---|---|\n"
                + "| A | General |\n"
                + "| A1 | Glass tile work shall be done by tilers who know glass. |\n"
                + "| A2 | A mock-up of 2 m² shall be built and accepted before work begins. |\n"
                + "| A3 | Glass tile shall conform to ANSI A137.2. |\n"
                + "| B | Setting |\n"
                + "| B1 | Mortar shall be white and conform to ANSI A118.15. |\n"
                + "| B2 | Mortar shall reach 95 percent of the back of each tile. |\n"
                + "| B3 | Ridges shall be knocked flat before the tile is set. |\n"
                + "| C | Joints |\n"
                + "| C1 | Grout shall be unsanded and conform to ANSI A118.7. |\n"
                + "| C2 | Grout shall not be placed before 48 hours have passed. |\n"
                + "| C3 | Movement joints shall be 8 mm wide. |\n");
    assertThat(c.project().entries()).extracting(e -> e.tag()).containsExactly("VG-1", "VG-2");
    assertThat(clauses(c.project())).flatExtracting(k -> k.limits().tags()).isEmpty();
    for (String tag : List.of("VG-1", "VG-2")) {
      assertThat(c.governing(tag, "mortar.standard")).containsExactly("ANSI A118.15");
      assertThat(c.governing(tag, "grout.standard")).containsExactly("ANSI A118.7");
      assertThat(c.governing(tag, "movement.width")).containsExactly("8 mm");
    }
    assertThat(clauses(c.project()))
        .anySatisfy(
            k -> {
              assertThat(k.number()).contains("B2");
              assertThat(k.heading()).isEqualTo("Setting");
              assertThat(k.text()).contains("95 percent");
            });
  }

  @Test
  void a_table_of_marks_and_what_each_tile_is_stays_a_schedule() throws IOException {
    Checked c =
        with(
            "legend.csv",
            "Mark,Product\nA1,Cast glass tile\nA2,Fused glass tile\nA3,Glass mosaic\n"
                + "B1,Cast glass mosaic\nB2,Fused glass mosaic\n");
    assertThat(c.project().glass()).extracting(e -> e.tag()).contains("A1", "A2", "A3", "B1", "B2");
  }

  @Test
  void titles_that_count_up_over_sentences_and_a_table_are_headings_and_no_tiles()
      throws IOException {
    Checked c =
        with(
            "particulars.md",
            """
            Particulars of glass tile work

            V1 Basis

            All glass tile shall conform to ANSI A137.2.

            V2 Samples

            Three pieces of each tile shall be shown before ordering.

            V3 Bedding

            White mortar to ANSI A118.15 shall be used.

            V4 Jointing

            The joints shall be 2 mm wide.

            V5 Cleaning

            No acid shall touch the tile.

            V6 Movement joints

            | Where | Width | Greatest spacing |
            |---|---|---|
            | Dry walls | 6 mm | 5 m |
            """);
    assertThat(c.project().entries()).extracting(e -> e.tag()).containsExactly("VG-1", "VG-2");
    assertThat(clauses(c.project())).flatExtracting(k -> k.limits().tags()).isEmpty();
    assertThat(c.governing("VG-1", "grout.width")).containsExactly("2 mm");
    assertThat(clauses(c.project()))
        .anySatisfy(
            k -> {
              assertThat(k.number()).contains("V4");
              assertThat(k.heading()).isEqualTo("Jointing");
            });
  }

  @Test
  void items_that_are_addressed_to_tiles_are_said_of_those() throws IOException {
    Checked c =
        with(
            "instruction.md",
            "| No. | Concerns | Instruction |\n|---|---|---|\n"
                + "| 7.1 | VG-1 | Sheets are held by a glass fibre mesh on the back. |\n"
                + "| 7.2 | VG-2 | Set it in white mortar to ANSI A118.15 on the whole wall. |\n"
                + "| 7.3 | Porch | Carry VG-2 round the post of the porch. |\n");
    assertThat(c.project().entries()).extracting(e -> e.tag()).containsExactly("VG-1", "VG-2");
    assertThat(c.governing("VG-1", "tile.mounting")).containsExactly("mesh-back");
    assertThat(c.governing("VG-1", "mortar.standard")).isEmpty();
    assertThat(c.governing("VG-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }
}
