package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Codes of work sections and numbers of cards look like marks of tiles and are none. */
class OtherMarksTest {
  @TempDir Path folder;

  private Checked of(String name, String text) throws IOException {
    return Checked.ofFiles(
        folder,
        "schedule.csv",
        "Tag,Material\nGT-1,Glass mosaic\nGT-2,Cast glass tile\n",
        name,
        text);
  }

  private static List<String> entries(Checked c) {
    return c.project().entries().stream().map(Entry::tag).toList();
  }

  /** Marks that clauses are limited to or speak of. */
  private static Set<String> named(Checked c) {
    return c.project().sections().stream()
        .flatMap(s -> s.clauses().stream())
        .flatMap(k -> Stream.concat(k.limits().tags().stream(), k.subject().tags().stream()))
        .collect(Collectors.toSet());
  }

  @Test
  void the_code_of_a_work_section_is_no_tile() throws IOException {
    Checked c =
        of(
            "tiling.txt",
            """
            W41 GLASS TILING

            W41/110 EXTENT
            Glass tile as W41 to the laundry walls.

            W41/310 GLASS TILE
            Standard: ANSI A137.2.

            W41/340 ADHESIVE
            Standard: ANSI A118.15. Colour: White.
            """);
    assertThat(entries(c)).containsExactly("GT-1", "GT-2");
    assertThat(named(c)).doesNotContain("W41", "W-41");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.findings("unscheduled-tag")).isEmpty();
  }

  @Test
  void a_mark_of_that_form_without_clauses_below_it_is_a_tile() throws IOException {
    Checked c =
        of("tiling.txt", "GLASS TILE NOTES\n\nW41: glass tile set in ANSI A118.3 mortar.\n");
    assertThat(named(c)).containsAnyOf("W41", "W-41");
  }

  @Test
  void the_number_of_a_card_is_no_tile_where_the_mark_of_one_stands_behind_it() throws IOException {
    Checked c =
        of(
            "cards.md",
            """
            # Glass tile cards

            ## Card C-1 GT-1 Mosaic

            Glass mosaic, opaque. Mortar: ANSI A118.15, white.

            ## Card C-2 GT-2 Wall tile

            Cast glass tile, translucent. Mortar: ANSI A118.3, white.
            """);
    assertThat(entries(c)).containsExactly("GT-1", "GT-2");
    assertThat(named(c)).doesNotContain("C-1", "C-2");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.3");
  }

  @Test
  void what_lies_on_glass_tile_is_none() throws IOException {
    Files.writeString(
        folder.resolve("finishes.csv"), "Tag,Material\nGT-9,Sealer\nGT-1,Glass mosaic\n");
    Checked c = of("notes.txt", "Notes\n\n1. No sealer GT-9 on any glass tile.\n");
    assertThat(c.project().glass())
        .extracting(Entry::tag)
        .containsExactlyInAnyOrder("GT-1", "GT-2");
  }

  @Test
  void a_mortar_that_says_for_which_tiles_it_is_is_called_by_them() throws IOException {
    Checked c =
        of(
            "09 30 00.txt",
            "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 MORTARS\n\n"
                + "A. KM1: white mortar, ANSI A118.15, for GT-1.\n\n"
                + "B. KM2: epoxy mortar, ANSI A118.3, for GT-2.\n\n2.2 MEMBRANES\n\n"
                + "A. The membrane maker has accepted the mortar KM1 on the membrane.\n");
    assertThat(c.governing("GT-1", "mortar.membraneUse")).containsExactly("required");
    assertThat(c.governing("GT-2", "mortar.membraneUse")).isEmpty();
  }

  @Test
  void of_two_mortars_in_one_paragraph_each_is_for_its_own_tiles() throws IOException {
    Checked c =
        of(
            "09 30 00.txt",
            "SECTION 09 30 00 - TILING\n\nPART 2 - PRODUCTS\n\n2.1 GLASS TILE\n\n"
                + "A. GT-1: glass tile, set in KM-1.\n\nB. GT-2: glass tile, painted back, set in KM-2.\n\n"
                + "2.2 MORTARS\n\nA. KM-1 is a white mortar of ANSI A118.15. KM-2 is an epoxy of"
                + " ANSI A118.3 for what is painted behind, which is GT-2.\n");
    assertThat(c.governing("GT-2", "mortar.standard")).doesNotContain("ANSI A118.15");
  }

  @Test
  void the_number_of_a_clause_is_the_mark_of_no_mortar() throws IOException {
    Checked c =
        of(
            "09 30 00.txt",
            "SECTION 09 30 00 - GLASS TILING\n\nA. SCOPE\n\n"
                + "A-1. Work: the glass tile marked GT-1 and GT-2 with all grout.\n\n"
                + "C. SETTING\n\n"
                + "C-1. Shear bond strength of mortar to glass: 500 psi for every mark.\n\n"
                + "C-2. Mortar of GT-1 is set to ANSI A108.5.\n\nD. GROUT\n\n"
                + "D-1. Spread grout over no more than 10 sq ft at a time.\n\n"
                + "D-3. Grout of GT-1 cures 14 days.\n");
    assertThat(c.governing("GT-2", "grout.reach")).isNotEmpty();
    assertThat(c.governing("GT-2", "mortar.bond")).isNotEmpty();
  }
}
