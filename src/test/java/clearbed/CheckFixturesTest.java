package clearbed;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.check.rules.Rule;
import clearbed.model.document.Document;
import clearbed.model.report.Finding;
import clearbed.model.report.Verdict;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Every check on three small sets of documents: one with the fault, one without, one where it does
 * not apply.
 */
class CheckFixturesTest {
  private static final Path FIXTURES = Path.of("src/test/resources/checks");
  private static final List<String> CASES = List.of("fires", "silent", "not-applicable");

  static Stream<String> checks() {
    return Checked.rules(Checked.vocabulary()).rules().stream().map(Rule::id);
  }

  @Test
  void every_check_has_all_three_folders_and_every_folder_a_check() throws IOException {
    List<String> lacking = new ArrayList<>();
    checks()
        .forEach(
            check -> {
              for (String each : CASES) {
                if (!holdsDocuments(FIXTURES.resolve(check).resolve(each)))
                  lacking.add(check + "/" + each);
              }
              if (!Files.isRegularFile(FIXTURES.resolve(check).resolve("expect.json")))
                lacking.add(check + "/expect.json");
            });
    assertThat(lacking).as("put these under " + FIXTURES).isEmpty();
    List<String> known = checks().toList();
    try (Stream<Path> folders = Files.list(FIXTURES)) {
      assertThat(folders.map(f -> f.getFileName().toString())).isSubsetOf(known);
    }
  }

  private static boolean holdsDocuments(Path folder) {
    if (!Files.isDirectory(folder)) return false;
    try (Stream<Path> files = Files.list(folder)) {
      return files.findAny().isPresent();
    } catch (IOException e) {
      return false;
    }
  }

  @ParameterizedTest
  @MethodSource("checks")
  void fires_once_at_its_place(String check) throws IOException {
    Checked checked = read(check, "fires");
    List<Finding> findings = checked.findings(check);
    assertThat(findings).extracting(Finding::message).hasSize(1);
    JsonNode expect =
        new ObjectMapper().readTree(FIXTURES.resolve(check).resolve("expect.json").toFile());
    List<String> tags = new ArrayList<>();
    expect.get("tags").forEach(t -> tags.add(t.asText()));
    Finding finding = findings.get(0);
    assertThat(finding.tags()).containsExactlyElementsOf(tags);
    assertThat(finding.origin().place()).contains(expect.get("place").asText());
    assertThat(finding.message()).doesNotContain("{");
    assertThat(checked.verdicts(check))
        .filteredOn(v -> v.outcome() == Verdict.Outcome.FINDING)
        .extracting(Verdict::tag)
        .containsExactlyElementsOf(tags.stream().filter(checked::hasGlass).toList());
  }

  @ParameterizedTest
  @MethodSource("checks")
  void stays_silent_where_the_documents_say_it_right(String check) {
    Checked checked = read(check, "silent");
    assertThat(checked.findings(check)).extracting(Finding::message).isEmpty();
    assertThat(checked.verdicts(check))
        .as("silence because it is satisfied, not because nothing was read")
        .extracting(Verdict::outcome)
        .contains(Verdict.Outcome.SATISFIED);
  }

  @ParameterizedTest
  @MethodSource("checks")
  void stays_silent_where_it_does_not_apply(String check) {
    Checked checked = read(check, "not-applicable");
    assertThat(checked.findings(check)).extracting(Finding::message).isEmpty();
    assertThat(checked.verdicts(check))
        .extracting(Verdict::outcome)
        .as("glass entries that the check does not apply to")
        .allMatch(outcome -> outcome == Verdict.Outcome.NOT_APPLICABLE);
  }

  private static Checked read(String check, String each) {
    Checked checked = Checked.of(FIXTURES.resolve(check).resolve(each));
    assertThat(checked.documents())
        .isNotEmpty()
        .allSatisfy(
            d -> {
              assertThat(d.status()).isEqualTo(Document.Status.READ);
              assertThat(d.blocks()).isNotEmpty();
            });
    return checked;
  }
}
