package clearbed.recognise;

import static org.assertj.core.api.Assertions.assertThat;

import clearbed.model.document.Block;
import clearbed.model.document.Document;
import clearbed.model.document.Origin;
import clearbed.model.document.Paragraph;
import clearbed.model.document.Table;
import clearbed.model.report.Account;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.text.Sentences;
import java.util.HashSet;
import java.util.Set;

/** Counts the text of a document and compares it with its account. */
public final class WholeText {
  private WholeText() {}

  /** Read, context, set aside and not understood add up to every sentence and every cell. */
  public static void assertAccountedFor(Document document, Recogniser recogniser) {
    Account account = recogniser.recognise(document).account();
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
        .as("not understood in " + document.path())
        .isLessThanOrEqualTo(account.sentences().notUnderstood() + account.cells().notUnderstood());
  }

  private static int words(Table table) {
    int cells = 0;
    for (Table.Row row : table.rows()) {
      for (Table.Cell cell : row.cells()) if (!cell.continued() && !cell.text().isBlank()) cells++;
    }
    return cells;
  }
}
