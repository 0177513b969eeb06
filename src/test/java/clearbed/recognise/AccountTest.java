package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.Checked;
import clearbed.model.Account;
import clearbed.model.Block;
import clearbed.model.Document;
import clearbed.model.Origin;
import clearbed.model.Paragraph;
import clearbed.model.Table;
import clearbed.read.ReadAll;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every sentence and every cell of a schedule ends in exactly one of four ways. */
class AccountTest {
  private static final Recogniser RECOGNISER = new Recogniser(Checked.vocabulary());

  /** Folders of documents; the sets beside the project only where they are. */
  static List<Path> folders() throws IOException {
    List<Path> out = new ArrayList<>(List.of(Path.of("sample-specs")));
    try (Stream<Path> checks = Files.list(Path.of("src/test/resources/checks"))) {
      checks.sorted().forEach(out::add);
    }
    Path sets = Path.of("../shared/blind");
    if (Files.isDirectory(sets)) out.add(sets);
    return out;
  }

  @ParameterizedTest
  @MethodSource("folders")
  void the_four_kinds_add_up_to_the_whole_text(Path folder) {
    for (Document document : ReadAll.of(folder.toAbsolutePath())) {
      Account account = RECOGNISER.recognise(document).account();
      Set<Origin> schedules = new HashSet<>();
      for (Account.TableAccount t : account.tables())
        if (!t.takenFor().equals("none")) schedules.add(t.origin());
      int sentences = 0;
      int cells = 0;
      boolean tables = false;
      for (Block block : document.blocks()) {
        if (block instanceof Paragraph p) sentences += Sentences.of(PlainText.of(p.text())).size();
        if (block instanceof Table t) {
          tables = true;
          if (schedules.contains(t.origin())) cells += words(t);
        }
      }
      assertThat(account.cells().all()).as("cells of " + document.path()).isEqualTo(cells);
      if (tables) assertThat(account.sentences().all()).isGreaterThanOrEqualTo(sentences);
      else
        assertThat(account.sentences().all())
            .as("sentences of " + document.path())
            .isEqualTo(sentences);
      assertThat(account.unread().size())
          .isLessThanOrEqualTo(
              account.sentences().notUnderstood() + account.cells().notUnderstood());
    }
  }

  private static int words(Table table) {
    int cells = 0;
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) if (!cell.continued() && !cell.text().isBlank()) cells++;
    }
    return cells;
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
