package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Words of an office, taught in a layer, are read as what they were taught as, and shown so. */
class TaughtWordsTest {
  private static final String LAYER =
      """
      layer: Words of the office
      words:
        columns:
          Kestl: tag
          Brund: material
          Ossel: location.exposure
          Vint: mortar.bond in psi
          Dorrit: tile.backing
          Pask: nothing
        terms:
          Dry Deck: location.exposure dry
        places:
          Moat Lock: submerged
        glass: [vitrine]
        tags: ['@/##']
      """;

  @TempDir Path folder;
  private Path documents;
  private Path layer;

  @BeforeEach
  void documents_in_words_that_nobody_can_know() throws IOException {
    documents = Files.createDirectories(folder.resolve("documents"));
    Files.writeString(
        documents.resolve("schedule.csv"),
        """
        Kestl,Brund,Ossel,Vint,Harl,Dorrit,Pask
        M/01,vitrine mosaic,Moat Lock,450,ANSI A118.15,none,Ada
        M/02,vitrine mosaic,Dry Deck,480,ANSI A118.4,foil,Ben
        M/03,porcelain tile,Dry Deck,380,ANSI A118.4,,Ben
        """);
    Files.writeString(
        documents.resolve("notes.txt"),
        """
        TILE NOTES

        1. M/02: provide two sheets as a mock-up.
        2. At moat lock walls space movement joints at 8 ft on center, elsewhere at 20 ft.
        """);
    layer = Files.writeString(folder.resolve("office.yaml"), LAYER);
  }

  private JsonNode checked(String name, Object... more) throws IOException {
    return CheckedJson.run(documents, Files.createDirectories(folder.resolve(name)), more);
  }

  private static JsonNode value(JsonNode run, String tag, String attribute) {
    for (JsonNode entry : run.get("entries")) {
      if (!entry.get("tag").asText().equals(tag)) continue;
      for (JsonNode value : entry.get("values"))
        if (value.get("attribute").asText().equals(attribute)) return value;
    }
    return new ObjectMapper().createObjectNode();
  }

  @Test
  void every_kind_of_word_is_read_as_it_was_taught() throws IOException {
    JsonNode run = checked("taught", "--rules", layer);
    assertThat(value(run, "M/01", "location.exposure").path("value").asText())
        .isEqualTo("submerged");
    assertThat(value(run, "M/02", "location.exposure").path("value").asText()).isEqualTo("dry");
    assertThat(value(run, "M/01", "mortar.bond").path("value").asText()).isEqualTo("450 psi");
    assertThat(value(run, "M/02", "tile.backing").path("value").asText()).isEqualTo("metallic");
    assertThat(value(run, "M/01", "movement.spacing").path("value").asText()).isEqualTo("8 ft");
    assertThat(value(run, "M/02", "movement.spacing").path("value").asText()).isEqualTo("20 ft");
    assertThat(value(run, "M/02", "process.mockup").path("value").asText()).isNotEmpty();
    assertThat(value(run, "M/01", "process.mockup").isEmpty()).isTrue();
    assertThat(run.get("entries").findValuesAsText("glass"))
        .containsExactly("true", "true", "false");
  }

  @Test
  void without_the_layer_nothing_of_it_is_known() throws IOException {
    JsonNode run = checked("untaught");
    assertThat(run.get("reading").has("taught")).isFalse();
    assertThat(value(run, "M/01", "mortar.bond").isEmpty()).isTrue();
    assertThat(run.get("reading").get("notUnderstood").toString()).contains("Vint");
  }

  @Test
  void taught_words_are_shown_as_taught_in_every_output() throws IOException {
    JsonNode run = checked("shown", "--rules", layer);
    String source = layer + ", line ";
    assertThat(value(run, "M/02", "location.exposure").path("taught").asText())
        .isEqualTo(source + 11);
    assertThat(run.get("reading").get("tables").toString()).contains("taught: " + source + 7);
    assertThat(run.get("reading").get("taught")).hasSize(10);
    assertThat(Shell.run("read", documents, "--rules", layer).out())
        .contains("column \"Vint\": mortar.bond in psi  [" + source + "7; 1 column]")
        .contains("Exposure: dry  [entry; schedule.csv, cell C3; taught: " + source + "11]");
    try (XSSFWorkbook book =
        new XSSFWorkbook(Files.newInputStream(folder.resolve("shown/out.xlsx")))) {
      StringBuilder sheet = new StringBuilder();
      for (Row row : book.getSheet("Reading")) row.forEach(cell -> sheet.append(cell).append('|'));
      assertThat(sheet)
          .contains("taught column|Vint|mortar.bond in psi|" + source + 7)
          .contains("taught: " + source + 5);
    }
  }

  @Test
  void what_was_kept_before_a_word_was_taught_is_not_used_after() throws IOException {
    Path cache = folder.resolve("cache");
    JsonNode without = checked("a", "--cache", cache);
    JsonNode with = checked("b", "--cache", cache, "--rules", layer);
    assertThat(with.get("entries"))
        .isEqualTo(checked("c", "--rules", layer).get("entries"))
        .isNotEqualTo(without.get("entries"));
    assertThat(checked("d", "--cache", cache).get("entries")).isEqualTo(without.get("entries"));
  }

  @Test
  void a_later_layer_teaches_over_an_earlier_one() throws IOException {
    Path later =
        Files.writeString(
            folder.resolve("project.yaml"),
            "layer: This project\nwords:\n  places: {moat lock: exterior}\n");
    JsonNode run = checked("two", "--rules", layer, "--rules", later);
    assertThat(value(run, "M/01", "location.exposure").path("value").asText())
        .isEqualTo("exterior");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "columns: {Ossel: location.exposur}|did you mean 'location.exposure'?",
        "columns: {Vint: mortar.bond in stone}|'stone' is no unit",
        "columns: {Q: location.room in mm}|has no unit",
        "columns: {Q: surface flor}|did you mean 'floor'?",
        "terms: {Wet C: wett}|did you mean 'wet'?",
        "terms: {A: cement}|write one of 'mortar.chemistry cement', 'grout.type cement'",
        "terms: {A: '?'}|in place of the ?",
        "terms: {A: 'tile.backing ?'}|in place of the ?",
        "places: {A: lobby}|no exposure and no surface",
        "glass: tess|a list is wanted",
        "tags: [abc]|not the form of a tag",
        "colums: {A: b}|did you mean 'columns'?",
      })
  void a_wrong_word_is_refused_with_file_line_and_reason(String words, String reason)
      throws IOException {
    Path wrong = folder.resolve("wrong.yaml");
    Files.writeString(wrong, "layer: Wrong\nwords:\n  " + words + "\n");
    for (Shell shell :
        new Shell[] {
          Shell.run("rules", wrong), Shell.run("read", documents, "--rules", wrong),
        }) {
      assertThat(shell.code()).isEqualTo(2);
      assertThat(shell.err()).contains(wrong + ":3: ").contains(reason);
      assertThat(shell.err().lines()).hasSize(1);
    }
  }

  @Test
  void a_section_whose_lines_are_all_comments_teaches_nothing() throws IOException {
    Files.writeString(
        layer, "layer: Office\nwords:\n  columns:\n    #Vint: mortar.bond\n  glass:\n");
    assertThat(Shell.run("rules", layer).code()).isZero();
  }
}
