package clearbed.recognise.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Short forms of headings and cells that an office explains itself. */
class LegendWordsTest {
  private static final String SCHEDULE =
      "| Mark | Item | Size | SEE | SUP | PLC |\n|---|---|---|---|---|---|\n"
          + "| GT-1 | Glass mosaic | 1 x 1 in | TL | PF | WW wall |\n"
          + "| GT-2 | Glass tile | 3 x 6 in | OP | MB | DR wall |\n\n";

  @TempDir Path folder;

  private Checked of(String... texts) throws IOException {
    for (int i = 0; i < texts.length; i++)
      Files.writeString(folder.resolve("document " + i + ".md"), texts[i]);
    return Checked.taught(folder);
  }

  @Test
  void a_legend_spells_out_headings_and_cells() throws IOException {
    Checked c =
        of(
            SCHEDULE,
            "# Legend\n\n| Letters | Meaning |\n|---|---|\n"
                + "| SEE | Translucency: OP opaque, TL translucent |\n"
                + "| SUP | Mounting: PF paper on the face; MB mesh on the back, glued |\n"
                + "| WW | shower, wet |\n| DR | interior, dry |\n");
    assertThat(c.governing("GT-1", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("GT-2", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("GT-1", "tile.mounting")).containsExactly("paper-face");
    assertThat(c.governing("GT-2", "tile.mounting")).containsExactly("mesh-back");
    assertThat(c.governing("GT-1", "location.exposure")).containsExactly("wet");
    assertThat(c.governing("GT-2", "location.exposure")).containsExactly("dry");
  }

  @Test
  void so_does_a_line_below_the_schedule() throws IOException {
    Checked c =
        of(
            "| Mark | Item | Size | Q / TL | Jt |\n|---|---|---|---|---|\n"
                + "| GT-1 | Glass mosaic | 1 x 1 in | TL | 1/16 in |\n"
                + "| GT-2 | Glass tile | 3 x 6 in | Q | 1/8 in |\n\n"
                + "Q = opaque, TL = translucent. Jt = grout joint width.\n");
    assertThat(c.governing("GT-1", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("GT-2", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("GT-2", "grout.width")).containsExactly("0.125 in");
  }

  @Test
  void letters_of_products_stand_below_headings_of_their_work() throws IOException {
    Checked c =
        of(
            "| Mark | Item | Size | Mortar | Grout |\n|---|---|---|---|---|\n"
                + "| GT-1 | Glass mosaic | 1 x 1 in | A | A |\n"
                + "| GT-2 | Glass tile | 3 x 6 in | B | K |\n\n",
            "# Section 09 30 23 Glass tile\n\n"
                + "| Letter | Mortar | Standard | Colour |\n|---|---|---|---|\n"
                + "| A | cement mortar | ANSI A118.15 | white |\n"
                + "| B | epoxy mortar | ANSI A118.3 | grey |\n\n"
                + "Grout A is an epoxy grout, ANSI A118.3, unsanded; grout K is ANSI A118.7, unsanded.\n");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-1", "grout.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-2", "grout.standard")).containsExactly("ANSI A118.7");
  }

  @Test
  void what_two_legends_explain_in_two_ways_is_explained_by_none() throws IOException {
    Checked c = of(SCHEDULE, "SEE = translucency. TL = translucent\n", "TL = tile layer's hut\n");
    assertThat(c.governing("GT-1", "tile.translucency")).doesNotContain("tile layer's hut");
    assertThat(c.entry("GT-1")).isNotNull();
  }

  @Test
  void letters_further_on_in_a_cell_are_of_anything() throws IOException {
    Checked c =
        of(
            "| Mark | Item | Size | Place |\n|---|---|---|---|\n"
                + "| GT-1 | Glass mosaic | 1 x 1 in | Lobby wall, 48 in AFF |\n"
                + "| GT-2 | Glass tile | 3 x 6 in | Bar wall |\n\n"
                + "AFF = above finished floor, NIC = not in contract\n");
    assertThat(c.governing("GT-1", "location.surface")).containsExactly("wall");
  }

  @Test
  void what_a_person_teaches_stands_above_a_legend() throws IOException {
    Files.writeString(folder.resolve("document 0.md"), SCHEDULE);
    Files.writeString(
        folder.resolve("document 1.md"), "SEE = mounting of sheets, TL = translucent\n");
    Path layer = folder.resolveSibling("office.yaml");
    Files.writeString(layer, "layer: Office\nwords:\n  columns:\n    \"SEE\": tile.translucency\n");
    assertThat(Checked.taught(folder, layer).governing("GT-1", "tile.translucency"))
        .containsExactly("translucent");
  }

  @Test
  void a_legend_of_finishes_explains_no_short_forms() throws IOException {
    Checked c =
        of(
            "| SYM | DESCRIPTION |\n|---|---|\n| PT2 | PORCELAIN TILE, 24 X 48 |\n"
                + "| GX1 | GLASS TILE, 12 X 24, SET IN WHITE THINSET |\n"
                + "| GX4 | GLASS TILE, 2 X 12 |\n| GB | GYPSUM BOARD, PAINTED |\n");
    assertThat(c.hasGlass("GX1")).isTrue();
    assertThat(c.hasGlass("GX4")).isTrue();
    assertThat(c.project().glass()).hasSize(2);
  }
}
