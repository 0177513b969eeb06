package clearbed.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A schedule whose headings are no words and no short forms of any: what was not understood of it
 * is offered, confirmed by hand, and then read.
 */
class TeachingRoundTripTest {
  /** Heading to what its column holds. */
  private static final Map<String, String> MEANT = new LinkedHashMap<>();

  static {
    MEANT.put("Yxo", "tag");
    MEANT.put("Ubbik", "material");
    MEANT.put("Ojar", "tile.size");
    MEANT.put("Zwep", "tile.thickness in mm");
    MEANT.put("Uqor", "tile.backing");
    MEANT.put("Jixt", "location.room");
    MEANT.put("Zylk", "location.exposure");
    MEANT.put("Vuum", "mortar.standard");
    MEANT.put("Ywex", "mortar.bond in psi");
    MEANT.put("Iffo", "mortar.colour");
    MEANT.put("Okku", "grout.width in mm");
    MEANT.put("Xarr", "movement.spacing in ft");
    MEANT.put("Uvv", "nothing");
  }

  private static final String ROWS =
      """
      G1,Glass mosaic,25 x 25 mm,6,painted,Lock 1,wet core,ANSI A118.15,450,white,2,8,ok
      G2,Glass mosaic,50 x 50 mm,8,none,Lock 2,open deck,ANSI A118.4,480,grey,3,12,see Ada
      G3,Cast glass tile,100 x 100 mm,8,foil,Moat,wet core,ANSI A118.15,510,white,3,8,ok
      G4,Glass mosaic,25 x 25 mm,6,none,Hall,parlour side,ANSI A118.4,455,grey,2,20,ok
      """;

  @TempDir Path folder;
  private Path documents;
  private Path layer;

  @BeforeEach
  void a_schedule_in_words_of_nobody() throws IOException {
    documents = Files.createDirectories(folder.resolve("documents"));
    Files.writeString(
        documents.resolve("schedule.csv"), String.join(",", MEANT.keySet()) + "\n" + ROWS);
    Files.writeString(
        documents.resolve("notes.txt"),
        """
        GLASS TILE NOTES

        1. Glass tile: stickiness sideways 450 psi.
        2. Glass tile: a letter from the kiln before anything is glued to anything.
        """);
    layer = folder.resolve("office.yaml");
  }

  private JsonNode checked(Object... more) throws IOException {
    return CheckedJson.run(documents, folder, more);
  }

  private static Map<String, String> columns(JsonNode run) {
    Map<String, String> out = new LinkedHashMap<>();
    for (JsonNode table : run.get("reading").get("tables"))
      for (JsonNode column : table.get("columns"))
        out.put(column.get("heading").asText(), column.path("as").asText());
    return out;
  }

  private Shell teach(Object... more) {
    List<Object> words = new ArrayList<>(List.of("read", documents, "--teach", layer));
    words.addAll(List.of(more));
    return Shell.run(words.toArray());
  }

  /** What a person does: puts each guess right and takes the comment mark away. */
  private void confirm(Map<String, String> meant) throws IOException {
    String text = Files.readString(layer);
    for (Map.Entry<String, String> each : meant.entrySet()) {
      Matcher line =
          Pattern.compile(
                  "(?m)^( *)#\""
                      + Pattern.quote(each.getKey())
                      + "\": (?:'[^']*'|[^#\\n]*?)(  #.*)$")
              .matcher(text);
      text =
          line.replaceAll(
              m ->
                  Matcher.quoteReplacement(
                      m.group(1) + '"' + each.getKey() + "\": " + each.getValue() + m.group(2)));
    }
    Files.writeString(layer, text);
  }

  @Test
  void every_column_is_offered_confirmed_and_then_read() throws IOException {
    JsonNode before = checked();
    Map<String, String> known = columns(before);
    for (JsonNode table : before.get("reading").get("tables"))
      for (JsonNode column : table.get("columns"))
        assertThat(column.path("evidence").asText())
            .doesNotContain("abbreviation", "initials", "short");
    assertThat(teach().code()).isZero();
    String offered = Files.readString(layer);
    List<String> open = MEANT.keySet().stream().filter(h -> known.get(h).isEmpty()).toList();
    assertThat(open).hasSizeGreaterThan(4);
    for (String heading : open) assertThat(offered).contains("#\"" + heading + "\": ");

    confirm(MEANT);
    JsonNode after = checked("--rules", layer);

    Map<String, String> read = columns(after);
    MEANT.forEach(
        (heading, meaning) ->
            assertThat(read.get(heading))
                .as(heading)
                .isEqualTo(meaning.equals("nothing") ? "" : meaning.replaceFirst(" in .*", "")));
    assertThat(value(after, "G1", "mortar.bond")).isEqualTo("450 psi");
    assertThat(value(after, "G2", "movement.spacing")).isEqualTo("12 ft");
    assertThat(value(after, "G3", "tile.thickness")).isEqualTo("8 mm");
  }

  @Test
  void a_word_in_a_cell_and_a_phrase_of_a_note_are_taught_too() throws IOException {
    teach();
    confirm(MEANT);
    teach("--rules", layer);
    assertThat(Files.readString(layer)).contains("#\"open deck\": 'location.exposure ?'  # ");
    confirm(
        Map.of(
            "open deck", "location.exposure exterior",
            "parlour side", "location.exposure dry"));
    confirm(
        Map.of(
            "stickiness sideways",
            "mortar.bond",
            "a letter from the kiln before anything is",
            "nothing"));
    JsonNode run = checked("--rules", layer);
    assertThat(run.get("reading").get("notUnderstood").findValuesAsText("text"))
        .noneMatch(text -> text.contains("stickiness") || text.contains("letter from the kiln"));
    assertThat(run.get("reading").get("setAside").toString())
        .contains("nothing that is asked for, taught: " + layer);
    assertThat(value(run, "G1", "location.exposure")).isEqualTo("wet");
    assertThat(value(run, "G2", "location.exposure")).isEqualTo("exterior");
    assertThat(value(run, "G4", "location.exposure")).isEqualTo("dry");
  }

  @Test
  void each_line_has_place_samples_and_the_evidence_of_its_guess() throws IOException {
    teach();
    assertThat(Files.readString(layer))
        .containsPattern(
            "#\"Ywex\": \\S.*  # schedule.csv, cell I\\d: \"4\\d\\d\", \"4\\d\\d\"; \\S.*")
        .contains("layer: Words of this office");
    assertThat(Shell.run("rules", layer).code()).isZero();
  }

  @Test
  void what_people_wrote_stays_and_lines_are_only_added() throws IOException {
    Files.writeString(
        layer,
        """
        # Ours since spring.
        layer: Office
        words:
          columns:   # by hand
              Zylk: location.exposure   # Ada says so
              #"Ywex": nothing  # never mind
        checks:
          - {id: grout-reach, off: true}
        """);
    String before = Files.readString(layer);
    Shell shell = teach();
    assertThat(shell.code()).as(shell.err()).isZero();
    String after = Files.readString(layer);
    assertThat(after.lines().toList()).containsAll(before.lines().toList());
    assertThat(after.split("Ywex", -1)).hasSize(2);
    assertThat(after.split("Zylk", -1)).hasSize(2);
    assertThat(after).containsPattern("\n {6}#\"\\w+\": ");
    assertThat(Shell.run("rules", layer).code()).isZero();

    assertThat(teach().out()).contains("Nothing to add");
    assertThat(layer).hasContent(after);
  }

  @Test
  void what_is_no_layer_or_cannot_be_added_to_is_left_as_it_is() throws IOException {
    for (String there :
        List.of(
            "just some notes\n",
            "ruleSet: x\nchecks: []\n",
            "layer: x\nwords: {columns: {Zylk: location.exposure}}\n",
            "layer: x\nwords:\n  columns: {Zylk: location.exposure}\n")) {
      Files.writeString(layer, there);
      Shell shell = teach();
      assertThat(shell.code()).as(there).isGreaterThanOrEqualTo(2);
      assertThat(shell.err()).contains(layer.toString()).hasLineCount(1);
      assertThat(layer).hasContent(there);
    }
    Path document = documents.resolve("schedule.csv");
    Shell named = Shell.run("read", documents, "--teach", document);
    assertThat(named.code()).isEqualTo(2);
    assertThat(named.err()).contains("one of the documents");
  }

  @Test
  void hostile_headings_stay_one_line_each() throws IOException {
    Files.writeString(
        documents.resolve("schedule.csv"),
        "Yxo,Ubbik,\"a\"\": b\n  # c\",\"\u202Eyxz\\\"\n"
            + "G1,Glass mosaic,q7 lo,rr\nG2,Glass mosaic,q8 lo,ss\n");
    assertThat(teach().code()).isZero();
    assertThat(Shell.run("rules", layer).code()).isZero();
    assertThat(Files.readString(layer)).doesNotContain("\u202E");
    confirm(Map.of("a\\\": b # c", "nothing"));
    Shell shell = Shell.run("read", documents, "--rules", layer);
    assertThat(shell.code()).as(shell.err()).isZero();
    assertThat(shell.out()).contains("column \"a\": b # c\": nothing  [" + layer + ", line ");
  }

  private static String value(JsonNode run, String tag, String attribute) {
    for (JsonNode entry : run.get("entries")) {
      if (!entry.get("tag").asText().equals(tag)) continue;
      for (JsonNode value : entry.get("values"))
        if (value.get("attribute").asText().equals(attribute)) return value.get("value").asText();
    }
    return "";
  }
}
