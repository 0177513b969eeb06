package clearbed.recognise.schedule.card;

import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Cards that lie side by side and below one another on one grid, with blank columns and rows
 * between them: each a title over names and values.
 */
public final class CardBlocks {
  /** Names over one another on a card. */
  private static final int FEWEST_NAMES = 2;

  private static final int FEWEST_CARDS = 2;

  /** A card has a column of names and one of values. */
  private static final int WIDTH = 2;

  private static final int WIDEST = 60;

  private CardBlocks() {}

  /**
   * The cards as tables of their own, in the places of their cells, and what stands over them;
   * empty where there are none.
   */
  public static List<Table> of(Table table) {
    TreeSet<Integer> columns = new TreeSet<>();
    for (Table.Row row : table.rows()) {
      if (isAlone(row)) continue;
      for (Table.Cell cell : row.cells()) {
        if (!cell.hasOwnWords()) continue;
        columns.add(cell.column());
        // Most tables end here, with their first row.
        if (isWider(columns, cell.column())) return List.of();
      }
    }
    List<Integer> firsts = new ArrayList<>();
    for (int column : columns) {
      if (columns.contains(column - 1)) continue;
      if (!columns.contains(column + 1)) return List.of();
      firsts.add(column);
    }
    if (firsts.size() < FEWEST_CARDS || columns.last() > WIDEST) return List.of();
    List<Table> out = new ArrayList<>();
    List<Table.Row> over = new ArrayList<>();
    for (int first : firsts) if (!cards(out, over, table, first)) return List.of();
    if (out.size() < FEWEST_CARDS) return List.of();
    if (!over.isEmpty()) out.add(0, new Table(table.origin(), over, table.sheet()));
    return out;
  }

  /** True where more columns stand side by side, one of them this, than a card has. */
  private static boolean isWider(TreeSet<Integer> columns, int column) {
    int first = column;
    while (columns.contains(first - 1)) first--;
    int last = column;
    while (columns.contains(last + 1)) last++;
    return last - first >= WIDTH;
  }

  /** A line over all of them. */
  private static boolean isAlone(Table.Row row) {
    return row.cells().stream().filter(Table.Cell::hasOwnWords).count() < 2;
  }

  /** False where what stands in two columns is no row of cards. */
  private static boolean cards(List<Table> out, List<Table.Row> over, Table table, int first) {
    List<Table.Row> card = new ArrayList<>();
    int last = 0;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> own =
          row.cells().stream()
              .filter(c -> c.column() >= first && c.column() < first + WIDTH && c.hasOwnWords())
              .toList();
      boolean gap = own.isEmpty() || row.number() > last + 1;
      if (gap && !add(out, over, table, card)) return false;
      if (gap) card = new ArrayList<>();
      if (own.isEmpty()) continue;
      card.add(row.withCells(own));
      last = row.number();
    }
    return add(out, over, table, card);
  }

  private static boolean add(
      List<Table> out, List<Table.Row> over, Table table, List<Table.Row> card) {
    // A line by itself is a title of the page.
    if (card.size() == 1) over.addAll(card);
    if (card.size() < 2) return true;
    boolean titled = card.get(0).cells().size() == 1;
    boolean named = card.stream().skip(1).allMatch(row -> row.cells().size() == WIDTH);
    if (!titled || !named || card.size() <= FEWEST_NAMES) return false;
    out.add(new Table(table.origin(), card, table.sheet()));
    return true;
  }
}
