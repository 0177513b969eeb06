package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the process ends with, and what it says on the way. */
class ExitCodesTest {
  /** A mortar that will not do: at least one error. */
  private static final String FAULTY =
      """
      Tag,Material,Size,Mortar
      GT-1,"Glass tile, translucent",4 x 4 in,ANSI A118.1
      """;

  private static final String NO_GLASS =
      """
      Tag,Material,Size,Mortar
      CT-1,Ceramic tile,4 x 4 in,ANSI A118.1
      MR-1,Mirror,36 x 60 in,Mastic
      """;

  @TempDir Path folder;
  private Path documents;
  private Path json;
  private String out = "";
  private String err = "";

  @BeforeEach
  void a_folder_for_the_documents() throws IOException {
    documents = Files.createDirectory(folder.resolve("documents"));
    json = folder.resolve("findings.json");
  }

  private void document(String name, String text) throws IOException {
    Files.writeString(documents.resolve(name), text);
  }

  private Path rules(String text) throws IOException {
    return Files.writeString(folder.resolve("rules.yaml"), text);
  }

  private int run(String... arguments) {
    PrintStream oldOut = System.out;
    PrintStream oldErr = System.err;
    ByteArrayOutputStream outBytes = new ByteArrayOutputStream();
    ByteArrayOutputStream errBytes = new ByteArrayOutputStream();
    System.setOut(new PrintStream(outBytes, true, StandardCharsets.UTF_8));
    System.setErr(new PrintStream(errBytes, true, StandardCharsets.UTF_8));
    try {
      return Main.run(arguments);
    } finally {
      System.setOut(oldOut);
      System.setErr(oldErr);
      out = outBytes.toString(StandardCharsets.UTF_8);
      err = errBytes.toString(StandardCharsets.UTF_8);
      assertThat(err).doesNotContain("Exception").doesNotContain("\tat ");
    }
  }

  private int check(String... more) {
    List<String> arguments = new ArrayList<>();
    arguments.add("check");
    arguments.add(documents.toString());
    arguments.addAll(
        List.of("-o", folder.resolve("findings.xlsx").toString(), "--json", json.toString()));
    arguments.add("--quiet");
    arguments.addAll(List.of(more));
    return run(arguments.toArray(String[]::new));
  }

  private List<JsonNode> findings(String check) throws IOException {
    List<JsonNode> found = new ArrayList<>();
    for (JsonNode f : new ObjectMapper().readTree(json.toFile()).get("findings")) {
      if (f.get("check").asText().equals(check)) found.add(f);
    }
    return found;
  }

  @Test
  void ends_with_one_when_an_error_is_open() throws IOException {
    document("schedule.csv", FAULTY);
    assertThat(check()).isEqualTo(1);
    assertThat(findings("mortar-class")).hasSize(1);
    assertThat(folder.resolve("findings.xlsx")).isNotEmptyFile();
  }

  @Test
  void ends_with_nought_when_there_is_no_glass_tile() throws IOException {
    document("schedule.csv", NO_GLASS);
    assertThat(check("--fail-on", "note")).isZero();
    JsonNode root = new ObjectMapper().readTree(json.toFile());
    assertThat(root.get("findings")).isEmpty();
    assertThat(root.get("documents").get(0).get("glassEntries").asInt()).isZero();
    assertThat(root.get("documents").get(0).get("otherEntries").asInt()).isEqualTo(2);
  }

  @ParameterizedTest
  @CsvSource({"error, 0", "warning, 1", "note, 1", "never, 0", "WARNING, 1"})
  void fails_on_the_level_asked_for(String level, int code) throws IOException {
    document("schedule.csv", FAULTY);
    StringBuilder layer = new StringBuilder("layer: all warnings\nchecks:\n");
    for (var rule : clearbed.Checked.rules(clearbed.Checked.vocabulary()).rules())
      layer
          .append("  - {id: ")
          .append(rule.id())
          .append(", level: warning, missingLevel: warning}\n");
    assertThat(check("--rules", rules(layer.toString()).toString(), "--fail-on", level))
        .isEqualTo(code);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "check --no-such-option x",
        "check",
        "check . --fail-on sometimes",
        "check . --jobs 0",
        "check . --set no-such-set",
        "check no-such-folder-anywhere",
        "no-such-command",
        "explain no-such-check"
      })
  void ends_with_two_when_the_command_line_is_wrong(String line) throws IOException {
    // One may lie here from the first command of the README.
    Path findings = Path.of("clearbed-findings.xlsx");
    var before = Files.exists(findings) ? Files.getLastModifiedTime(findings) : null;
    assertThat(run(line.split(" "))).isEqualTo(2);
    assertThat(err).isNotBlank();
    assertThat(Files.exists(findings) ? Files.getLastModifiedTime(findings) : null)
        .isEqualTo(before);
  }

  @Test
  void a_wrong_rule_file_is_refused_with_its_line_and_nothing_is_done() throws IOException {
    document("schedule.csv", FAULTY);
    Path file = rules("layer: ours\nchecks:\n  - id: mortar-class\n    level: severe\n");
    assertThat(check("--rules", file.toString())).isEqualTo(2);
    assertThat(err).contains(file + ":4: ");
    assertThat(json).doesNotExist();
    assertThat(folder.resolve("findings.xlsx")).doesNotExist();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "layer: ours\\nchecks:\\n  - {id: mortar-class, colour: red}\\n | 3",
        "layer: ours\\nchecks:\\n  - id: bond-strength\\n    expect: {above: 400}\\n | 4",
        "layer: ours\\nchecks:\\n  - id: bond-strength\\n    expect: {above: '400 ft'}\\n | 4",
        "layer: ours\\nchecks:\\n  - id: own-check\\n | 3",
        "layer: ours\\nchecks:\\n  - id: mortar-class\\n    attribute: mortar.smell\\n | 4",
        "layer: ours\\nsuppress:\\n  - check: mockup\\n | 3",
        "layer: [ | 1"
      })
  void rules_names_file_line_and_reason(String text, int line) throws IOException {
    Path file = rules(text.trim().replace("\\n", "\n"));
    assertThat(run("rules", file.toString())).isEqualTo(2);
    assertThat(err).startsWith(file + ":" + line + ": ");
  }

  @Test
  void rules_accepts_a_right_one() throws IOException {
    Path file = rules("layer: ours\nchecks:\n  - {id: mockup, off: true}\n");
    assertThat(run("rules", file.toString())).isZero();
    assertThat(out).contains("valid");
  }

  @Test
  void an_unreadable_document_gives_three_and_the_rest_is_checked() throws IOException {
    document("schedule.csv", FAULTY);
    Files.write(
        documents.resolve("broken.pdf"), "%PDF-1.7\nnot really".getBytes(StandardCharsets.UTF_8));
    assertThat(check()).isEqualTo(3);
    assertThat(findings("mortar-class")).hasSize(1);
    assertThat(err).contains("broken.pdf: ");
  }

  @Test
  void an_output_that_cannot_be_written_gives_three_and_the_others_are_written()
      throws IOException {
    document("schedule.csv", FAULTY);
    Path missing = folder.resolve("no such folder/findings.xlsx");
    int code =
        run(
            "check",
            documents.toString(),
            "-o",
            missing.toString(),
            "--json",
            json.toString(),
            "--quiet");
    assertThat(code).isEqualTo(3);
    assertThat(err).contains(missing.toString()).contains("not written");
    assertThat(json).isNotEmptyFile();
  }

  @Test
  void a_layer_switches_a_check_off() throws IOException {
    document("schedule.csv", FAULTY);
    Path file = rules("layer: ours\nchecks:\n  - {id: mortar-class, off: true}\n");
    check("--rules", file.toString());
    assertThat(findings("mortar-class")).isEmpty();
    assertThat(findings("mockup")).hasSize(1);
  }

  @Test
  void a_layer_changes_a_level() throws IOException {
    document("schedule.csv", FAULTY);
    Path file = rules("layer: ours\nchecks:\n  - {id: mortar-class, level: note}\n");
    check("--rules", file.toString());
    assertThat(findings("mortar-class").get(0).get("level").asText()).isEqualTo("note");
  }

  @Test
  void a_later_layer_lies_over_an_earlier_one() throws IOException {
    document("schedule.csv", FAULTY);
    Path first = rules("layer: first\nchecks:\n  - {id: mortar-class, level: note}\n");
    Path second =
        Files.writeString(
            folder.resolve("second.yaml"),
            "layer: second\nchecks:\n  - {id: mortar-class, level: warning}\n");
    check("--rules", first.toString(), "--rules", second.toString());
    assertThat(findings("mortar-class").get(0).get("level").asText()).isEqualTo("warning");
  }

  @Test
  void a_suppressed_finding_does_not_fail_the_run() throws IOException {
    document("schedule.csv", FAULTY);
    StringBuilder layer = new StringBuilder("layer: lived with\nsuppress:\n");
    for (var rule : clearbed.Checked.rules(clearbed.Checked.vocabulary()).rules())
      layer.append("  - {check: ").append(rule.id()).append(", reason: agreed with the owner}\n");
    assertThat(check("--rules", rules(layer.toString()).toString(), "--fail-on", "note")).isZero();
  }

  @Test
  void a_suppression_of_one_tag_leaves_the_other() throws IOException {
    document("schedule.csv", FAULTY + "GT-2,\"Glass tile, opaque\",4 x 4 in,ANSI A118.11\n");
    Path file =
        rules(
            "layer: ours\nsuppress:\n  - {check: mortar-class, tag: GT-1, reason: letter on file}\n");
    assertThat(check("--rules", file.toString())).isEqualTo(1);
    clearbed.Checked checked = clearbed.Checked.of(documents, file);
    assertThat(checked.findings("mortar-class"))
        .extracting(f -> f.tags().get(0))
        .containsExactly("GT-2");
    assertThat(checked.outcome().findings())
        .filteredOn(f -> f.check().equals("mortar-class") && f.tags().contains("GT-1"))
        .allSatisfy(f -> assertThat(f.suppressed()).contains("letter on file"));
  }

  @Test
  void a_project_fact_decides_what_no_document_states() throws IOException {
    document("schedule.csv", FAULTY);
    check();
    assertThat(findings("freeze-thaw")).isEmpty();
    Path file =
        rules(
            "layer: ours\nfacts:\n  - {attribute: location.exposure, value: exterior-freeze, reason: it is outdoors}\n");
    check("--rules", file.toString());
    assertThat(findings("freeze-thaw")).hasSize(1);
  }

  @Test
  void explain_lists_every_check_and_tells_of_one() {
    assertThat(run("explain")).isZero();
    for (var rule : clearbed.Checked.rules(clearbed.Checked.vocabulary()).rules())
      assertThat(out).contains(rule.id());
    assertThat(run("explain", "mortar-class")).isZero();
    assertThat(out).contains("A118.15").contains("why").contains("source").contains("question");
  }

  @Test
  void read_shows_values_with_their_places_and_changes_nothing() throws IOException {
    document("schedule.csv", FAULTY);
    byte[] before = Files.readAllBytes(documents.resolve("schedule.csv"));
    assertThat(run("read", documents.toString())).isZero();
    assertThat(out).contains("GT-1  glass tile").contains("ANSI A118.1").contains("cell D2");
    assertThat(documents.resolve("schedule.csv")).hasBinaryContent(before);
  }

  @Test
  void the_same_input_gives_the_same_findings() throws IOException {
    document("schedule.csv", FAULTY);
    check();
    String first = new ObjectMapper().readTree(json.toFile()).get("findings").toString();
    check("--jobs", "1");
    assertThat(new ObjectMapper().readTree(json.toFile()).get("findings")).hasToString(first);
  }

  @Test
  void glass_tile_without_an_entry_is_no_clean_run() throws IOException {
    document("093023.txt", "SECTION 093023\nGLASS TILING\nColours as the colour board.\n");
    assertThat(run("check", documents.toString(), "-o", folder.resolve("f.xlsx").toString()))
        .isEqualTo(1);
    assertThat(out).contains("0 glass tiles").contains("1 error: no-entry");
    assertThat(out).doesNotContain("Nothing open");
  }

  @Test
  void without_glass_tile_the_summary_says_in_how_many_documents_it_looked() throws IOException {
    document("a.csv", NO_GLASS);
    document("b.txt", "Paint the doors.\n");
    assertThat(run("check", documents.toString(), "-o", folder.resolve("f.xlsx").toString()))
        .isZero();
    assertThat(out)
        .contains("No glass tile is named in these 2 documents.")
        .doesNotContain("Nothing open");
  }

  @Test
  void reading_says_where_glass_tile_is_named_without_an_entry() throws IOException {
    document("093023.txt", "SECTION 093023\nGLASS TILING\nColours as the colour board.\n");
    assertThat(run("read", documents.toString())).isZero();
    assertThat(out).contains("no entry could be made of it").contains("GLASS TILING");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", ".hidden", "photo.jpg", "~$plan.docx"})
  void a_folder_without_a_document_ends_with_two_and_one_line(String file) throws IOException {
    if (!file.isEmpty()) document(file, "\u0000\u0001 no document");
    for (String command : List.of("check", "read")) {
      assertThat(run(command, documents.toString())).isEqualTo(2);
      assertThat(err.lines()).hasSize(1);
      assertThat(err).contains("no document to read in").contains(file);
      assertThat(out).isEmpty();
    }
  }

  @Test
  void a_named_file_of_another_format_alone_ends_with_two() throws IOException {
    document("photo.jpg", "\u00ff\u00d8\u00ff no document");
    assertThat(run("check", documents.resolve("photo.jpg").toString())).isEqualTo(2);
    assertThat(err).contains("photo.jpg");
  }

  @Test
  void an_empty_argument_is_not_taken_for_the_folder_one_stands_in() {
    assertThat(run("check", "")).isEqualTo(2);
    assertThat(err).contains("an empty PATH");
  }
}
