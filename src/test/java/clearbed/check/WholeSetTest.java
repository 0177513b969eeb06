package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.ReadingAccount;
import clearbed.model.report.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A check of the whole set that found nothing says where it could not look. */
class WholeSetTest {
  @TempDir Path folder;

  private Checked section(String... clauses) throws IOException {
    List<String> lines =
        new ArrayList<>(
            List.of(
                "SECTION 09 30 23",
                "GLASS TILING",
                "PART 2 - PRODUCTS",
                "2.1 GLASS TILE",
                "A. GT-1: Cast glass tile, opaque, 4 by 4 inches, to ANSI A137.2.",
                "2.2 SETTING GLASS TILE"));
    for (int i = 0; i < clauses.length; i++) lines.add((char) ('A' + i) + ". " + clauses[i]);
    Files.writeString(folder.resolve("09 30 23.txt"), String.join("\n", lines) + "\n");
    return Checked.of(folder);
  }

  private static ReadingAccount.WholeSet of(Checked checked, String check) {
    return checked.outcome().reading().wholeSet().stream()
        .filter(set -> set.check().equals(check))
        .findFirst()
        .orElseThrow();
  }

  private static List<String> words(Checked checked, String check) {
    return checked.outcome().reading().notUnderstood().stream()
        .filter(each -> each.couldAnswer().contains(check))
        .map(each -> each.words().text())
        .toList();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "see detail D-14",
        "as shown on drawing A-512.3",
        "refer to 7.12",
        "see note KF7",
        "according to clause 640"
      })
  void a_reference_of_an_unknown_form_leaves_the_check_unread(String reference) throws IOException {
    Checked checked = section("Joints above structural joints, " + reference + ".");
    assertThat(checked.findings("dangling-reference")).isEmpty();
    assertThat(words(checked, "dangling-reference"))
        .anySatisfy(
            words -> assertThat(words).contains(reference.substring(reference.lastIndexOf(' '))));
    assertThat(of(checked, "dangling-reference").outcome()).isEqualTo(Verdict.Outcome.UNREAD);
    assertThat(checked.verdicts("dangling-reference"))
        .extracting(Verdict::outcome)
        .containsExactly(Verdict.Outcome.UNREAD);
  }

  @Test
  void a_number_that_is_missing_from_a_count_of_the_set_dangles() throws IOException {
    Files.writeString(
        folder.resolve("tiling.txt"),
        """
        GLASS TILING

        110 GLASS TILES

        GT-1: cast glass tile, opaque, to ANSI A137.2.

        220 ADHESIVES FOR GLASS TILES

        Leave the adhesive behind glass tile for the time in clause 460.

        330 GROUTS FOR GLASS TILES

        Grout as in clause 220.

        440 CLEANING OF GLASS TILES

        No acid.
        """);
    Checked checked = Checked.of(folder);
    assertThat(checked.findings("dangling-reference"))
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("clause 460"));
  }

  @Test
  void a_table_of_joints_schedules_no_tile_and_the_name_of_a_schedule_is_none() throws IOException {
    Files.writeString(
        folder.resolve("legend GT-S.csv"),
        "Code,Material,Size\nGT-1,Cast glass tile,4 x 4 in\nGT-2,Fused glass tile,2 x 2 in\n");
    Files.writeString(
        folder.resolve("joints.csv"),
        "Code,Movement joint width,Movement joint spacing\nGT-1,3/8 in,8 ft\nGT-9,3/8 in,8 ft\n");
    Checked checked = section("Glass tile is in Schedule GT-S.");
    assertThat(checked.findings("unscheduled-tag"))
        .singleElement()
        .satisfies(f -> assertThat(f.message()).startsWith("GT-9"));
  }

  @Test
  void floors_and_walls_by_type_of_dwelling_are_rooms() throws IOException {
    Files.writeString(
        folder.resolve("dwellings.csv"),
        "Unit type,Levels,Room,Floor,Wall,Ceiling,Conditions\n"
            + "A (2 bedroom),5 to 24,Shower,HT-1,GT-1,PT-1,\"Wet, internal\"\n"
            + "B (3 bedroom),5 to 24,Shower,HT-1,GT-1,PT-1,\"Wet, internal\"\n"
            + "PH,25,Living,MB-1,PT-1,PT-1,\"Dry, internal\"\n");
    Checked checked = section("Set glass tile in mortar.");
    assertThat(checked.governing("GT-1", "location.exposure")).contains("wet");
    assertThat(checked.project().entries()).noneMatch(e -> e.tag().startsWith("A ("));
  }

  @Test
  void a_paragraph_of_another_section_is_none_of_this_one() throws IOException {
    Checked checked = section("Corners as Section 09 30 19, paragraph 3.4, describes.");
    assertThat(checked.findings("dangling-reference"))
        .singleElement()
        .satisfies(f -> assertThat(f.message()).contains("section 09 30 19"));
  }

  @Test
  void titles_in_a_table_of_publications_require_nothing() throws IOException {
    Files.writeString(
        folder.resolve("publications.csv"),
        "Publication,Title\n"
            + "ANSI A108.6,Ceramic Tile Installed with Chemical Resistant Epoxy\n"
            + "ANSI A118.10,\"Load Bearing, Bonded, Waterproof Membranes\"\n"
            + "ANSI A118.15,Improved Modified Dry-Set Cement Mortar\n"
            + "ASTM C1193,Guide for Use of Joint Sealants\n");
    Checked checked = section("Set glass tile in mortar.");
    assertThat(checked.governing("GT-1", "membrane.standard")).isEmpty();
    assertThat(checked.governing("GT-1", "mortar.standard")).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Tanking behind glass tile: a suitable tanking system as approved.",
        "Set glass tile on a suitable background.",
        "Do not fill the pool with glass tile until a suitable time after grouting.",
        "Behind glass tile a suitable vapor-tight membrane."
      })
  void what_is_suitable_is_for_the_specifier_to_say(String clause) throws IOException {
    assertThat(section(clause).findings("vague")).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "A suitable silicone, as approved by the designer.",
        "An approved polyurethane.",
        "Patching as required.",
        "Use a proper fast curing tile epoxy."
      })
  void a_product_that_only_its_kind_names_is_left_open(String words) throws IOException {
    assertThat(section("At glass tile: " + words).findings("vague")).hasSize(1);
    assertThat(inACell(words).findings("vague")).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"As approved.", "Standard sealant", "By contractor", "suitable"})
  void a_cell_of_vague_words_alone_says_nothing_of_its_column(String words) throws IOException {
    assertThat(inACell(words).findings("vague")).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "A suitable silicone to ASTM C920.",
        "Approved polyurethane, joint 6 mm wide.",
        "A silicone that its maker confirms to be suitable, as approved for the sample.",
        "Neutral silicone."
      })
  void one_that_a_standard_a_figure_or_its_maker_decides_is_not(String words) throws IOException {
    assertThat(section("At glass tile: " + words).findings("vague")).isEmpty();
    assertThat(inACell(words).findings("vague")).isEmpty();
  }

  private Checked inACell(String words) throws IOException {
    Files.writeString(
        folder.resolve("cells.csv"),
        "Code,Material,Sealant standard\nGT-4,Cast glass tile,\""
            + words
            + "\"\nGT-5,Cast glass tile,ASTM C920\n");
    return section("Glass tile is set in mortar to ANSI A118.15.");
  }

  @Test
  void a_reference_that_leads_to_a_document_clause_or_tag_is_followed() throws IOException {
    Files.writeString(folder.resolve("D-14 edges.txt"), "Edges of tile at structural joints.\n");
    Checked checked =
        section(
            "Joints above structural joints, see detail D-14.",
            "Tile as described in 2.1 and as GT-1, see GT-1.",
            "Flatness according to table 3 of ISO 13006 and 3 mm in 2 m.");
    assertThat(words(checked, "dangling-reference")).isEmpty();
    assertThat(of(checked, "dangling-reference").outcome()).isEqualTo(Verdict.Outcome.SATISFIED);
    assertThat(checked.verdicts("dangling-reference"))
        .extracting(Verdict::outcome)
        .containsExactly(Verdict.Outcome.SATISFIED);
  }

  @ParameterizedTest
  @ValueSource(strings = {"FED SPEC TT-S-00227E", "MIL-S-8802", "BS 5980:1980"})
  void a_designation_that_no_list_has_leaves_its_status_unread(String designation)
      throws IOException {
    Checked checked = section("Sealant in joints of tile to " + designation + ".");
    if (!checked.findings("withdrawn-standard").isEmpty()) return;
    assertThat(words(checked, "withdrawn-standard")).isNotEmpty();
    assertThat(of(checked, "withdrawn-standard").outcome()).isEqualTo(Verdict.Outcome.UNREAD);
  }

  @Test
  void one_that_is_known_does_not() throws IOException {
    Checked checked = section("Sealant in joints of tile: ASTM C920, Class 25.");
    assertThat(of(checked, "withdrawn-standard").outcome()).isEqualTo(Verdict.Outcome.SATISFIED);
  }

  @Test
  void how_much_was_looked_into_adds_up() throws IOException {
    Checked checked = section("Setting mortar resists 450 psi when tugged.");
    ReadingAccount reading = checked.outcome().reading();
    int looked = ReadingAccount.looked(reading.sentences());
    int missed = reading.sentences().notUnderstood();
    assertThat(missed).isEqualTo(1);
    assertThat(looked + missed + reading.sentences().setAside())
        .isEqualTo(reading.sentences().all());
    assertThat(reading.lookedIn())
        .startsWith("looked in " + looked + " of " + (looked + 1) + " sentences and 0 of 0 cells")
        .contains("; not understood: 1 sentence");
  }
}
