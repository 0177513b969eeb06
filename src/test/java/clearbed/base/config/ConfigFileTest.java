package clearbed.base.config;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What comes of YAML that people write, and of YAML that nobody should. */
class ConfigFileTest {
  private static final String GLASS = "  - {material: glass, expansion: 9e-6/K, source: book}\n";

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "materials:\\n  - {material: glass, expansoin: 9e-6/K, source: x}|2|'expansoin' is not known here; did you mean 'expansion'?",
        "materials:\\n  - {material: glass, expansion: 9e-6/K, source: x, colour: red}|2|'colour' is not known here; known are material, also,",
        "materials:\\n  - material: glass\\n    source: x|2|'expansion' is missing",
        "materials:\\n  - also: [x]|2|'material', 'expansion', 'source' are missing",
        "materials:\\n  - material: [glass]\\n    expansion: 9e-6/K\\n    source: x|2|'material': a text is wanted, not a list",
        "materials:\\n  - material: true\\n    expansion: 9e-6/K\\n    source: x|2|'material': a text is wanted, not true",
        "materials:\\n  - material: glass\\n    expansion:\\n    source: x|3|'expansion': a text is wanted, not nothing",
        "materials:\\n  - glass|2|'materials': a map of keys is wanted, not 'glass'",
        "materials: []|1|'materials': there is nothing in it",
        "materials: glass|1|'materials': a list is wanted, not 'glass'",
        "[]|1|a map of keys is wanted, not a list",
        "just words|1|a map of keys is wanted, not 'just words'",
        "``|1|the file is empty",
        "# nothing\\n|1|the file is empty",
        "---\\n|2|a map of keys is wanted, not nothing",
        "materials: [a\\n|2|not valid YAML: ",
        "materials:\\n\\t- a|2|not valid YAML: ",
        "a: 'b|1|not valid YAML: ",
        "materials: &all\\n  - *all|1|anchors and aliases (&, *) are not read here; write the words out",
        "materials: &all {more: *all}|1|anchors and aliases",
        "materials: *none|1|not valid YAML: ",
        "? &k material\\n: x|1|a key is one word or a few, not a list, a map or an anchor",
        "? [a, b]\\n: x|1|a key is one word or a few",
        "? {a: b}\\n: x|1|a key is one word or a few",
        "a: 1\\n<<: {b: c}|2|merge keys (<<) are not read here; write the entries out",
        "materials: !!binary aGVsbG8=|1|tags (!) are not read here; leave it out",
        "materials: !!java.lang.Thread {}|1|tags (!) are not read here",
        "materials: !own x|1|tags (!) are not read here",
        "materials: !!set {a, b}|1|tags (!) are not read here",
        "%YAML 9.9\\n---\\nmaterials: []|1|not valid YAML: ",
        "materials: []\\n---\\nmaterials: []|2|not valid YAML: ",
        "materials: []\\nmaterials: []|2|'materials' stands twice here; keep one of the two",
        "materials:\\n  - material: glass\\n    source: x\\n    source: y|4|'source' stands twice here",
      })
  void is_refused_in_one_line(String text, int line, String reason) {
    String message = refusal(text.replace("\\n", "\n").replace("\\t", "\t"));
    assertThat(message).startsWith("own.yaml:" + line + ": " + reason);
    assertThat(message).doesNotContain("\n").doesNotContain("java.").doesNotContain("yaml.org");
  }

  @Test
  void however_deep_it_is_nested() {
    int depth = 100_000;
    for (String opening : List.of("[", "{a: ", "- ", "? ", "a: [")) {
      assertThat(refusal(opening.repeat(depth)))
          .as(opening)
          .startsWith("own.yaml:")
          .contains("not valid YAML: ")
          .doesNotContain("\n");
    }
    StringBuilder steps = new StringBuilder();
    for (int i = 0; i < 1200; i++) steps.append(" ".repeat(i)).append("a:\n");
    assertThat(refusal(steps.toString())).startsWith("own.yaml:").doesNotContain("\n");
  }

  @Test
  void however_often_it_repeats_itself() {
    StringBuilder laughs = new StringBuilder("a: &a [ha, ha, ha]\n");
    for (char c = 'b'; c < 'l'; c++) {
      char before = (char) (c - 1);
      laughs.append(c).append(": &").append(c).append(" [");
      for (int i = 0; i < 9; i++) laughs.append('*').append(before).append(", ");
      laughs.append("]\n");
    }
    assertThat(refusal(laughs.toString())).startsWith("own.yaml:1: anchors").doesNotContain("\n");
  }

  @Test
  void however_large_it_is() {
    String line = "# filler\n";
    String large = "materials:\n" + line.repeat((1 << 20) / line.length()) + GLASS;
    assertThat(refusal(large))
        .isEqualTo("own.yaml: larger than 1 MiB, which no file of this kind should be");
    assertThat(refusal(large.substring(0, (1 << 20) - 100).replaceFirst("#.*$", "")))
        .startsWith("own.yaml:1: 'materials': a list is wanted");
  }

  @Test
  void a_file_without_end_is_read_no_further_than_needed() {
    Path endless = Path.of("/dev/zero");
    if (!Files.exists(endless)) return;
    assertThat(catchThrowable(() -> ConfigFile.read(StandardFiles.given(endless), "expansion")))
        .hasMessage("/dev/zero: larger than 1 MiB, which no file of this kind should be");
  }

  @Test
  void what_it_quotes_is_short_and_cannot_be_obeyed() {
    String message = refusal("? \"mat\\e[31m\\nerials" + "x".repeat(100_000) + "\"\n: 1\n");
    assertThat(message).startsWith("own.yaml:1: 'mat\\u001b[31m\\u000aerialsxxx");
    assertThat(message.length()).isLessThan(320);
    assertThat(refusal("materials: \"\\u202etxt\"\n")).contains("\\u202etxt");
    assertThat(refusal("materials: \u0007\n"))
        .isEqualTo("own.yaml:1: a character that YAML does not allow, U+0007");
  }

  @Test
  void many_faults_are_told_in_the_order_of_the_file_and_not_without_end() {
    StringBuilder text = new StringBuilder("materials:\n");
    for (int i = 0; i < 30; i++) text.append("  - {material: m, source: s}\n");
    List<String> lines = refusal(text.toString()).lines().toList();
    assertThat(lines).hasSize(21);
    assertThat(lines.get(0)).isEqualTo("own.yaml:2: 'expansion' is missing");
    assertThat(lines.get(19)).isEqualTo("own.yaml:21: 'expansion' is missing");
    assertThat(lines.get(20)).isEqualTo("10 more faults in own.yaml");
  }

  @ParameterizedTest
  @CsvSource({"UTF-16LE", "UTF-16BE", "ISO-8859-1", "windows-1252"})
  void another_encoding_is_named(String charset) {
    byte[] bytes = ("materials:\n# 20 °F\n" + GLASS).getBytes(Charset.forName(charset));
    assertThat(refusal(bytes))
        .matches("own.yaml:[12]: (not UTF-8; save the file in that encoding|a char.* U\\+0000)");
  }

  @Test
  void a_byte_order_mark_is_no_part_of_the_first_key() throws IOException {
    ConfigFile file = read(("\uFEFFmaterials:\n" + GLASS).getBytes(StandardCharsets.UTF_8));
    assertThat(file.root().get("materials").items().get(0).get("material").text())
        .isEqualTo("glass");
  }

  @Test
  void text_is_what_is_written_whatever_else_yaml_makes_of_it() throws IOException {
    for (String word :
        List.of("no", "on", "010", "1_000", "1e3", "12:30", "2026-01-01", ".5", "=")) {
      String text = "materials:\n  - {material: " + word + ", expansion: x, source: y}\n";
      ConfigFile file = read(text.getBytes(StandardCharsets.UTF_8));
      assertThat(file.root().get("materials").items().get(0).get("material").text())
          .isEqualTo(word);
    }
  }

  @Test
  void a_fault_of_meaning_has_its_line_too() throws IOException {
    ConfigFile file = read(("materials:\n" + GLASS + GLASS).getBytes(StandardCharsets.UTF_8));
    ConfigNode second = file.root().get("materials").items().get(1);
    assertThat(second.get("material").fault("no")).hasMessage("own.yaml:3: no");
    assertThat(second.get("not there").fault("no")).hasMessage("own.yaml:3: no");
    assertThat(second.get("material").path()).isEqualTo("materials[1].material");
  }

  @Test
  void what_is_no_file_is_said(@TempDir Path folder) throws IOException {
    Path none = folder.resolve("none.yaml");
    assertThat(catchThrowable(() -> StandardFiles.given(none)))
        .hasMessage(none + ": no such file; check the path");
    assertThat(catchThrowable(() -> StandardFiles.given(folder)))
        .hasMessage(folder + ": cannot be read: Is a directory");
  }

  private static String refusal(String text) {
    return refusal(text.getBytes(StandardCharsets.UTF_8));
  }

  private static String refusal(byte[] bytes) {
    Throwable thrown = catchThrowable(() -> read(bytes));
    assertThat(thrown).isInstanceOf(ConfigException.class);
    return thrown.getMessage();
  }

  private static ConfigFile read(byte[] bytes) throws IOException {
    return ConfigFile.read(new StandardFiles.FileSource("own.yaml", bytes, true), "expansion");
  }
}
