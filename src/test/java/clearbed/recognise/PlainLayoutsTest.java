package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Table;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Layouts and turns of phrase of plain text, read together with a schedule. */
class PlainLayoutsTest {
  @TempDir Path folder;

  @BeforeEach
  void schedule() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Room,Applied to\nVT-A,Glass tile,Hall,Wall\nVT-B,Glass tile,Hall,Floor\n"
            + "PT-A,Porcelain tile,Hall,Floor\n");
  }

  private Checked with(String... lines) throws IOException {
    return Checked.ofFiles(
        folder,
        "09 30 00.txt",
        "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 MATERIALS\n\n"
            + String.join("\n", lines)
            + "\n");
  }

  private static long tables(Checked c) {
    return c.documents().stream()
        .filter(d -> d.path().endsWith(".txt"))
        .flatMap(d -> d.blocks().stream())
        .filter(Table.class::isInstance)
        .count();
  }

  @Test
  void columns_set_apart_by_blanks_are_a_table() throws IOException {
    Checked c =
        with(
            "A. Joints are as follows.",
            "",
            "      Item   Movement joint width   Movement joint spacing",
            "      VT-A   16 mm (5/8 in)         2.4 m (8 ft)",
            "      VT-B   10 mm (3/8 in)         3.0 m (10 ft)",
            "      PT-A   10 mm (3/8 in)         6.0 m (20 ft)",
            "",
            "B. Grout: ANSI A118.7.");
    assertThat(tables(c)).isEqualTo(1);
    assertThat(c.governing("VT-A", "movement.width")).containsExactly("16 mm");
    assertThat(c.governing("VT-B", "movement.spacing")).containsExactly("3 m");
    assertThat(c.governing("VT-A", "grout.standard")).containsExactly("ANSI A118.7");
  }

  @Test
  void sentences_with_wide_gaps_are_no_table() throws IOException {
    Checked c =
        with(
            "A.   Mortar for glass tile:   ANSI A118.15.   Color: white.",
            "     Grout for glass tile:    ANSI A118.7, without   sand in it at",
            "     any place.               See the drawings.");
    assertThat(c.governing("VT-A", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(tables(c)).isZero();
  }

  @Test
  void a_cell_that_says_floor_is_a_surface_whatever_its_heading() throws IOException {
    Checked c = with("A. Mortar: ANSI A118.15.");
    assertThat(c.governing("VT-B", "location.surface")).containsExactly("floor");
    assertThat(c.governing("VT-A", "location.surface")).containsExactly("wall");
  }

  @Test
  void what_the_next_sentence_says_of_other_tile_leaves_glass_as_it_was() throws IOException {
    Checked c =
        with(
            "A. Substrates for glass tile: flat within 6 mm in 3 m. Substrates for PT-A: flat within"
                + " 3 mm in 3 m.",
            "B. Mortar: ANSI A118.15. Used for VT-A.");
    assertThat(c.governing("VT-A", "substrate.flatness")).containsExactly("6 mm in 3 m");
    assertThat(c.governing("PT-A", "substrate.flatness")).doesNotContain("6 mm in 3 m");
    assertThat(c.governing("VT-B", "mortar.standard")).isEmpty();
  }

  @Test
  void what_a_grout_is_without_rules_out_no_standard() throws IOException {
    Checked c = with("A. Grout for VT-A: epoxy grout with no hard aggregate, ANSI A118.3.");
    assertThat(c.governing("VT-A", "grout.standard")).containsExactly("ANSI A118.3");
    c = with("A. Grout for VT-A: no epoxy grout, ANSI A118.3, is allowed.");
    assertThat(c.governing("VT-A", "grout.standard")).isEmpty();
  }

  @Test
  void the_floor_and_what_carries_it_is_not_the_floor_alone() throws IOException {
    Checked c = with("A. Floors and framing that carry glass tile: deflection L/480.");
    assertThat(c.governing("VT-A", "substrate.deflection")).containsExactly("480");
    c = with("A. Floors that carry glass tile: deflection L/480.");
    assertThat(c.governing("VT-A", "substrate.deflection")).isEmpty();
  }
}
