package clearbed.recognise.schedule;

import clearbed.model.document.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * A table that names properties downwards and tiles across, and what stands over and under it on
 * the same grid with blank rows between: a title, a list of other finishes, notes.
 */
final class TilesAcross {
  private static final int FEWEST = 2;

  /** The first rows tell which way a table goes. */
  private static final int SEARCHED = 8;

  private final Predicate<String> isTag;

  TilesAcross(Predicate<String> isTag) {
    this.isTag = isTag;
  }

  /** Index of the row with the tags; -1 where none of the first is such. */
  int head(Table table) {
    int names = Transposed.first(table);
    List<Table.Row> rows = table.rows();
    for (int i = 0; i < Math.min(SEARCHED, rows.size()); i++)
      if (isHead(rows.get(i), names)) return i;
    return -1;
  }

  /** Beside a word, or nothing, stand tags that are all different. */
  private boolean isHead(Table.Row row, int names) {
    List<Table.Cell> tags =
        row.cells().stream().filter(c -> c.column() > names && !c.text().isBlank()).toList();
    boolean all =
        tags.size() >= FEWEST
            && tags.stream().allMatch(c -> isTag(c.text()))
            && tags.stream().map(Table.Cell::text).distinct().count() == tags.size();
    Table.Cell first = row.at(names);
    return all && (first == null || first.text().chars().noneMatch(Character::isDigit));
  }

  private boolean isTag(String text) {
    return isTag.test(ScheduleFinder.unnamed(text));
  }

  /** The tables on the grid in order; itself alone where nothing stands apart from such a one. */
  List<Table> apart(Table table) {
    int head = Transposed.isTooLong(table) ? -1 : head(table);
    if (head < 0) return List.of(table);
    int names = Transposed.first(table);
    List<Table> out = new ArrayList<>();
    List<Table.Row> across = new ArrayList<>();
    List<Table.Row> rest = new ArrayList<>();
    List<Table.Row> waiting = new ArrayList<>();
    Table.Row tags = table.rows().get(head);
    for (List<Table.Row> block : blocks(table.rows())) {
      if (block.contains(tags)) across.addAll(block);
      else if (across.isEmpty()) out.add(table.withRows(block));
      else if (rest.isEmpty() && goesOn(block, names)) {
        across.addAll(waiting);
        across.addAll(block);
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
    out.add(table.withRows(across));
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
        .anyMatch(c -> c != null && !c.text().isBlank() && isTag(c.text().strip()));
  }
}
