package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.recognise.section.clause.Clause;
import clearbed.recognise.section.clause.Section;
import clearbed.recognise.statement.code.Citation;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the clauses of a section say, and of which tile they say it. */
class StatementsTest {
  private static final String POOL = "GT-1: opaque glass mosaic for the swimming pool.";
  private static final String LOBBY =
      "GT-2: translucent glass tile on walls in dry interior areas.";

  private static Checked section(String... clauses) {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "SECTION 09 30 00",
                "TILING",
                "PART 2 - PRODUCTS",
                "2.1 GLASS TILE",
                "A. " + POOL,
                "B. " + LOBBY,
                "2.2 MATERIALS"));
    char letter = 'A';
    for (String clause : clauses) lines.add(letter++ + ". " + clause);
    return Checked.ofLines("09 30 00.txt", lines);
  }

  @Test
  void a_tagged_product_clause_makes_an_entry_with_its_place() {
    Checked c = section("Mortar: ANSI A118.15.");
    assertThat(c.governing("GT-1", "location.exposure")).contains("submerged");
    assertThat(c.governing("GT-2", "location.surface")).containsExactly("wall");
    assertThat(c.governing("GT-1", "tile.translucency")).containsExactly("opaque");
    assertThat(c.governing("GT-2", "tile.translucency")).containsExactly("translucent");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Do not use organic adhesive with glass tile.",
        "Organic adhesive is not permitted for glass tile.",
        "Set glass tile in mortar; organic adhesive shall not be used.",
        "Use no organic adhesive behind glass tile.",
        "Organic adhesives: prohibited."
      })
  void what_is_forbidden_is_not_stated(String clause) {
    Checked c = section(clause);
    assertThat(c.governing("GT-1", "mortar.chemistry")).doesNotContain("organic");
    assertThat(c.entry("GT-1").values("mortar.chemistry"))
        .anyMatch(v -> v.excluded() && v.content().text().equals("organic"));
  }

  @Test
  void an_exception_leaves_its_place_out() {
    Checked c =
        section(
            "Mortar for glass tile: ANSI A118.4, except at pools, where ANSI A118.3 is required.");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.4");
  }

  @Test
  void a_choice_of_one_of_the_following_is_a_choice() {
    Checked c =
        section(
            "Mortar for glass tile, one of the following: ANSI A118.4, ANSI A118.15 or ANSI A118.3.");
    assertThat(c.governing("GT-1", "mortar.standard"))
        .containsExactlyInAnyOrder("ANSI A118.4", "ANSI A118.15", "ANSI A118.3");
  }

  @Test
  void a_condition_on_the_tile_limits_the_clause() {
    Checked c = section("Translucent glass: white mortar.");
    assertThat(c.governing("GT-2", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("GT-1", "mortar.colour")).isEmpty();
  }

  @Test
  void two_figures_for_two_places_go_each_to_its_own() {
    Checked c = section("Mortar coverage: 95 percent at pools and 80 percent in dry areas.");
    assertThat(c.governing("GT-1", "mortar.coverage")).containsExactly("95 %");
    assertThat(c.governing("GT-2", "mortar.coverage")).containsExactly("80 %");
  }

  @Test
  void a_clause_that_names_a_tag_is_closer_than_one_that_does_not() {
    Checked c = section("Mortar: ANSI A118.15.", "GT-1: set in epoxy mortar, ANSI A118.3.");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void words_on_other_tile_say_nothing_of_glass() {
    Checked c = section("Mortar for porcelain tile: ANSI A118.1, gray.");
    assertThat(c.governing("GT-1", "mortar.standard")).isEmpty();
    assertThat(c.governing("GT-1", "mortar.colour")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mortar for glass tile: ANSI\u00A0A118.15, “bright white”.",
        "Mor\u00ADtar for glass tile: ANSI A118\u2011 15, white.",
        "Mortar for glass tile – ANSI A 118.15 – white."
      })
  void typographic_marks_do_not_hide_the_words(String clause) {
    Checked c = section(clause);
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-1", "mortar.colour")).containsExactly("white");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Shear bond strength of mortar: not less than 400 psi [2.76 MPa].",
        "Mortar: shear bond strength 400 psi minimum (2.76 MPa).",
        "Mortar with a shear strength of at least 400 psi."
      })
  void a_bond_figure_keeps_its_bound(String clause) {
    assertThat(section(clause).governing("GT-1", "mortar.bond"))
        .containsExactly("at least 400 psi");
  }

  @Test
  void a_tensile_figure_is_no_shear_figure() {
    Checked c = section("Mortar: tensile bond strength of at least 500 psi.");
    assertThat(c.governing("GT-1", "mortar.bond")).isEmpty();
    assertThat(c.governing("GT-1", "mortar.tensile")).containsExactly("at least 500 psi");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mortar for glass tile: TBD.",
        "Mortar for glass tile: [ANSI A118.4] [ANSI A118.15].",
        "Mortar for glass tile: ________.",
        "Mortar for glass tile: <insert standard>.",
        "Mortar for glass tile: to be selected."
      })
  void what_is_left_open_states_nothing(String clause) {
    Checked c = section(clause);
    assertThat(c.governing("GT-1", "mortar.standard")).isEmpty();
    assertThat(c.entry("GT-1").values()).anyMatch(v -> v.open());
  }

  @Test
  void a_list_of_references_requires_nothing() {
    Checked c = section("Mortar for glass tile: as scheduled.", "PART 1", "ANSI A118.15, mortar.");
    assertThat(c.entry("GT-1")).isNotNull();
    Document document =
        Document.read(
            "a.txt",
            "txt",
            List.of(
                Paragraph.body(Origin.ofDocument("a.txt"), "SECTION 09 30 00 TILING"),
                Paragraph.body(Origin.ofDocument("a.txt"), "1.2 REFERENCES"),
                Paragraph.body(Origin.ofDocument("a.txt"), "A. ANSI A118.15, mortar.")),
            List.of());
    Facts facts = new Recogniser(Checked.vocabulary()).recognise(document);
    assertThat(facts.citations()).hasSize(1).allMatch(Citation::listed);
    assertThat(facts.sections())
        .flatExtracting(Section::clauses)
        .flatExtracting(Clause::statements)
        .isEmpty();
  }

  @Property(tries = 60)
  void no_text_makes_it_throw(@ForAll String text) {
    assertThat(section(text, "Mortar: " + text, "GT-1: " + text + " 400 psi").project())
        .isNotNull();
  }

  @Test
  void the_mortar_makers_word_on_the_membrane_is_not_the_tile_makers() {
    String mortar = "Submit the mortar manufacturer's letter that the mortar suits the membrane.";
    String tile = "Obtain the tile factory's consent to setting GT-1 on the waterproofing.";
    Checked one = section(mortar);
    assertThat(one.entry("GT-1").values("membrane.confirmation")).isEmpty();
    assertThat(one.entry("GT-1").values("mortar.membraneUse")).isNotEmpty();
    assertThat(section(tile).entry("GT-1").values("membrane.confirmation")).isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mortar: do not use one with a shear bond of less than 450 psi.",
        "Mortar: no product may have a shear bond below 450 psi.",
        "Mortar: shear bond not less than 450 psi."
      })
  void a_bound_that_is_denied_is_turned_round(String clause) {
    assertThat(section(clause).governing("GT-1", "mortar.bond"))
        .containsExactly("at least 450 psi");
  }

  @Test
  void a_mark_that_no_schedule_has_speaks_for_no_other_tile() {
    Checked c = section("PT-210: stoneware, edges eased. Mortar ANSI A118.4.");
    assertThat(c.governing("GT-1", "mortar.standard")).isEmpty();
  }

  @Test
  void a_temperature_until_days_after_grouting_is_no_cure_before_it() {
    Checked c = section("Hold air between 50 and 95 deg F until 7 days after tile is grouted.");
    assertThat(c.entry("GT-1").values("process.cureBeforeGrout")).isEmpty();
    Checked set = section("Interval from setting to grouting: at least 48 hours before grout.");
    assertThat(set.entry("GT-1").values("process.cureBeforeGrout")).isNotEmpty();
  }

  @Test
  void other_tile_beside_glass_tile_is_not_glass() {
    Checked c =
        section("Glass tile: white mortar, ANSI A118.15.", "Other tile: ANSI A118.4, gray.");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.15");
    c = section("Grout for glass tile: ANSI A118.7. Grout for other tile: ANSI A118.6.");
    assertThat(c.governing("GT-2", "grout.standard")).containsExactly("ANSI A118.7");
  }

  @Test
  void other_tile_alone_may_be_glass() {
    Checked c = section("Pool tile: ANSI A118.3 mortar.", "Other tile: ANSI A118.15 mortar.");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.15");
  }

  @Test
  void classes_of_the_international_standards_are_no_marks() {
    Checked c = section("GT-1", "GT-2: adhesive to EN 12004-1, class C2TE S1.");
    assertThat(c.governing("GT-2", "mortar.isoClass")).containsExactly("C2");
    assertThat(c.governing("GT-1", "mortar.isoClass")).isEmpty();
  }

  @Test
  void each_tile_that_a_sentence_goes_on_to_has_its_own_words() {
    Checked c = section("Mortar: white behind GT-2, and GT-1 is set in gray mortar.");
    assertThat(c.governing("GT-2", "mortar.colour")).containsExactly("white");
    assertThat(c.governing("GT-1", "mortar.colour")).containsExactly("grey");
  }
}
