package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.column.HeadingWords;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.IntSummaryStatistics;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * Rows of two properties each: "Make-up | Cast glass | Nominal | 3 x 6 in". The tile that they
 * describe stands before them, over them, or as one of them: "Item | GT-1 | Place | Lobby".
 */
final class PropertyPairs {
  /** The column of the second name. */
  static final int SECOND = 2;

  private static final int FEWEST = 2;

  /** Offices have names of their own for the other properties. */
  private static final int A_THIRD = 3;

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 60;

  private PropertyPairs() {}

  /**
   * True where the first and third of four columns name properties.
   *
   * @param columns those that hold something
   * @param isProperty true of the name of one
   */
  static boolean are(
      Table table,
      IntSummaryStatistics columns,
      Vocabulary vocabulary,
      Predicate<Table.Cell> isProperty) {
    Predicate<Table.Cell> isName =
        isProperty.or(cell -> HeadingWords.isOfTags(vocabulary, cell.text()));
    if (columns.getCount() == 0 || columns.getMin() != 0 || columns.getMax() != SECOND + 1)
      return false;
    return names(table, 0, isName) >= FEWEST
        && names(table, SECOND, isName) >= FEWEST
        && names(table, 1, isName) <= FEWEST;
  }

  /** Cells of a column that are names of properties; -1 where hardly any are. */
  private static int names(Table table, int column, Predicate<Table.Cell> isName) {
    int names = 0;
    int others = 0;
    for (Table.Row row : table.rows().subList(0, Math.min(table.rows().size(), SEARCHED))) {
      Table.Cell cell = row.at(column);
      boolean alone = row.cells().stream().filter(Table.Cell::hasOwnWords).count() < 2;
      if (cell == null || alone || !cell.hasOwnWords()) continue;
      if (isName.test(cell)) names++;
      else others++;
    }
    return names * A_THIRD >= names + others ? names : -1;
  }

  /** The mark beside "Item" or "Code" in either half of a row, or null. */
  static Table.Cell tag(Table.Row row, Vocabulary vocabulary, Function<Table.Cell, String> markOf) {
    for (int column = 0; column <= SECOND; column += SECOND) {
      Table.Cell name = row.at(column);
      Table.Cell value = row.at(column + 1);
      if (name == null || value == null || markOf.apply(value).isEmpty()) continue;
      if (HeadingWords.isOfTags(vocabulary, name.text())) return value;
    }
    return null;
  }
}
