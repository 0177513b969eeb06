package clearbed.recognise.lesson;

import clearbed.model.document.Table;
import clearbed.recognise.statement.code.Citations;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.text.PlainText;
import clearbed.recognise.vocabulary.Vocabulary;
import clearbed.recognise.vocabulary.WorkFamilies;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * Codes of an office's own for the mortars, grouts, membranes and sealants that a table lists:
 * {@code MB | Bonded membrane | ANSI A118.10}. Schedules call for them by these letters.
 */
final class ProductCodes {
  private static final Pattern CODE =
      Pattern.compile("\\p{Lu}{2,5}(?:[-./]?\\d{1,3}|[-./]\\p{Lu}{1,4})?");

  /** Fewer might be words of any kind. */
  private static final int FEWEST = 3;

  /** Of so many rows one may be a heading, or on something else. */
  private static final int ODD_ONE = 3;

  private final Vocabulary vocabulary;

  ProductCodes(Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
  }

  /** The codes that are marks of no known form, in the order of the table. */
  List<String> in(List<Table.Row> rows) {
    Set<String> codes = new LinkedHashSet<>();
    int products = 0;
    int others = 0;
    for (Table.Row row : rows) {
      List<Table.Cell> said = row.cells().stream().filter(Table.Cell::hasOwnWords).toList();
      if (said.size() < 2) continue;
      Table.Cell code = said.get(0);
      boolean product = WorkFamilies.MATERIALS.contains(vocabulary.family(said.get(1).text()));
      if (product && isCode(code) && codes.add(text(code))) products++;
      else others++;
    }
    if (products < FEWEST || others * ODD_ONE > products) return List.of();
    return codes.stream().filter(code -> !Tags.isMark(code, vocabulary)).toList();
  }

  private static boolean isCode(Table.Cell cell) {
    return CODE.matcher(text(cell)).matches() && Citations.find(text(cell)).isEmpty();
  }

  private static String text(Table.Cell cell) {
    return PlainText.line(cell.text()).strip();
  }
}
