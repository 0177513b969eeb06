package clearbed.recognise.schedule;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.statement.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Cells that have the mark of a finish over what it is, as room schedules write them: "GT-5" over
 * "Glass mosaic, translucent" and "3/4 x 3/4 in". The column becomes one of marks, and what the
 * lines below them say a column of its own.
 */
public final class DescribedMarks {
  private static final int FEWEST = 2;

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 120;

  private static final String HEADING = "Description";

  private DescribedMarks() {}

  /** What stands in the cells of a column. */
  private static final class Tally {
    int described;
    int bare;
    int others;
  }

  /** The table with such a column parted; itself where there is none, or more than one. */
  public static Table parted(Table table, Vocabulary vocabulary) {
    Map<Integer, Tally> tallies = new LinkedHashMap<>();
    int end = 0;
    List<Table.Row> first = table.rows().subList(0, Math.min(table.rows().size(), SEARCHED));
    for (Table.Row row : first)
      for (Table.Cell cell : row.cells()) {
        if (!cell.hasOwnWords()) continue;
        Tally tally = tallies.computeIfAbsent(cell.column(), any -> new Tally());
        if (mark(cell, vocabulary) != null) tally.described++;
        else if (Tags.isMark(cell.text().strip(), vocabulary)) tally.bare++;
        else tally.others++;
      }
    for (Table.Row row : table.rows())
      for (Table.Cell cell : row.cells()) end = Math.max(end, cell.column() + cell.columnSpan());
    List<Integer> columns =
        tallies.entrySet().stream()
            .filter(e -> e.getValue().described >= FEWEST)
            // A heading at least stands over them.
            .filter(e -> e.getValue().others <= 1 + e.getValue().described / 4)
            .map(Map.Entry::getKey)
            .toList();
    return columns.size() == 1 ? parted(table, columns.get(0), end, vocabulary) : table;
  }

  private static Table parted(Table table, int column, int end, Vocabulary vocabulary) {
    Map<Table.Place, Origin> apart = new HashMap<>(table.apart());
    List<Table.Row> rows = new ArrayList<>();
    boolean headed = false;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> cells = new ArrayList<>();
      Table.Cell behind = null;
      for (Table.Cell cell : row.cells()) {
        String mark = cell.column() == column && cell.hasOwnWords() ? mark(cell, vocabulary) : null;
        cells.add(mark == null ? cell : cell.withText(mark));
        if (mark != null) behind = behind(cell, end, cell.text().strip().substring(mark.length()));
        else if (!headed && cell.column() == column && cell.hasOwnWords())
          behind = behind(cell, end, HEADING);
      }
      headed |= behind != null;
      if (behind != null) {
        cells.add(behind);
        apart.put(new Table.Place(behind.firstRow(), end), table.origin(row.at(column)));
      }
      rows.add(row.withCells(cells));
    }
    return new Table(table.origin(), rows, table.sheet(), table.turned(), apart);
  }

  private static Table.Cell behind(Table.Cell cell, int column, String words) {
    return new Table.Cell(column, 1, false, words.strip(), "", cell.firstRow(), cell.page());
  }

  /** The mark that is the first line of a cell with more lines; null where there is none. */
  private static String mark(Table.Cell cell, Vocabulary vocabulary) {
    String text = cell.text().strip();
    int line = text.indexOf('\n');
    if (line < 0) return null;
    String first = text.substring(0, line).strip();
    return !text.substring(line).isBlank() && Tags.isMark(first, vocabulary) ? first : null;
  }
}
