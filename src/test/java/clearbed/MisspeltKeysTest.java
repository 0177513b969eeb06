package clearbed;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.cli.Main;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.NodeTuple;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Each key of each file that ships, misspelt in a copy beside the program: it is refused with file,
 * line and reason.
 */
@Isolated("the folder of the program is a property of the whole process")
class MisspeltKeysTest {

  /** Else others find what a test has misspelt, when this one comes first. */
  @BeforeAll
  static void the_right_files_are_read_first() {
    Checked.vocabulary();
  }

  /**
   * Where a key is a name that the author of the file chooses (patternProperties of the schema),
   * and whether a new one is as good as the old: a further term of an attribute, the label of a
   * group of words, a kind of other tile, a short form, a class with figures. Elsewhere something
   * refers to the name, or it refers to something, which is missed when it is misspelt.
   */
  private static final Map<String, Boolean> NEW_NAMES_ARE_RIGHT =
      Map.ofEntries(
          Map.entry("vocabulary/attributes.yaml:attributes/terms/", true),
          Map.entry("vocabulary/attributes.yaml:attributes/together/", true),
          Map.entry("vocabulary/materials.yaml:otherTile/", true),
          Map.entry("vocabulary/schedules.yaml:abbreviations/", true),
          Map.entry("vocabulary/schedules.yaml:alike/", true),
          Map.entry("vocabulary/language.yaml:flatness/classes/figures/", true),
          Map.entry("vocabulary/families.yaml:families/", false),
          Map.entry("vocabulary/schedules.yaml:surfaces/", false),
          Map.entry("vocabulary/schedules.yaml:abroad/", false),
          Map.entry("vocabulary/language.yaml:places/exposure/", false),
          Map.entry("vocabulary/language.yaml:places/surface/", false),
          Map.entry("vocabulary/language.yaml:covers/", false),
          Map.entry("vocabulary/language.yaml:supposed/", false),
          Map.entry("vocabulary/language.yaml:full/", false),
          Map.entry("vocabulary/language.yaml:asksNothing/", false),
          Map.entry("vocabulary/language.yaml:groups/", false),
          Map.entry("north-america.yaml:checks/when/", false),
          Map.entry("north-america.yaml:checks/unless/", false),
          Map.entry("iso-en.yaml:checks/when/", false),
          Map.entry("iso-en.yaml:checks/unless/", false));

  /**
   * @param around the keys that it stands under, from the top; lists left out
   * @param line from 1
   * @param name true where the schema leaves it to the author
   */
  private record Key(String around, String text, int start, int end, int line, boolean name) {
    String misspelt() {
      for (int i = Math.min(1, text.length() - 1); i < text.length() - 1; i++) {
        char a = text.charAt(i);
        char b = text.charAt(i + 1);
        if (a != b && Character.isLetterOrDigit(a) && Character.isLetterOrDigit(b))
          return text.substring(0, i) + b + a + text.substring(i + 2);
      }
      return text + "x";
    }

    String in(String yaml) {
      return yaml.substring(0, start) + misspelt() + yaml.substring(end);
    }
  }

  @RegisterExtension final BesideTheProgram beside = new BesideTheProgram();

  @ParameterizedTest
  @ValueSource(
      strings = {
        "north-america.yaml",
        "iso-en.yaml",
        "guidelines/ej171.yaml",
        "guidelines/bs5385.yaml",
        "guidelines/din18157.yaml",
        "guidelines/as3958.yaml",
        "guidelines/expansion.yaml",
        "vocabulary/attributes.yaml",
        "vocabulary/families.yaml",
        "vocabulary/language.yaml",
        "vocabulary/materials.yaml",
        "vocabulary/schedules.yaml",
        "vocabulary/sections.yaml",
        "vocabulary/standards.yaml"
      })
  void is_refused_with_file_line_and_reason(String file) throws IOException {
    String text = Files.readString(Path.of("rulesets", file));
    Map<String, String> wrong = new LinkedHashMap<>();
    int keys = 0;
    for (Key key : keys(file)) {
      if (key.name()) continue;
      keys++;
      String message = beside.refusal(file, key.in(text));
      String place = "rulesets/" + file + ":" + key.line() + ": ";
      String suggestion = key.text().length() < 4 ? "" : "did you mean '" + key.text() + "'?";
      if (!message.startsWith(place + "'" + key.misspelt() + "' is not known here")
          || !message.contains(suggestion)
          || !isOneShortLine(message)) wrong.put(key.line() + " " + key.misspelt(), message);
    }
    assertThat(wrong).as("of " + keys + " keys").isEmpty();
    assertThat(keys).isPositive();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "north-america.yaml",
        "iso-en.yaml",
        "vocabulary/attributes.yaml",
        "vocabulary/families.yaml",
        "vocabulary/language.yaml",
        "vocabulary/materials.yaml",
        "vocabulary/schedules.yaml"
      })
  void a_name_is_missed_where_it_is_referred_to_or_it_is_a_new_name(String file)
      throws IOException {
    String text = Files.readString(Path.of("rulesets", file));
    Map<String, String> wrong = new LinkedHashMap<>();
    Set<String> accepted = new TreeSet<>();
    for (Key key : keys(file)) {
      if (!key.name()) continue;
      String position = file + ":" + key.around();
      assertThat(NEW_NAMES_ARE_RIGHT).containsKey(position);
      String message = beside.refusal(file, key.in(text));
      if (message.isEmpty()) accepted.add(position);
      else if (!message.matches("rulesets/[a-z/-]+\\.yaml:[1-9][0-9]*: [^\n]+"))
        wrong.put(key.line() + " " + key.misspelt(), message);
    }
    assertThat(wrong).isEmpty();
    assertThat(accepted).allMatch(NEW_NAMES_ARE_RIGHT::get);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "      metallic: [metallic backing|rulesets/north-america.yaml|'metallic' is not a term of tile.backing",
        "      exterior-freeze: [freezing|rulesets/vocabulary/language.yaml|'exterior-freeze' is not a term of location.exposure",
        "  - id: mortar.bond|rulesets/north-america.yaml|no attribute named mortar.bond",
        "  - id: movement.guideline|rulesets/vocabulary/standards.yaml|no attribute named movement.guideline",
        "  - id: process.mockup|rulesets/vocabulary/sections.yaml|no attribute named process.mockup",
      })
  void what_refers_to_a_misspelt_name_is_refused(String line, String where, String reason)
      throws IOException {
    String file = "vocabulary/attributes.yaml";
    String text = Files.readString(Path.of("rulesets", file));
    String old = "  " + line.strip();
    String name = old.replaceFirst("^ *(?:- id: )?", "").replaceFirst(":.*", "");
    assertThat(text).contains(old);
    assertThat(beside.refusal(file, text.replace(old, old.replace(name, name + "x"))))
        .matches("(?s)" + where + ":[1-9][0-9]*: .*")
        .contains(reason + "; did you mean '" + name + "x'?");
  }

  @ParameterizedTest
  @CsvSource({
    "north-america.yaml, checks, check",
    "north-america.yaml, level, check",
    "guidelines/ej171.yaml, rangeWhenUnknown, check",
    "guidelines/expansion.yaml, upTo, joint",
    "vocabulary/attributes.yaml, headers, check",
    "vocabulary/attributes.yaml, kind, check",
    "vocabulary/families.yaml, families, check",
    "vocabulary/language.yaml, ditto, read",
    "vocabulary/materials.yaml, notTile, check",
    "vocabulary/schedules.yaml, tag, check",
    "vocabulary/sections.yaml, scope, explain",
    "vocabulary/standards.yaml, states, rules"
  })
  void the_command_ends_with_two_and_one_line(
      String file, String name, String command, @TempDir Path folder) throws IOException {
    String text = Files.readString(Path.of("rulesets", file));
    Key key =
        keys(file).stream()
            .filter(k -> k.text().equals(name))
            .reduce((first, last) -> last)
            .orElseThrow();
    beside.put(file, key.in(text));
    Path output = folder.resolve("findings.xlsx");
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    int code = run(said, command(command, output));
    assertThat(said.toString(StandardCharsets.UTF_8).strip())
        .contains(
            "rulesets/"
                + file
                + ":"
                + key.line()
                + ": '"
                + key.misspelt()
                + "' is not known here; did you mean '"
                + name
                + "'?")
        .doesNotContain("\n");
    assertThat(code).isEqualTo(2);
    assertThat(output).doesNotExist();
  }

  @Test
  void every_file_that_ships_is_looked_at() throws IOException {
    try (var files = Files.walk(Path.of("rulesets"))) {
      assertThat(files.filter(Files::isRegularFile)).hasSize(14);
    }
  }

  private static String[] command(String name, Path output) {
    String draft = "sample-specs/draft";
    return switch (name) {
      case "check" -> new String[] {"check", draft, "-o", output.toString(), "--quiet"};
      case "joint" -> new String[] {"joint", "--spacing", "12ft"};
      case "read" -> new String[] {"read", draft};
      case "explain" -> new String[] {"explain", "mockup"};
      default -> new String[] {"rules", "sample-specs/office-layer.yaml"};
    };
  }

  private static int run(ByteArrayOutputStream said, String... arguments) {
    PrintStream out = System.out;
    PrintStream err = System.err;
    PrintStream both = new PrintStream(said, true, StandardCharsets.UTF_8);
    System.setOut(both);
    System.setErr(both);
    try {
      return Main.run(arguments);
    } finally {
      System.setOut(out);
      System.setErr(err);
    }
  }

  private static boolean isOneShortLine(String message) {
    return message.indexOf('\n') < 0
        && message.length() <= 400
        && !message.contains("java.")
        && !message.contains("Exception");
  }

  private static List<Key> keys(String file) throws IOException {
    String text = Files.readString(Path.of("rulesets", file));
    String kind = file.replaceFirst(".*/", "").replace(".yaml", "");
    String schema =
        file.indexOf('/') < 0
            ? "ruleset"
            : file.startsWith("guidelines/") && !kind.equals("expansion") ? "guideline" : kind;
    List<Key> keys = new ArrayList<>();
    new Keys(schema, keys).walk(new Yaml(new LoaderOptions()).compose(new StringReader(text)));
    return keys;
  }

  /** The keys of a file, and which of them its schema leaves to the author. */
  private static final class Keys {
    private final JsonNode schema;
    private final List<Key> keys;

    Keys(String kind, List<Key> keys) throws IOException {
      Path file = Path.of("src/main/resources/clearbed", kind + ".schema.json");
      this.schema = new ObjectMapper().readTree(file.toFile());
      this.keys = keys;
    }

    void walk(Node node) {
      walk(node, "", schema);
    }

    private void walk(Node node, String around, JsonNode rule) {
      JsonNode here = rule.has("$ref") ? schema.at(rule.get("$ref").asText().substring(1)) : rule;
      if (node instanceof SequenceNode list) {
        for (Node item : list.getValue()) walk(item, around, here.path("items"));
      } else if (node instanceof MappingNode map) {
        for (NodeTuple pair : map.getValue()) {
          ScalarNode key = (ScalarNode) pair.getKeyNode();
          String text = key.getValue();
          int quote = key.isPlain() ? 0 : 1;
          boolean name = !here.path("properties").has(text) && here.has("patternProperties");
          keys.add(
              new Key(
                  around,
                  text,
                  key.getStartMark().getIndex() + quote,
                  key.getEndMark().getIndex() - quote,
                  key.getStartMark().getLine() + 1,
                  name));
          JsonNode under =
              name
                  ? here.get("patternProperties").elements().next()
                  : here.path("properties").path(text);
          walk(pair.getValueNode(), around + text + "/", under);
        }
      }
    }
  }
}
