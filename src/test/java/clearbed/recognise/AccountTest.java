package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.report.Account;
import clearbed.model.report.Fate;
import clearbed.read.ReadAll;
import clearbed.read.TikaDocuments;
import clearbed.read.source.ReadOptions;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every sentence and every cell of a schedule ends in exactly one of four ways. */
class AccountTest {
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  static List<Path> folders() throws IOException {
    List<Path> out = new ArrayList<>(List.of(Path.of("sample-specs")));
    try (Stream<Path> checks = Files.list(Path.of("src/test/resources/checks"))) {
      checks.sorted().forEach(out::add);
    }
    return out;
  }

  @ParameterizedTest
  @MethodSource("folders")
  void the_four_kinds_add_up_to_the_whole_text(Path folder) {
    ReadAll.of(folder.toAbsolutePath())
        .forEach(document -> WholeText.assertAccountedFor(document, RECOGNISER));
  }

  /** Who asks for it is told of each of them once, where it stands, and of nothing else. */
  @Test
  void every_sentence_and_cell_is_told_of_as_it_was_counted() {
    Recogniser tracing = Recogniser.tracing(Checked.vocabulary());
    int told = 0;
    for (Document document : ReadAll.of(Path.of("sample-specs").toAbsolutePath())) {
      Account account = RECOGNISER.facts(document).account();
      List<Account.Ending> endings = tracing.endings(document);
      Account.Tally counted = account.sentences().plus(account.cells());
      for (Fate fate : Fate.values())
        assertThat(endings.stream().filter(e -> e.fate() == fate).count())
            .as(document.path() + " " + fate)
            .isEqualTo(counted.of(fate));
      assertThat(endings).allMatch(e -> e.origin().document().equals(document.path()));
      told += endings.size();
    }
    assertThat(told).isGreaterThan(500);
  }

  /** Documents of no trade, by the authors of Tika. */
  @Test
  void they_add_up_for_documents_that_nobody_here_made(@TempDir Path folder) throws IOException {
    assertThat(TikaDocuments.unpack(folder)).isGreaterThan(200);
    ReadOptions options = ReadOptions.defaults().withDocumentTimeout(Duration.ofSeconds(30));
    List<Document> documents = ReadAll.by(options, folder);
    assertThat(documents).filteredOn(d -> !d.blocks().isEmpty()).hasSizeGreaterThan(120);
    documents.forEach(document -> WholeText.assertAccountedFor(document, RECOGNISER));
  }

  private static Account account(String... lines) {
    List<Block> blocks = new ArrayList<>();
    for (int i = 0; i < lines.length; i++) {
      Origin at = new Origin("tile.txt", null, null, null, i + 1, null, lines[i]);
      blocks.add(Paragraph.body(at, lines[i]));
    }
    return RECOGNISER.recognise(Document.read("tile.txt", "txt", blocks, List.of())).account();
  }

  @Test
  void what_a_clause_requires_is_not_asked_about_again() {
    Account account =
        account(
            "SECTION 09 30 23",
            "GLASS TILING",
            "PART 1 - GENERAL",
            "1.1 QUALITY",
            "A. Build a mock-up of PT-1. The accepted mock-up remains as part of the work.");
    assertThat(account.unread())
        .noneSatisfy(words -> assertThat(words.likely()).contains("process.mockup"));
  }

  @Test
  void a_sentence_ends_as_read_context_set_aside_or_not_understood() {
    Account account =
        account(
            "SECTION 09 30 23",
            "GLASS TILING",
            "PART 1 - GENERAL",
            "1.1 REFERENCES",
            "A. ANSI A118.15, Improved Modified Dry-Set Cement Mortar.",
            "PART 2 - PRODUCTS",
            "2.1 GLASS TILE",
            "A. Glass tile: ANSI A137.2.",
            "2.2 SETTING MATERIALS",
            "A. Setting mortar resists 450 psi when tugged.");
    assertThat(account.sentences().read()).isPositive();
    assertThat(account.setAside())
        .extracting(Account.SetAside::why)
        .anyMatch(w -> w.contains("references"));
    assertThat(account.unread()).hasSize(1);
    assertThat(account.unread().get(0).attributes()).contains("mortar.bond");
  }
}
