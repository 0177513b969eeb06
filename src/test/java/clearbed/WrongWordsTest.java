package clearbed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import clearbed.check.Checker;
import clearbed.check.rules.RuleSets;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Isolated;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a schema cannot say of a file: words that mean nothing, or nothing that can be done. */
@Isolated("the folder of the program is a property of the whole process")
class WrongWordsTest {
  @RegisterExtension final BesideTheProgram beside = new BesideTheProgram();

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "vocabulary/attributes.yaml|headers: [thermal shock, thermal|headers: ['/thermal (/', thermal|not a regular expression: Unclosed group: /thermal (/",
        "vocabulary/attributes.yaml|headers: [thermal shock, thermal|headers: ['', thermal|'headers': '' is not a word, a few words or /a regular expression/",
        "vocabulary/attributes.yaml|headers: [thermal shock, thermal|headers: [thermal: shock, thermal|'headers': a text is wanted, not a map of keys",
        "vocabulary/attributes.yaml|plausible: 5 to 130|plausible: 5 to furlongs|plausible: 'furlongs' is no figure with a unit of the dimension ratio",
        "vocabulary/attributes.yaml|plausible: 1 ft to 2000 ft|plausible: 1 ft to 2000 psi|plausible: '2000 psi' is no figure with a unit of the dimension length",
        "vocabulary/attributes.yaml|plausible: 1 ft to 2000 ft|plausible: 1 ft|'plausible': '1 ft' is not two figures, such as 1 mm to 60 mm",
        "vocabulary/attributes.yaml|kind: flatness|kind: flatnes|kind: 'flatnes' is not known here; did you mean 'flatness'?",
        "vocabulary/attributes.yaml|dimension: expansion|dimension: expansoin|dimension: 'expansoin' is not known here; did you mean 'expansion'?",
        "vocabulary/attributes.yaml|- id: tile.thickness|- id: tile.kind|tile.kind stands twice in this file",
        "vocabulary/attributes.yaml|family: sealant|family: sealants|no family named sealants in families.yaml; did you mean 'sealant'?",
        "vocabulary/attributes.yaml|consents: consents|consents: consent|no group of words named consent; did you mean 'consents'?",
        "vocabulary/attributes.yaml|, without: membrane}|, wihtout: membrane}|'wihtout' is not known here; did you mean 'without'?",
        "vocabulary/attributes.yaml|    single: true|    single: yes|'single': true or false is wanted, not 'yes'",
        "vocabulary/language.yaml|name: '\\bSR\\s?(\\d)|name: '\\bSR\\s?\\d|a group, in brackets, is to hold the class",
        "vocabulary/language.yaml|[3 mm in 2 m]|[3 mm in two]|'3 mm in two'",
        "vocabulary/language.yaml|  lead: '(?:|  lead: '((?:|not a regular expression: Unclosed group",
        "vocabulary/language.yaml|  steam: [steam]|  steam: [stream]|'stream' is not a term of location.exposure; did you mean 'steam'?",
        "vocabulary/language.yaml|  steam: [steam]|  stream: [steam]|no place named stream; did you mean 'steam'?",
        "vocabulary/language.yaml|    steam: [steam areas|    stream: [steam areas|'stream' is not a term of location.exposure; did you mean 'steam'?",
        "vocabulary/schedules.yaml|  bench: [|  bech: [|'bech' is not a term of location.surface; did you mean 'bench'?",
        "vocabulary/sections.yaml|only: [process.mockup]|only: [process.mokup]|no attribute named process.mokup; did you mean 'process.mockup'?",
        "vocabulary/sections.yaml|'07 92', scope: general|'07 92', scope: generel|'scope': 'generel' is not known here; did you mean 'general'?",
        "vocabulary/sections.yaml|{title: sealant, as: '07 92'}|{title: sealant, as: '47 92'}|'47 92' is no section of this file",
        "vocabulary/standards.yaml|states: [tile.thermalShock]|states: [tile.thermalshock]|no attribute named tile.thermalshock; did you mean 'tile.thermalShock'?",
        "vocabulary/standards.yaml|families: [mortar, grout]|families: [mortar, gruot]|no family named gruot in families.yaml; did you mean 'grout'?",
        "vocabulary/standards.yaml|ANSI A137.3|ANSI A137.1|ANSI A137.1 stands twice in this file",
        "vocabulary/standards.yaml|status: withdrawn|status: withdrwan|'status': 'withdrwan' is not known here; did you mean 'withdrawn'?",
        "north-america.yaml|attribute: mortar.tensile|attribute: mortar.tensle|no attribute named mortar.tensle; did you mean 'mortar.tensile'?",
        "north-america.yaml|expect: {atLeast: 400 psi}|expect: {atLeast: 400 ft}|'atLeast' wants a quantity such as '450 psi', found 400 ft",
        "north-america.yaml|expect: {noneOf: [cement]}|expect: {noneOf: [cemnt]}|'cemnt' is not a term of mortar.chemistry; did you mean 'cement'?",
        "north-america.yaml|tile.backing: [metallic, painted]|tile.backing: [metalic, painted]|'metalic' is not a term of tile.backing; did you mean 'metallic'?",
        "north-america.yaml|computed: tile-size|computed: tile-sise|nothing is computed under the name tile-sise; did you mean 'tile-size'?",
        "north-america.yaml|partOf: membrane|partOf: membranes|no check named membranes; did you mean 'membrane'?",
        "north-america.yaml|instead: [process.suitability]|instead: [process.suitable]|no attribute named process.suitable; did you mean 'process.suitability'?",
        "north-america.yaml|is stated for {tag}.|is stated for {tga}.|is not a message in which only {tag}, {found} and {expected} are filled in",
        "north-america.yaml|guidelines/ej171.yaml|guidelines/ej711.yaml|there is no rulesets/guidelines/ej711.yaml",
        "north-america.yaml|    level: note|    level: notice|'level': 'notice' is not known here; did you mean 'note'?",
        "north-america.yaml|- id: translucency|- id: tile-size|check tile-size stands twice in this file",
        "iso-en.yaml|over: north-america|over: north-amerika|no rule set named north-amerika; there are north-america and iso-en",
        "guidelines/ej171.yaml|each: 15 °F|each: 15 furlongs|exposures.exterior.adjustment.each: '15 furlongs' is no temperature difference with a unit",
        "guidelines/ej171.yaml|atLeastAs: exterior|atLeastAs: exterior-cold-deck|atLeastAs: 'exterior-cold-deck' is no other exposure",
        "guidelines/expansion.yaml|upTo: 10e-6/K|upTo: 10 psi|materials[6].upTo: '10 psi' is no expansion with a unit",
      })
  void is_refused_with_file_line_and_reason(String file, String good, String bad, String reason)
      throws IOException {
    String text = Files.readString(Path.of("rulesets", file));
    int at = text.indexOf(good);
    assertThat(at).as(good).isNotNegative();
    String edited = text.substring(0, at) + bad + text.substring(at + good.length());
    int line = 1 + (int) text.substring(0, at).chars().filter(c -> c == '\n').count();
    assertThat(beside.refusal(file, edited))
        .startsWith("rulesets/" + file + ":" + line + ": ")
        .contains(reason)
        .doesNotContain("\n");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "checks:\\n  - {id: mortar-clas, level: note}|3|no check named mortar-clas; did you mean 'mortar-class'?",
        "checks:\\n  - {id: acoustics, level: note}|3|check acoustics lacks 'title'",
        "checks:\\n  - id: backing\\n    when: {tile.backing: foil}|4|'foil' is not a term of tile.backing; known are",
        "checks:\\n  - id: bond-strength\\n    expect: {above: 400}|4|'above' wants a quantity such as '450 psi', found 400",
        "checks: []\\nchecks: []|3|'checks' stands twice here",
        "suppress:\\n  - {check: mokcup, reason: agreed}|3|no check named mokcup; did you mean 'mockup'?",
        "suppress:\\n  - {id: mokcup/set, reason: agreed}|3|no check named mokcup; did you mean 'mockup'?",
        "suppress:\\n  - {tag: GT-1, reason: agreed}|3|'check' or 'id' is missing",
        "facts:\\n  - {attribute: location.exposure, value: wett, reason: seen}|3|'wett' is not a term of location.exposure; did you mean 'wet'?",
        "facts:\\n  - {attribute: tile.expansion, value: 9 psi, reason: seen}|3|'value' wants a quantity such as '9e-6/K', found 9 psi",
        "facts:\\n  - attribute: tile.expansion\\n    value: 9e-6/K\\n    reason: seen\\n    exposure: [wett]|6|no exposure named wett; did you mean 'wet'?",
        "assumptions:\\n  - {attribute: tile.expansion, value: 9e-6/K, reason: seen, exposure: interior}|3|no exposure named interior; did you mean",
        "assumptions:\\n  - {attribute: tile.size, value: 4 x 4 in, reason: seen}|3|tile.size cannot be assumed, only stated",
        "ruleSet: own|1|give either 'layer' with a name for these rules, or 'ruleSet'",
      })
  void a_layer_is_refused_with_line_and_reason(
      String text, int line, String reason, @TempDir Path folder) throws IOException {
    Path layer = folder.resolve("office.yaml");
    Files.writeString(layer, "layer: ours\n" + text.replace("\\n", "\n"));
    RuleSets sets = Checker.ruleSets(Checked.vocabulary());
    assertThat(catchThrowable(() -> sets.load("north-america", List.of(layer))))
        .hasMessageStartingWith(layer + ":" + line + ": " + reason)
        .message()
        .doesNotContain("\n");
  }

  @Test
  void what_a_layer_leaves_as_it_was_is_blamed_on_the_file_that_says_it(@TempDir Path folder)
      throws IOException {
    // While the files are still right, whichever test is the first.
    Vocabulary vocabulary = Checked.vocabulary();
    Path layer = folder.resolve("office.yaml");
    Files.writeString(layer, "layer: ours\nchecks:\n  - {id: backing, level: note}\n");
    String file = "north-america.yaml";
    String text = Files.readString(Path.of("rulesets", file));
    beside.put(file, text.replace("tile.backing: [metallic, painted]", "tile.backing: [metal]"));
    RuleSets sets = Checker.ruleSets(vocabulary);
    assertThat(catchThrowable(() -> sets.load("north-america", List.of(layer))))
        .hasMessageStartingWith("rulesets/north-america.yaml:117: 'metal' is not a term of");
  }

  @Test
  void an_edited_file_that_is_right_is_accepted() throws IOException {
    String file = "vocabulary/attributes.yaml";
    String text = Files.readString(Path.of("rulesets", file));
    assertThat(
            beside.refusal(file, text.replace("[thermal shock,", "[shock by heat, thermal shock,")))
        .isEmpty();
  }
}
