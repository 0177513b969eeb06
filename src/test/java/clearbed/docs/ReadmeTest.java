package clearbed.docs;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.check.Checker;
import clearbed.check.rules.Expectation;
import clearbed.check.rules.Rule;
import clearbed.check.rules.RuleSet;
import clearbed.recognise.vocabulary.Vocabulary;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReadmeTest {
  private static final Path README = Path.of("README.md");
  private static final Pattern LINK = Pattern.compile("\\]\\((?!https?:|#)([^)#]+)");

  @Test
  void everyTranscriptShowsWhatTheCommandPrints() throws IOException {
    String page = Files.readString(README);
    String today = Transcripts.run(page);
    if (Boolean.getBoolean("readme.write")) Files.writeString(README, page = today);
    assertThat(page)
        .as("an output changed; run: mvn -q test -Dtest=ReadmeTest -Dreadme.write=true")
        .isEqualToNormalizingWhitespace(today);
    assertThat(today).contains("glass tiles", "GT-1  glass tile", "Required width:");
  }

  @Test
  void theExampleOfALayerDoesWhatItsCommentsSay(@TempDir Path folder) throws Exception {
    Matcher yaml =
        Pattern.compile("```yaml\n(layer:.*?)```", Pattern.DOTALL)
            .matcher(Files.readString(README));
    assertThat(yaml.find()).isTrue();
    Path layer = Files.writeString(folder.resolve("office.yaml"), yaml.group(1));

    RuleSet rules = Checker.ruleSets(Vocabulary.standard()).load("north-america", List.of(layer));

    assertThat(rules.rule("grout-reach").orElseThrow().off()).isTrue();
    assertThat(rules.rule("translucency").orElseThrow().level().word()).isEqualTo("error");
    Rule bond = rules.rule("bond-strength").orElseThrow();
    assertThat(((Expectation.Limit) bond.expectation()).amount().text()).contains("450 psi");
    assertThat(rules.suppressions()).hasSize(1);
    assertThat(rules.facts()).hasSize(1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"README.md", "DEVELOPERS.md"})
  void everyLinkLeadsToAFile(String page) throws IOException {
    Stream<String> links =
        LINK.matcher(Files.readString(Path.of(page))).results().map(link -> link.group(1));
    assertThat(links).allSatisfy(link -> assertThat(Path.of(link)).exists());
  }
}
