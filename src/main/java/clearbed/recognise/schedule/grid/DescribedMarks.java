package clearbed.recognise.schedule.grid;

import clearbed.model.document.Origin;
import clearbed.model.document.Table;
import clearbed.recognise.statement.code.Tags;
import clearbed.recognise.vocabulary.Vocabulary;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Cells that have the mark of a finish over what it is, as room schedules write them: "GT-5" over
 * "Glass mosaic, translucent" and "3/4 x 3/4 in". The column becomes one of marks, and what the
 * lines below them say a column of its own.
 */
public final class DescribedMarks {
  private static final int FEWEST = 2;

  /** The first rows tell: of long schedules the others would take time. */
  private static final int SEARCHED = 120;

  /** "GLT1 - glass mosaic". */
  private static final Pattern NAMED =
      Pattern.compile("(\\S{2,9})\\s*(?:[:,]|\\s[-\u2013\u2014])\\s+(?=\\p{L})");

  /** Between a mark and what it is. */
  private static final Pattern LOOSE = Pattern.compile("^\\s*[-:,\u2013\u2014]\\s+");

  private static final String HEADING = "Description";

  private DescribedMarks() {}

  /** What stands in the cells of a column. */
  private static final class MarkTally {
    int described;
    int others;
  }

  /** The table with such a column parted; itself where there is none, or more than one. */
  public static Table parted(Table table, Vocabulary vocabulary) {
    Map<Integer, MarkTally> tallies = new LinkedHashMap<>();
    int end = 0;
    List<Table.Row> first = table.rows().subList(0, Math.min(table.rows().size(), SEARCHED));
    // Most tables have no cell of several lines.
    if (first.stream().flatMap(row -> row.cells().stream()).noneMatch(DescribedMarks::hasLines))
      return table;
    for (Table.Row row : first)
      for (Table.Cell cell : row.cells()) {
        if (!cell.hasOwnWords()) continue;
        MarkTally tally = tallies.computeIfAbsent(cell.column(), any -> new MarkTally());
        if (mark(cell, vocabulary) != null) tally.described++;
        else if (opening(cell, vocabulary) == null) tally.others++;
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

  private static boolean hasLines(Table.Cell cell) {
    return cell.text().indexOf('\n') > 0;
  }

  private static Table parted(Table table, int column, int end, Vocabulary vocabulary) {
    Map<Table.Place, Origin> apart = new HashMap<>(table.apart());
    List<Table.Row> rows = new ArrayList<>();
    boolean headed = false;
    for (Table.Row row : table.rows()) {
      List<Table.Cell> cells = new ArrayList<>();
      Table.Cell behind = null;
      for (Table.Cell cell : row.cells()) {
        boolean own = cell.column() == column && cell.hasOwnWords();
        String mark = own ? opening(cell, vocabulary) : null;
        String rest = mark == null ? "" : cell.text().strip().substring(mark.length());
        cells.add(rest.isEmpty() ? cell : cell.withText(mark));
        if (!rest.isEmpty()) behind = behind(cell, end, LOOSE.matcher(rest).replaceFirst(""));
        else if (own && !headed) behind = behind(cell, end, HEADING);
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

  /** The mark that a cell with lines below it opens with; null where there is none. */
  private static String mark(Table.Cell cell, Vocabulary vocabulary) {
    return cell.text().strip().indexOf('\n') < 0 ? null : opening(cell, vocabulary);
  }

  /** The mark that the first line of a cell is, or opens with; null where it does not. */
  private static String opening(Table.Cell cell, Vocabulary vocabulary) {
    String first = cell.firstLine();
    if (Tags.isMark(first, vocabulary)) return first;
    Matcher named = NAMED.matcher(first);
    return named.lookingAt() && Tags.isMark(named.group(1), vocabulary) ? named.group(1) : null;
  }
}
