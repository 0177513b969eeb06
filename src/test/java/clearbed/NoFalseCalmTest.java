package clearbed;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.report.Finding;
import clearbed.model.report.FindingKind;
import clearbed.model.report.Level;
import clearbed.model.value.Entry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Glass tile that is named is an entry or a finding; what only sounds like it is neither. */
class NoFalseCalmTest {
  @TempDir Path folder;

  private Checked check(String name, String... lines) throws IOException {
    return Checked.ofFiles(folder, name, String.join("\n", lines) + "\n");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "SECTION 093023 / GLASS TILING",
        "GT-1  GLASS MOSAIC TILE",
        "Band of recycled glass tesserae GX-7 over the counter.",
        "Carreaux de verre, 20 x 20 mm, collés à la colle époxy.",
        "Glasmosaik 25 x 25 mm, weiß verfugt",
        "The glass tile comes from stock."
      })
  void glass_tile_that_makes_no_entry_is_an_error_that_quotes_the_place(String line)
      throws IOException {
    Checked checked = check("legend.txt", "LOBBY", line);
    if (!checked.project().glass().isEmpty()) return;
    assertThat(checked.findings("no-entry")).hasSize(1);
    Finding finding = checked.findings("no-entry").get(0);
    assertThat(finding.level()).isEqualTo(Level.ERROR);
    assertThat(finding.kind()).isEqualTo(FindingKind.UNREAD);
    assertThat(finding.message())
        .contains("legend.txt")
        .contains(line.replaceAll("\\s+", " ").substring(0, 8));
  }

  @Test
  void a_table_that_is_no_schedule_is_quoted_by_its_cell() throws IOException {
    Checked checked = check("list.csv", "Foo,Bar", "17,Glass mosaic blend");
    assertThat(checked.findings("no-entry")).hasSize(1);
    assertThat(checked.findings("no-entry").get(0).message()).contains("B2");
  }

  @Test
  void five_places_are_quoted_of_many_documents() throws IOException {
    for (int i = 0; i < 7; i++)
      Files.writeString(folder.resolve("note" + i + ".txt"), "Glass tile as chosen by the owner.");
    Finding finding = Checked.of(folder).findings("no-entry").get(0);
    assertThat(finding.message().split("note\\d\\.txt")).hasSize(6);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Comply with TCNA Handbook for Ceramic, Glass, and Stone Tile Installation.",
        "COMPLY WITH THE TCNA HANDBOOK FOR CERAMIC, GLASS AND STONE TILE INSTALLATION.",
        "ANSI A137.2 - Specifications for Glass Tile.",
        "Glass tile is not permitted.",
        "Do not use glass mosaic on floors.",
        "Quarry tile: as selected, other than glass tile.",
        "Where glass tile occurs, seal the joint.",
        "If glass tile is chosen later, ask for a price.",
        "Glass tile is specified elsewhere.",
        "Glass block, 8 by 8 by 4 inches."
      })
  void what_only_names_glass_tile_makes_no_entry_and_no_finding(String line) throws IOException {
    Checked checked =
        check(
            "093016.txt",
            "SECTION 093016",
            "QUARRY TILING",
            "PART 2 - PRODUCTS",
            "2.1 MATERIALS",
            "A. Quarry tile, 6 by 6 inches, to ANSI A137.1.",
            "B. " + line);
    assertThat(checked.project().glass()).extracting(Entry::evidence).isEmpty();
    assertThat(checked.findings("no-entry")).isEmpty();
    assertThat(checked.outcome().findings()).isEmpty();
  }

  @Test
  void a_list_of_references_makes_no_entry() throws IOException {
    Checked checked =
        check(
            "093016.txt",
            "SECTION 093016",
            "QUARRY TILING",
            "PART 2 - PRODUCTS",
            "2.1 REFERENCE STANDARDS",
            "A. ANSI A137.2: Glass tile.",
            "2.2 MATERIALS",
            "A. Quarry tile, 6 by 6 inches, to ANSI A137.1.");
    assertThat(checked.project().glass()).isEmpty();
    assertThat(checked.findings("no-entry")).isEmpty();
  }

  private static final String[] SECTION = {
    "SECTION 093023",
    "GLASS TILING",
    "PART 2 - PRODUCTS",
    "2.1 TILE",
    "A. GT-1: Cast glass tile, opaque, 4 by 4 inches, to ANSI A137.2.",
  };

  @Test
  void a_row_without_a_word_on_glass_does_not_cancel_the_section() throws IOException {
    Files.writeString(
        folder.resolve("a.csv"), "Tag,Description,Size\nGT-1,Aqua blend 12,4 x 4 in\n");
    Checked checked = check("b.txt", SECTION);
    assertThat(checked.hasGlass("GT-1")).isTrue();
    assertThat(checked.entry("GT-1").evidence()).contains("Cast glass tile");
    assertThat(checked.governing("GT-1", "tile.standard")).contains("ANSI A137.2");
    assertThat(checked.findings("no-entry")).isEmpty();
    assertThat(checked.findings("conflict")).isEmpty();
  }

  @Test
  void a_schedule_that_calls_it_porcelain_contradicts_the_section() throws IOException {
    Files.writeString(folder.resolve("a.csv"), "Tag,Material,Size\nGT-1,Porcelain tile,4 x 4 in\n");
    Checked checked = check("b.txt", SECTION);
    assertThat(checked.hasGlass("GT-1")).isTrue();
    assertThat(checked.findings("conflict")).hasSize(1);
    assertThat(checked.findings("conflict").get(0).message())
        .contains("Material of GT-1")
        .contains("glass tile in b.txt")
        .contains("porcelain tile in a.csv");
  }

  @Test
  void a_section_that_calls_it_porcelain_contradicts_the_schedule() throws IOException {
    Files.writeString(
        folder.resolve("a.csv"), "Tag,Material,Size\nGT-1,Cast glass tile,4 x 4 in\n");
    Checked checked =
        check(
            "b.txt",
            "SECTION 093000",
            "TILING",
            "PART 2 - PRODUCTS",
            "2.1 TILE",
            "A. GT-1: Porcelain tile, 4 by 4 inches, to ANSI A137.1.");
    assertThat(checked.findings("conflict"))
        .anySatisfy(f -> assertThat(f.message()).contains("Material of GT-1"));
  }

  @Test
  void two_schedules_that_differ_on_what_it_is_contradict_each_other() throws IOException {
    Files.writeString(folder.resolve("a.csv"), "Tag,Material,Size\nGT-1,Glass tile,4 x 4 in\n");
    Checked checked = check("b.csv", "Tag,Material,Size", "GT-1,Ceramic tile,4 x 4 in");
    assertThat(checked.hasGlass("GT-1")).isTrue();
    assertThat(checked.findings("conflict"))
        .anySatisfy(f -> assertThat(f.message()).contains("Material of GT-1"));
  }

  @Test
  void a_code_that_nobody_explains_is_a_question_and_no_fault_of_the_tile() throws IOException {
    Checked checked =
        check(
            "a.csv",
            "Tag,Material,Size,Mortar,Sealant",
            "GT-1,Glass tile,4 x 4 in,ZK-7,PZ",
            "GT-2,Glass tile,2 x 2 in,ZK-8,PZ");
    assertThat(checked.findings("mortar-class")).isEmpty();
    assertThat(checked.findings("bond-strength")).isEmpty();
    assertThat(checked.findings("joint-sealant")).isEmpty();
    assertThat(checked.findings("unread"))
        .anySatisfy(f -> assertThat(f.message()).contains("ZK-7"));
    assertThat(checked.findings("grout-class")).isNotEmpty();
  }
}
