package clearbed.resolve;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.value.Value;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What addenda and revisions change, and what they leave. */
class AmendmentsTest {
  private static final String SCHEDULE =
      "Tag,Material,Grout joint,Mortar\n"
          + "GT-1,Glass tile,1/8 in,ANSI A118.4\n"
          + "GT-2,Glass tile,1/8 in,ANSI A118.4\n";

  private static final String SECTION =
      """
      SECTION 09 30 13 - GLASS TILING
      PART 2 - PRODUCTS
      2.1 SETTING MATERIALS
      A. Mortar for glass tile: ANSI A118.4.
      B. Shear bond strength of the mortar: 420 psi.
      2.2 SEALANT
      A. Sealant for movement joints: ASTM C920, Class 25.
      """;

  @TempDir Path folder;

  private Checked with(String name, String text) throws IOException {
    return Checked.ofFiles(folder, name, text);
  }

  private Checked schedule(String name, String text) throws IOException {
    Files.writeString(folder.resolve("Tile schedule.csv"), SCHEDULE);
    return with(name, text);
  }

  private Checked section(String name, String text) throws IOException {
    Files.writeString(folder.resolve("section.txt"), SECTION);
    Files.writeString(folder.resolve("Tile schedule.csv"), "Tag,Material\nGT-1,Glass tile\n");
    return with(name, text);
  }

  private static List<String> superseded(Checked c, String tag) {
    return c.entry(tag).superseded().stream().map(Value::content).map(v -> v.text()).toList();
  }

  @Test
  void a_row_of_an_addendum_takes_the_place_of_the_schedules() throws IOException {
    Checked c = schedule("Addendum 2.csv", "Tag,Material,Grout joint\nGT-1,Glass tile,1/16 in\n");
    assertThat(c.governing("GT-1", "grout.width")).containsExactly("0.0625 in");
    assertThat(superseded(c, "GT-1")).contains("0.125 in");
    assertThat(c.governing("GT-2", "grout.width")).containsExactly("0.125 in");
  }

  @Test
  void two_documents_of_one_issue_still_contradict_each_other() throws IOException {
    Checked c = schedule("Notes.csv", "Tag,Material,Grout joint\nGT-1,Glass tile,1/16 in\n");
    assertThat(c.governing("GT-1", "grout.width"))
        .containsExactlyInAnyOrder("0.125 in", "0.0625 in");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "GT-1: Change the mortar from ANSI A118.4 to ANSI A118.15.",
        "Tile GT-1: delete ANSI A118.4 and substitute ANSI A118.15.",
        "For GT-1, replace mortar ANSI A118.4 with mortar ANSI A118.15.",
        "At GT-1 in lieu of mortar ANSI A118.4 provide mortar ANSI A118.15.",
        "Mortar of GT-1 is now ANSI A118.15.",
        "Revise mortar of GT-1 to ANSI A118.15.",
        "Schedule, row GT-1: omit \"A118.4\"; insert \"A118.15\"."
      })
  void a_change_of_one_tag_leaves_the_others(String words) throws IOException {
    Checked c = schedule("Addendum 1.txt", "ADDENDUM 1\nTile work\n" + words + "\n");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-2", "mortar.standard")).containsExactly("ANSI A118.4");
    assertThat(superseded(c, "GT-1")).contains("ANSI A118.4");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Section 09 30 13, 2.1 A: delete \"ANSI A118.4\" and substitute \"ANSI A118.15\".",
        "Article 2.1: change mortar from ANSI A118.4 to ANSI A118.15.",
        "2.1.A is revised to read: Mortar for glass tile: ANSI A118.15."
      })
  void a_change_of_a_clause_puts_its_words_there(String words) throws IOException {
    Checked c = section("Addendum 1.txt", "ADDENDUM 1\nTile work\n" + words + "\n");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.15");
    assertThat(c.governing("GT-1", "mortar.bond")).containsExactly("420 psi");
    assertThat(superseded(c, "GT-1")).contains("ANSI A118.4");
  }

  @Test
  void a_clause_that_is_deleted_states_nothing() throws IOException {
    Checked c =
        section("Addendum 1.txt", "ADDENDUM 1\nTile work\nDelete paragraph 2.1 B entirely.\n");
    assertThat(c.governing("GT-1", "mortar.bond")).isEmpty();
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.4");
  }

  @Test
  void the_later_addendum_wins() throws IOException {
    Files.writeString(
        folder.resolve("Addendum 10.txt"), "ADDENDUM 10\nMortar of GT-1 is now ANSI A118.3.\n");
    Checked c = schedule("Addendum 9.txt", "ADDENDUM 9\nMortar of GT-1 is now ANSI A118.15.\n");
    assertThat(c.governing("GT-1", "mortar.standard")).containsExactly("ANSI A118.3");
    assertThat(superseded(c, "GT-1")).contains("ANSI A118.4", "ANSI A118.15");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "C. Remove cracked glass tile and replace with new tile to match.",
        "C. Replace saw blades that chip glass tile with new ones.",
        "C. Do not change mortar from one lot to another within a wall."
      })
  void work_on_the_site_changes_no_document(String words) throws IOException {
    Checked c = section("more.txt", SECTION.replace("A. Sealant", words + "\nA. Sealant"));
    assertThat(superseded(c, "GT-1")).isEmpty();
    assertThat(c.governing("GT-1", "mortar.standard")).contains("ANSI A118.4");
  }
}
