package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import clearbed.recognise.schedule.grid.Transposed;
import java.util.ArrayList;
import java.util.List;

/**
 * Parts a table that lists its tiles across from what stands over and under it on the same grid,
 * with blank rows between: a title, a list of other finishes, notes.
 */
final class StackedTables {
  private final TilesAcross across;

  StackedTables(TilesAcross across) {
    this.across = across;
  }

  /** The tables on the grid in order; itself alone where nothing stands apart from such a one. */
  List<Table> of(Table table) {
    int head = across.head(table);
    if (head < 0) return List.of(table);
    int names = Transposed.first(table);
    List<Table> out = new ArrayList<>();
    List<Table.Row> main = new ArrayList<>();
    List<Table.Row> rest = new ArrayList<>();
    List<Table.Row> waiting = new ArrayList<>();
    Table.Row tags = table.rows().get(head);
    for (List<Table.Row> block : blocks(table.rows())) {
      if (block.contains(tags)) main.addAll(block);
      else if (main.isEmpty()) out.add(table.withRows(block));
      else if (rest.isEmpty() && goesOn(block, names)) {
        main.addAll(waiting);
        main.addAll(block);
        waiting.clear();
      } else if (rest.isEmpty() && block.size() == 1 && !isOwn(block, names)) {
        waiting.addAll(block);
      } else {
        rest.addAll(waiting);
        rest.addAll(block);
        waiting.clear();
      }
    }
    rest.addAll(waiting);
    if (out.isEmpty() && rest.isEmpty()) return List.of(table);
    out.add(table.withRows(main));
    if (!rest.isEmpty()) out.add(table.withRows(rest));
    return out;
  }

  /** Runs of rows without a blank one between them. */
  private static List<List<Table.Row>> blocks(List<Table.Row> rows) {
    List<List<Table.Row>> out = new ArrayList<>();
    List<Table.Row> block = new ArrayList<>();
    int last = 0;
    for (Table.Row row : rows) {
      boolean blank = row.cells().stream().allMatch(c -> c.text().isBlank());
      boolean gap = blank || row.number() > last + 1;
      if (gap && !block.isEmpty()) {
        out.add(block);
        block = new ArrayList<>();
      }
      if (!blank) block.add(row);
      last = row.number();
    }
    if (!block.isEmpty()) out.add(block);
    return out;
  }

  /** Names with values of several tiles. */
  private boolean goesOn(List<Table.Row> block, int names) {
    boolean valued =
        block.stream()
            .anyMatch(row -> row.cells().stream().filter(c -> says(c, names)).count() > 1);
    return valued && !isOwn(block, names);
  }

  private static boolean says(Table.Cell cell, int names) {
    return cell.column() > names && !cell.text().isBlank();
  }

  /** True of rows that have marks of their own in place of names. */
  private boolean isOwn(List<Table.Row> block, int names) {
    return block.stream()
        .map(row -> row.at(names))
        .anyMatch(c -> c != null && !c.text().isBlank() && across.isTag(c.text().strip()));
  }
}
