package clearbed.check;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.report.Verdict;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** "Not stated" is said only where nothing that was not understood could state it. */
class UnreadFindingsTest {
  @TempDir Path folder;

  private Checked check(String name, String... lines) throws IOException {
    return Checked.ofFiles(folder, name, String.join("\n", lines) + "\n");
  }

  private Checked schedule(String heading) throws IOException {
    return check(
        "schedule.csv",
        "Tag,Material,Size,Location,Mortar," + heading,
        "GT-1,\"Glass tile, opaque\",4 x 4 in,Lobby wall,ANSI A118.15,450",
        "GT-2,\"Glass tile, opaque\",4 x 4 in,Bar front,ANSI A118.15,");
  }

  @Test
  void a_column_that_may_state_it_is_asked_about_and_nothing_is_called_missing()
      throws IOException {
    Checked checked = schedule("SHR/TENS (PSI)");
    assertThat(checked.findings("unread")).hasSize(1);
    Finding finding = checked.findings("unread").get(0);
    assertThat(finding.kind()).isEqualTo(FindingKind.UNREAD);
    assertThat(finding.level()).isEqualTo(Level.WARNING);
    assertThat(finding.tags()).containsExactly("GT-1");
    assertThat(finding.message()).contains("'450' under SHR/TENS (PSI)").contains("F2");
    assertThat(checked.findings("bond-strength-by-class"))
        .extracting(Finding::tags)
        .containsExactly(java.util.List.of("GT-2"));
    assertThat(checked.verdicts("bond-strength-by-class"))
        .extracting(Verdict::outcome)
        .containsExactly(Verdict.Outcome.UNREAD, Verdict.Outcome.FINDING);
  }

  private Checked backs(String clause) throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Size,Location,Backing\n"
            + "GT-1,\"Glass tile, opaque\",4 x 4 in,Lobby wall,none\n"
            + "GT-2,\"Glass tile, opaque\",4 x 4 in,Bar front,\n"
            + "GT-3,\"Glass tile, opaque\",4 x 4 in,Entry,\n");
    return check(
        "09 30 23.md", "SECTION 09 30 23", "", "GLASS TILING", "", "2.1 COATED BACKS", "", clause);
  }

  @Test
  void a_sentence_that_opens_with_a_tile_leaves_nothing_open_for_others() throws IOException {
    Checked checked =
        backs("A. GT-1 has a fired enamel on its back. GT-2 has silvered film on its back.");
    assertThat(checked.findings("tile-backing-stated"))
        .flatExtracting(Finding::tags)
        .contains("GT-3");
  }

  @Test
  void a_sentence_on_all_but_one_tile_may_be_about_any() throws IOException {
    Checked checked =
        backs("A. GT-1 is clear. Except GT-1, all have a fired enamel on the back, GT-2 too.");
    assertThat(checked.findings("tile-backing-stated")).isEmpty();
  }

  @Test
  void a_blade_for_glass_may_state_no_protection_of_the_eyes() throws IOException {
    Files.writeString(
        folder.resolve("schedule.csv"),
        "Tag,Material,Size,Location\nGT-1,\"Glass tile, opaque\",4 x 4 in,Lobby wall\n");
    Checked checked =
        check(
            "09 30 23.md",
            "SECTION 09 30 23",
            "",
            "GLASS TILING",
            "",
            "3.1 CUTTING",
            "",
            "A. Saw with a rim for glass or score and snap; dress the edges with a fine stone.");
    assertThat(checked.findings("cutting-safety")).hasSize(1);
  }

  @Test
  void the_account_names_the_checks_that_the_words_could_answer() throws IOException {
    Checked checked = schedule("SHR/TENS (PSI)");
    assertThat(checked.outcome().reading().notUnderstood())
        .anySatisfy(
            n -> {
              assertThat(n.couldAnswer()).contains("bond-strength");
              assertThat(n.tags()).containsExactly("GT-1");
              assertThat(n.words().samples()).containsExactly("450");
            });
  }

  @Test
  void a_column_that_was_read_is_not_asked_about() throws IOException {
    Checked checked = schedule("Shear bond strength (psi)");
    assertThat(checked.findings("unread")).isEmpty();
  }

  @Test
  void tags_below_a_title_on_glass_that_nothing_describes_are_asked_about() throws IOException {
    Checked checked =
        check(
            "09 30 23.md",
            "SECTION 09 30 23",
            "",
            "GLASS MOSAIC TILING",
            "",
            "PART 2 - PRODUCTS",
            "",
            "2.1 TYPES",
            "",
            "| Type | Size | Mortar | Grout |",
            "|---|---|---|---|",
            "| GM-1 | 1 x 1 in | ANSI A118.15 | ANSI A118.7 |",
            "| GM-2 | 2 x 2 in | ANSI A118.15 | ANSI A118.7 |");
    if (checked.hasGlass("GM-1")) return;
    assertThat(checked.findings("unread"))
        .anySatisfy(f -> assertThat(f.tags()).containsExactly("GM-1", "GM-2"));
  }
}
